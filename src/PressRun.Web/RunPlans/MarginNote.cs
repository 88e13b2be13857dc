using PressRun.Engine.Ladder;
using PressRun.Web.Charts;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.RunPlans;

/// <summary>A note in the margin of the staircase.</summary>
/// <param name="Key">Letter of the band it belongs to; null where it belongs to none.</param>
/// <param name="Strong">What it says first.</param>
/// <param name="Rest">Why, or what follows.</param>
/// <param name="LookHere">True where something can be gained.</param>
/// <param name="Take">A quantity that the note leads to; null where it leads nowhere.</param>
public sealed record MarginNote(char? Key, string Strong, string Rest, bool LookHere, int? Take)
{
    /// <summary>The notes of a run, the most useful first.</summary>
    public static IReadOnlyList<MarginNote> Of(WorkedPlan plan, RunAnswer answer, IReadOnlyList<PastRun> past, Func<string, string> stockName, PressFormat format)
    {
        var notes = new List<MarginNote>();
        if (answer.Better is { } better)
        {
            var key = KeyOf(plan, better.To);
            notes.Add(new MarginNote(
                key,
                MoreCopies(better, format),
                Why(plan, plan.AllBands.First(band => band.Better == better.To), stockName, format),
                true,
                better.To));
        }

        foreach (var (index, band) in plan.Bands.Index().Where(item => item.Item.Better != answer.Better?.To))
        {
            // Each letter of the picture has its note, and the same reason whichever quantity is open.
            notes.Add(new MarginNote(ShadedBand.KeyOf(index), NoLess(band, format), Why(plan, band, stockName, format), true, null));
        }

        if (plan.Prepared.Job.Shop.Quantities is { Count: > 0 } sold)
        {
            var near = string.Join(", ", sold.Where(quantity => quantity >= plan.Curve.From && quantity <= plan.Curve.To).Select(quantity => format.Count(quantity)));
            notes.Add(new MarginNote(null, "", Say($"The shop prints {near} copies and nothing between: between them one pays for the next.") + Beyond(plan, sold, format), false, null));
        }

        if (answer.Outlook.OneMoreCosts is { } oneMore)
        {
            var costs = oneMore switch
            {
                < 0m => Say($"One more copy costs {format.Money(-oneMore)} less."),
                0m => Say($"One more copy costs nothing."),
                _ => Say($"One more copy costs {format.Money(oneMore)}."),
            };
            notes.Add(new MarginNote(null, "", costs + Next(plan, answer, stockName, format), false, null));
        }

        if (answer.Outlook.FreeDelivery is { } free)
        {
            var becomes = Say($"Delivery becomes free at {format.Count(free.Quantity)} copies, {format.Count(free.Quantity - answer.Estimate.Quantity)} more; that is {format.Money(free.GoodsMore)} more of goods.");
            notes.Add(new MarginNote(null, "", becomes + AndLost(plan, free.Quantity, format), false, null));
        }

        notes.AddRange(past.Select(run => new MarginNote(
            null,
            "",
            run.Paid
                ? Say($"◇ The {run.Words} was {Words.Copies(run.Quantity, format.Count)} for {format.Money(run.Cost)}, as its ledger says.")
                : Say($"◇ The {run.Words} was {Words.Copies(run.Quantity, format.Count)} for {format.Money(run.Cost)}, by its own plan and prices."),
            false,
            null)));
        return notes;
    }

    // What the shop sells beyond the picture, where the picture ends because that cannot be worked out.
    private static string Beyond(WorkedPlan plan, IReadOnlyList<int> sold, PressFormat format) =>
        sold.FirstOrDefault(quantity => quantity > plan.Curve.To) is > 0 and var next
        && plan.Prepared.LandedCost(plan.Curve.To + 1, out _) is not null && plan.Prepared.LandedCost(next, out _) is { } refused
            ? " " + Say($"It sells {format.Count(next)} too, but those cannot be worked out: {SayWhole(refused.Rule)}")
            : "";

