using PressRun.Data.RunPlans;
using PressRun.Engine.Copies;
using PressRun.Engine.Costing;
using PressRun.Engine.Reprint;
using PressRun.Web.Reprint;
using PressRun.Web.RunPlans;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Reprint;

public class ReprintWorkedTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    [Fact]
    public void A_job_that_would_take_minutes_is_not_worked_out()
    {
        var (source, costings) = HeavyRun.Counted(APlan.Source(5_000) with { PriceList = HeavyRun.Slower });
        Assert.Equal(CostingEffort.TooLong, Assert.Single(ReprintWorked.Of(source, Ledger).Problems).Rule);
        Assert.InRange(costings(), 0, 100);
        Assert.True(ReprintWorked.Of(APlan.Source(5_000), Ledger).Succeeded);
    }

    [Fact]
    public void Where_copies_were_sold_one_begins_by_the_history_of_the_days_with_copies()
    {
        var worked = ReprintWorked.Of(APlan.Source(), Ledger).Value;
        var demand = Assert.IsType<HistoryDemand>(worked.Settings.Request.Demand);
        Assert.Equal(60, demand.Periods.Sum());
        Assert.Equal(10, worked.Settings.Request.OnHand);
        Assert.True(worked.ByHistory);
        Assert.Null(worked.Other);
        // 60 copies in the 59 days up to the last copy of the first printing and the 25 of the second; six months are 181 days.
        Assert.Equal(181 * 60.5 / Ledger.History!.DaysWithCopies, worked.Plan.ExpectedDemand, 1e-6);
    }

    [Fact]
    public void Where_nothing_was_sold_one_begins_by_an_example_that_is_nobodys_opinion()
    {
        var worked = ReprintWorked.Of(APlan.Source(), TitleLedger.Of([], Today)).Value;
        Assert.Equal(new OpinionDemand(25m, 50m, 100m, 0), worked.Settings.Request.Demand);
        Assert.Null(worked.Settings.Opinion);
        Assert.True(worked.ByExample);
        Assert.False(ReprintWorked.Of(Changed(settings => settings with { Opinion = new OpinionDemand(10m, 20m, 40m, 0) }), TitleLedger.Of([], Today)).Value.ByExample);
    }

    [Theory]
    [InlineData(1, false)]
    [InlineData(27, false)]
    [InlineData(28, true)]
    public void One_fair_is_no_pace_sales_are_gone_by_once_they_cover_four_weeks(int daysWithCopies, bool saysPace)
    {
        var ledger = TitleLedger.Of(
            [new CopyMovement(Today.AddDays(1 - daysWithCopies), 1, MovementKind.Printed, 120, 130m), new CopyMovement(Today, 2, MovementKind.Sold, -4, 26m)], Today);
        Assert.Equal((true, saysPace, saysPace), (ledger.HasSales, ledger.SaysPace, ledger.Outlook is not null));
        var worked = ReprintWorked.Of(APlan.Source(), ledger).Value;
        Assert.Equal((saysPace, !saysPace), (worked.ByHistory, worked.ByExample));
    }

    [Theory]
    [InlineData("2026-12-12", 17, 3)]
    [InlineData("2026-11-25", 0, 3)]
    [InlineData("2026-11-24", 0, 3)]
    [InlineData("2026-11-23", 0, 2)]
    [InlineData("2026-11-22", 0, 1)]
    [InlineData("2026-11-21", null, null)]
    public void An_event_is_ahead_until_its_last_day(string day, int? until, int? days)
    {
        var ahead = new EventAhead(DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture), 20m, 3).Ahead(new DateOnly(2026, 11, 24));
        Assert.Equal((until, days), (ahead?.DaysUntil, ahead?.Days));
    }

    [Fact]
    public void With_an_opinion_beside_the_history_both_stand_side_by_side()
    {
        var source = Changed(settings => settings with { Opinion = new OpinionDemand(10m, 20m, 40m, 0) });
        var worked = ReprintWorked.Of(source, Ledger).Value;
        Assert.Equal(worked.Plan.BestQuantity, worked.Other!.FirstBest.Quantity);
        Assert.True(worked.Other.FirstDemand > worked.Other.SecondDemand);
    }

    [Fact]
    public void A_number_far_beyond_all_that_is_looked_at_leaves_the_answer_as_it_is()
    {
        var (usual, beyond) = (ReprintWorked.Of(APlan.Source(), Ledger).Value, ReprintWorked.Of(APlan.Source(1_000_000), Ledger).Value);
        Assert.Equal((usual.Plan.BestQuantity, usual.LastShown), (beyond.Plan.BestQuantity, beyond.LastShown));
        Assert.True(beyond.At(1_000_000)!.Advice.OwnShort > 0m);
    }

    [Fact]
    public void A_number_that_the_shop_cannot_take_says_why_and_is_not_looked_at()
    {
        var source = APlan.Source();
        var worked = ReprintWorked.Of(source with { PriceList = source.PriceList with { Quantities = [100] } }, Ledger).Value;
        Assert.Equal((true, true), (worked.Refusal(100) is null, worked.At(100) is not null));
        Assert.Contains("the shop sells 100 at most", worked.Refusal(500)!.Rule, StringComparison.Ordinal);
        Assert.Null(worked.At(500));
    }

    [Fact]
    public void An_opinion_that_is_left_out_stays_out()
    {
        var with = Changed(settings => settings with { Opinion = new OpinionDemand(10m, 20m, 40m, 0) });
        var without = ReprintWorked.Settled(with.Plan.Reprint! with { Opinion = null }, with, Ledger);
        Assert.Null(without.Opinion);
        Assert.Null(ReprintWorked.Of(with with { Plan = with.Plan with { Reprint = without } }, Ledger).Value.Other);
    }

    [Theory]
    [InlineData("2026-12-12", 3)]
    [InlineData("2027-12-12", 0)]
    [InlineData("2026-11-01", 0)]
    [InlineData("2026-11-24", 2)]
    [InlineData("2027-05-24", 2)]
    [InlineData(null, 3)]
    public void An_event_lifts_those_of_its_days_that_lie_ahead_and_within_the_horizon(string? day, int days)
    {
        var ahead = new EventAhead(day is null ? null : DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture), 9m, 3);
        var plain = ReprintWorked.Of(APlan.Source(), Ledger).Value.Plan.ExpectedDemand;
        var worked = ReprintWorked.Of(Changed(settings => settings with { Event = ahead }), Ledger).Value;
        // Six months from today are 181 days; each day of the event counts for eight more.
        Assert.Equal(plain * (181 + (8 * days)) / 181, worked.Plan.ExpectedDemand, 1e-6);
    }

    [Fact]
    public void A_plan_goes_as_far_as_twice_the_pace_and_the_job_file_gives_the_pages_plan()
    {
        var source = Changed(settings => settings);
        var worked = ReprintWorked.Of(source, Ledger).Value;
        Assert.True(worked.Costs[^1].Quantity > 2 * worked.Plan.ExpectedDemand);
        var job = JobFile.JobReader.Read(JobFile.JobWriter.Write(source.Build())).Value;
        var byFile = ReprintPlanner.Prepare(PreparedJob.Prepare(job).Value, job.Reprint!).Value.Plan().Value;
        Assert.Equivalent(worked.Plan, byFile, strict: true);
    }

    private static TitleLedger Ledger { get; } = TitleLedger.Of(
        [
            new CopyMovement(new DateOnly(2026, 2, 1), 1, MovementKind.Printed, 40, 80m),
            new CopyMovement(new DateOnly(2026, 3, 31), 2, MovementKind.Sold, -40, 200m),
            new CopyMovement(new DateOnly(2026, 11, 1), 3, MovementKind.Printed, 30, 80m),
            new CopyMovement(new DateOnly(2026, 11, 20), 4, MovementKind.Sold, -20, 100m),
        ],
        Today);

    private static JobSource Changed(Func<PlanReprint, PlanReprint> change)
    {
        var source = APlan.Source();
        return source with { Plan = source.Plan with { Reprint = ReprintWorked.Settled(change(ReprintWorked.First(source.Plan, Ledger)), source, Ledger) } };
    }
}
