using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;
using PressRun.JobFile;
using PressRun.Web.Charts;
using PressRun.Web.RunPlans;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Editions;

/// <summary>What an edition comes to as it stands: worked out on its plan, or what stands in the way.</summary>
/// <param name="Quantity">Copies it is worked out for.</param>
/// <param name="Estimate">The costing; null where something stands in the way.</param>
/// <param name="Shape">For the drawing; null where it cannot be drawn.</param>
/// <param name="Problems">What stands in the way.</param>
/// <param name="Job">What the costing was made from; null where there is none.</param>
/// <param name="BoundBy">Who makes books of the sheets; null where there is no costing.</param>
/// <param name="Source">The plan it is worked out on.</param>
public sealed record EditionConsequences(
    int Quantity, Estimate? Estimate, BookShape? Shape, IReadOnlyList<Problem> Problems, JobSource Source, Job? Job = null, BoundBy? BoundBy = null)
{
    /// <summary>True where nothing of the book itself stands in the way: a part as a whole stands in none, but may find no sheet with prices at the shop.</summary>
    public bool PartsFit => Problems.All(problem => !problem.Path.StartsWith("$.edition", StringComparison.Ordinal) || problem.Path.EndsWith(']'));

    /// <summary>Works an edition out on a plan.</summary>
    /// <param name="source">The plan with all that it needs.</param>
    /// <param name="edition">The edition as it is, or as it would be.</param>
    /// <param name="colour">Of its cover.</param>
    public static EditionConsequences Of(JobSource source, EditionRecord edition, string colour)
    {
        source = source with { Edition = edition };
        var quantity = source.Plan.Quantity;
        if (PageProblem(edition.Page) is { } refused)
        {
            return new EditionConsequences(quantity, null, null, [refused], source);
        }

        var prepared = PreparedJob.Prepare(source.Build());
        if (!prepared.Succeeded)
        {
            return new EditionConsequences(quantity, null, null, prepared.Problems, source);
        }

        var shape = BookShape.Of(prepared.Value.Block, prepared.Value.Impose(), colour);
        var estimate = prepared.Value.Estimate(quantity);
        return estimate.Succeeded
            ? new EditionConsequences(quantity, estimate.Value, shape, [], source, prepared.Value.Job, prepared.Value.BoundBy)
            : new EditionConsequences(quantity, null, shape, estimate.Problems, source);
    }

    // What is being typed may be no page yet.
    private static Problem? PageProblem(Size page) =>
        !JobRules.Side.Holds(page.Width) ? new Problem("$.edition.page.width", null, JobRules.Side.Sentence)
        : !JobRules.Side.Holds(page.Height) ? new Problem("$.edition.page.height", null, JobRules.Side.Sentence)
        : null;

    /// <summary>What stands in the way at a place of the edition, such as <c>parts[1].pages</c>; null where nothing does.</summary>
    public string? At(string place) =>
        Problems.Where(problem => problem.Path.StartsWith("$.edition." + place, StringComparison.Ordinal)).Select(problem => SayWhole(problem.Rule)).FirstOrDefault();

    /// <summary>All that stands in the way, in the press's own names, with where it is mended.</summary>
    public IEnumerable<PlanProblem> Standing(string editionAddress, PressFormat format) => Problems.Select(problem => PlanProblem.Of(problem, Source, editionAddress, format));

    /// <summary>Sheets of all parts; null where whole books are priced or nothing is worked out.</summary>
    public long? Sheets => Estimate is { } estimate && estimate.Parts.All(part => part.OnSheets is not null)
        ? estimate.SheetsInAll
        : null;

    /// <summary>Mass of a copy.</summary>
    public Mass? CopyMass => Estimate?.Copy.Mass;

    /// <summary>Thickness of a copy.</summary>
    public Length? CopyThickness => Estimate?.Copy.Thickness;

    /// <summary>Days from the order of such a run to finished copies; null where nothing is worked out.</summary>
    public int? LeadDays => Estimate is { } estimate ? Engine.Copies.LeadTime.Days(Job!.Shop.Order.LeadDays, estimate) : null;

    /// <summary>Landed cost of the run.</summary>
    public decimal? LandedCost => Estimate?.Totals.LandedCost;

    /// <summary>Landed cost of a copy, not rounded.</summary>
    public decimal? UnitCost => Estimate?.UnitCost;

    /// <summary>The first channel's mail that some service takes.</summary>
    public PostageChoice? Posted => Estimate?.Postage.FirstOrDefault(choice => choice.ServiceId is not null);
}
