using PressRun.Data.Quotes;
using PressRun.Engine.Costing;
using PressRun.Engine.Quoting;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Archive;

/// <summary>What the course of a frozen quote must keep: each thing that happened says all that it must, and nobody has answered by a link without its saying so.</summary>
/// <param name="quote">The quote.</param>
/// <param name="facts">What it says.</param>
/// <param name="successor">Number of the quote that replaces it; null for none.</param>
/// <param name="at">Where it stands.</param>
/// <param name="problems">Where problems go.</param>
internal sealed class QuoteCourseRules(ArchivedQuote quote, QuoteFacts facts, int? successor, JsonPath at, ProblemList problems)
{
    private const string AnswerRule = "Write none where nobody answered by this link, else the answer of its one event.";

    private readonly byte[] fingerprint = QuoteShape.Fingerprint(quote.Facts, quote.Job, quote.Result);

    /// <summary>Notes what is wrong.</summary>
    public void Check()
    {
        foreach (var (place, archived) in quote.Events.Index())
        {
            if (Problem(archived) is { } rule)
            {
                problems.Add(at.Member("events").Item(place), (string?)null, rule);
            }
        }

        foreach (var (place, archived) in quote.Links.Index())
        {
            List<QuoteAnswer> answers = [.. quote.Events.Where(happened => happened.Link == place).Select(happened => AnswerOf(happened.Event.Kind)).Where(answer => answer != QuoteAnswer.None)];
            if (answers.Count > 1 || answers.FirstOrDefault() != archived.Link.Answer || (answers.Count > 0 && !archived.Link.Rights.Agree))
            {
                problems.Add(at.Member("links").Item(place).Member("answer"), (string?)null, AnswerRule);
            }
        }
    }

    private static QuoteAnswer AnswerOf(QuoteEventKind kind) => kind switch
    {
        QuoteEventKind.Agreed => QuoteAnswer.Agreed,
        QuoteEventKind.TurnedDown => QuoteAnswer.TurnedDown,
        _ => QuoteAnswer.None,
    };

    private string? Problem(ArchivedEvent archived)
    {
        var happened = archived.Event;
        var byReader = archived.Link is not null && !happened.IsAboutLink;
        var name = byReader ? QuoteRules.NameProblem(happened.By) : PlainText.IsStill(happened.By) ? null : "Write a name on one line.";
        var words = happened.Words.Length == 0 && happened.Kind != QuoteEventKind.Remarked ? null : QuoteRules.RemarkProblem(happened.Words);
        return name ?? words ?? (SaysAll(happened, archived.Link) ? null : Rule(happened.Kind));
    }

    private bool SaysAll(QuoteEvent happened, int? link) => happened.Kind switch
    {
        QuoteEventKind.LinkMade or QuoteEventKind.LinkEnded or QuoteEventKind.LinkEndedWithMaker or QuoteEventKind.TurnedDown => link is not null,
        QuoteEventKind.Agreed => link is not null && happened.Quantity == quote.Quantity && happened.Amount == quote.Landed && happened.Fingerprint.AsSpan().SequenceEqual(fingerprint)
            && (happened.Part is null || (link is { } place && happened.Part == quote.Links[place].Link.Part)),
        QuoteEventKind.AskedFor => link is not null && happened.Quantity is { } quantity && JobRules.Copies.Holds(quantity) && happened.Amount is >= 0m,
        QuoteEventKind.Remarked => true,
        QuoteEventKind.Paid => happened is { Amount: { } amount, Day: not null } && amount != 0m && Math.Abs(amount) <= QuoteRules.MostPaid && happened.Part < facts.Bill.Count,
        QuoteEventKind.Replaced => successor is not null && happened.Quantity == successor,
        _ => false,
    };

    private static string Rule(QuoteEventKind kind) => kind switch
    {
        QuoteEventKind.LinkMade or QuoteEventKind.LinkEnded or QuoteEventKind.LinkEndedWithMaker or QuoteEventKind.TurnedDown => "Name the link by its place.",
        QuoteEventKind.Agreed => "Name the link, and the quantity, the landed cost and the fingerprint of this quote, and no part but the link's: nothing else was agreed to.",
        QuoteEventKind.AskedFor => "Name the link, the quantity that was asked for, from 1 to 1,000,000 copies, and what it was shown to cost.",
        QuoteEventKind.Paid => "Name the part of the bill, the amount, which is not 0, and the day on which it was paid.",
        _ => "Write as quantity the number of the quote that replaces this one.",
    };
}
