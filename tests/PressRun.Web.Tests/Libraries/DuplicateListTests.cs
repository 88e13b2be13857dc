using Bunit;
using PressRun.Data.Import.Csv;
using PressRun.Web.Libraries.Files;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Libraries;

public class DuplicateListTests
{
    [Fact]
    public async Task Each_row_stands_unticked_with_its_reason_and_says_when_it_is_ticked()
    {
        await using var page = new BunitContext();
        var (finder, told) = (new Found(), 0);
        var list = page.Render<DuplicateList>(set => set.Add(part => part.Finder, finder).Add(part => part.Press, ALedger.Press).Add(part => part.Changed, () => told++));

        Assert.Equal("3 rows may be in the ledger already", list.Find("h3").TextContent);
        Assert.Equal("The first 2 of 3", list.Find("caption").TextContent);
        Assert.All(list.FindAll("tbody input"), tick => Assert.False(tick.HasAttribute("checked")));
        Assert.Contains("the reference R-501", list.FindAll("tbody tr")[0].TextContent, StringComparison.Ordinal);

        await list.FindAll("tbody input")[1].ChangeAsync(new() { Value = true });
        Assert.Equal([(7, true)], finder.Said);
        await list.FindAll("button")[0].ClickAsync(new());
        await list.FindAll("button")[1].ClickAsync(new());
        Assert.Equal([true, false], finder.All);
        Assert.Equal(3, told);
    }

    private sealed class Found : IFindsDuplicates
    {
        public List<(int Row, bool Bring)> Said { get; } = [];

        public List<bool> All { get; } = [];

        public IReadOnlyList<FoundDuplicate> Duplicates { get; } = [new(4, "1 copy sold", "the reference R-501"), new(7, "2 copies sold", "the same day, way of selling and copies")];

        public int DuplicateCount => 3;

        public int LeftOut => 3;

        public bool BringsIn(int row) => false;

        public void Bring(int row, bool bring) => Said.Add((row, bring));

        public void BringAll(bool bring) => All.Add(bring);

        public Task FindAsync(CsvSource source, CsvMapping mapping, CancellationToken cancel) => Task.CompletedTask;
    }
}
