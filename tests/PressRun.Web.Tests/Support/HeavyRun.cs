using System.Collections;
using PressRun.Data.RunPlans;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Ladder;
using PressRun.Engine.Sheets;
using PressRun.JobFile.Results;
using PressRun.Web.Api;

namespace PressRun.Web.Tests.Support;

/// <summary>The invented run at shops whose prices take long to look through, and counts of how often a run was costed.</summary>
public static class HeavyRun
{
    /// <summary>A shop that charges every step of its prices.</summary>
    private static Shop Shop(int steps)
    {
        IReadOnlyList<PriceStep> staircase = [.. Enumerable.Range(1, steps).Select(from => new PriceStep(from, 0.08m))];
        return ARun.Shop with
        {
            Print = [.. ARun.Shop.Print.Select(price => price with { Rule = StepRule.Incremental, Steps = staircase })],
            Paper = [.. ARun.Shop.Paper.Select(price => price with { Rule = StepRule.Incremental, Steps = staircase })],
        };
    }

    private const int Steps = 500;

    /// <summary>A shop at which the run takes so long that not all quantities are shown.</summary>
    public static Shop Slow { get; } = Shop(Steps);

    /// <summary>A shop at which it takes minutes to look at some thousands.</summary>
    public static Shop Slower { get; } = Shop(10_000);

    /// <summary>The plan's source at such a shop.</summary>
    public static JobSource Source(int quantity, Func<PlanRecord, PlanRecord>? change = null) =>
        APlan.Source(quantity, change) with { PriceList = Slow };

    /// <summary>A book of so many parts, of prices with so many steps, that hardly any quantities can be looked at.</summary>
    public static Job OfManyParts { get; } = ARun.Job with
    {
        Edition = ARun.Edition() with { Parts = [.. Enumerable.Range(1, 100).Select(number => new Part($"part {number}", 4, "thin", Ink.Black, Ink.Black))] },
        Shop = Slower,
    };

    /// <summary>What looking at all quantities of a range is thought to take, in microseconds.</summary>
    public static double Effort(Job job, int from, int to) => JobEffort.Of(JobQuestion.Ladder, job with { Ladder = new LadderRange(from, to, 1) });

    /// <summary>The source with a price list that counts: each costing asks once how many discounts there are.</summary>
    public static (JobSource Source, Func<int> Costings) Counted(JobSource source)
    {
        var discounts = new CountedList<DiscountStep>(source.PriceList.Order.Discounts);
        return (source with { PriceList = source.PriceList with { Order = source.PriceList.Order with { Discounts = discounts } } }, () => discounts.Asked);
    }

    private sealed class CountedList<T>(IReadOnlyList<T> items) : IReadOnlyList<T>
    {
        public int Asked { get; private set; }

        public int Count
        {
            get
            {
                Asked++;
                return items.Count;
            }
        }

        public T this[int index] => items[index];

        public IEnumerator<T> GetEnumerator() => items.GetEnumerator();

        IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
    }
}
