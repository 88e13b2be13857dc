using PressRun.Data.Copies;
using PressRun.Data.Tests.Fixtures;
using PressRun.Data.Titles;
using PressRun.Engine.Copies;

namespace PressRun.Data.Tests.Copies;

public sealed class OutlookTests(PostgresFixture postgres)
{
    private static readonly DateOnly First = new(2026, 2, 1);

    [Fact]
    public async Task A_title_is_marked_by_every_line_and_reckoned_until_the_next_one()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        Assert.Empty(await stores.Outlooks.MovedAsync(small.Id, 10));
        await WriteAsync(stores, small, MovementKind.Printed, 50, 0);
        var line = await WriteAsync(stores, small, MovementKind.Sold, 2, 1);
        var moved = Assert.Single(await stores.Outlooks.MovedAsync(small.Id, 10));
        Assert.Equal((small.Title.Id, 2L), (moved.TitleId, moved.Moved));

        SmallPress.Saved(await stores.Ledger.TakeBackAsync(small.Id, line.Id));
        await stores.Outlooks.KeepAsync(small.Id, [(moved, Outlook(9.9))]);

        Assert.Equal(3L, Assert.Single(await stores.Outlooks.MovedAsync(small.Id, 10)).Moved);
        Assert.Empty(await stores.Outlooks.OfTitlesAsync(small.Id, [small.Title.Id]));
        await stores.Outlooks.KeepAsync(small.Id, [(moved with { Moved = 3 }, Outlook(9.9))]);
        Assert.Empty(await stores.Outlooks.MovedAsync(small.Id, 10));
        Assert.Equal(Outlook(9.9) with { Moved = 3 }, (await stores.Outlooks.OfTitlesAsync(small.Id, [small.Title.Id]))[small.Title.Id]);
    }

    [Fact]
    public async Task What_runs_out_by_a_day_is_found_with_the_plan_of_its_latest_printing_the_first_to_go_first()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var plan = SmallPress.Saved(await stores.Plans.ChooseAsync(small.Id, small.Plan.Id));
        await WriteAsync(stores, small, MovementKind.Printed, 50, 0);
        await stores.Outlooks.KeepAsync(small.Id, [(new MovedTitle(small.Title.Id, 1), Outlook(9.9))]);

        Assert.Empty((await stores.Shelf.StandingAsync(small.Id, First.AddDays(8))).RunningOut);
        var found = Assert.Single((await stores.Shelf.StandingAsync(small.Id, First.AddDays(9))).RunningOut);
        Assert.Equal(new RunningOut(small.Title.Id, First.AddDays(9), new PlannedPrinting(small.Title.Id, plan.Id, plan.Version, small.Edition.Version)), found with { Plan = found.Plan! with { EditionVersion = small.Edition.Version } });
        var due = await stores.Shelf.ShowAsync(small.Id, new ShelfFilter(OnlyDue: true), due: [small.Title.Id]);
        Assert.Equal((1, 1, 1), (due.Total, due.Totals.Due, due.Totals.Asking));
        Assert.Equal(small.Title.Id, Assert.Single(due.Titles).Id);
        Assert.Empty((await stores.Shelf.ShowAsync(small.Id, new ShelfFilter(OnlyDue: true))).Titles);
    }

    [Fact]
    public async Task Lines_told_by_the_day_say_the_same_as_the_lines_themselves()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var press = (await stores.Archives.ImportAsync(Repository.SamplePress)).Value;
        var (from, today) = (new DateOnly(2025, 6, 1), new DateOnly(2026, 11, 28));
        var titles = (await stores.Shelf.ShowAsync(press.Id, new ShelfFilter(Take: 200))).Titles.Select(title => title.Id).ToList();

        var (byLine, byDay) = (await stores.Ledger.OfTitlesAsync(press.Id, titles), await stores.Outlooks.ByDayAsync(press.Id, titles, from));

        Assert.True(byLine.Count > 10);
        foreach (var title in byLine)
        {
            var (lines, days) = (title.ToList(), byDay[title.Key].ToList());
            Assert.Equal(lines.Sum(line => (long)line.Copies), days.Sum(day => (long)day.Copies));
            Assert.Equivalent(SalesHistory.Of(lines, from, today, 30), SalesHistory.Of(days, from, today, 30), strict: true);
        }
    }

    [Fact]
    public async Task A_press_that_comes_in_is_marked_to_be_reckoned()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var press = (await stores.Archives.ImportAsync(Repository.SamplePress)).Value;
        var lines = await stores.Ledger.OfTitlesAsync(
            press.Id, [.. (await stores.Shelf.ShowAsync(press.Id, new ShelfFilter(Take: 200))).Titles.Select(title => title.Id)]);

        Assert.Equal(lines.Select(title => title.Key).Order(), (await stores.Outlooks.MovedAsync(press.Id, 100)).Select(title => title.TitleId).Order());
    }

    [Fact]
    public async Task Another_press_keeps_nothing_of_ours()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var other = await SmallPress.CreateAsync(stores, "Other");
        await WriteAsync(stores, small, MovementKind.Printed, 50, 0);

        await stores.Outlooks.KeepAsync(other.Id, [(new MovedTitle(small.Title.Id, 1), Outlook(3))]);

        Assert.Single(await stores.Outlooks.MovedAsync(small.Id, 10));
    }

    private static TitleOutlook Outlook(double days) => new(First, 50, days, 20, 30.5, 1);

    private static async Task<MovementRecord> WriteAsync(Stores stores, SmallPress small, MovementKind kind, int copies, int day) =>
        SmallPress.Saved(await stores.Ledger.WriteAsync(small.Id, new NewMovement(Guid.NewGuid(), small.Edition.Id, First.AddDays(day), kind, copies)));
}
