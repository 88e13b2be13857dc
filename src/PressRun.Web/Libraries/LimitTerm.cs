using PressRun.Data.Import.Tables;
using PressRun.Engine.Bench;
using PressRun.Engine.Measures;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Web.Libraries;

/// <summary>One of the limits from which on a press wants to be warned.</summary>
/// <param name="Key">Its name among drafts.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Kind">What it holds.</param>
/// <param name="Get">Its value.</param>
/// <param name="Set">The limits with another value.</param>
public sealed record LimitTerm(string Key, string Title, CellKind Kind, Func<BenchLimits, object> Get, Func<BenchLimits, object, BenchLimits> Set)
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<LimitTerm> All =>
    [
        new("leg", Say($"A staple's leg is"), new LengthCell(JobRules.Allowance), limits => limits.StapleLeg, (limits, value) => limits with { StapleLeg = (Length)value }),
        new("bent", Say($"Of it, bent over"), new LengthCell(JobRules.Allowance), limits => limits.Clinch, (limits, value) => limits with { Clinch = (Length)value }),
        new("score", Say($"Score folds of paper over"), new NumberCell(Grammage, "g/m²"), limits => limits.ScoreOver, (limits, value) => limits with { ScoreOver = (decimal)value }),
        new("grain", Say($"Mind the grain of paper over"), new NumberCell(Grammage, "g/m²"), limits => limits.GrainOver, (limits, value) => limits with { GrainOver = (decimal)value }),
        new("creep", Say($"Creep may exceed the trim by"), new LengthCell(JobRules.Allowance), limits => limits.CreepBeyondTrim, (limits, value) => limits with { CreepBeyondTrim = (Length)value }),
    ];

    private static NumberRule Grammage => new(Say($"Write a weight in g/m² from 0 to 10,000."), 0m, 10_000m);

    /// <summary>Says where a limit is nobody's own; null where it is.</summary>
    public string? Usual(BenchLimits limits) => Get(limits).Equals(Get(BenchLimits.Usual)) ? Say($"common practice") : null;
}
