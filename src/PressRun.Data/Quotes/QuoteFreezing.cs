using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Engine.Quoting;
using PressRun.JobFile;
using PressRun.JobFile.Results;

namespace PressRun.Data.Quotes;

/// <summary>What the maker decides when a plan is frozen.</summary>
/// <param name="Until">Last day on which it can be agreed to.</param>
/// <param name="Shows">How much its readers see.</param>
/// <param name="Note">To all readers; may be empty.</param>
/// <param name="Bill">Who carries what; empty where nobody but the press pays.</param>
public sealed record QuoteTerms(DateOnly Until, QuoteShows Shows, string Note, IReadOnlyList<BillPart> Bill);

/// <summary>Makes a quote of a plan: its job as the job file holds it, and its costing as the command line answers it.</summary>
public static class QuoteFreezing
{
    /// <summary>Works the plan out and puts it in the form that is frozen.</summary>
    /// <param name="id">The quote's, made by whoever asks.</param>
    /// <param name="source">The plan with all that its costing needs.</param>
    /// <param name="job">Its job, with the quantities to compare that a reader may look at.</param>
    /// <param name="title">The book.</param>
    /// <param name="terms">What the maker decides.</param>
    /// <param name="today">The day that stands on it.</param>
    /// <param name="by">Who freezes it.</param>
    /// <param name="replaces">The quote it stands in the place of; null for none.</param>
    /// <returns>The quote, or what stands in the way of its costing.</returns>
    public static Outcome<NewQuote> Of(
        Guid id, JobSource source, Job job, TitleRecord title, QuoteTerms terms, DateOnly today, string by, Guid? replaces)
    {
        var prepared = PreparedJob.Prepare(job);
        var answer = prepared.Succeeded ? JobAnswer.To(JobQuestion.Estimate, prepared.Value) : Outcome<JobAnswer>.Refused(prepared.Problems);
        if (!answer.Succeeded)
        {
            return Outcome<NewQuote>.Refused(answer.Problems);
        }

        var landed = ((JobAnswer.OfEstimate)answer.Value).Estimate.Totals.LandedCost;
        var facts = new QuoteFacts(
            source.Press.Name, source.Press.Currency, source.Press.Units, title.Title, title.By, title.Colour, source.Edition.Printing, source.Plan.Name,
            InForce(job), today, terms.Until, terms.Shows, terms.Note.Trim(), terms.Bill);
        return Outcome<NewQuote>.Of(new NewQuote(
            id, source.Edition.Id, facts, JobWriter.Write(job), answer.Value.ToJson(indented: true), job.Quantity, landed, by, replaces));
    }

    private static IReadOnlyList<ListInForce> InForce(Job job) =>
    [
        new(job.Shop.Name, job.Shop.ValidFrom),
        .. job.Postage.Where(service => service.ValidFrom <= job.Date).GroupBy(service => service.Id)
            .Select(tables => tables.MaxBy(table => table.ValidFrom)!).Select(service => new ListInForce(service.Name, service.ValidFrom)),
    ];
}
