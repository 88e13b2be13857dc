using PressRun.Engine.Bench;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Costing;

/// <summary>
/// A job whose quantity-independent work (pieces, layouts, prices, postage, channels) is done once, so that each quantity costs
/// microseconds. Immutable and thread-safe.
/// </summary>
public sealed partial class PreparedJob
{
    private readonly Job job;
    private readonly JobTables tables;
    private readonly Lot[] lots;
    private readonly StepPrices[] print;
    private readonly StepPrices[] paper;
    private readonly BookPrice? book;
    private readonly int bookPages;
    private readonly Finishing[] finishing;
    private readonly CopiesToStart copiesToStart;
    private readonly BenchTime benchTime;
    private readonly (BenchStep Step, BenchTime Time)[] benchSteps;
    private readonly Mass sentCopy;
    private readonly Mass sentOtherHalf;
    private readonly Consumable[] consumables;
    private readonly FixedCost[] fixedCosts;
    private readonly decimal fixedCostsSum;
    private readonly PreparedChannel[] channels;

    private PreparedJob(Job job, JobTables tables, BookBlock block, BookBlock? otherHalf, Lot[] lots, BookPrice? book)
    {
        this.job = job;
        this.tables = tables;
        Block = block;
        OtherHalf = otherHalf;
        this.lots = lots;
        this.book = book;
        bookPages = job.Edition.Parts.Sum(part => part.Pages);
        print = tables.Print;
        paper = tables.Paper;
        finishing = [.. job.Shop.Finishing];
        Delivers = job.Shop.Delivers ?? (book is null ? Delivered.FlatSheets : Delivered.TrimmedCopies);
        ShopCollates = Collates(job, book, otherHalf);
        copiesToStart = tables.CopiesToStart(ShopCollates);
        var stepsLeft = BenchTime.StepsLeftToDo(job.Bench.Steps, ShopCollates);
        BoundBy = (job.Bench with { Steps = stepsLeft }).Binds && book is null ? BoundBy.Bench
            : book is not null || job.Shop.Finishing.Count > 0 || job.Edition.Binding == Binding.Loose ? BoundBy.Shop
            : BoundBy.NobodyYet;
        benchTime = new BenchTime(stepsLeft, block.PiecesPerCopy, job.Edition.Trim.EdgeCount);
        benchSteps = [.. stepsLeft.Select(step => (step, new BenchTime([step], block.PiecesPerCopy, job.Edition.Trim.EdgeCount)))];
        sentCopy = Sent(block);
        sentOtherHalf = otherHalf is null ? Mass.Zero : Sent(otherHalf);
        consumables = [.. job.Bench.Consumables];
        fixedCosts = [.. job.Edition.FixedCosts];
        fixedCostsSum = fixedCosts.Sum(cost => job.Currency.Round(cost.Amount));
        Copy = CopyOf(block);
        channels = [.. job.Channels.Select(channel => PreparedChannel.Of(channel, tables, Copy))];
    }

    /// <summary>The job as it was prepared.</summary>
    public Job Job => job;

    /// <summary>The edition as an object.</summary>
    public BookBlock Block { get; }

    /// <summary>Who makes books of the sheets. Where it is nobody yet, no line of the estimate pays for it.</summary>
    public BoundBy BoundBy { get; }

    /// <summary>True where the press makes books of sheets at its own table.</summary>
    public bool BoundAtHome => BoundBy == BoundBy.Bench;

    /// <summary>What the shop sends: as its list says, else finished copies of whole books and flat sheets of the rest.</summary>
    public Delivered Delivers { get; }

    /// <summary>True where the shop lays the pieces of a copy together.</summary>
    public bool ShopCollates { get; }

    /// <summary>The edition on the second half's paper; null where the whole run is on the same papers.</summary>
    public BookBlock? OtherHalf { get; }

    /// <summary>What is printed together, as the parts of an estimate stand: one for each part, two for a part of which each half of the run is on a stock of its own.</summary>
    public IReadOnlyList<PartPieces> OrderedPieces => lots.Length > 0 ? [.. lots.Select(lot => lot.Pieces)] : Block.Parts;

