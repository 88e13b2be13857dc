using System.Globalization;
using PressRun.Data.Access;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Postage;
using PressRun.Data.Presses;
using PressRun.Data.Stocks;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Web.Libraries;
using PressRun.Web.Libraries.Grid;
using PressRun.Web.Tests.Shelf;

namespace PressRun.Web.Tests.Libraries;

[Collection<OnSample>]
public sealed class LibraryTableTests(StoredShelf sample)
{
    private const int Name = 1;
    private static readonly CellManners Manners = new(CultureInfo.GetCultureInfo("en"), UnitSystem.Metric);

    [Fact]
    public async Task Of_two_rows_of_one_name_the_lower_is_marked_and_free_once_the_upper_is_gone()
    {
        using var program = Visiting.As(new Visitor.Program());
        var table = await PapersAsync();
        var upper = Add(table, "Twice", "150", "coated");
        var lower = Add(table, "twice ", "200", "coated");
        await table.ChangedAsync();
        Assert.Equal((lower, Name), Assert.Single(table.State.Problems).Key);

        // The upper one is stored by now, and another edit looks at the lower anew.
        var other = Add(table, "Once", "90", "uncoated");
        await table.ChangedAsync();
        Assert.Equal((lower, Name), Assert.Single(table.State.Problems).Key);

        table.Document.Remove([upper], "taking out");
        await table.ChangedAsync();
        Assert.Empty(table.State.Problems);
        Assert.Empty(table.State.Unsaved);

        await TakeOutAsync(table, lower, other);
    }

    [Fact]
    public async Task A_row_renamed_to_what_a_stored_one_further_down_is_called_is_refused_and_what_is_stored_stays()
    {
        using var program = Visiting.As(new Visitor.Program());
        var table = await PapersAsync();
        var upper = Add(table, "First", "150", "coated");
        var lower = Add(table, "Second", "150", "coated");
        await table.ChangedAsync();

        table.Document.Set(upper, Name, "Second", "typing");
        await table.ChangedAsync();

        Assert.Equal((upper, Name), Assert.Single(table.State.Problems).Key);
        Assert.Equal(["First", "Second"], table.Stored.Select(paper => paper.Item.Name).Where(name => name is "First" or "Second").Order());
        await TakeOutAsync(table, upper, lower);
    }

    [Fact]
    public async Task A_row_with_the_id_of_another_above_it_is_a_paper_of_its_own()
    {
        using var program = Visiting.As(new Visitor.Program());
        var table = await PapersAsync();
        var first = Add(table, "Kept", "150", "coated");
        await table.ChangedAsync();
        var stored = table.Document.Rows.Single(row => row.Key == first);

        table.Document.Edit("what was typed here earlier", rows => [.. rows.Where(row => !row.IsBlank), stored.With(Name, "Typed since") with { Key = "back-new-1" }]);
        await table.ChangedAsync();

        Assert.Empty(table.State.Problems);
        Assert.Contains(table.Stored, paper => paper.Item.Name == "Typed since");
        Assert.Contains(table.Stored, paper => paper.Item.Name == "Kept");
        await TakeOutAsync(table, first, "back-new-1");
    }

    [Fact]
    public async Task What_is_typed_while_a_row_is_being_stored_is_of_that_row()
    {
        using var program = Visiting.As(new Visitor.Program());
        var table = await PapersAsync();
        var before = table.Stored.Count;
        var row = Add(table, "Fast", "150", "coated");
        var first = table.ChangedAsync();
        table.Document.Set(row, Name, "Faster", "typing");
        await Task.WhenAll(first, table.ChangedAsync());

        Assert.Equal("Faster", table.Document.Rows.Single(shown => shown.Key == row).Cells[Name]);
        Assert.Equal(before + 1, (await PapersAsync()).Stored.Count);
        await TakeOutAsync(table, row);
    }

    [Fact]
    public async Task A_service_of_the_name_region_and_day_of_another_is_refused()
    {
        using var program = Visiting.As(new Visitor.Program());
        var table = new LibraryTable<PostageService>(sample.Of<PostageServiceStore>(), new PostageShape(), service => service.Name, sample.Press.Id, Manners);
        await table.LoadAsync(archived: false);
        table.Document.Put(table.Document.Rows[^1].Key, [1, 2, 3, 4, 5], [["Slow", "moon", "2026-01-01", "100", "1"], ["Quick", "moon", "2026-01-01", "200", "2"]], "pasting");
        var (slow, quick) = (table.Document.Rows[^3].Key, table.Document.Rows[^2].Key);
        await table.ChangedAsync();

        table.Document.Set(quick, Name, "slow", "typing");
        await table.ChangedAsync();

        Assert.Equal((quick, Name), Assert.Single(table.State.Problems).Key);
        table.Document.Remove([slow, quick], "taking out");
        await table.ChangedAsync();
    }

    private async Task<LibraryTable<Stock>> PapersAsync()
    {
        var table = new LibraryTable<Stock>(sample.Of<StockStore>(), new StockShape(), stock => stock.Name, sample.Press.Id, Manners);
        await table.LoadAsync(archived: false);
        return table;
    }

    private static string Add(LibraryTable<Stock> table, string name, string weight, string finish)
    {
        var row = table.Document.Rows[^1].Key;
        table.Document.Put(row, [1, 2, 5], [[name, weight, finish]], "pasting");
        return row;
    }

    // The press is also that of other tests.
    private static async Task TakeOutAsync(LibraryTable<Stock> table, params string[] rows)
    {
        table.Document.Remove(rows, "taking out");
        await table.ChangedAsync();
        Assert.Empty(table.State.Unsaved);
    }
}
