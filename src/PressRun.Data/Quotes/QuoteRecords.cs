using PressRun.Data.Presses;
using PressRun.Engine.Quoting;

namespace PressRun.Data.Quotes;

/// <summary>How much of the costing a quote's readers see.</summary>
public enum QuoteShows
{
    /// <summary>Every line.</summary>
    Lines,

    /// <summary>The totals only.</summary>
    Totals,
}

/// <summary>A dated table that a quote was reckoned by.</summary>
/// <param name="Name">A shop's or a postage service's.</param>
/// <param name="From">Its first day.</param>
public sealed record ListInForce(string Name, DateOnly From);

/// <summary>What a quote says beside its job and its result. It is frozen with them.</summary>
/// <param name="Press">Who makes the book.</param>
/// <param name="Currency">ISO 4217 code of all amounts.</param>
/// <param name="Units">Units shown first.</param>
/// <param name="Title">The book.</param>
/// <param name="By">Who wrote it; may be empty.</param>
/// <param name="Colour">Of its cover, as <c>#rrggbb</c>; empty for a plain one.</param>
/// <param name="Printing">The first is 1.</param>
/// <param name="Plan">What the maker calls the plan.</param>
/// <param name="Lists">The dated tables it was reckoned by, the shop's first.</param>
/// <param name="FrozenOn">Day on which it was frozen.</param>
/// <param name="Until">Last day on which it can be agreed to.</param>
/// <param name="Shows">How much its readers see.</param>
/// <param name="Note">From the maker to all readers; may be empty.</param>
/// <param name="Bill">Who carries what; empty where nobody but the press pays.</param>
public sealed record QuoteFacts(
    string Press,
    string Currency,
    UnitSystem Units,
    string Title,
    string By,
    string Colour,
    int Printing,
    string Plan,
    IReadOnlyList<ListInForce> Lists,
    DateOnly FrozenOn,
    DateOnly Until,
    QuoteShows Shows,
    string Note,
    IReadOnlyList<BillPart> Bill);

/// <summary>A quote to be frozen.</summary>
/// <param name="Id">Made by whoever asks, so that asking twice freezes once.</param>
/// <param name="EditionId">What is printed.</param>
/// <param name="Facts">What it says.</param>
/// <param name="Job">The job file, UTF-8.</param>
/// <param name="Result">The costing of the job, UTF-8.</param>
/// <param name="Quantity">Copies quoted.</param>
/// <param name="Landed">Landed cost of them.</param>
/// <param name="By">Who freezes it.</param>
/// <param name="Replaces">The quote it stands in the place of; null for none.</param>
/// <param name="Seen">How much had happened to that one when whoever freezes looked at it (see <see cref="QuoteWhole.Changes"/>); null where nobody looked.</param>
public sealed record NewQuote(
    Guid Id, Guid EditionId, QuoteFacts Facts, byte[] Job, byte[] Result, int Quantity, decimal Landed, string By, Guid? Replaces, int? Seen = null);

/// <summary>A frozen quote.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Number">Counted within the press, from 1.</param>
/// <param name="EditionId">What is printed.</param>
/// <param name="Facts">What it says.</param>
/// <param name="Job">The job file, UTF-8.</param>
/// <param name="Result">The costing, UTF-8.</param>
/// <param name="Quantity">Copies quoted.</param>
/// <param name="Landed">Landed cost of them.</param>
/// <param name="MadeAt">When.</param>
/// <param name="By">By whom.</param>
/// <param name="Replaces">Number of the quote it replaces; null for none.</param>
/// <param name="Fingerprint">SHA-256 of all that is frozen.</param>
public sealed record QuoteRecord(
    Guid Id,
    int Number,
    Guid EditionId,
    QuoteFacts Facts,
    byte[] Job,
    byte[] Result,
    int Quantity,
    decimal Landed,
    DateTimeOffset MadeAt,
    string By,
    int? Replaces,
    byte[] Fingerprint);

/// <summary>A quote in a list.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Number">Within the press.</param>
/// <param name="EditionId">What is printed.</param>
/// <param name="Title">The book.</param>
/// <param name="Printing">Which printing.</param>
/// <param name="Quantity">Copies quoted.</param>
/// <param name="Landed">Landed cost.</param>
/// <param name="State">Where it stands.</param>
/// <param name="Until">Last day on which it can be agreed to.</param>
/// <param name="Agreed">How many have agreed.</param>
/// <param name="Asked">How many are asked to, with those that have.</param>
/// <param name="Unseen">Things that happened since the maker last looked.</param>
public sealed record QuoteSummary(
    Guid Id, int Number, Guid EditionId, string Title, int Printing, int Quantity, decimal Landed, QuoteState State, DateOnly Until, int Agreed, int Asked, int Unseen);