    // Where a step lowers the prices the goods may fall below the threshold once more.
    private static string AndLost(WorkedPlan plan, int free, PressFormat format) =>
        plan.Steps.FirstOrDefault(step => step.Kind == StepKind.FreeDelivery && step.Quantity > free) is { } again
            ? " " + Say($"It is lost once more where lower prices let the goods fall below that, and free again at {format.Count(again.Quantity)}.")
            : "";

    private static string MoreCopies(BetterBuy better, PressFormat format)
    {
        var (more, saves) = (better.To - better.From, format.Money(better.Saves));
        return better.Saves == 0m
            ? Say(more, $"{format.Count(more)} more copy costs nothing more.", $"{format.Count(more)} more copies cost nothing more.")
            : Say(more, $"{format.Count(more)} more copy costs {saves} less.", $"{format.Count(more)} more copies cost {saves} less.");
    }

    private static string NoLess(DearBand band, PressFormat format)
    {
        var (from, to, better) = (format.Count(band.From), format.Count(band.To), format.Count(band.Better));
        return band.From == band.To
            ? Say(band.From, $"{from} copy costs no less than {better}.", $"{from} copies cost no less than {better}.")
            : Say($"{from} to {to} copies cost no less than {better}.");
    }

    private static char? KeyOf(WorkedPlan plan, int better) => plan.Bands.Select((band, index) => (band, index))
        .Where(item => item.band.Better == better).Select(item => (char?)ShadedBand.KeyOf(item.index)).FirstOrDefault();

    private static string Next(WorkedPlan plan, RunAnswer answer, Func<string, string> stockName, PressFormat format) =>
        answer.Outlook.Next is { Kind: not StepKind.FreeDelivery } next && next.Quantity != answer.Better?.To ? $" {What(plan, next, stockName, format)}" : "";

    private static string Why(WorkedPlan plan, DearBand band, Func<string, string> stockName, PressFormat format)
    {
        var fall = plan.Curve.LastFall(band);
        return string.Join(" ", plan.Steps.Where(step => step.Quantity == fall).Select(step => What(plan, step, stockName, format)).Distinct());
    }

    private static string What(WorkedPlan plan, StepAhead step, Func<string, string> stockName, PressFormat format)
    {
        var (at, threshold) = (format.Count(step.Quantity), step.Threshold ?? 0m);
        return step.Kind switch
        {
            StepKind.FreeDelivery => Say($"At {at} the goods reach {format.Money(threshold)} and delivery is free."),
            StepKind.Discount => Say($"At {at} the goods reach {format.Money(threshold)} and the shop takes {format.Percent(Discount(plan, threshold))} off."),
            StepKind.Delivery => step.CostChange < 0m
                ? Say($"At {at} delivery costs less.")
                : Say($"At {at} the parcel is heavier and delivery costs more; the run goes up by {format.Money(step.CostChange)}."),
            StepKind.MinimumReached => Say($"At {at} the shop's minimum of {format.Money(threshold)} is reached."),
            StepKind.Print => Say($"At {at} there are {format.Count(threshold)} impressions in {LineWords.InkOf(step.Subject)} and each costs less."),
            StepKind.Paper => Say($"At {at} there are {format.Count(threshold)} sheets of {stockName(step.Subject)} and each costs less."),
            StepKind.Sheet => Say($"From {at} on {Apart.Of(step.Subject)} costs less on sheets of {format.Size(new(step.Sheet!.Width, step.Sheet.Height))}."),
            StepKind.Book => Say($"At {at} the price of a copy is the one from {format.Count(threshold)} copies on."),
            _ => Say($"At {at} the shop prints {Words.Copies((long)threshold, format.Count)}."),
        };
    }

    private static decimal Discount(WorkedPlan plan, decimal from) => plan.Prepared.Job.Shop.Order.Discounts.First(step => step.From == from).Rate;
}
