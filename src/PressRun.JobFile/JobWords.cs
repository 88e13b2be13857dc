using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Engine.Sheets;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile;

/// <summary>Every word of the contract that stands for a choice. Written out, so that renaming a value in the code changes no file.</summary>
public static class JobWords
{
    /// <summary>How an edition is bound.</summary>
    public static Words<Binding> Bindings { get; } =
        new(("saddle", Binding.Saddle), ("side", Binding.Side), ("perfect", Binding.Perfect), ("loose", Binding.Loose));

    /// <summary>Shapes of a fold.</summary>
    public static Words<FoldShape> Folds { get; } = new(("flat", FoldShape.Flat), ("rounded", FoldShape.Rounded));

    /// <summary>Inks of a side.</summary>
    public static Words<Ink> Inks { get; } = new(("colour", Ink.Colour), ("black", Ink.Black), ("none", Ink.None));

    /// <summary>Inks that have a price.</summary>
    public static Words<Ink> PrintedInks { get; } = new(("colour", Ink.Colour), ("black", Ink.Black));

    /// <summary>Finishes of a stock.</summary>
    public static Words<Finish> Finishes { get; } = new(("coated", Finish.Coated), ("uncoated", Finish.Uncoated));

    /// <summary>Which way the grain runs.</summary>
    public static Words<GrainRule> Grains { get; } = new(("any", GrainRule.Any), ("parallelToSpine", GrainRule.ParallelToSpine));

    /// <summary>Layouts on a sheet.</summary>
    public static Words<Layout> Layouts { get; } = new(
        ("best", Layout.Best), ("stepAndRepeat", Layout.StepAndRepeat), ("cutAndStack", Layout.CutAndStack), ("combined", Layout.Combined));

    /// <summary>How steps are read.</summary>
    public static Words<StepRule> StepRules { get; } = new(("allUnits", StepRule.AllUnits), ("incremental", StepRule.Incremental));

    /// <summary>What finishing is counted by.</summary>
    public static Words<FinishingUnit> FinishingUnits { get; } = new(
        ("copy", FinishingUnit.Copy), ("sheet", FinishingUnit.Sheet), ("piece", FinishingUnit.Piece), ("cut", FinishingUnit.Cut), ("edition", FinishingUnit.Edition));

    /// <summary>Whether the shop collates.</summary>
    public static Words<Collating> Collating { get; } =
        new(("always", Engine.Costing.Collating.Always), ("sameStock", Engine.Costing.Collating.SameStock), ("never", Engine.Costing.Collating.Never));

    /// <summary>What the shop sends.</summary>
    public static Words<Delivered> Delivered { get; } = new(
        ("flatSheets", Engine.Costing.Delivered.FlatSheets),
        ("cutPieces", Engine.Costing.Delivered.CutPieces),
        ("untrimmedCopies", Engine.Costing.Delivered.UntrimmedCopies),
        ("trimmedCopies", Engine.Costing.Delivered.TrimmedCopies));

    /// <summary>How overs are found.</summary>
    public static Words<OversMode> OversModes { get; } = new(("plain", OversMode.Plain), ("assured", OversMode.Assured));

    /// <summary>Limits of a postal service.</summary>
    public static Words<PostageLimit> PostageLimits { get; } = new(
        ("length", PostageLimit.Length), ("width", PostageLimit.Width), ("thickness", PostageLimit.Thickness), ("mass", PostageLimit.Mass));

    /// <summary>Edges that are cut.</summary>
    public static Words<Edge> Edges { get; } = new(("spine", Edge.Spine), ("head", Edge.Head), ("foreEdge", Edge.ForeEdge), ("foot", Edge.Foot));

    /// <summary>Kinds of paper that a basis weight names.</summary>
    public static Words<PaperCategory> PaperCategories { get; } = new(
        ("bond", PaperCategory.Bond),
        ("text", PaperCategory.Text),
        ("cover", PaperCategory.Cover),
        ("index", PaperCategory.Index),
        ("tag", PaperCategory.Tag),
        ("bristol", PaperCategory.Bristol));

    /// <summary>What a warning is about.</summary>
    public static Words<WarningCode> Warnings { get; } = new(
        ("creepExceedsTrim", WarningCode.CreepExceedsTrim),
        ("caliperEstimated", WarningCode.CaliperEstimated),
        ("heavyCarton", WarningCode.HeavyCarton),
        ("mailerTooSmall", WarningCode.MailerTooSmall),
        ("noPostage", WarningCode.NoPostage),
        ("nearPostageStep", WarningCode.NearPostageStep),
        ("noBreakEvenPrice", WarningCode.NoBreakEvenPrice),
        ("breakEvenBeyondRun", WarningCode.BreakEvenBeyondRun));
}
