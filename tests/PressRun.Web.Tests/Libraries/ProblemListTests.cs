using Bunit;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Web.Libraries.Files;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Libraries;

public class ProblemListTests
{
    private static readonly StockShape Papers = new();

    private static readonly int Weight = Papers.Columns.ToList().FindIndex(column => column.Key == "weight");

    [Fact]
    public async Task All_that_is_not_right_can_be_seen_a_stretch_at_a_time()
    {
        await using var page = new BunitContext();
        var list = Rendered(page, 120);

        Assert.Equal("50 of 120 cells that are not right", list.Find("caption").TextContent);
        await list.FindAll("button").Single(button => button.TextContent == "Show 50 more").ClickAsync(new());
        await list.FindAll("button").Single(button => button.TextContent == "Show 20 more").ClickAsync(new());
        Assert.Equal(120, list.FindAll("tbody tr").Count);
        Assert.Equal("Cells that are not right", list.Find("caption").TextContent);
        Assert.DoesNotContain(list.FindAll("button"), button => button.TextContent.StartsWith("Show", StringComparison.Ordinal));
    }

    [Fact]
    public async Task All_of_it_is_copied_as_rows_of_a_spreadsheet_that_runs_nothing()
    {
        await using var page = new BunitContext();
        var copy = page.JSInterop.SetupModule("./js/copy.js").Setup<bool>("copyText", _ => true);
        var list = Rendered(page, 60);

        var clicked = list.FindAll("button").Single(button => button.TextContent == "Copy all 60").ClickAsync(new());
        copy.SetResult(true);
        await clicked;

        var rows = Assert.IsType<string>(copy.Invocations.Single().Arguments[0]).Split('\n');
        Assert.Equal(61, rows.Length);
        Assert.Equal("2\tB, g/m²\t'=heavy\tWrite a weight.", rows[1]);
        Assert.StartsWith("Copied", list.Find("[role=status]").TextContent, StringComparison.Ordinal);
    }

    private static IRenderedComponent<ProblemList> Rendered(BunitContext page, int problems)
    {
        CellProblem[] told = [.. Enumerable.Range(2, problems).Select(row => new CellProblem(row, Weight, "=heavy", "Write a weight."))];
        return page.Render<ProblemList>(set => set
            .Add(part => part.Preview, new CsvPreview(["Name", "g/m²"], problems, 0, [], told, problems))
            .Add(part => part.Mapping, new CsvMapping(1, [SourceColumn.LeftOut, new SourceColumn(Weight)], false, new Dictionary<int, string>()))
            .Add(part => part.Table, Papers.Columns)
            .Add(part => part.Press, ALedger.Press));
    }
}
