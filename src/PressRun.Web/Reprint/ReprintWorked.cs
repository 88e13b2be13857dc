using PressRun.Data.RunPlans;
using PressRun.Engine.Copies;
using PressRun.Engine.Costing;
using PressRun.Engine.Reprint;
using PressRun.Web.RunPlans;

namespace PressRun.Web.Reprint;

/// <summary>What the ledger says of a title on one day.</summary>
/// <param name="Today">That day.</param>
/// <param name="OnHand">Copies of all printings, 0 or more.</param>
/// <param name="History">Sales of all printings; null where nothing was printed yet.</param>
/// <param name="Outlook">How long the copies on hand last; null where nothing is on hand, or nothing can be said.</param>
public sealed record TitleLedger(DateOnly Today, int OnHand, SalesHistory? History, CopiesOutlook? Outlook)
{
    /// <summary>Months looked back at most: what sold longer ago says little of what will (common practice).</summary>
    public const int MonthsBack = 24;

    /// <summary>Gamma shape of Jeffreys' prior for a rate of sale (Gelman and others, Bayesian Data Analysis, section 2.8).</summary>
    public const decimal PriorShape = 0.5m;

    /// <summary>Days with copies to sell from which on a ledger says at what pace a title sells (our choice): a fair or two are no pace.</summary>
    public const int LeastDays = 28;

    private const int DaysPerPeriod = 30;

    /// <summary>True where at least one copy is known to be sold.</summary>
    public bool HasSales => History is { Sold: > 0, DaysWithCopies: > 0 };

    /// <summary>True where sales can be gone by: there are some, over a time that is long enough.</summary>
    public bool SaysPace => History is { Sold: > 0, DaysWithCopies: >= LeastDays };

    /// <summary>How long the copies on hand last where an event is ahead; the same as else for one whose day nobody knows.</summary>
    /// <param name="ahead">The event; null for none.</param>
    public CopiesOutlook? OutlookWith(EventAhead? ahead) => Outlook is { } outlook && ahead?.Ahead(Today) is var (until, days)
        ? outlook.With(until, days, (double)ahead.Times)
        : Outlook;

    /// <summary>Reads the lines of all printings.</summary>
    /// <param name="movements">In any order.</param>
    /// <param name="today">Last day that counts.</param>
    public static TitleLedger Of(IReadOnlyCollection<CopyMovement> movements, DateOnly today)
    {
        var onHand = (int)Math.Clamp(movements.Sum(movement => (long)movement.Copies), 0, Job.MostCopies);
        if (!movements.Any(movement => movement.Day <= today))
        {
            return new TitleLedger(today, onHand, null, null);
        }

        var (first, farthest) = (movements.Min(movement => movement.Day), today.AddMonths(-MonthsBack));
        var history = SalesHistory.Of(movements, first > farthest ? first : farthest, today, DaysPerPeriod);
        return new TitleLedger(today, onHand, history, history.DaysWithCopies < LeastDays ? null : CopiesOutlook.Of(onHand, history, (double)PriorShape, 0d));
    }
}

/// <summary>All that is said of a number of one's own.</summary>
/// <param name="Advice">How many to print and why, with the number beside it.</param>
/// <param name="Paces">What would be best at other paces, and what the number would keep then.</param>
public sealed record NumberSeen(ReprintAdvice Advice, ReprintPaces Paces);

