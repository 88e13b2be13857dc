using System.Security.Cryptography;
using PressRun.Engine.Quoting;

namespace PressRun.Data.Quotes;

/// <summary>What a reader may say of a quote, and what stands of it.</summary>
internal static class ReplyRules
{
    /// <summary>What stands in the way of a reply, as a sentence to the reader; null where nothing does.</summary>
    public static string? Problem(Reply reply, QuoteLinkRow link, QuoteCourseWriting course) => reply switch
    {
        Reply.Agree agree => QuoteRules.NameProblem(agree.Name) ?? Unsettled(link, course),
        Reply.TurnDown no => QuoteRules.NameProblem(no.Name) ?? (no.Words.Length == 0 ? null : QuoteRules.RemarkProblem(no.Words)) ?? Unsettled(link, course),
        Reply.AskFor ask => QuoteRules.NameProblem(ask.Name) ?? (ask.Quantity >= link.TryFrom && ask.Quantity <= link.TryTo
            ? Settled(course)
            : "This link does not reach so many copies."),
        Reply.Remark remark => QuoteRules.NameProblem(remark.Name) ?? QuoteRules.RemarkProblem(remark.Words) ?? (link.MayRemark ? null : "This link is for reading only."),
        _ => throw new ArgumentOutOfRangeException(nameof(reply), reply, "There is no such reply."),
    };

    /// <summary>What is wrong where somebody agrees to something else than the quote says, also where they agreed to it before; null where nothing is.</summary>
    public static string? OtherThanShown(Reply reply, QuoteRow quote) =>
        reply is not Reply.Agree agree || (agree.Quantity == quote.Quantity && CryptographicOperations.FixedTimeEquals(agree.Fingerprint, quote.Fingerprint))
            ? null
            : "What you saw is not what this quote says. Look at it again before you agree.";

    /// <summary>The event that a reply becomes.</summary>
    public static QuoteEvent EventOf(Reply reply, QuoteLinkRow link, QuoteRow quote) => reply switch
    {
        Reply.Agree agree => new QuoteEvent(0, default, QuoteEventKind.Agreed, link.Id, agree.Name, "", quote.Quantity, quote.Landed, link.Part, null, quote.Fingerprint),
        Reply.TurnDown no => new QuoteEvent(0, default, QuoteEventKind.TurnedDown, link.Id, no.Name, no.Words),
        Reply.AskFor ask => new QuoteEvent(0, default, QuoteEventKind.AskedFor, link.Id, ask.Name, "", ask.Quantity, ask.Landed),
        Reply.Remark remark => new QuoteEvent(0, default, QuoteEventKind.Remarked, link.Id, remark.Name, remark.Words),
        _ => throw new ArgumentOutOfRangeException(nameof(reply), reply, "There is no such reply."),
    };

    /// <summary>Who has answered by the same link. Their name is held apart from what stands around it (UAX #9, FSI and PDI).</summary>
    public static string Answered(QuoteEventRow before) =>
        $"\u2068{before.By}\u2069 has {(before.Kind == QuoteEventKind.Agreed ? "agreed" : "turned it down")} by this link already; one answer by a link counts.";

    private static string? Unsettled(QuoteLinkRow link, QuoteCourseWriting course) =>
        !link.MayAgree ? "This link is for reading only."
        : link.Answer != QuoteAnswer.None ? "You have answered already. Write to the press if you think otherwise now."
        : Settled(course);

    private static string? Settled(QuoteCourseWriting course) => course.State switch
    {
        QuoteState.Replaced => "A later quote stands in the place of this one. Ask the press for its link.",
        QuoteState.Lapsed => "The last day of this quote has passed. Ask the press for a new one.",
        QuoteState.TurnedDown => "This quote has been turned down.",
        QuoteState.Agreed => "This quote is agreed already.",
        _ => null,
    };
}
