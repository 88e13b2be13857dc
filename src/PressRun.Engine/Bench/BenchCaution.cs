using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Imposing;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Bench;

/// <summary>What may go wrong at the table.</summary>
public enum BenchCautionCode
{
    /// <summary>A part is folded across the grain of its paper.</summary>
    AgainstGrain,

    /// <summary>The same of paper that the shop scores or folds.</summary>
    AgainstGrainScored,

    /// <summary>Inner leaves stand out further than the fore-edge trim takes off.</summary>
    CreepBeyondTrim,

    /// <summary>The paper is too thick for the staple's leg.</summary>
    StapleTooShort,

    /// <summary>A part is too heavy to be folded without a scored line.</summary>
    FoldUnscored,
}

/// <summary>A caution before printing, measured against the press's own limits.</summary>
/// <param name="Code">What it is about.</param>
/// <param name="Part">The part; null where it is about the whole book.</param>
/// <param name="Has">What the book has, of creep or of paper under a staple; zero for the others, which are about the part's grammage.</param>
/// <param name="May">What it may have; zero likewise.</param>
public sealed record BenchCaution(BenchCautionCode Code, PartPieces? Part, Length Has, Length May)
{
    /// <summary>The cautions of a run, in the order of their codes and then of the parts. What the shop staples, folds or scores is the shop's to judge.</summary>
    /// <param name="prepared">The run's job.</param>
    /// <param name="estimate">The same at its quantity.</param>
    /// <param name="limits">The press's own.</param>
    public static IReadOnlyList<BenchCaution> Of(PreparedJob prepared, Estimate estimate, BenchLimits limits)
    {
        var (block, cautions, mixtures) = (prepared.Block, new List<BenchCaution>(), new Mixtures(prepared.Job.Edition.Bleed));
        var byShop = prepared.BoundBy == BoundBy.Shop ? Enum.GetValues<WorkKind>() : Work.SoldBy(prepared.Job.Shop);
        var foldedByShop = byShop.Contains(WorkKind.Score) || byShop.Contains(WorkKind.Fold);
        var folded = Folded(block).Concat(prepared.OtherHalf is { } other ? Folded(other) : []).Distinct().ToList();
        cautions.AddRange(folded
            .Where(part => part.Stock.Weight.GramsPerSquareMetre > limits.GrainOver && AgainstGrain(prepared, estimate, part, mixtures))
            .Select(part => new BenchCaution(foldedByShop ? BenchCautionCode.AgainstGrainScored : BenchCautionCode.AgainstGrain, part, default, default)));
        var allowed = block.Edition.Trim.ForeEdge + limits.CreepBeyondTrim;
        if (estimate.MostCreep.Settled() > allowed)
        {
            cautions.Add(new BenchCaution(BenchCautionCode.CreepBeyondTrim, null, estimate.MostCreep, allowed));
        }

        if (!byShop.Contains(WorkKind.Staple) && UnderStaple(prepared) is var paper && paper.Settled() > limits.StapleHolds)
        {
            cautions.Add(new BenchCaution(BenchCautionCode.StapleTooShort, null, paper, limits.StapleHolds));
        }

        if (!foldedByShop)
        {
            cautions.AddRange(folded.Where(part => part.Stock.Weight.GramsPerSquareMetre > limits.ScoreOver)
                .Select(part => new BenchCaution(BenchCautionCode.FoldUnscored, part, default, default)));
        }

        return cautions;
    }

    // A sheet's grain runs along its height, and so does the spine of a piece that is not turned.
    private static bool AgainstGrain(PreparedJob prepared, Estimate estimate, PartPieces part, Mixtures mixtures)
    {
        var index = prepared.OrderedPieces.ToList().IndexOf(part);
        return index >= 0 && estimate.Parts[index].OnSheets is { } on
            && mixtures.AnyTurned(prepared.Job.Shop.Sheets.First(sheet => sheet.Id == on.SheetId), part.Piece);
    }

    /// <summary>Parts that are folded: every sheet of a saddle-stitched book, and the cover of a glued one.</summary>
    private static IEnumerable<PartPieces> Folded(BookBlock block) => block.Edition.Binding switch
    {
        Binding.Saddle => block.Parts,
        Binding.Perfect => block.Parts.Take(1),
        _ => [],
    };

    /// <summary>Thickness that a staple goes through: a sheet once at its fold, a leaf once at its side; nothing where nothing is stapled. Of a run on two
    /// papers, that of the thicker half.</summary>
    /// <param name="prepared">The run's job.</param>
    public static Length UnderStaple(PreparedJob prepared) =>
        prepared.OtherHalf is { } other && UnderStaple(other) is var second && second > UnderStaple(prepared.Block) ? second : UnderStaple(prepared.Block);

    private static Length UnderStaple(BookBlock block) => block.Edition.Binding is Binding.Saddle or Binding.Side
        ? block.Parts.Aggregate(Length.Zero, (sum, part) => sum + (part.Count * part.Stock.Caliper))
        : Length.Zero;
}
