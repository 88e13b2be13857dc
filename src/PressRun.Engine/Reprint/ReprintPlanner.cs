using PressRun.Engine.Costing;

namespace PressRun.Engine.Reprint;

/// <summary>
/// The newsvendor's problem on the real staircase of costs (Hillier and Lieberman, Introduction to Operations Research, chapter on inventory):
/// expected profit is summed exactly over the distribution at every quantity, by running sums.
/// </summary>
public sealed class ReprintPlanner
{
    private readonly PreparedJob job;
    private readonly ReprintRequest request;
    private readonly DemandDistribution demand;

    private ReprintPlanner(PreparedJob job, ReprintRequest request, DemandDistribution demand, decimal netPerCopy)
    {
        this.job = job;
        this.request = request;
        this.demand = demand;
        NetPerCopy = netPerCopy;
    }

    /// <summary>What a copy sold keeps.</summary>
    public decimal NetPerCopy { get; }

    /// <summary>Most that may be paid out; null where there is no limit.</summary>
    public decimal? Cash => request.Cash;

    /// <summary>Copies asked for on average.</summary>
    public double ExpectedDemand => demand.Mean;

    /// <summary>The demand as it was worked out.</summary>
    public DemandDistribution Demand => demand;

    /// <summary>Prepares the decision.</summary>
    /// <param name="job">The job whose costs are taken at every quantity.</param>
    /// <param name="request">What it is decided from.</param>
    /// <returns>The planner, or every problem found.</returns>
    public static Outcome<ReprintPlanner> Prepare(PreparedJob job, ReprintRequest request)
    {
        var problems = new List<Problem>();
        Require(request.OnHand is >= 0 and <= Job.MostCopies, "onHand", request.OnHand, $"Copies on hand are 0 to {Job.MostCopies}.");
        Require(request.Penalty >= 0m, "penalty", request.Penalty, "What a copy short costs is not negative.");
        Require(request.Holding >= 0m, "holding", request.Holding, "What keeping a copy costs is not negative.");
        Require(request.Cash is null or >= 0m, "cash", request.Cash ?? 0m, "The cash there is is not negative.");
        Require(request.From is >= 0 and <= Job.MostCopies, "from", request.From, $"Quantities are 0 to {Job.MostCopies}.");
        Require(request.To >= request.From && request.To <= Job.MostCopies, "to", request.To, $"The last quantity is not below the first and at most {Job.MostCopies}.");
        Require(request.Step >= 1, "step", request.Step, "Quantities rise by at least 1.");
        if (request.Step >= 1 && (request.To - request.From) / request.Step >= Job.MostQuantities)
        {
            problems.Add(new Problem("$.reprint", null, $"A plan looks at no more than {Job.MostQuantities} quantities."));
        }

        var demand = DemandDistribution.Of(request.Demand);
        problems.AddRange(demand.Problems);
        var net = request.NetPerCopy ?? job.NetByMix;
        if (net is null)
        {
            problems.Add(new Problem("$.reprint.netPerCopy", null, "The job's channels leave no net to reckon with (no mix, or no postage for one of them); name a net per copy."));
        }

        return problems.Count > 0
            ? Outcome<ReprintPlanner>.Refused(problems)
            : Outcome<ReprintPlanner>.Of(new ReprintPlanner(job, request, demand.Value, net!.Value));

        void Require(bool holds, string member, decimal value, string rule)
        {
            if (!holds)
            {
                problems.Add(new Problem("$.reprint." + member, Text.Exact(value), rule));
            }
        }
    }

    /// <summary>Looks at every quantity asked for, and at printing none.</summary>
    /// <param name="cancellation">Ends the work early.</param>
    /// <returns>The plan, or the problem at a quantity that the shop cannot take.</returns>
    /// <exception cref="OperationCanceledException">The work was ended early.</exception>
    public Outcome<ReprintPlan> Plan(CancellationToken cancellation = default)
    {
        var costs = Costs(cancellation);
        return costs.Succeeded ? Outcome<ReprintPlan>.Of(Plan(costs.Value)) : Outcome<ReprintPlan>.Refused(costs.Problems);
    }

    /// <summary>What every quantity asked for costs, and printing none: the same for every demand.</summary>
    /// <param name="cancellation">Ends the work early.</param>
    /// <returns>The costs, or the problem at a quantity that the shop cannot take.</returns>
    /// <exception cref="OperationCanceledException">The work was ended early.</exception>
    public Outcome<IReadOnlyList<RunCost>> Costs(CancellationToken cancellation = default)
    {
        var costs = new List<RunCost> { default };
        var rising = job.RisingOvers();
        for (var quantity = request.From; quantity <= request.To; quantity += request.Step)
        {
            cancellation.ThrowIfCancellationRequested();
            if (quantity == 0)
            {
                continue;
            }

            if (job.Costs(quantity, out var landedCost, out var cashOut, rising) is { } problem)
            {
                return Outcome<IReadOnlyList<RunCost>>.Refused(problem);
            }

            costs.Add(new RunCost(quantity, landedCost, cashOut));
        }

        return Outcome<IReadOnlyList<RunCost>>.Of(costs);
    }

    /// <summary>The plan over quantities whose costs are known.</summary>
    /// <param name="costs">From <see cref="Costs"/> of a planner of the same job; at least one.</param>
    public ReprintPlan Plan(IReadOnlyList<RunCost> costs)
    {
        var curve = costs.Select(Point).ToList();
        var best = Best(curve);
        var withinCash = Best(curve.Where(point => IsPaidFor(point.CashOut)));
        return new ReprintPlan(
            best.Quantity,
            best.ExpectedProfit,
            best.LandedCost,
            NetPerCopy,
            withinCash,
            OddsAt(best.Quantity, best.LandedCost),
            demand.Mean,
            demand.Dots(),
            curve);
    }

