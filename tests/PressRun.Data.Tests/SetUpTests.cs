using Microsoft.EntityFrameworkCore;
using PressRun.Data.Archive;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Tests.Fixtures;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Paper;

namespace PressRun.Data.Tests;

public sealed class SetUpTests(PostgresFixture postgres)
{
    private static readonly NewPress Press = new(" Slack Water ", "USD", UnitSystem.Imperial, PaperRegion.Us);

    [Theory]
    [InlineData("Tidepool Almanac", "tidepool-almanac")]
    [InlineData("Жуки", "жуки")]
    public async Task A_press_is_set_up_with_its_first_book_and_a_plan_that_can_be_worked_out(string title, string slug)
    {
        await using var stores = await Stores.NewAsync(postgres);

        var press = (await stores.Archives.SetUpAsync(Press, Book(title))).Value;

        Assert.Equal(("Slack Water", "USD", UnitSystem.Imperial, PaperRegion.Us), (press.Name, press.Currency, press.Units, press.PaperRegion));
        var edition = (await stores.Editions.FindAsync(press.Id, slug, 1))!;
        Assert.Equal((title, (int?)null, 2), (edition.Title, edition.CopiesPrinted, edition.Parts.Count));
        var plan = Assert.Single(await stores.Plans.OfEditionAsync(press.Id, edition.Id));
        Assert.Equal((150, true, SmallPress.ListDate), (plan.Quantity, plan.Chosen, plan.Date));
        var prepared = PreparedJob.Prepare((await stores.Plans.SourceAsync(press.Id, plan.Id))!.Build());
        Assert.True(prepared.Succeeded && prepared.Value.Estimate(150).Succeeded);
        Assert.Equal(["Millrace"], (await stores.Shops.ListAsync(press.Id)).Select(shop => shop.Name));
        Assert.NotNull(await stores.Bench.LoadAsync(press.Id));
    }

    [Fact]
    public async Task A_failure_half_way_leaves_nothing_at_all()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var book = Book("Tidepool Almanac");
        var onUnknownPaper = book with { Edition = book.Edition with { Parts = [.. book.Edition.Parts, new Part("poster", 2, "nowhere", Ink.Black, Ink.None)] } };

        await Assert.ThrowsAsync<DbUpdateException>(() => stores.Archives.SetUpAsync(Press, onUnknownPaper));

        Assert.Empty(await stores.Presses.ListAsync());
    }

    [Fact]
    public async Task What_stands_in_the_way_is_told_and_nothing_is_stored()
    {
        await using var stores = await Stores.NewAsync(postgres);

        var refused = await stores.Archives.SetUpAsync(Press with { Name = " ", Currency = "EURO" }, Book(new string('W', 201)));

        Assert.Equal(["$.name", "$.currency", "$.title"], refused.Problems.Select(problem => problem.Path));
        Assert.Empty(await stores.Presses.ListAsync());
    }

    private static FirstBook Book(string title) => new(
        SmallPress.NewEdition(Guid.Empty).ToEdition() with { Title = title }, "#8a3b2e", [SmallPress.Cover, SmallPress.Text], SmallPress.Prices, 150);
}