/// <summary>All about one quote.</summary>
/// <param name="Quote">As frozen.</param>
/// <param name="State">Where it stands.</param>
/// <param name="ReplacedBy">Number of the quote in its place; null for none.</param>
/// <param name="Links">Who was given it, the first first.</param>
/// <param name="Events">What happened, in order.</param>
/// <param name="Changes">How much has happened; grows with everything that alters a page.</param>
public sealed record QuoteWhole(
    QuoteRecord Quote, QuoteState State, int? ReplacedBy, IReadOnlyList<QuoteLink> Links, IReadOnlyList<QuoteEvent> Events, int Changes);

/// <summary>What a reader may do beside reading.</summary>
/// <param name="TryFrom">Fewest copies that they may try; null where they may not.</param>
/// <param name="TryTo">Most copies that they may try.</param>
/// <param name="Remark">May write remarks.</param>
/// <param name="Agree">Is asked to agree.</param>
public sealed record LinkRights(int? TryFrom, int? TryTo, bool Remark, bool Agree);

/// <summary>A link to be made.</summary>
/// <param name="Name">Whom it is for.</param>
/// <param name="Rights">What they may do.</param>
/// <param name="EndsAt">When it stops opening.</param>
/// <param name="Part">Place of their part among the bill's; null where they carry none.</param>
public sealed record NewLink(string Name, LinkRights Rights, DateTimeOffset EndsAt, int? Part);

/// <summary>A link by which one person reads a quote. Its secret is known only to whoever was given it.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Whom it is for.</param>
/// <param name="Rights">What they may do.</param>
/// <param name="EndsAt">When it stops opening by itself.</param>
/// <param name="EndedAt">When the maker ended it; null where not.</param>
/// <param name="Part">Place of their part of the bill.</param>
/// <param name="Answer">What they said.</param>
/// <param name="MadeAt">When it was made.</param>
public sealed record QuoteLink(
    Guid Id, string Name, LinkRights Rights, DateTimeOffset EndsAt, DateTimeOffset? EndedAt, int? Part, QuoteAnswer Answer, DateTimeOffset MadeAt)
{
    /// <summary>The day on which the maker ended it, where the server stood; null where not, or where that was not noted.</summary>
    public DateOnly? EndedOn { get; init; }

    /// <summary>When it ended because whoever made it, and knows its secret, lost the right to change the press; null where not.</summary>
    public DateTimeOffset? MakerGoneAt { get; init; }

    /// <summary>True while it opens the quote.</summary>
    public bool IsOpen(DateTimeOffset now) => EndedAt is null && MakerGoneAt is null && now < EndsAt;
}

/// <summary>What can happen to a quote.</summary>
public enum QuoteEventKind
{
    /// <summary>A link was made.</summary>
    LinkMade,

    /// <summary>A link was ended.</summary>
    LinkEnded,

    /// <summary>A link ended, because whoever made it may change nothing in the press any more.</summary>
    LinkEndedWithMaker,

    /// <summary>A reader agreed to exactly what is frozen.</summary>
    Agreed,

    /// <summary>A reader does not want it.</summary>
    TurnedDown,

    /// <summary>A reader asks for another quantity.</summary>
    AskedFor,

    /// <summary>Somebody wrote something.</summary>
    Remarked,

    /// <summary>A part of the bill was paid, or, below zero, paid back.</summary>
    Paid,

    /// <summary>A later quote took its place.</summary>
    Replaced,
}

/// <summary>Something that happened to a quote; it is only added.</summary>
/// <param name="Sequence">Place among the quote's, from 1.</param>
/// <param name="At">When.</param>
/// <param name="Kind">What.</param>
/// <param name="LinkId">By which link, or about which; null for the maker's own doing.</param>
/// <param name="By">Whoever did it, by the name they gave.</param>
/// <param name="Words">What was written; empty where nothing was.</param>
/// <param name="Quantity">Copies agreed to or asked for.</param>
/// <param name="Amount">Landed cost of them, or what was paid.</param>
/// <param name="Part">Place of the part of the bill that was paid.</param>
/// <param name="Day">Day on which it was paid.</param>
/// <param name="Fingerprint">Of what was agreed to.</param>
public sealed record QuoteEvent(
    int Sequence,
    DateTimeOffset At,
    QuoteEventKind Kind,
    Guid? LinkId,
    string By,
    string Words = "",
    int? Quantity = null,
    decimal? Amount = null,
    int? Part = null,
    DateOnly? Day = null,
    byte[]? Fingerprint = null)
{
    /// <summary>True for what happens to a link, which is the press's doing and not its reader's.</summary>
    public bool IsAboutLink => Kind is QuoteEventKind.LinkMade or QuoteEventKind.LinkEnded or QuoteEventKind.LinkEndedWithMaker;

    /// <summary>True for what a reader did by their link.</summary>
    public bool IsReaders => LinkId is not null && !IsAboutLink;
}
