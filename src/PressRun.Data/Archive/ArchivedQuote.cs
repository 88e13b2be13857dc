using PressRun.Data.Quotes;

namespace PressRun.Data.Archive;

/// <summary>A frozen quote with its course. Facts, job and result are kept to the letter, because their fingerprint is.</summary>
/// <param name="Number">Within the press.</param>
/// <param name="TitleId">The title's id in the archive.</param>
/// <param name="Printing">Which printing of it.</param>
/// <param name="MadeAt">When it was frozen.</param>
/// <param name="By">By whom.</param>
/// <param name="Quantity">Copies quoted.</param>
/// <param name="Landed">Landed cost of them.</param>
/// <param name="Facts">What it says, as text.</param>
/// <param name="Job">The job file, as text.</param>
/// <param name="Result">The costing, as text.</param>
/// <param name="Replaces">Number of the quote it replaces; null for none.</param>
/// <param name="Seen">How much of its course the maker has seen.</param>
/// <param name="Links">Who was given it.</param>
/// <param name="Events">What happened; a link is named by its place among the links.</param>
internal sealed record ArchivedQuote(
    int Number,
    string TitleId,
    int Printing,
    DateTimeOffset MadeAt,
    string By,
    int Quantity,
    decimal Landed,
    string Facts,
    string Job,
    string Result,
    int? Replaces,
    int Seen,
    IReadOnlyList<ArchivedLink> Links,
    IReadOnlyList<ArchivedEvent> Events);

/// <summary>A link; its secret's hash goes along, so that it opens the quote where the archive is taken in.</summary>
internal sealed record ArchivedLink(QuoteLink Link, byte[] SecretHash);

/// <summary>Something that happened, and by which link.</summary>
internal sealed record ArchivedEvent(QuoteEvent Event, int? Link);
