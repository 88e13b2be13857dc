using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Postage;

namespace PressRun.Engine.Comparing;

/// <summary>The same edition on other papers.</summary>
public static class StockComparer
{
    /// <summary>Costs every combination of the stocks asked for. Where a copy was weighed or gauged, every other is told as that one is: by as much
    /// more or less than reckoned.</summary>
    /// <param name="job">The job as it stands.</param>
    /// <param name="request">What to try.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <returns>The comparison, or what is wrong with the request; a combination that cannot be printed is told of in the answer.</returns>
    /// <exception cref="OperationCanceledException">The work was ended early.</exception>
    public static Outcome<StockComparison> Compare(Job job, ComparisonRequest request, CancellationToken cancellation = default)
    {
        // Whole runs are compared, whatever the job's own copies are; halves are what the request asks for.
        job = job with { SecondHalf = null };
        var problems = Check(job, request);
        if (problems.Count > 0)
        {
            return Outcome<StockComparison>.Refused(problems);
        }

        var tables = JobTables.Of(job);
        if (!tables.Succeeded)
        {
            return Outcome<StockComparison>.Refused(tables.Problems);
        }

        var weighed = job.Edition.Weighed is null ? null : PreparedJob.Prepare(job, tables.Value) is { Succeeded: true, Value: var own } ? own : null;

        // Each combination is let go of as soon as it is costed: thousands held at once would cost more to keep than to work out.
        var refused = new List<RefusedCombination>();
        var ofQuantities = request.Quantities.Select(quantity => (Quantity: quantity, Rows: new List<ComparedRow>(), Refused: new List<RefusedCombination>())).ToList();
        foreach (var choices in Combinations(request.Choices))
        {
            cancellation.ThrowIfCancellationRequested();
            var tried = job.WithStocks(choices);
            string[] stockIds = [.. tried.Edition.Parts.Select(part => part.StockId)];
            var outcome = AsWeighed(PreparedJob.Prepare(tried, tables.Value), weighed);
            if (!outcome.Succeeded)
            {
                refused.Add(new RefusedCombination(stockIds, null, outcome.Problems));
                continue;
            }

            foreach (var (quantity, costed, refusedAt) in ofQuantities)
            {
                cancellation.ThrowIfCancellationRequested();
                var estimate = outcome.Value.Estimate(quantity);
                if (estimate.Succeeded)
                {
                    costed.Add(new ComparedRow(stockIds, estimate.Value, InHands(outcome.Value, outcome.Value.Block, estimate.Value, outcome.Value.Copy)));
                }
                else
                {
                    refusedAt.Add(new RefusedCombination(stockIds, quantity, estimate.Problems));
                }
            }
        }

        foreach (var (_, costed, refusedAt) in ofQuantities)
        {
            Mark(job, costed);
            refused.AddRange(refusedAt);
        }

        List<ComparedRow> rows = [.. ofQuantities.SelectMany(ofQuantity => ofQuantity.Rows)];
        return Outcome<StockComparison>.Of(new StockComparison(rows, Halves(job, request, refused, cancellation), refused));
    }

    // One copy was on the scale: the others are as far from what is reckoned as that one is, or they could not be told apart from it.
    private static Outcome<PreparedJob> AsWeighed(Outcome<PreparedJob> tried, PreparedJob? weighed) =>
        weighed is null || !tried.Succeeded || tried.Value.Job.Edition.Weighed is not null
            ? tried
            : Outcome<PreparedJob>.Of(tried.Value.AsWeighed(weighed.Job.Edition.Weighed!.Changed(weighed.Block, tried.Value.Block)));

    private static List<HalvesRow> Halves(Job job, ComparisonRequest request, List<RefusedCombination> refused, CancellationToken cancellation)
    {
        var halves = new List<HalvesRow>();
        foreach (var choice in request.Halves)
        {
            string[] stockIds = [.. job.WithStocks((choice.Part, choice.FirstStockId)).Edition.Parts.Select(part => part.StockId)];
            var outcome = PreparedJob.PrepareHalves(job, choice.Part, choice.FirstStockId, choice.SecondStockId);
            if (!outcome.Succeeded)
            {
                refused.Add(new RefusedCombination(stockIds, null, outcome.Problems));
                continue;
            }

            var ready = outcome.Value;
            var (other, otherCopy) = ready.OtherHalf is { } block ? (block, ready.CopyOf(block)) : (ready.Block, ready.Copy);
            foreach (var quantity in request.Quantities)
            {
                cancellation.ThrowIfCancellationRequested();
                var estimate = ready.Estimate(quantity);
                if (estimate.Succeeded)
                {
                    halves.Add(new HalvesRow(
                        choice,
                        estimate.Value,
                        otherCopy,
                        InHands(ready, ready.Block, estimate.Value, ready.Copy),
                        InHands(ready, other, estimate.Value, otherCopy)));
                }
                else
                {
                    refused.Add(new RefusedCombination(stockIds, quantity, estimate.Problems));
                }
            }
        }

        return halves;
    }

