using PressRun.Data.Import;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Tests.Fixtures;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Selling;

namespace PressRun.Data.Tests.Import;

public sealed class LibraryImportTests(PostgresFixture postgres)
{
    [Fact]
    public async Task An_import_adds_what_is_new_replaces_what_has_its_name_and_leaves_what_is_the_same()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var heavier = SmallPress.Text with { Id = "", Weight = PaperWeight.FromGrammage(100m) };

        var receipt = await stores.Stocks.ImportAsync(small.Id, () => Items(heavier, SmallPress.Cover, Card("Card")));

        Assert.Equal((1, 1, 1), (receipt.Added.Count, receipt.Replaced.Count, receipt.Unchanged));
        var papers = (await stores.Stocks.ListAsync(small.Id)).Select(paper => (paper.Item.Id, paper.Item.Weight.GramsPerSquareMetre));
        Assert.Equal(
            [("cover-card", SmallPress.Cover.Weight.GramsPerSquareMetre), ("text", 100m), ("card", 300m)], papers);
    }

    [Fact]
    public async Task An_import_that_a_rule_stops_stores_nothing_and_says_which()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var ways = Enumerable.Range(0, 700).Select(number => new Channel("", $"Way {number}", 0m, false, 0m, 0m, 0m, 0m, 1, number == 650 ? "no such mailer" : null, null, 0m, 1m));

        var refusal = await Assert.ThrowsAsync<ImportRefusedException>(() =>
            stores.Channels.ImportAsync(small.Id, () => ways.Select(way => new LibraryItem<Channel>(way, false, 0))));

        Assert.Equal((650, "$.mailer"), (refusal.Index, refusal.Problem.Path));
        Assert.Single(await stores.Channels.ListAsync(small.Id));
    }

    [Fact]
    public async Task An_import_that_is_stopped_on_the_way_stores_nothing()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        using var stop = new CancellationTokenSource();
        IEnumerable<LibraryItem<Stock>> Endless()
        {
            for (var number = 0; ; number++)
            {
                if (number == 1200)
                {
                    stop.Cancel();
                }

                stop.Token.ThrowIfCancellationRequested();
                yield return new LibraryItem<Stock>(Card($"Card {number}"), false, 0);
            }
        }

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => stores.Stocks.ImportAsync(small.Id, Endless, cancel: stop.Token));

        Assert.Equal(2, (await stores.Stocks.ListAsync(small.Id)).Count);
    }

    [Fact]
    public async Task An_import_is_taken_back_whole()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var before = (await stores.Stocks.ListAsync(small.Id)).Select(paper => paper.Item).ToList();
        var cards = Enumerable.Range(0, 1100).Select(number => Card($"Card {number}")).Append(SmallPress.Text with { Name = "Cream text", Bulk = 1.8m }).ToArray();

        var receipt = await stores.Stocks.ImportAsync(small.Id, () => Items(cards));
        var inTheWay = await stores.Stocks.TakeBackAsync(small.Id, receipt);

        Assert.Empty(inTheWay);
        Assert.Equal(before, (await stores.Stocks.ListAsync(small.Id)).Select(paper => paper.Item));
    }

    [Fact]
    public async Task An_import_is_not_taken_back_over_a_later_change_and_nothing_of_it_is()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var receipt = await stores.Stocks.ImportAsync(small.Id, () => Items([.. Enumerable.Range(0, 600).Select(number => Card($"Card {number}"))]));
        var last = (await stores.Stocks.ListAsync(small.Id)).Single(paper => paper.Item.Name == "Card 599");
        SmallPress.Saved(await stores.Stocks.SaveAsync(small.Id, last with { Item = last.Item with { Bulk = 1.1m } }));

        var inTheWay = await stores.Stocks.TakeBackAsync(small.Id, receipt);

        Assert.Equal("Card 599 was changed since.", Assert.Single(inTheWay));
        Assert.Equal(602, (await stores.Stocks.ListAsync(small.Id)).Count);
    }

    [Fact]
    public async Task Of_several_things_saved_at_once_one_that_is_refused_holds_up_no_other()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var text = (await stores.Stocks.ListAsync(small.Id))[1];

        var results = await stores.Stocks.SaveAllAsync(
            small.Id,
            [
                new LibraryItem<Stock>(Card("Card"), false, 0), new LibraryItem<Stock>(Card(" "), false, 0), text with { Version = text.Version + 1 },
                new LibraryItem<Stock>(Card("Card"), false, 0),
            ]);

        Assert.IsType<SaveResult<LibraryItem<Stock>>.Refused>(results[1]);
        Assert.IsType<SaveResult<LibraryItem<Stock>>.Conflict>(results[2]);
        Assert.Equal(["card", "card-2"], new[] { results[0], results[3] }.Select(result => SmallPress.Saved(result).Item.Id));
        Assert.Equal(4, (await stores.Stocks.ListAsync(small.Id)).Count);
    }

    [Fact]
    public async Task A_paper_that_a_price_list_names_is_not_deleted_and_tells_where()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        SmallPress.Saved(await stores.Stocks.SaveAsync(small.Id, new LibraryItem<Stock>(Card("Spare card") with { Id = "spare" }, false, 0)));
        var prices = small.List.Prices;
        SmallPress.Saved(await stores.PriceLists.SaveAsync(
            small.Id, small.List with { Prices = prices with { Paper = [.. prices.Paper, prices.Paper[0] with { StockId = "spare" }] } }));

        var refused = Assert.IsType<DeleteResult.InUse>(await stores.Stocks.DeleteAsync(small.Id, await stores.Stocks.KeptAsync(small.Id, Card("Spare card") with { Id = "spare" })));

        Assert.Equal(["Millrace: prices from 2026-01-01"], refused.Where);
    }

    [Fact]
    public async Task What_a_file_has_no_column_for_stays_as_it_is()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var shape = new StockShape();
        var said = new HashSet<int> { shape.Columns.ToList().FindIndex(column => column.Key == "name"), shape.Columns.ToList().FindIndex(column => column.Key == "weight") };
        var heavier = new Stock("", SmallPress.Text.Name, PaperWeight.FromGrammage(100m), null, null, Finish.Coated);

        await stores.Stocks.ImportAsync(small.Id, () => Items(heavier), (thing, old) => shape.Completed(thing, old, said));

        Assert.Equal(SmallPress.Text with { Weight = PaperWeight.FromGrammage(100m) }, (await stores.Stocks.ListAsync(small.Id))[1].Item);
    }

    private static Stock Card(string name) => new("", name, PaperWeight.FromGrammage(300m), Length.FromMicrometres(350m), null, Finish.Coated);

    private static IEnumerable<LibraryItem<Stock>> Items(params Stock[] stocks) => stocks.Select(stock => new LibraryItem<Stock>(stock, false, 0));
}
