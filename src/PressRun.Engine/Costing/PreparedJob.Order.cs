using PressRun.Engine.Bench;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Costing;

/// <summary>Takes the lines of an order as they are worked out.</summary>
internal interface ILineSink
{
    void Add(in CostLine line);
}

/// <summary>Lets lines pass: only the totals are wanted.</summary>
internal readonly struct NoLines : ILineSink
{
    public void Add(in CostLine line)
    {
    }
}

/// <summary>Keeps the lines that are not zero.</summary>
internal readonly struct KeptLines(List<CostLine> lines) : ILineSink
{
    public void Add(in CostLine line)
    {
        if (line.Amount != 0m)
        {
            lines.Add(line);
        }
    }
}

/// <summary>What an order comes to at one quantity, and which steps it reached.</summary>
internal struct OrderFigures
{
    public long Started;
    public CostTotals Totals;
    public Mass FreightMass;
    public Mass HeaviestCarton;
    public long Cartons;
    public int DiscountStep;
    public bool DeliveryIsFree;
    public decimal DeliveryStep;
    public Problem? Problem;
}

/// <content>The order of work at one quantity: lines, discount, minimum, delivery, tax, bench.</content>
public sealed partial class PreparedJob
{
    private const int MostOnStack = 48;

    // Below this no figure that follows from the cost of a run, at any quantity, leaves what a decimal holds.
    private const decimal MostCost = 1_000_000_000_000_000m;

    private static readonly Problem TooMuch =
        new("$", null, $"The run would cost more than {Text.Of(MostCost)}; look for a price, a time or a mass that is too large.");

    private int PriceCount => print.Length + paper.Length;

    private OrderFigures Work<TSink>(int quantity, Span<SheetsTaken> taken, ref TSink sink, RisingOvers? rising = null)
        where TSink : struct, ILineSink
    {
        var figures = default(OrderFigures);
        try
        {
            figures.Problem = Start(quantity, rising, ref figures);
            if (figures.Problem is null)
            {
                WorkOut(taken, ref figures, ref sink);
            }
        }
        catch (OverflowException)
        {
            figures.Problem = TooMuch;
        }

        return figures.Problem is { } problem ? new OrderFigures { Problem = problem } : figures;
    }

    // Units of every price, sheets taken for every part, and the prices in the order in which parts first use them.
    private void WorkOut<TSink>(Span<SheetsTaken> taken, ref OrderFigures figures, ref TSink sink)
        where TSink : struct, ILineSink
    {
        var started = figures.Started;
        long sheets = 0;
        decimal flatGrams = 0m;
        decimal goods;
        if (book is null)
        {
            goods = PrintAndPaper(started, taken, ref sink, ref sheets, ref flatGrams);
        }
        else
        {
            goods = WholeBooks(started, ref sink);
        }

        goods += SetUp(ref sink);
        goods += Finish(started, sheets, ref sink);
        figures.Totals = figures.Totals with { Goods = goods };
        Freight(started, flatGrams, ref figures);
        if (figures.Problem is not null)
        {
            return;
        }

        Close(started, ref figures, ref sink);
        if (Math.Max(figures.Totals.Goods, figures.Totals.LandedCost) > MostCost)
        {
            figures.Problem = TooMuch;
        }
    }

    private Problem? Start(int quantity, RisingOvers? rising, ref OrderFigures figures)
    {
        if (quantity is < 1 or > Job.MostCopies)
        {
            return new Problem("$.quantity", Text.Of(quantity), $"A run has 1 to {Job.MostCopies} good copies.");
        }

        if ((rising is null ? copiesToStart.For(quantity) : rising.For(quantity)) is not { } needed)
        {
            return new Problem("$.quantity", Text.Of(quantity), "So much is spoiled that more than a thousand million copies would have to be started.");
        }

        figures.Started = needed;
        var sold = job.Shop.Quantities;
        if (sold.Count == 0)
        {
            return null;
        }

        foreach (var packed in sold)
        {
            if (packed >= needed)
            {
                figures.Started = packed;
                return null;
            }
        }

        return new Problem(
            "$.quantity", Text.Of(quantity), $"{needed} copies would have to be started and the shop sells {sold[^1]} at most.");
    }

    private decimal PrintAndPaper<TSink>(long started, Span<SheetsTaken> taken, ref TSink sink, ref long allSheets, ref decimal flatGrams)
        where TSink : struct, ILineSink
    {
        var count = PriceCount;
        Span<long> units = count <= MostOnStack ? stackalloc long[count] : new long[count];
        Span<int> order = count <= MostOnStack ? stackalloc int[count] : new int[count];
        units.Clear();
        var used = 0;
        for (var index = 0; index < lots.Length; index++)
        {
            taken[index] = Take(lots[index], started);
            ref readonly var sheet = ref lots[index].Candidates[taken[index].Candidate];
            var sheets = taken[index].Sheets;
            allSheets += sheets;
            if (Delivers == Delivered.FlatSheets)
            {
                flatGrams += sheets * sheet.SheetMass.Grams;
            }

            Use(sheet.OutsidePrice, sheets, units, order, ref used);
            Use(sheet.InsidePrice, sheets, units, order, ref used);
            Use(print.Length + sheet.PaperPrice, sheets, units, order, ref used);
        }

        var goods = 0m;
        for (var index = 0; index < used; index++)
        {
            if (order[index] < print.Length)
            {
                goods += Charge(CostCode.Print, InkSubject.Of(job.Shop.Print[order[index]].Ink), print[order[index]], units[order[index]], ref sink);
            }
        }

        for (var index = 0; index < used; index++)
        {
            if (order[index] >= print.Length)
            {
                var price = order[index] - print.Length;
                goods += Charge(CostCode.Paper, job.Shop.Paper[price].StockId, paper[price], units[order[index]], ref sink);
            }
        }

        return goods;
    }