    /// <summary>The quantity with the highest expected profit that the cash pays for, the smallest of equals; printing none is always paid for.</summary>
    /// <param name="costs">From <see cref="Costs"/> of a planner of the same job; at least one.</param>
    public ReprintPoint Best(IReadOnlyList<RunCost> costs) => Best(costs.Where(cost => IsPaidFor(cost.CashOut)).Select(Point));

    /// <summary>True where the cash pays for a run, or is no limit.</summary>
    /// <param name="cashOut">What the run takes, in the press's currency.</param>
    public bool IsPaidFor(decimal cashOut) => request.Cash is not { } cash || cashOut <= cash;

    /// <summary>All that is said of one quantity, whether or not it is among those asked for.</summary>
    /// <param name="quantity">0 for printing none, to 1,000,000.</param>
    /// <returns>The look, or the problem where the shop cannot take the quantity.</returns>
    public Outcome<ReprintLook> LookAt(int quantity)
    {
        var cost = default(RunCost);
        if (quantity != 0)
        {
            if (job.Costs(quantity, out var landedCost, out var cashOut) is { } problem)
            {
                return Outcome<ReprintLook>.Refused(problem);
            }

            cost = new RunCost(quantity, landedCost, cashOut);
        }

        var odds = OddsAt(quantity, cost.LandedCost);
        return Outcome<ReprintLook>.Of(new ReprintLook(
            Point(cost),
            odds,
            [.. demand.Dots().Select(copies => new Future(copies, copies >= odds.ForSale, Profit(copies, odds.ForSale, cost.LandedCost) < 0m))],
            [Left(0.1m, odds.Leftover10), Left(0.5m, odds.Leftover50), Left(0.9m, odds.Leftover90)],
            request.OnHand,
            quantity == 0 ? 0 : (int)Math.Min(job.Job.FreeCopies, (long)request.OnHand + quantity),
            quantity > 0 && job.Job.Bench is { Paid: false, HourlyRate: > 0m, Steps.Count: > 0 }));

        Leftover Left(decimal probability, long copies) => new(
            probability,
            copies,
            job.Job.Shop.Order.Carton?.For(copies * job.Copy.Mass),
            quantity == 0 ? 0m : cost.CashOut * Math.Min(copies, quantity) / quantity);
    }

    /// <summary>The same decision, were the title to sell at another pace; what is promised stays promised.</summary>
    /// <param name="pace">Factor on what is asked for, more than 0; 1 changes nothing.</param>
    /// <returns>The planner, or the problem where that many copies cannot be reckoned with.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The pace is not more than 0.</exception>
    public Outcome<ReprintPlanner> AtPace(decimal pace) => Prepare(job, request with { Demand = request.Demand.AtPace(pace) });

    /// <summary>What may happen at a quantity whose landed cost is known.</summary>
    /// <param name="quantity">0 for printing none, to 1,000,000.</param>
    /// <param name="landedCost">What the quantity costs, in the press's currency; 0 for printing none.</param>
    public ReprintOdds OddsAt(int quantity, decimal landedCost)
    {
        var forSale = ForSale(quantity);
        var loss = 0d;
        for (var copies = 0; copies <= demand.Largest; copies++)
        {
            if (Profit(copies, forSale, landedCost) < 0m)
            {
                loss += demand.Probability(copies);
            }
        }

        return new ReprintOdds(forSale, demand.AtLeast(forSale), Math.Min(loss, 1d), Leftover(0.1), Leftover(0.5), Leftover(0.9));

        // P(max(A − d, 0) ≤ x) = P(d ≥ A − x): leftovers are many where demand is small.
        long Leftover(double probability)
        {
            long low = 0, high = Math.Max(0, forSale);
            while (low < high)
            {
                var middle = low + ((high - low) / 2);
                (low, high) = demand.AtLeast(forSale - middle) >= probability ? (low, middle) : (middle + 1, high);
            }

            return low;
        }
    }

    /// <summary>Copies for sale with a quantity: on hand and printed, less free ones. Printing none keeps only the copies on hand; free copies are then not given.</summary>
    /// <param name="quantity">0 for printing none, to 1,000,000.</param>
    public long ForSale(int quantity) =>
        quantity == 0 ? request.OnHand : Math.Max(0L, (long)request.OnHand + quantity - job.Job.FreeCopies);

    /// <summary>What a quantity of known cost promises.</summary>
    /// <param name="cost">The quantity and what it costs, in the press's currency; the default is printing none.</param>
    public ReprintPoint Point(RunCost cost)
    {
        var forSale = ForSale(cost.Quantity);
        var sold = (decimal)demand.ExpectedSales(forSale);
        var profit = (NetPerCopy * sold)
            + ((request.Salvage - request.Holding) * (forSale - sold))
            - (request.Penalty * ((decimal)demand.Mean - sold))
            - cost.LandedCost;
        return new ReprintPoint(cost.Quantity, profit, cost.LandedCost, cost.CashOut);
    }

    private decimal Profit(long copies, long forSale, decimal landedCost) =>
        (NetPerCopy * Math.Min(copies, forSale))
        + ((request.Salvage - request.Holding) * Math.Max(forSale - copies, 0))
        - (request.Penalty * Math.Max(copies - forSale, 0))
        - landedCost;

    // The first of equals is the smallest quantity; sums of doubles differ in their last digits, so equal means within 1e-9.
    internal static ReprintPoint Best(IEnumerable<ReprintPoint> curve)
    {
        const decimal lastDigits = 1e-9m;
        return curve.Aggregate((best, point) => point.ExpectedProfit > best.ExpectedProfit + lastDigits ? point : best);
    }
}
