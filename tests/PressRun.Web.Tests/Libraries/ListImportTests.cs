using System.Globalization;
using System.Text.Json;
using Bunit;
using PressRun.Data.Access;
using PressRun.Data.Quotes;
using PressRun.Data.RunPlans;
using PressRun.Data.Shops;
using PressRun.Data.Stocks;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Web.Libraries;
using PressRun.Web.Libraries.Files;
using PressRun.Web.Libraries.Shops;
using PressRun.Web.Shared.Wording;
using PressRun.Web.Shelf;
using PressRun.Web.Tests.Shelf;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Libraries;

/// <summary>A shop's price list brought in while plans go by the list that is in force.</summary>
[Collection<OnSample>]
public sealed class ListImportTests(StoredShelf stored)
{
    private const string Shop = "marrow-and-latch";

    private PressView Press => PressView.Of(stored.Press, CultureInfo.GetCultureInfo("en-GB"));

    private ShopService Shops => new(stored.Of<ShopStore>(), stored.Of<PriceListStore>(), stored.Of<StockStore>(), TimeProvider.System);

    [Fact]
    public async Task Prices_of_a_later_day_make_a_list_of_their_own_and_no_plan_quote_or_printed_run_changes()
    {
        using var program = Visiting.As(new Visitor.Program());
        var before = await AllAsync();
        var view = await OpenAsync();
        var open = view.Editor!.Record;
        var (session, target) = await LookedAsync($"Valid from 1.3.2031\n{Dearer(view)}");

        Assert.True(target.Place.AsNew);
        await session.RunAsync();

        Assert.Contains("The new list from 1 March 2031", session.Done, StringComparison.Ordinal);
        var lists = (await OpenAsync()).Shop.PriceLists;
        Assert.Equal([new DateOnly(2031, 3, 1), open.Prices.ValidFrom], lists.Take(2).Select(list => list.ValidFrom));
        var added = (await stored.Of<PriceListStore>().LoadAsync(stored.Press.Id, lists[0].Id))!.Prices;
        Assert.All(added.Paper, price => Assert.Equal(9.99m, price.Steps[0].Each));
        Assert.Equal(open.Prices.Order.Minimum, added.Order.Minimum);
        Assert.EndsWith($"?list={lists[0].Id}", target.BackTo, StringComparison.Ordinal);
        Assert.Equal(before with { Lists = "" }, await AllAsync() with { Lists = "" });

        await session.TakeBackAsync();
        Assert.Null(session.Problem);
        Assert.Equal(before, await AllAsync());
    }

    [Fact]
    public async Task Prices_in_place_of_those_in_force_name_the_plans_that_change_before_and_are_taken_back_whole()
    {
        using var program = Visiting.As(new Visitor.Program());
        var before = await AllAsync();
        var view = await OpenAsync();
        var open = view.Editor!.Record;
        var (session, target) = await LookedAsync($"Valid from 1.3.2031\n{Dearer(view)}");
        target.Place.AsNew = false;
        var changes = target.Changes([]);

        var plans = await stored.Of<PlanStore>().OfListAsync(stored.Press.Id, open.Id, 1_000);
        Assert.Equal(plans.Count, changes.Plans);
        Assert.NotEmpty(changes.Changed);
        await session.RunAsync();

        // What was told before is what came of it.
        Assert.Equal(open.Prices.ValidFrom, (await OpenAsync()).Editor!.Record.Prices.ValidFrom);
        foreach (var told in changes.Changed)
        {
            var now = (await stored.Of<PlanStore>().SourceAsync(stored.Press.Id, told.Source.Plan.Id))!;
            Assert.NotEqual(told.Before, told.After);
            Assert.Equal(told.After, Cost(now));
        }

        Assert.Equal(before.Quotes, (await AllAsync()).Quotes);
        await session.TakeBackAsync();
        Assert.Equal(before, await AllAsync());
    }

    [Fact]
    public async Task Papers_that_come_along_with_a_new_list_go_with_it()
    {
        using var program = Visiting.As(new Visitor.Program());
        var before = await AllAsync();
        var (session, _) = await LookedAsync("Valid from 1.3.2031\nPaper;Weight;Thickness;Sheet;from 1\nDune straw 90;90 g/m²;0,12 mm;SRA3;0,11\n");

        await session.RunAsync();
        Assert.Contains("1 paper is new in the library", session.Done, StringComparison.Ordinal);
        await session.TakeBackAsync();

        Assert.Null(session.Problem);
        Assert.Equal(before, await AllAsync());
    }

