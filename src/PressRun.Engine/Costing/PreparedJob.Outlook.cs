using PressRun.Engine.Bench;
using PressRun.Engine.Ladder;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Costing;

/// <content>The steps ahead of a quantity.</content>
public sealed partial class PreparedJob
{
    /// <summary>What one more copy costs, and the first of each kind of step above a quantity.</summary>
    /// <param name="quantity">Quantity looked from.</param>
    /// <param name="to">Last quantity looked at, at most 1,000,000.</param>
    public Outcome<Outlook> LookAhead(int quantity, int to)
    {
        var rising = RisingOvers();
        var here = Standing(quantity, rising);
        if (here.Problem is { } problem)
        {
            return Outcome<Outlook>.Refused(problem);
        }

        var (before, steps) = (here, new List<StepAhead>());
        decimal? oneMore = null;
        var seen = new HashSet<(StepKind, string)>();
        for (var next = quantity + 1; next <= Math.Min(to, Job.MostCopies); next++)
        {
            var now = Standing(next, rising);
            if (now.Problem is not null)
            {
                break;
            }

            oneMore ??= now.LandedCost - here.LandedCost;
            foreach (var (kind, subject, threshold, sheet) in Changes(before, now))
            {
                if (seen.Add((kind, subject)))
                {
                    steps.Add(new StepAhead(kind, subject, next, now.LandedCost - before.LandedCost, now.Goods, now.Goods - here.Goods) { Threshold = threshold, Sheet = sheet });
                }
            }

            before = now;
        }

        return Outcome<Outlook>.Of(new Outlook(quantity, oneMore, steps));
    }

    /// <summary>Every step between two quantities, in order, with the change in landed cost it comes with.</summary>
    /// <param name="from">First quantity; at least 1.</param>
    /// <param name="to">Last quantity, at most 1,000,000.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <returns>The steps, or the problem at a quantity that the shop cannot take.</returns>
    /// <exception cref="OperationCanceledException">The work was ended early.</exception>
    public Outcome<IReadOnlyList<StepAhead>> StepsBetween(int from, int to, CancellationToken cancellation = default)
    {
        var rising = RisingOvers();
        var first = Standing(from, rising);
        if (first.Problem is { } refused)
        {
            return Outcome<IReadOnlyList<StepAhead>>.Refused(refused);
        }

        var steps = new List<StepAhead>();
        for (var (next, before) = (from + 1, first); next <= to; next++)
        {
            cancellation.ThrowIfCancellationRequested();
            var now = Standing(next, rising);
            if (now.Problem is { } problem)
            {
                return Outcome<IReadOnlyList<StepAhead>>.Refused(problem);
            }

            foreach (var (kind, subject, threshold, sheet) in Changes(before, now))
            {
                steps.Add(new StepAhead(kind, subject, next, now.LandedCost - before.LandedCost, now.Goods, now.Goods - first.Goods) { Threshold = threshold, Sheet = sheet });
            }

            before = now;
        }

        return Outcome<IReadOnlyList<StepAhead>>.Of(steps);
    }

    // Where a quantity stands on every staircase of the price list.
    private PlaceOnSteps Standing(int quantity, RisingOvers rising)
    {
        var taken = new SheetsTaken[lots.Length];
        var sink = default(NoLines);
        var figures = Work(quantity, taken, ref sink, rising);
        if (figures.Problem is not null)
        {
            return new PlaceOnSteps(figures, [], [], 0);
        }

        var reached = new int[PriceCount];
        if (book is null)
        {
            Span<long> units = new long[PriceCount];
            Span<int> order = new int[PriceCount];
            var used = 0;
            for (var part = 0; part < taken.Length; part++)
            {
                ref readonly var sheet = ref lots[part].Candidates[taken[part].Candidate];
                Use(sheet.OutsidePrice, taken[part].Sheets, units, order, ref used);
                Use(sheet.InsidePrice, taken[part].Sheets, units, order, ref used);
                Use(print.Length + sheet.PaperPrice, taken[part].Sheets, units, order, ref used);
            }

            for (var price = 0; price < reached.Length; price++)
            {
                reached[price] = units[price] == 0 ? -1 : price < print.Length ? print[price].Reached(units[price]) : paper[price - print.Length].Reached(units[price]);
            }
        }

        return new PlaceOnSteps(figures, reached, taken, book is null ? 0 : BookStepReached(figures.Started).From);
    }

    private List<(StepKind Kind, string Subject, decimal? Threshold, Sheet? Sheet)> Changes(PlaceOnSteps before, PlaceOnSteps now)
    {
        var changes = new List<(StepKind, string, decimal?, Sheet?)>();
        var (was, figures) = (before.Figures, now.Figures);
        if (figures.DeliveryIsFree && !was.DeliveryIsFree)
        {
            changes.Add((StepKind.FreeDelivery, string.Empty, job.Shop.Order.Delivery?.FreeFrom, null));
        }
        else if (figures.DeliveryStep != was.DeliveryStep && figures.DeliveryIsFree == was.DeliveryIsFree)
        {
            changes.Add((StepKind.Delivery, string.Empty, null, null));
        }

        if (figures.DiscountStep > was.DiscountStep)
        {
            changes.Add((StepKind.Discount, string.Empty, job.Shop.Order.Discounts[figures.DiscountStep].From, null));
        }

        if (was.Totals.MinimumTopUp > 0m && figures.Totals.MinimumTopUp == 0m)
        {
            changes.Add((StepKind.MinimumReached, string.Empty, job.Shop.Order.Minimum, null));
        }

        for (var part = 0; book is null && part < lots.Length; part++)
        {
            if (now.Taken[part].Candidate != before.Taken[part].Candidate)
            {
                changes.Add((StepKind.Sheet, lots[part].Pieces.Part.Name, null, lots[part].Candidates[now.Taken[part].Candidate].Sheet));
            }
        }

        for (var price = 0; price < now.Reached.Length; price++)
        {
            if (now.Reached[price] > before.Reached[price] && before.Reached[price] >= 0)
            {
                var isPrint = price < print.Length;
                changes.Add(isPrint
                    ? (StepKind.Print, InkSubject.Of(job.Shop.Print[price].Ink), job.Shop.Print[price].Steps[now.Reached[price]].From, null)
                    : (StepKind.Paper, job.Shop.Paper[price - print.Length].StockId, job.Shop.Paper[price - print.Length].Steps[now.Reached[price]].From, null));
            }
        }

        if (now.BookFrom != before.BookFrom)
        {
            changes.Add((StepKind.Book, string.Empty, now.BookFrom, null));
        }

        if (job.Shop.Quantities.Count > 0 && figures.Started != was.Started)
        {
            changes.Add((StepKind.SoldQuantity, string.Empty, figures.Started, null));
        }

        return changes;
    }

    private readonly record struct PlaceOnSteps(OrderFigures Figures, int[] Reached, SheetsTaken[] Taken, long BookFrom)
    {
        public Problem? Problem => Figures.Problem;

        public decimal LandedCost => Figures.Totals.LandedCost;

        public decimal Goods => Figures.Totals.Goods;
    }
}
