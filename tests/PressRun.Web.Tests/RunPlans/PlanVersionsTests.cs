using PressRun.Data.RunPlans;
using PressRun.Data.Shops;
using PressRun.Engine.Reprint;
using PressRun.Web.RunPlans;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.RunPlans;

public class PlanVersionsTests
{
    private static readonly JobSource Source = APlan.Source();

    private static PlanRecord Plan => Source.Plan;

    [Fact]
    public void A_plan_that_says_the_same_is_the_same_whatever_its_version_and_whoever_made_its_lists()
    {
        var listed = Plan with { Stocks = new Dictionary<Guid, string> { [Part] = "green" }, Finishing = ["trim"] };
        Assert.True(PlanVersions.Same(listed, listed with { Version = 9, Stocks = new Dictionary<Guid, string> { [Part] = "green" }, Finishing = ["trim"] }));
    }

    [Fact]
    public void A_decision_on_a_reprint_that_was_read_anew_from_the_ledger_is_the_same_decision()
    {
        Assert.True(PlanVersions.Same(Decided(new HistoryDemand([4, 0, 7], 6m, 1m, 2m, 0m, 5)), Decided(new HistoryDemand([4, 0, 7], 6m, 1m, 2m, 0m, 5))));
        Assert.False(PlanVersions.Same(Decided(new HistoryDemand([4, 0, 7], 6m, 1m, 2m, 0m, 5)), Decided(new HistoryDemand([4, 0, 8], 6m, 1m, 2m, 0m, 5))));
        Assert.True(PlanVersions.Same(Decided(new TableDemand([0.25m, 0.75m], 0)), Decided(new TableDemand([0.25m, 0.75m], 0))));
        Assert.False(PlanVersions.Same(Decided(new TableDemand([0.25m, 0.75m], 0)), Decided(new TableDemand([0.75m, 0.25m], 0))));

        static PlanRecord Decided(Demand demand) => Plan with
        {
            Reprint = new PlanReprint(new ReprintRequest(3, demand, null, 0m, 0m, 0m, null, 0, 200, 1), new Horizon(6, HorizonUnit.Months), new DateOnly(2026, 3, 1), null, null),
        };
    }

    [Fact]
    public void Any_change_makes_it_another()
    {
        PlanRecord[] changed =
        [
            Plan with { Quantity = 101 },
            Plan with { Name = "B" },
            Plan with { Stocks = new Dictionary<Guid, string> { [Part] = "green" } },
            Plan with { Finishing = [] },
            Plan with { BenchSteps = ["fold"] },
        ];
        Assert.All(changed, other => Assert.False(PlanVersions.Same(Plan, other)));
        Assert.False(PlanVersions.Same(
            Plan with { Stocks = new Dictionary<Guid, string> { [Part] = "green" } }, Plan with { Stocks = new Dictionary<Guid, string> { [Part] = "thick" } }));
    }

    [Fact]
    public void Both_sides_of_every_difference_are_in_words_and_by_name()
    {
        var list = new PriceListHead(Guid.NewGuid(), new DateOnly(2026, 2, 1));
        var theirs = Plan with
        {
            Name = "Theirs",
            Quantity = 1200,
            ShopId = "reed",
            PriceListId = list.Id,
            BenchSteps = [],
            Stocks = new Dictionary<Guid, string> { [Part] = "green" },
        };
        var shops = new[]
        {
            new ShopRecord("willow", "Willow Prints", false, [new PriceListHead(Plan.PriceListId, new DateOnly(2026, 1, 1))], 1),
            new ShopRecord("reed", "Reed Press", false, [list], 1),
        };
        Assert.Equal(
            [
                ("Called", "A plan", "Theirs"),
                ("Shop", "Willow Prints", "Reed Press"),
                ("Prices from", "1 January 2026", "1 February 2026"),
                ("Copies", "100", "1,200"),
                ("Paper of inside", "Thin cream", "Green sheet"),
                ("You do", "fold", "nothing"),
            ],
            PlanVersions.Differences(Plan, theirs, Source, shops, Written.Metric));
    }

    private static Guid Part => Source.Edition.Parts[1].Id;
}
