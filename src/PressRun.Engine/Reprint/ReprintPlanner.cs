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

    /// <summary>What a copy sold leaves.</summary>
    public decimal NetPerCopy { get; }

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
        var curve = new List<ReprintPoint> { Point(0, 0m, 0m) };
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
                return Outcome<ReprintPlan>.Refused(problem);
            }

            curve.Add(Point(quantity, landedCost, cashOut));
        }

        var best = Best(curve);
        var withinCash = Best(curve.Where(point => request.Cash is not { } cash || point.CashOut <= cash));
        return Outcome<ReprintPlan>.Of(new ReprintPlan(
            best.Quantity,
            best.ExpectedProfit,
            best.LandedCost,
            NetPerCopy,
            withinCash,
            OddsAt(best.Quantity, best.LandedCost),
            demand.Mean,
            demand.Dots(),
            curve));
    }

    /// <summary>What may happen at a quantity whose landed cost is known.</summary>
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

    // Printing none keeps only the copies on hand; free copies are then not given.
    private long ForSale(int quantity) =>
        quantity == 0 ? request.OnHand : Math.Max(0L, (long)request.OnHand + quantity - job.Job.FreeCopies);

    private ReprintPoint Point(int quantity, decimal landedCost, decimal cashOut)
    {
        var forSale = ForSale(quantity);
        var sold = (decimal)demand.ExpectedSales(forSale);
        var profit = (NetPerCopy * sold)
            + ((request.Salvage - request.Holding) * (forSale - sold))
            - (request.Penalty * ((decimal)demand.Mean - sold))
            - landedCost;
        return new ReprintPoint(quantity, profit, landedCost, cashOut);
    }

    private decimal Profit(long copies, long forSale, decimal landedCost) =>
        (NetPerCopy * Math.Min(copies, forSale))
        + ((request.Salvage - request.Holding) * Math.Max(forSale - copies, 0))
        - (request.Penalty * Math.Max(copies - forSale, 0))
        - landedCost;

    // The first of equals is the smallest quantity; sums of doubles differ in their last digits, so equal means within 1e-9.
    private static ReprintPoint Best(IEnumerable<ReprintPoint> curve)
    {
        const decimal lastDigits = 1e-9m;
        return curve.Aggregate((best, point) => point.ExpectedProfit > best.ExpectedProfit + lastDigits ? point : best);
    }
}
