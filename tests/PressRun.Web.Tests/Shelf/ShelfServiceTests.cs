using System.Text.Json;
using PressRun.Data;
using PressRun.Data.Access;
using PressRun.Data.Copies;
using PressRun.Data.RunPlans;
using PressRun.Data.Selling;
using PressRun.Data.Shops;
using PressRun.Data.Titles;
using PressRun.Engine.Copies;
using PressRun.Engine.Reprint;
using PressRun.Web.Shelf;

namespace PressRun.Web.Tests.Shelf;

[Collection<OnSample>]
public sealed class ShelfServiceTests(StoredShelf stored)
{
    [Fact]
    public async Task A_search_of_a_shelf_that_stands_as_it_stood_asks_the_database_three_things()
    {
        using var program = Visiting.As(new Visitor.Program());
        await stored.Service.ShowAsync(stored.Press.Id, new ShelfFilter());

        var asked = await stored.AskedAsync(() => stored.Service.ShowAsync(stored.Press.Id, new ShelfFilter("g")));

        Assert.Collection(
            asked,
            marks => Assert.Contains("AS running_out", marks, StringComparison.Ordinal),
            titles => Assert.Contains("edition_copies", titles, StringComparison.Ordinal),
            sums => Assert.Contains("title_sums", sums, StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_the_shelf_shows_after_each_kind_of_change_is_what_one_shows_that_remembers_nothing()
    {
        using var program = Visiting.As(new Visitor.Program());
        var press = stored.Press.Id;
        var (editions, plans) = (stored.Of<EditionStore>(), stored.Of<PlanStore>());
        var shown = (await stored.Service.ShowAsync(press, new ShelfFilter())).Titles;
        var (title, planned) = shown.SelectMany(on => on.Editions.Select(edition => (on.Title, edition.Edition))).First(on => on.Edition is { CopiesPrinted: null, Plan: not null });
        var seen = await SeenAsync();

        await ChangeAsync("a title's words", async () =>
        {
            var record = (await stored.Of<TitleStore>().LoadAsync(press, title.Id))!;
            return await stored.Of<TitleStore>().SaveAsync(press, record with { Title = "Aardvark Tides" });
        });
        await ChangeAsync("a printing's price, which pays for it no more", async () => await editions.SaveAsync(press, await EditionAsync() with { Price = 0.01m }));
        await ChangeAsync("its pages", async () =>
        {
            var edition = await EditionAsync();
            return await editions.SaveAsync(press, edition with { Parts = [.. edition.Parts.Select(part => part with { Part = part.Part with { Pages = part.Part.Pages + 8 } })] });
        });
        await ChangeAsync("its plan's quantity", async () => await plans.SaveAsync(press, await PlanAsync() with { Quantity = 777 }));
        await ChangeAsync("a plan beside it chosen", async () =>
        {
            var beside = Saved(await plans.DuplicateAsync(press, planned.Plan!.Id, "beside"));
            Saved(await plans.SaveAsync(press, beside with { Quantity = 333 }));
            return await plans.ChooseAsync(press, beside.Id);
        });
        await ChangeAsync("its price list", async () =>
        {
            var list = (await stored.Of<PriceListStore>().LoadAsync(press, (await PlanAsync()).PriceListId))!;
            return await stored.Of<PriceListStore>().SaveAsync(press, list with { Prices = list.Prices with { SetUp = list.Prices.SetUp with { Order = 499m } } });
        });
        await ChangeAsync("a channel put away", async () => await stored.Of<ChannelStore>().SaveAsync(press, (await stored.Of<ChannelStore>().ListAsync(press))[0] with { Archived = true }));
        await ChangeAsync("copies printed", () => WriteAsync(MovementKind.Printed, 40));
        await ChangeAsync("copies sold", () => WriteAsync(MovementKind.Sold, 38));
        await ChangeAsync("the next printing planned", () => editions.CopyForwardAsync(press, planned.Id));
        await ChangeAsync("a printing put away", async () => await editions.SaveAsync(press, await EditionAsync() with { Archived = true }));
        await ChangeAsync("a title put away", async () =>
        {
            var record = (await stored.Of<TitleStore>().LoadAsync(press, title.Id))!;
            return await stored.Of<TitleStore>().SaveAsync(press, record with { Archived = true });
        });

        async Task ChangeAsync<T>(string what, Func<Task<SaveResult<T>>> change)
            where T : class
        {
            Saved(await change());
            var now = await SeenAsync();
            Assert.True(now != seen, $"The shelf shows nothing of {what}.");
            Assert.Equal(Written(await stored.AfreshAsync(new ShelfFilter())), now);
            seen = now;
        }

        async Task<string> SeenAsync() => Written(await stored.Service.ShowAsync(press, new ShelfFilter()));

        async Task<EditionRecord> EditionAsync() => (await editions.LoadAsync(press, planned.Id))!;

        async Task<PlanRecord> PlanAsync() => (await plans.OfEditionAsync(press, planned.Id)).Single(plan => plan.Chosen);

        Task<SaveResult<MovementRecord>> WriteAsync(MovementKind kind, int copies) =>
            stored.Of<CopiesLedgerStore>().WriteAsync(press, new NewMovement(Guid.NewGuid(), planned.Id, DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().Date), kind, copies));
    }

    [Fact]
    public async Task Copies_last_as_long_on_the_shelf_as_the_printings_page_says_with_the_event_that_is_ahead()
    {
        using var program = Visiting.As(new Visitor.Program());
        var (press, plans) = (stored.Press.Id, stored.Of<PlanStore>());
        var before = (await stored.Service.ShowAsync(press, new ShelfFilter())).Titles.First(on => on.Outlook is { Days50: > 60 } && on.Editions[0].Edition.Plan is not null);
        var plan = (await plans.LoadAsync(press, before.Editions[0].Edition.Plan!.Id))!;
        var today = stored.Of<ShelfOutlooks>().Today;
        var settings = new PlanReprint(new ReprintRequest(0, new PoissonDemand(60m, 0), 5m, 0m, 0m, 0m, null, 0, 300, 1), new Horizon(6, HorizonUnit.Months), today, new EventAhead(today.AddDays(10), 60m, 3), null);

        plan = Saved(await plans.SaveAsync(press, plan with { Reprint = settings }));
        Assert.Equal(before.Outlook!.With(9, 3, 60d), await OutlookAsync());

        Saved(await plans.SaveAsync(press, plan with { Reprint = settings with { Event = null } }));
        Assert.Equal(before.Outlook, await OutlookAsync());

        async Task<CopiesOutlook?> OutlookAsync() => (await stored.Service.ShowAsync(press, new ShelfFilter())).Titles.Single(on => on.Title.Id == before.Title.Id).Outlook;
    }

    private static string Written(ShelfView view) => JsonSerializer.Serialize(view);

    private static T Saved<T>(SaveResult<T> result)
        where T : class => Assert.IsType<SaveResult<T>.Saved>(result).Now;
}
