using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Blocks;

/// <summary>Reads the lists of steps that prices are made of, and sees that they rise.</summary>
internal static class Steps
{
    private const string PriceRule = "Write steps as a list of at least one { \"from\", \"each\" }, the first from 1, rising.";
    private const string BookRule = "Write steps as a list of at least one { \"from\", \"each\", \"perPage\" }, the first from 1, rising.";
    private const string MassRule = "Write steps as a list of at least one { \"most\", \"price\" }, rising.";
    private const string DiscountRule = "Write discounts as a list of { \"from\", \"rate\" }, rising.";

    /// <summary>Price steps, at least one.</summary>
    public static IReadOnlyList<PriceStep> ReadPrices(JsonBlock block) => Read(block, "steps", PriceRule, true, StepStart.FirstAtOne, step =>
    {
        var from = step.Number("from", JobRules.StepFrom, Need.Must);
        return (new PriceStep((long)(from ?? 0m), step.Number("each", JobRules.Amount, Need.Must) ?? 0m), from);
    });

    /// <summary>Steps of a whole-book price, at least one.</summary>
    public static IReadOnlyList<BookStep> ReadBooks(JsonBlock block) => Read(block, "steps", BookRule, true, StepStart.FirstAtOne, step =>
    {
        var from = step.Number("from", JobRules.StepFrom, Need.Must);
        if (!step.Has("each") && !step.Has("perPage"))
        {
            step.Problems.Add(step.Path.Member("each"), (string?)null, "A step needs a price: each, perPage or both.");
        }

        var each = step.Number("each", JobRules.Amount) ?? 0m;
        return (new BookStep((long)(from ?? 0m), each, step.Number("perPage", JobRules.Amount) ?? 0m), from);
    });

    /// <summary>Prices by mass.</summary>
    public static IReadOnlyList<MassStep> ReadMasses(JsonBlock block, bool atLeastOne) => Read(block, "steps", MassRule, atLeastOne, StepStart.Most, step =>
    {
        var most = step.Mass("most", JobRules.MassLimit, Need.Must);
        return (new MassStep(most ?? default, step.Number("price", JobRules.Amount, Need.Must) ?? 0m), most?.Grams);
    });

    /// <summary>Discounts by goods value.</summary>
    public static IReadOnlyList<DiscountStep> ReadDiscounts(JsonBlock block) => Read(block, "discounts", DiscountRule, false, StepStart.Anywhere, step =>
    {
        var from = step.Number("from", JobRules.Amount, Need.Must);
        return (new DiscountStep(from ?? 0m, step.Number("rate", JobRules.Rate, Need.Must) ?? 0m), from);
    });

    // "place" is where a step stands among the others; null where it was refused, and then it says nothing about their order.
    private static List<T> Read<T>(
        JsonBlock block, string name, string rule, bool atLeastOne, StepStart start, Func<JsonBlock, (T Step, decimal? Place)> read)
    {
        var steps = new List<T>();
        decimal? before = null;
        var key = start == StepStart.Most ? "most" : "from";
        foreach (var (element, path) in block.Items(name, atLeastOne ? Need.Must : Need.May, rule, atLeastOne, JobRules.MostEntries))
        {
            if (JsonBlock.Open(element, path, block.Problems, rule) is not { } open)
            {
                continue;
            }

            var (step, place) = read(open);
            open.Close();
            steps.Add(step);
            if (place is null)
            {
                continue;
            }

            if (steps.Count == 1 && start == StepStart.FirstAtOne && place != 1m)
            {
                block.Problems.Add(path.Member(key), NumberText.Plain(place.Value), "The first step must begin at 1.");
            }

            if (place <= before)
            {
                block.Problems.Add(path.Member(key), Shown(place.Value), $"Steps must rise: write more than {Shown(before.Value)}, where the step before stands.");
            }

            before = place;
        }

        return steps;

        string Shown(decimal place) => start == StepStart.Most ? MeasureText.Exact(Mass.FromGrams(place)) : NumberText.Plain(place);
    }

    /// <summary>Where a list of steps begins, and by what.</summary>
    private enum StepStart
    {
        /// <summary>By <c>from</c>, the first at 1.</summary>
        FirstAtOne,

        /// <summary>By <c>from</c>, the first anywhere.</summary>
        Anywhere,

        /// <summary>By <c>most</c>, where each step ends.</summary>
        Most,
    }
}