    private static List<Problem> Check(Job job, ComparisonRequest request)
    {
        var problems = new List<Problem>();
        var stockIds = job.Stocks.Select(stock => stock.Id).ToHashSet(StringComparer.Ordinal);
        var asked = request.Choices.SelectMany(choice => choice.StockIds.Select(id => (choice.Part, Id: id)))
            .Concat(request.Halves.SelectMany(halves => new[] { (halves.Part, Id: halves.FirstStockId), (halves.Part, Id: halves.SecondStockId) }));
        foreach (var (part, id) in asked.Distinct())
        {
            if (part < 0 || part >= job.Edition.Parts.Count)
            {
                problems.Add(new Problem("$.compare", Text.Of(part), "The edition has no such part."));
            }
            else if (!stockIds.Contains(id))
            {
                problems.Add(new Problem("$.compare", id, "There is no stock with this id."));
            }
        }

        foreach (var quantity in request.Quantities)
        {
            JobRules.CheckQuantity(quantity, "$.compare.quantities", problems);
        }

        var rows = request.Choices.Aggregate((decimal)Math.Max(1, request.Quantities.Count), (count, choice) => Math.Min(count * choice.StockIds.Count, decimal.MaxValue / 1_000_000m));
        if (rows > ComparisonRequest.MostRows)
        {
            problems.Add(new Problem("$.compare", Text.Of(rows), $"These choices make more rows than {ComparisonRequest.MostRows}; try fewer stocks or quantities."));
        }

        return problems;
    }

    // The last choice turns fastest.
    private static IEnumerable<(int Part, string StockId)[]> Combinations(IReadOnlyList<StockChoice> choices)
    {
        IEnumerable<(int, string)[]> combinations = [[]];
        foreach (var choice in choices)
        {
            combinations = combinations.SelectMany(head => choice.StockIds.Select(id => ((int, string)[])[.. head, (choice.Part, id)]));
        }

        return combinations;
    }

    private static List<InHand> InHands(PreparedJob ready, BookBlock block, Estimate estimate, CopyEstimate copy)
    {
        var inHands = new List<InHand>();
        foreach (var (channel, mailer, postage) in ready.Mailings(copy))
        {
            inHands.Add(new InHand(
                channel.Id,
                mailer.InHand(estimate.UnitCost, postage, channel.CopiesPerOrder),
                postage,
                postage is null ? [] : LeafRoom.Of(block, postage, channel.CopiesPerOrder)));
        }

        return inHands;
    }

    private static void Mark(Job job, List<ComparedRow> rows)
    {
        if (rows.Count == 0)
        {
            return;
        }

        var byMass = Enumerable.Range(0, rows.Count).OrderBy(index => rows[index].Estimate.Copy.Mass.Grams).ToList();
        var cheapest = Enumerable.Range(0, rows.Count).MinBy(index => rows[index].Estimate.Totals.LandedCost);
        Set(cheapest, ComparisonMarks.Cheapest);
        Set(byMass[0], ComparisonMarks.Lightest);
        var lightest = rows[byMass[0]];
        var over = byMass.FindIndex(index => Dearer(rows[index], lightest));
        if (over >= 0)
        {
            Set(byMass[over], ComparisonMarks.FirstOverStep);
        }

        var own = job.Edition.Parts.Select(part => part.StockId).ToList();
        var now = rows.FirstOrDefault(row => row.StockIds.SequenceEqual(own, StringComparer.Ordinal)) ?? lightest;
        var heaviest = byMass.FindLastIndex(index => !Dearer(rows[index], now));
        Set(byMass[heaviest], ComparisonMarks.HeaviestInStep);

        void Set(int index, ComparisonMarks mark) => rows[index] = rows[index] with { Marks = rows[index].Marks | mark };
    }

    // Posted dearer through at least one channel, or no longer posted at all.
    private static bool Dearer(ComparedRow row, ComparedRow than) =>
        row.InHand.Zip(than.InHand).Any(pair => pair.Second.Postage is { Price: { } price } && (pair.First.Postage?.Price is not { } own || own > price));
}