    [Fact]
    public async Task The_page_names_the_list_the_plans_and_what_they_come_to()
    {
        using var program = Visiting.As(new Visitor.Program());
        var view = await OpenAsync();
        var (_, target) = await LookedAsync($"Valid from 1.3.2031\n{Dearer(view)}");
        await using var page = new BunitContext();
        var part = page.Render<PlacePart>(set => set
            .Add(place => place.Place, target.Place).Add(place => place.Changes, target.Changes([])).Add(place => place.ShopAddress, target.ShopAddress).Add(place => place.Press, Press));

        Assert.Equal("1 Mar 2031", part.Find("input[type=text]").GetAttribute("value"));
        Assert.Contains("no plan changes", part.Markup, StringComparison.Ordinal);
        Assert.Contains("row 1, “Valid from 1.3.2031”", part.Markup, StringComparison.Ordinal);
        Assert.Empty(part.FindAll("li"));

        await part.FindAll("input[type=radio]")[1].ChangeAsync(true);
        var first = target.Changes([]).Changed[0];
        Assert.Equal(Math.Min(12, target.Changes([]).Changed.Count), part.FindAll("li").Count);
        Assert.StartsWith($"{first.Source.Edition.Title}, ", part.Find("li").TextContent, StringComparison.Ordinal);
        Assert.EndsWith($"{Press.Format.Money(first.After!.Value)}, not {Press.Format.Money(first.Before!.Value)}", part.Find("li").TextContent, StringComparison.Ordinal);

        await part.Find("input[type=text]").ChangeAsync((await OpenAsync()).Shop.PriceLists[^1].ValidFrom.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        Assert.Contains("a list from this day already", part.Find("[role=alert]").TextContent, StringComparison.Ordinal);
    }

    private async Task<(ImportSession Session, PriceListImport Target)> LookedAsync(string file)
    {
        var target = new PriceListImport(await OpenAsync(), Press, Shops, stored.Of<StockStore>(), stored.Of<PlanStore>());
        var session = new ImportSession();
        session.Start(target, LibraryManners.Of(Press), () => Task.CompletedTask);
        await session.TakeAsync(ChosenFile.Of(file));
        await session.LookAsync();
        Assert.Equal((null, 0), (session.Problem, session.Preview!.ProblemCount));
        return (session, target);
    }

    private async Task<ShopView> OpenAsync() => (await Shops.OpenAsync(Press, Shop, null))!;

    private static string Dearer(ShopView view) =>
        "Paper;Sheet;from 1\n" + string.Concat(view.Editor!.Record.Prices.Paper.Select(price => $"{view.Stocks.Single(stock => stock.Id == price.StockId).Name};{price.SheetId};9,99\n"));

    private static decimal? Cost(JobSource source) =>
        PreparedJob.Prepare(source.Build()) is { Succeeded: true } prepared && prepared.Value.LandedCost(source.Plan.Quantity, out var cost) is null ? cost : null;

    // The shelf with what its plans cost and its printings earned, the quotes, the lists and the papers.
    private async Task<(string Shelf, string Quotes, string Lists, string Papers)> AllAsync()
    {
        var quotes = stored.Of<QuoteStore>();
        var wholes = new List<QuoteWhole?>();
        foreach (var quote in await quotes.ListAsync(stored.Press.Id))
        {
            wholes.Add(await quotes.FindAsync(stored.Press.Id, quote.Number));
        }

        var lists = (await stored.Of<ShopStore>().ListAsync(stored.Press.Id)).SelectMany(shop => shop.PriceLists.Select(list => (shop.Id, list.ValidFrom)));
        return (
            JsonSerializer.Serialize(await stored.AfreshAsync(new ShelfFilter())),
            JsonSerializer.Serialize(wholes),
            string.Join("; ", lists),
            string.Join("; ", (await stored.Of<StockStore>().ListAsync(stored.Press.Id, archived: true)).Select(paper => paper.Item.Name)));
    }
}
