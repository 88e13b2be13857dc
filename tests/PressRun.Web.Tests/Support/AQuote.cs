using System.Globalization;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Engine.Costing;
using PressRun.Engine.Ladder;
using PressRun.Engine.Quoting;
using PressRun.JobFile;
using PressRun.JobFile.Results;
using PressRun.Web.Quotes;

namespace PressRun.Web.Tests.Support;

/// <summary>A quote of the invented run, with one link by which everything may be done.</summary>
public static class AQuote
{
    public static readonly DateTimeOffset MadeAt = new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);

    public static QuoteLink Link { get; } = new(
        Guid.NewGuid(), "Ada", new LinkRights(25, 300, Remark: true, Agree: true), MadeAt.AddDays(30), null, 1, QuoteAnswer.None, MadeAt);

    /// <summary>The quote.</summary>
    /// <param name="title">Of the book.</param>
    /// <param name="culture">Of the viewer.</param>
    /// <param name="shows">How much its readers see.</param>
    /// <param name="result">Another costing than this version's.</param>
    /// <param name="events">What happened.</param>
    /// <param name="job">Changes the job before it is frozen.</param>
    public static QuoteView View(
        string title = "Marsh Letters", string culture = "en-IE", QuoteShows shows = QuoteShows.Lines, byte[]? result = null, IReadOnlyList<QuoteEvent>? events = null,
        Func<Job, Job>? job = null)
    {
        var frozen = (job ?? (same => same))(ARun.Job with { Ladder = new LadderRange(25, 300, 25) });
        var prepared = PreparedJob.Prepare(frozen).Value;
        var facts = new QuoteFacts(
            "Eel Pie Editions", frozen.Currency.Code, UnitSystem.Metric, title, "M. Reed", "#8a3b2e", 2, "Willow", [new("Willow Prints", ARun.Shop.ValidFrom), new("Letter", ARun.Day)], ARun.Day,
            ARun.Day.AddDays(30), shows, "Paper as last time.", [new BillPart.Share("Eel Pie Editions", 2m), new BillPart.Share("Ada", 1m)]);
        var quote = new QuoteRecord(
            Guid.NewGuid(), 14, Guid.NewGuid(), facts, JobWriter.Write(frozen), result ?? JobAnswer.To(JobQuestion.Estimate, prepared).Value.ToJson(indented: true), 100,
            prepared.Estimate(100).Value.Totals.LandedCost, MadeAt, "Eel Pie Editions", null, [.. Enumerable.Range(0, 32).Select(value => (byte)value)]);
        return QuoteView.Of(new QuoteWhole(quote, QuoteState.Out, null, [Link], events ?? [], 1), FrozenJob.Of(quote), CultureInfo.GetCultureInfo(culture));
    }

    /// <summary>The same quote after something happened to it.</summary>
    public static QuoteView Again(QuoteView view, QuoteWhole whole) => QuoteView.Of(whole, new FrozenJob(view.Job, view.Worked), view.Format.Culture);
}
