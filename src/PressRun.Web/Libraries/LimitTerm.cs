using PressRun.Data.Import.Tables;
using PressRun.Engine.Bench;
using PressRun.Engine.Measures;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Web.Libraries;

/// <summary>One of the limits from which on a press wants to be warned.</summary>
/// <param name="Title">What it is called.</param>
/// <param name="Kind">What it holds.</param>
/// <param name="Get">Its value.</param>
/// <param name="Set">The limits with another value.</param>
public sealed record LimitTerm(string Title, CellKind Kind, Func<BenchLimits, object> Get, Func<BenchLimits, object, BenchLimits> Set)
{
    private static readonly NumberRule Grammage = new("Write a weight in g/m² from 0 to 10,000.", 0m, 10_000m);

    /// <summary>All of them.</summary>
    public static IReadOnlyList<LimitTerm> All { get; } =
    [
        new("A staple's leg is", new LengthCell(JobRules.Allowance), limits => limits.StapleLeg, (limits, value) => limits with { StapleLeg = (Length)value }),
        new("Of it, bent over", new LengthCell(JobRules.Allowance), limits => limits.Clinch, (limits, value) => limits with { Clinch = (Length)value }),
        new("Score folds of paper over", new NumberCell(Grammage, "g/m²"), limits => limits.ScoreOver, (limits, value) => limits with { ScoreOver = (decimal)value }),
        new("Mind the grain of paper over", new NumberCell(Grammage, "g/m²"), limits => limits.GrainOver, (limits, value) => limits with { GrainOver = (decimal)value }),
        new("Creep may exceed the trim by", new LengthCell(JobRules.Allowance), limits => limits.CreepBeyondTrim, (limits, value) => limits with { CreepBeyondTrim = (Length)value }),
    ];

    /// <summary>Says where a limit is nobody's own; null where it is.</summary>
    public string? Usual(BenchLimits limits) => Get(limits).Equals(Get(BenchLimits.Usual)) ? "common practice" : null;
}
