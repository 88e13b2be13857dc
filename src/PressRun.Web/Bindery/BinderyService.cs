using PressRun.Data.Bench;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Imposing;

namespace PressRun.Web.Bindery;

/// <summary>A run as the table sees it.</summary>
/// <param name="Title">The title.</param>
/// <param name="Source">The plan with all that its costing needs.</param>
/// <param name="Limits">From where on the press wants to be warned.</param>
/// <param name="Prepared">The job; null where something stands in its way.</param>
/// <param name="Sheet">The bench sheet; null likewise.</param>
/// <param name="Problems">What stands in the way.</param>
public sealed record BinderyView(TitleRecord Title, JobSource Source, BenchLimits Limits, PreparedJob? Prepared, BenchSheet? Sheet, IReadOnlyList<Problem> Problems)
{
    /// <summary>The book that is folded from the sheets, read page by page; only where there is a bench sheet.</summary>
    /// <param name="turn">The edge that all sheets are turned about; null for the one that each asks for.</param>
    public FoldedBook Folded(TurnEdge? turn) => VirtualFold.Read(Prepared!.Block, Sheet!.Sheets, turn);

    /// <summary>The place of a part's paper among the book's papers, by which its sign is chosen.</summary>
    /// <param name="partIndex">The part, from the outside in, from 0.</param>
    public int SignOf(int partIndex)
    {
        var papers = Prepared!.Block.Parts.Select(part => part.Stock.Id).Distinct(StringComparer.Ordinal).ToList();
        return papers.IndexOf(Prepared.Block.Parts[partIndex].Stock.Id);
    }
}

/// <summary>Loads what is needed at the table for a run.</summary>
public sealed class BinderyService(TitleStore titles, EditionStore editions, PlanStore plans, BenchLimitsStore limits)
{
    /// <summary>A plan of a printing by the printing's address; the one it goes by where none is named. Null where there is none.</summary>
    public async Task<BinderyView?> LoadAsync(PressId press, string slug, int printing, Guid? planId)
    {
        if (await titles.FindAsync(press, slug) is not { } title || await editions.FindAsync(press, slug, printing) is not { } edition)
        {
            return null;
        }

        var plan = (await plans.OfEditionAsync(press, edition.Id)).NamedOrChosen(planId);
        return plan is not null && await plans.SourceAsync(press, plan.Id) is { } source ? Of(title, source, (await limits.LoadAsync(press)).Item) : null;
    }

    /// <summary>Works out what the table needs.</summary>
    public static BinderyView Of(TitleRecord title, JobSource source, BenchLimits limits)
    {
        var prepared = PreparedJob.Prepare(source.Build());
        var estimate = prepared.Succeeded ? prepared.Value.Estimate(source.Plan.Quantity) : Outcome<Estimate>.Refused(prepared.Problems);
        return !estimate.Succeeded ? new BinderyView(title, source, limits, null, null, estimate.Problems)
            : SheetImposer.TooMany(prepared.Value, estimate.Value) is { } problem ? new BinderyView(title, source, limits, null, null, [problem])
            : new BinderyView(title, source, limits, prepared.Value, BenchSheet.Of(prepared.Value, estimate.Value, limits), []);
    }
}
