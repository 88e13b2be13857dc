using PressRun.Engine.Measures;

namespace PressRun.Engine.Bench;

/// <summary>One step of the work at the press's own table.</summary>
/// <param name="Name">What it is; a step named <c>collate</c> falls away where the shop collates, and one named <c>pack</c> binds nothing.</param>
/// <param name="SetUpMinutes">Minutes once a run.</param>
/// <param name="SecondsPerCopy">Seconds for each copy started.</param>
/// <param name="SecondsPerPiece">Seconds for each piece of each copy started.</param>
/// <param name="SecondsPerCut">Seconds for each trimmed edge of each pile.</param>
/// <param name="CopiesPerPile">Copies cut together, at least 1.</param>
/// <param name="Spoilage">Part that goes wrong, 0 up to but not including 1.</param>
public sealed record BenchStep(
    string Name,
    decimal SetUpMinutes,
    decimal SecondsPerCopy,
    decimal SecondsPerPiece,
    decimal SecondsPerCut,
    int CopiesPerPile,
    decimal Spoilage)
{
    /// <summary>Name of the step that packs finished copies, whoever bound them.</summary>
    public const string Pack = "pack";
}

/// <summary>A step at the table as a plan has it.</summary>
/// <param name="Name">What is done.</param>
/// <param name="Minutes">Time with its set-up, not rounded.</param>
public sealed record PlannedStep(string Name, decimal Minutes);

/// <summary>Something used up by each copy started.</summary>
/// <param name="Name">What it is.</param>
/// <param name="PerCopy">Cost for each copy.</param>
public sealed record Consumable(string Name, decimal PerCopy);

/// <summary>How the copies to start are found.</summary>
public enum OversMode
{
    /// <summary>Good copies over the share that survives, rounded up.</summary>
    Plain,

    /// <summary>Enough that the good copies are reached with a given confidence.</summary>
    Assured,
}

/// <summary>How many more copies are started than wanted.</summary>
/// <param name="Mode">Plain or assured.</param>
/// <param name="Confidence">For assured: probability of reaching the quantity, more than 0 and less than 1.</param>
public readonly record struct Overs(OversMode Mode, decimal Confidence)
{
    /// <summary>The confidence used where none is named.</summary>
    public const decimal UsualConfidence = 0.95m;
}

/// <summary>The press's own table: what its hours cost and how long things take.</summary>
/// <param name="HourlyRate">Price of an hour; may be 0.</param>
/// <param name="Paid">True where the hours are paid in cash.</param>
/// <param name="Steps">In the order of work.</param>
/// <param name="Consumables">Staples, blades.</param>
/// <param name="FittingsMass">Mass of all fittings of one copy.</param>
/// <param name="Overs">How overs are found.</param>
/// <param name="StapleFromSpine">Distance of a side staple from the spine.</param>
public sealed record BenchRates(
    decimal HourlyRate,
    bool Paid,
    IReadOnlyList<BenchStep> Steps,
    IReadOnlyList<Consumable> Consumables,
    Mass FittingsMass,
    Overs Overs,
    Length StapleFromSpine)
{
    /// <summary>True where a step is done here that makes a book of sheets: any but packing.</summary>
    public bool Binds => Steps.Any(step => step.Name != BenchStep.Pack);

    /// <summary>Distance of a side staple from the spine where none is named: 5 mm (common practice).</summary>
    public static readonly Length UsualStapleFromSpine = Length.FromMillimetres(5m);

    /// <summary>A press that does nothing itself.</summary>
    public static BenchRates None { get; } =
        new(0m, false, [], [], Mass.Zero, new Overs(OversMode.Plain, Overs.UsualConfidence), UsualStapleFromSpine);
}
