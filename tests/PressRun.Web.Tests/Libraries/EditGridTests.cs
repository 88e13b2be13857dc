using System.Globalization;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Access;
using PressRun.Data.Presses;
using PressRun.Web.Libraries.Grid;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Libraries;

public sealed class EditGridTests : BunitContext
{
    private static readonly ConsumableShape Shape = new();
    private static readonly CellManners Manners = new(CultureInfo.GetCultureInfo("en"), UnitSystem.Metric);

    private readonly GridDocument document = new(Shape.Columns.Count);

    public EditGridTests()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton<IServerDrafts, KeptNowhere>();
        Services.AddScoped<Drafts>();
        document.Load([new GridRow("a", ["staples", "0.005"]), new GridRow("b", ["thread", "0.02"])]);
    }

    [Fact]
    public void The_table_is_a_grid_with_heads_and_a_name_for_every_cell()
    {
        var grid = Grid(GridState.Clean);

        Assert.Equal("Things used up", grid.Find("[role=grid]").GetAttribute("aria-label"));
        Assert.Equal(["Used up", "A copy"], grid.FindAll("[role=columnheader]").Select(head => head.TextContent.Trim()));
        Assert.Equal(["A copy, staples", "A copy, thread", "A copy, new row"], grid.FindAll("td[data-col='1']").Select(cell => cell.GetAttribute("data-label")));
    }

    [Fact]
    public void A_wrong_cell_keeps_its_text_and_is_joined_to_the_sentence_that_says_what_would_be_right()
    {
        document.Set("b", 1, "dear", "typing");
        var grid = Grid(new GridState(new Dictionary<(string, int), string> { [("b", 1)] = "Write an amount." }, new Dictionary<string, string>(), new HashSet<string> { "b" }));

        var cell = grid.Find("tr[data-row=b] td[data-col='1']");

        Assert.Equal(("dear", "true"), (cell.GetAttribute("data-text"), cell.GetAttribute("aria-invalid")));
        Assert.Equal("A copy: Write an amount.", grid.Find("#" + cell.GetAttribute("aria-describedby")).TextContent);
        Assert.Contains("One cell waits to be mended", grid.Find("[role=status]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_pasted_block_that_came_in_pieces_is_put_in_whole_and_told_to_the_page()
    {
        var told = 0;
        var grid = Grid(GridState.Clean, () => told++);
        grid.Instance.Receive("glue\t0.");
        grid.Instance.Receive("1\nblades\t0.2\textra");

        await grid.InvokeAsync(() => grid.Instance.Paste("b", 0, 1, 1));

        Assert.Equal(["staples 0.005", "glue 0.1", "blades 0.2", " "], document.Rows.Select(row => string.Join(' ', row.Cells)));
        Assert.Equal(1, told);
        Assert.Contains("one column did not fit", grid.Find("[role=status]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_cell_that_is_pasted_fills_the_selection()
    {
        var grid = Grid(GridState.Clean);
        grid.Instance.Receive("0.5");

        await grid.InvokeAsync(() => grid.Instance.Paste("a", 1, 2, 1));

        Assert.Equal(["0.5", "0.5"], document.Rows.Take(2).Select(row => row.Cells[1]));
    }

    [Theory]
    [InlineData(20_000, 2, 3)] // The empty row at the end too.
    [InlineData(1, 20_000, 2)]
    [InlineData(-5, -5, 2)]
    public async Task A_selection_that_the_table_does_not_have_is_not_believed(int rows, int columns, int filled)
    {
        var grid = Grid(GridState.Clean);
        grid.Instance.Receive("0.5");

        await grid.InvokeAsync(() => grid.Instance.Paste("a", 1, rows, columns));

        Assert.Equal(filled, document.Rows.Count(row => !row.IsBlank));
        Assert.Equal("0.5", document.Rows[0].Cells[1]);
    }

    [Fact]
    public async Task A_block_that_is_longer_than_a_table_may_be_is_put_in_as_far_as_there_is_room_and_says_so()
    {
        var grid = Grid(GridState.Clean);
        grid.Instance.Receive(string.Concat(Enumerable.Repeat("glue\t0.1\n", GridDocument.MostRows + 500)));

        await grid.InvokeAsync(() => grid.Instance.Paste("b", 0, 1, 1));

        Assert.Equal(GridDocument.MostRows, document.Rows.Count(row => !row.IsBlank));
        Assert.Contains("a table takes 2,000 rows", grid.Find("[role=status]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_only_reads_takes_nothing_out_and_clears_nothing_whatever_the_browser_sends()
    {
        var grid = Grid(GridState.Clean, press: PressView.Of(Records.Source().Press, CultureInfo.InvariantCulture) with { Role = PressRole.Reader });

        await grid.InvokeAsync(() => grid.Instance.TakeOut(["a"]));
        await grid.InvokeAsync(() => grid.Instance.ClearCells(["b"], 0, 1));

        Assert.Equal(["staples 0.005", "thread 0.02", " "], document.Rows.Select(row => string.Join(' ', row.Cells)));
    }

    [Fact]
    public async Task Undo_by_button_and_redo_by_key_tell_the_page_each_time()
    {
        var told = 0;
        var grid = Grid(GridState.Clean, () => told++);
        await grid.InvokeAsync(() => grid.Instance.Commit("a", 1, "0.006"));

        await grid.Find("button:not([disabled])").ClickAsync(new());
        Assert.Equal("0.005", document.Rows[0].Cells[1]);
        await grid.InvokeAsync(grid.Instance.RedoFromKey);

        Assert.Equal(("0.006", 3), (document.Rows[0].Cells[1], told));
    }

    [Fact]
    public void A_half_typed_new_row_comes_back_from_what_the_script_kept()
    {
        JSInterop.SetupModule("./js/drafts.js").Setup<Dictionary<string, string>>("recall").SetResult(new() { ["grid.test.typing"] = """{"row":"new-1","column":0,"text":"glu"}""" });
        var told = 0;

        var grid = Grid(GridState.Clean, () => told++);

        grid.WaitForAssertion(() => Assert.Contains("is back", grid.Find("[role=status]").TextContent, StringComparison.Ordinal));
        Assert.Equal(["staples 0.005", "thread 0.02", "glu ", " "], document.Rows.Select(row => string.Join(' ', row.Cells)));
        Assert.Equal(1, told);
    }

    [Theory]
    [InlineData("""{"column":0,"text":"glu"}""")]
    [InlineData("""{"row":null,"column":0,"text":null}""")]
    [InlineData("""{"row":"new-1","column":"first","text":"glu"}""")]
    [InlineData("null")]
    [InlineData("[1,")]
    public void What_cannot_be_read_of_a_kept_row_is_let_go(string kept)
    {
        JSInterop.SetupModule("./js/drafts.js").Setup<Dictionary<string, string>>("recall").SetResult(new() { ["grid.test.typing"] = kept, ["grid.test"] = kept });

        var grid = Grid(GridState.Clean);

        Assert.Equal(["staples 0.005", "thread 0.02", " "], document.Rows.Select(row => string.Join(' ', row.Cells)));
        Assert.Equal("All is saved.", grid.Find("[role=status]").TextContent);
    }

    private IRenderedComponent<EditGrid> Grid(GridState state, Action? changed = null, PressView? press = null) => Render<EditGrid>(parameters => parameters
        .AddCascadingValue(press ?? PressView.Of(Records.Source().Press, CultureInfo.InvariantCulture))
        .Add(grid => grid.Document, document)
        .Add(grid => grid.Columns, Shape.Columns)
        .Add(grid => grid.State, state)
        .Add(grid => grid.Manners, Manners)
        .Add(grid => grid.Label, "Things used up")
        .Add(grid => grid.AddLabel, "Add a thing")
        .Add(grid => grid.DraftKey, "grid.test")
        .Add(grid => grid.Changed, () =>
        {
            changed?.Invoke();
            return Task.CompletedTask;
        }));
}