    /// <summary>One finished copy, as weighed or gauged where it was, else as reckoned.</summary>
    public CopyEstimate Copy { get; }

    /// <summary>Steps of the press's table that are left to it, in the order of work.</summary>
    public IReadOnlyList<BenchStep> StepsAtTable => [.. benchSteps.Select(step => step.Step)];

    /// <summary>What each step at the table takes, in the order of work; together they take the hours of the estimate.</summary>
    /// <param name="copiesToStart">Copies that go into every step, 1 or more.</param>
    public IReadOnlyList<PlannedStep> BenchSteps(long copiesToStart) =>
        [.. benchSteps.Select(step => new PlannedStep(step.Step.Name, step.Time.Seconds(copiesToStart) / SecondsPerMinute))];

    /// <summary>Checks the rules that hold across a job's fields and prepares it.</summary>
    /// <param name="job">The job, each of its values within its own range.</param>
    /// <returns>The prepared job, or every problem found.</returns>
    public static Outcome<PreparedJob> Prepare(Job job)
    {
        var tables = JobTables.Of(job);
        return !tables.Succeeded ? Outcome<PreparedJob>.Refused(tables.Problems)
            : job.SecondHalf is { } half ? PrepareHalves(job with { SecondHalf = null }, half.Part, job.Edition.Parts[half.Part].StockId, half.StockId)
            : Prepare(job, tables.Value);
    }

    /// <summary>Prepares a job with the tables of one that differs from it in its parts' stocks alone.</summary>
    internal static Outcome<PreparedJob> Prepare(Job job, JobTables tables)
    {
        var problems = new List<Problem>();
        var block = BookBlock.Of(job.Edition, tables.Stocks);
        var book = BookFor(job);
        Lot[] lots = [];
        if (book is not null)
        {
            JobRules.CheckWholeBooks(job.Shop, problems);
        }
        else if (job.Shop.Sheets.Count == 0)
        {
            problems.Add(new Problem(
                "$.shop.bookPrices", null, "No whole-book price fits this binding, page count and these stocks, and the shop prices no sheets, print and paper."));
        }
        else
        {
            var layouts = new LayoutCounts(tables.MixedLayouts);
            lots = [.. block.Parts.Select((part, index) => new Lot(part, Share.All, SheetChoice.Candidates(job, tables, part, index, layouts, problems)))];
        }

        return problems.Count > 0
            ? Outcome<PreparedJob>.Refused(problems)
            : Outcome<PreparedJob>.Of(new PreparedJob(job, tables, block, null, lots, book));
    }

    /// <summary>The same job with what the scale and the gauge say of its copy: neither the block nor the choice of sheets hangs on that.</summary>
    internal PreparedJob AsWeighed(Weighed weighed) => new(job with { Edition = job.Edition with { Weighed = weighed } }, tables, Block, OtherHalf, lots, book);

    internal CopyEstimate CopyOf(BookBlock block) => CopyEstimate.Of(block, job.Edition.Weighed, job.Bench.FittingsMass);

    private static BookPrice? BookFor(Job job)
    {
        var pages = job.Edition.Parts.Sum(part => part.Pages);
        return job.Shop.BookPrices.FirstOrDefault(price =>
            price.Binding == job.Edition.Binding
            && price.PagesFrom <= pages
            && pages <= price.PagesTo
            && (price.StockIds is null || price.StockIds.SequenceEqual(job.Edition.Parts.Select(part => part.StockId), StringComparer.Ordinal)));
    }

    // Where it lays only copies of one stock together, both halves must be such copies.
    private static bool Collates(Job job, BookPrice? book, BookBlock? otherHalf) =>
        book is not null
        || job.Shop.Collates == Collating.Always
        || (job.Shop.Collates == Collating.SameStock
            && job.Edition.Parts.All(part => part.StockId == job.Edition.Parts[0].StockId)
            && (otherHalf is null || otherHalf.Parts.All(part => part.Stock.Id == otherHalf.Parts[0].Stock.Id)));
}