/// <summary>A plan's reprint worked out. Immutable.</summary>
/// <param name="Settings">What it is decided from, as stored or, where nothing is, as one would begin.</param>
/// <param name="Planner">The decision.</param>
/// <param name="Costs">Of every quantity looked at.</param>
/// <param name="Plan">The answer.</param>
/// <param name="Other">The assumption beside it worked out with it; null where there is only one.</param>
/// <param name="LastShown">Last quantity of the picture.</param>
/// <param name="LeadDays">Days from the order of the plan's own quantity to finished copies.</param>
/// <param name="PaidForBy">Copies sold that pay for the plan's own quantity, as its run has it; null where none do, and where a net of one's own is gone by.</param>
public sealed record ReprintWorked(
    PlanReprint Settings, ReprintPlanner Planner, IReadOnlyList<RunCost> Costs, ReprintPlan Plan, TwoAssumptions? Other, int LastShown, int LeadDays, long? PaidForBy)
{
    private const int MostShown = 5_000;
    private const int MostLooked = Job.MostQuantities - 1;
    private const double Hardly = 0.99;

    /// <summary>True where the history is gone by, not the opinion.</summary>
    public bool ByHistory => Settings.Request.Demand is HistoryDemand;

    /// <summary>Copies that are asked for at least in nine futures of ten, and at most in nine of ten.</summary>
    public (int Low, int High) AskedFor => (Planner.Demand.Quantile(0.1), Planner.Demand.Quantile(0.9));

    /// <summary>What is said of a number of one's own; null where the shop cannot take it.</summary>
    /// <param name="quantity">0 to 1,000,000.</param>
    public NumberSeen? At(int quantity)
    {
        var (advice, paces) = (ReprintAdvice.Of(Planner, Plan, quantity), ReprintPaces.Of(Planner, Costs, quantity));
        return advice.Succeeded && paces.Succeeded ? new NumberSeen(advice.Value, paces.Value) : null;
    }

    /// <summary>Why the shop cannot take a quantity; null where it can.</summary>
    /// <param name="quantity">0 to 1,000,000.</param>
    public Problem? Refusal(int quantity) => Planner.LookAt(quantity) is { Succeeded: false } refused ? refused.Problems[0] : null;

    /// <summary>True where neither sales nor anybody's opinion are gone by, but an example of one.</summary>
    public bool ByExample => !ByHistory && Settings.Opinion is null;

    /// <summary>As one would begin: by the history where copies were sold for long enough, else by an example around the plan's own number.</summary>
    public static PlanReprint First(PlanRecord plan, TitleLedger ledger) => new(
        new ReprintRequest(ledger.OnHand, ledger.SaysPace ? ledger.History!.Demand(1, 1m, TitleLedger.PriorShape, 0m, 0) : AskedAbout(plan), null, 0m, 0m, 0m, null, 0, plan.Quantity, 1),
        new Horizon(6, HorizonUnit.Months), ledger.Today, null, null);

    /// <summary>The settings with the ledger's figures of today and with as many quantities as are worth looking at.</summary>
    public static PlanReprint Settled(PlanReprint settings, JobSource source, TitleLedger ledger)
    {
        var committed = settings.Request.Demand.Committed;
        var uplift = settings.Event?.Uplift(ledger.Today, settings.Horizon.EndFrom(ledger.Today)) ?? 1m;
        var byHistory = settings.Request.Demand is HistoryDemand && ledger.SaysPace;
        var demand = byHistory
            ? ledger.History!.Demand(settings.Horizon.DaysFrom(ledger.Today), uplift, TitleLedger.PriorShape, 0m, committed)
            : (Demand)((settings.Opinion ?? AskedAbout(source.Plan)) with { Committed = committed });
        var request = settings.Request with { OnHand = ledger.OnHand, Demand = demand };
        return settings with { Request = request with { To = Last(request, source) }, SeenOn = ledger.Today };
    }

    /// <summary>Works a plan's reprint out.</summary>
    /// <param name="source">The plan.</param>
    /// <param name="ledger">Read today.</param>
    public static Outcome<ReprintWorked> Of(JobSource source, TitleLedger ledger)
    {
        var settings = source.Plan.Reprint ?? Settled(First(source.Plan, ledger), source, ledger);
        settings = settings with { Request = settings.Request with { From = 0, To = Math.Max(Math.Min(settings.Request.To, MostLooked), Looked(source.Plan)), Step = 1 } };
        var job = PreparedJob.Prepare(source.Build());
        if (job.Succeeded && settings.Request.To * CostingEffort.Of(job.Value.Job, 1, settings.Request.To) > CostingEffort.MostOfPage)
        {
            return Outcome<ReprintWorked>.Refused(new Problem("$", null, CostingEffort.TooLong));
        }

        var planner = job.Succeeded ? ReprintPlanner.Prepare(job.Value, settings.Request) : Outcome<ReprintPlanner>.Refused(job.Problems);
        var costs = planner.Succeeded ? planner.Value.Costs() : Outcome<IReadOnlyList<RunCost>>.Refused(planner.Problems);
        if (!costs.Succeeded)
        {
            return Outcome<ReprintWorked>.Refused(costs.Problems);
        }

        var plan = planner.Value.Plan(costs.Value);
        var worth = (long)planner.Value.Demand.Quantile(Hardly) - settings.Request.OnHand + job.Value.Job.FreeCopies;
        var shown = Math.Max(Math.Max(plan.BestQuantity, Looked(source.Plan)), worth);
        var run = job.Value.Estimate(source.Plan.Quantity) is { Succeeded: true } estimate ? estimate.Value : null;
        var leadDays = source.PriceList.Order.LeadDays;
        return Outcome<ReprintWorked>.Of(new ReprintWorked(
            settings, planner.Value, costs.Value, plan, Beside(settings, job.Value, planner.Value, costs.Value, ledger),
            (int)Math.Min(costs.Value[^1].Quantity, Math.Max(10, shown + (shown / 10))),
            run is null ? leadDays : LeadTime.Days(leadDays, run),
            settings.Request.NetPerCopy is null ? run?.BreakEven.Copies : null));
    }

    private static TwoAssumptions? Beside(PlanReprint settings, PreparedJob job, ReprintPlanner planner, IReadOnlyList<RunCost> costs, TitleLedger ledger)
    {
        var byHistory = settings.Request.Demand is HistoryDemand;
        if (settings.Opinion is not { } opinion || !ledger.SaysPace)
        {
            return null;
        }

        var uplift = settings.Event?.Uplift(ledger.Today, settings.Horizon.EndFrom(ledger.Today)) ?? 1m;
        Demand other = byHistory
            ? opinion with { Committed = settings.Request.Demand.Committed }
            : ledger.History!.Demand(settings.Horizon.DaysFrom(ledger.Today), uplift, TitleLedger.PriorShape, 0m, settings.Request.Demand.Committed);
        var beside = ReprintPlanner.Prepare(job, settings.Request with { Demand = other });
        var both = !beside.Succeeded ? null : byHistory ? TwoAssumptions.Of(planner, beside.Value, costs) : TwoAssumptions.Of(beside.Value, planner, costs);
        return both is { Succeeded: true } ? both.Value : null;
    }

    // One's own number is looked at with the others; far beyond them it is looked at alone.
    private static int Looked(PlanRecord plan) => plan.Quantity <= MostLooked ? plan.Quantity : 0;

    // Whole copies, as somebody who is asked would say them.
    private static OpinionDemand AskedAbout(PlanRecord plan) => new(plan.Quantity / 4, plan.Quantity / 2, plan.Quantity, 0);

    // Far enough that at twice the pace hardly more are asked for, and no further than the shop goes.
    private static int Last(ReprintRequest request, JobSource source)
    {
        var quick = DemandDistribution.Of(request.Demand.AtPace(2m));
        var worth = quick.Succeeded ? quick.Value.Quantile(Hardly) : MostShown;
        var low = Looked(source.Plan);
        var high = Math.Max(low, Math.Min(MostShown, worth + source.Edition.FreeCopies));
        var job = PreparedJob.Prepare(source.Build());
        while (job.Succeeded && low < high)
        {
            var middle = low + ((high - low + 1) / 2);
            (low, high) = job.Value.LandedCost(middle, out _) is null ? (middle, high) : (low, middle - 1);
        }

        return high;
    }
}