    private static void Use(int price, long sheets, Span<long> units, Span<int> order, ref int used)
    {
        // A second half of no copies takes nothing and must not be counted twice among the prices in use.
        if (price < 0 || sheets == 0)
        {
            return;
        }

        if (units[price] == 0)
        {
            order[used++] = price;
        }

        units[price] += sheets;
    }

    // Each part by itself takes the sheet with the lowest unrounded print and paper charge; of equals the first listed.
    private SheetsTaken Take(in Lot lot, long started)
    {
        var choices = lot.Candidates;
        var copies = lot.Copies(started);
        var best = default(SheetsTaken);
        var lowest = 0m;
        for (var index = 0; index < choices.Length; index++)
        {
            var (sheets, layout) = SheetCount.Of(job.Shop.Layout, lot.Pieces.Count, choices[index].PiecesPerSheet, copies);
            if (choices.Length == 1)
            {
                return new SheetsTaken(0, sheets, layout);
            }

            var charge = AloneCharge(choices[index], sheets);
            if (index == 0 || charge < lowest)
            {
                (best, lowest) = (new SheetsTaken(index, sheets, layout), charge);
            }
        }

        return best;
    }

    private decimal AloneCharge(in SheetCandidate sheet, long sheets)
    {
        var charge = paper[sheet.PaperPrice].Charge(sheets);
        if (sheet.OutsidePrice == sheet.InsidePrice)
        {
            return sheet.OutsidePrice < 0 ? charge : charge + print[sheet.OutsidePrice].Charge(2 * sheets);
        }

        charge += sheet.OutsidePrice < 0 ? 0m : print[sheet.OutsidePrice].Charge(sheets);
        return charge + (sheet.InsidePrice < 0 ? 0m : print[sheet.InsidePrice].Charge(sheets));
    }

    private decimal Charge<TSink>(CostCode code, string subject, in StepPrices price, long units, ref TSink sink)
        where TSink : struct, ILineSink
    {
        var reached = price.Reached(units);
        if (price.Rule == StepRule.AllUnits)
        {
            return Line(code, subject, units, price.Each(reached), ref sink);
        }

        var sum = 0m;
        for (var step = 0; step <= reached; step++)
        {
            sum += Line(code, subject, price.UnitsIn(step, units), price.Each(step), ref sink);
        }

        return sum;
    }

    private decimal WholeBooks<TSink>(long started, ref TSink sink)
        where TSink : struct, ILineSink
    {
        var reached = BookStepReached(started);
        return Line(CostCode.Book, string.Empty, started, reached.Each + (reached.PerPage * bookPages), ref sink);
    }

    private BookStep BookStepReached(long started)
    {
        var steps = book!.Steps;
        var index = steps.Count - 1;
        while (index > 0 && steps[index].From > started)
        {
            index--;
        }

        return steps[index];
    }

    private decimal SetUp<TSink>(ref TSink sink)
        where TSink : struct, ILineSink
    {
        var setUp = job.Shop.SetUp;
        return Once(CostCode.SetUpOrder, string.Empty, setUp.Order, ref sink)
            + Once(CostCode.SetUpEdition, string.Empty, setUp.Edition, ref sink)
            + Line(CostCode.SetUpPart, string.Empty, job.Edition.Parts.Count, setUp.Part, ref sink);
    }

    private decimal Finish<TSink>(long started, long sheets, ref TSink sink)
        where TSink : struct, ILineSink
    {
        var sum = 0m;
        foreach (var operation in finishing)
        {
            var count = operation.Per switch
            {
                FinishingUnit.Copy => started,
                FinishingUnit.Sheet => sheets,
                FinishingUnit.Piece => Block.PiecesPerCopy * started,
                FinishingUnit.Cut => job.Edition.Trim.EdgeCount * started,
                _ => 1,
            };
            var amount = job.Currency.Round(Math.Max(count * operation.Each, operation.Minimum));
            sink.Add(new CostLine(CostCode.Finishing, operation.Name, count, operation.Each, amount) { AtMinimum = count * operation.Each < operation.Minimum });
            sum += amount;
        }

        return sum;
    }

    private decimal Line<TSink>(CostCode code, string subject, decimal quantity, decimal each, ref TSink sink)
        where TSink : struct, ILineSink
    {
        var amount = job.Currency.Round(quantity * each);
        sink.Add(new CostLine(code, subject, quantity, each, amount));
        return amount;
    }

    private decimal Once<TSink>(CostCode code, string subject, decimal charge, ref TSink sink)
        where TSink : struct, ILineSink
    {
        var amount = job.Currency.Round(charge);
        sink.Add(new CostLine(code, subject, 1m, amount, amount));
        return amount;
    }
}
