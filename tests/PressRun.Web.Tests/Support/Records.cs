using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Engine.Paper;

namespace PressRun.Web.Tests.Support;

/// <summary>Stored rows for tests, of the same invented book.</summary>
public static class Records
{
    public static EditionRecord Edition()
    {
        var edition = ARun.Edition();
        return new EditionRecord(
            Guid.NewGuid(), Guid.NewGuid(), edition.Title, edition.Printing, ARun.Day, 100, 40, 6m, 0, edition.Page, edition.Binding, edition.Bleed, edition.Trim,
            edition.Fold, edition.Weighed, [.. edition.Parts.Select(part => new EditionPart(Guid.NewGuid(), part))], edition.FixedCosts, false, false, 1);
    }

    /// <summary>A plan of <see cref="ARun.Job"/> as it is read from the database.</summary>
    public static JobSource Source()
    {
        var (job, edition) = (ARun.Job, Edition());
        var plan = new PlanRecord(
            Guid.NewGuid(), edition.Id, "Willow, bound here", Guid.NewGuid(), "willow", job.Date, job.Quantity, null, new Dictionary<Guid, string>(), null, null, true, 1);
        return new JobSource(
            new PressRecord(new PressId(Guid.NewGuid()), "Reed Press", job.Currency.Code, UnitSystem.Metric, PaperRegion.Iso, job.ReclaimTax, 1),
            edition, plan, job.Shop, job.Stocks, job.Bench, job.Mailers, job.Postage, job.Channels);
    }
}
