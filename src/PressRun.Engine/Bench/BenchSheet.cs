using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Imposing;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Bench;

/// <summary>All that is needed at the table to make books of the prints of a run.</summary>
/// <param name="Estimate">The run at its quantity.</param>
/// <param name="Imposition">Stapler's stop, staple places, and the cuts of the book.</param>
/// <param name="Sheets">What is printed.</param>
/// <param name="Apart">How it is cut apart; empty where the shop sends no flat sheets.</param>
/// <param name="Piles">In collating order.</param>
/// <param name="Steps">In the order of work.</param>
/// <param name="Book">A copy as the virtual fold reads it, with every sheet turned over as it asks for.</param>
/// <param name="Turns">How the shop must turn the sheets of each part over.</param>
/// <param name="Cautions">What may go wrong, by the press's own limits.</param>
public sealed record BenchSheet(
    Estimate Estimate,
    Imposition Imposition,
    IReadOnlyList<ImposedSheet> Sheets,
    IReadOnlyList<ApartPlan> Apart,
    IReadOnlyList<Pile> Piles,
    IReadOnlyList<WorkStep> Steps,
    FoldedBook Book,
    IReadOnlyList<TurnAdvice> Turns,
    IReadOnlyList<BenchCaution> Cautions)
{
    /// <summary>A copy after binding and before it is trimmed; of leaves, the leaf.</summary>
    public Size Untrimmed { get; init; }

    /// <summary>Paper that a staple goes through; zero where nothing is stapled.</summary>
    public Length UnderStaple { get; init; }

    /// <summary>Mass of all good copies, without their boxes.</summary>
    public Mass Packed => Estimate.Quantity * Estimate.Copy.Mass;

    /// <summary>Most copies of a box that one person may lift, at least 1; the box itself is left out.</summary>
    public long CopiesInBox => Math.Max(1L, (long)decimal.Floor(FreightEstimate.LiftingLimit.Grams / Estimate.Copy.Mass.Grams));

    /// <summary>Staples that so many copies take; 0 where nothing is stapled.</summary>
    /// <param name="copies">0 or more.</param>
    public long StaplesOf(long copies) => copies * Imposition.StaplesFromHead.Count;

    /// <summary>The sheet of a run.</summary>
    /// <param name="prepared">The run's job.</param>
    /// <param name="estimate">The same at its quantity.</param>
    /// <param name="limits">From where on the press wants to be warned.</param>
    public static BenchSheet Of(PreparedJob prepared, Estimate estimate, BenchLimits limits)
    {
        var (imposition, sheets) = (prepared.Impose(), SheetImposer.Impose(prepared, estimate));
        List<ImposedSheet> ofOneCopy = [.. sheets.Where(sheet => sheet.Half is null or 1)];
        var cautions = BenchCaution.Of(prepared, estimate, limits);
        var scored = cautions.Any(caution => caution.Code == BenchCautionCode.FoldUnscored);
        return new BenchSheet(
            estimate,
            imposition,
            sheets,
            prepared.Delivers == Delivered.FlatSheets ? PlansOf(sheets) : [],
            PilesOf(prepared, estimate, imposition, sheets),
            WorkList.Of(prepared, estimate.CopiesToStart, estimate.Quantity, scored),
            VirtualFold.Read(prepared.Block, ofOneCopy),
            VirtualFold.Advise(prepared.Block, ofOneCopy),
            cautions)
        {
            Untrimmed = UntrimmedOf(prepared.Job.Edition),
            UnderStaple = BenchCaution.UnderStaple(prepared),
        };
    }

    private static Size UntrimmedOf(Edition edition)
    {
        var (page, trim) = (edition.Page, edition.Trim);
        return new Size(page.Width + trim.ForeEdge + trim.Spine, page.Height + trim.Head + trim.Foot);
    }

    private static List<ApartPlan> PlansOf(IReadOnlyList<ImposedSheet> sheets) =>
    [
        .. sheets.GroupBy(sheet => (sheet.Sheet, string.Join(' ', sheet.Stacks.Select(stack => stack.Place.Box))))
            .Select(alike => new ApartPlan(alike.First(), [.. alike.Select(sheet => sheet.Number)], ApartCuts.Of(alike.First()))),
    ];

    // Where the shop cuts, what repeated places give beyond the copies started stays with it.
    private static List<Pile> PilesOf(PreparedJob prepared, Estimate estimate, Imposition imposition, IReadOnlyList<ImposedSheet> sheets)
    {
        var from = sheets.SelectMany(sheet => sheet.Stacks.Where(stack => stack.Pile is not null).Select(stack => (Pile: stack.Pile!.Value, Sheet: sheet)))
            .ToLookup(stack => stack.Pile, stack => stack.Sheet);
        return
        [
            .. imposition.Pieces.Select(piece =>
            {
                var index = from[piece.Number].First().PartIndex;
                var pieces = prepared.Delivers == Delivered.FlatSheets ? from[piece.Number].Sum(sheet => sheet.Prints) : estimate.CopiesToStart;
                var second = prepared.Job.SecondHalf?.Part == index ? prepared.OtherHalf?.Parts[index] : null;
                return new Pile(
                    piece.Number, prepared.Block.Parts[index], index, piece.Outer, piece.Inner, pieces,
                    [.. from[piece.Number].Select(sheet => sheet.Number).Distinct()],
                    piece.Outer.Count == 2 ? PieceFaces.Of(prepared.Block, prepared.Block.Parts[index].Piece, piece).Folds : [])
                {
                    SecondHalf = second,
                };
            }),
        ];
    }
}
