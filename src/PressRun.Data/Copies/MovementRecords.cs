using PressRun.Engine.Copies;

namespace PressRun.Data.Copies;

/// <summary>Something to write into an edition's copies ledger.</summary>
/// <param name="Id">Given by whoever writes it down, once: sent again it is not written again.</param>
/// <param name="EditionId">The edition.</param>
/// <param name="Day">The day on which it happened.</param>
/// <param name="Kind">What happened.</param>
/// <param name="Copies">How many copies, 1 or more; for a count, how many were found, 0 or more.</param>
/// <param name="Amount">Money, 0 or more: what a printing cost, what a sale brought, what was paid back; 0 for the rest.</param>
/// <param name="ChannelId">How they were sold; null where that is not known.</param>
/// <param name="Note">Words of one's own, may be empty.</param>
/// <param name="Printing">For a printing: what it really was; null where it was not written down.</param>
/// <param name="Tally">The tally that its figures come from; null where they come from none.</param>
public sealed record NewMovement(
    Guid Id,
    Guid EditionId,
    DateOnly Day,
    MovementKind Kind,
    int Copies,
    decimal Amount = 0m,
    string? ChannelId = null,
    string Note = "",
    PrintingActual? Printing = null,
    TallySeen? Tally = null);

/// <summary>A tally as its figures were looked at when they were written into the ledger.</summary>
/// <param name="Id">The tally.</param>
/// <param name="Lines">Its entries at that moment.</param>
public sealed record TallySeen(Guid Id, int Lines);

/// <summary>A line of an edition's copies ledger. It never changes.</summary>
/// <param name="Id">Its id.</param>
/// <param name="EditionId">The edition.</param>
/// <param name="Movement">What moved, with its sign.</param>
/// <param name="ChannelId">How the copies were sold; null where that is not known.</param>
/// <param name="Note">Words of one's own.</param>
/// <param name="WrittenAt">When it was written down.</param>
/// <param name="TakesBack">The line that it takes back, or null.</param>
/// <param name="SettledBy">The later count that had seen these copies already, which this line is set against; or null.</param>
/// <param name="ImportId">The import it came with, or null.</param>
/// <param name="Printing">For a printing: what it really was.</param>
public sealed record MovementRecord(
    Guid Id,
    Guid EditionId,
    CopyMovement Movement,
    string? ChannelId,
    string Note,
    DateTimeOffset WrittenAt,
    Guid? TakesBack,
    Guid? SettledBy,
    Guid? ImportId,
    PrintingActual? Printing);

/// <summary>What is on hand of an edition.</summary>
/// <param name="OnHand">Always the sum of its movements.</param>
/// <param name="CountNeeded">True where more copies went than were known of, and nobody has counted since.</param>
public readonly record struct CopiesOnHand(long OnHand, bool CountNeeded);

/// <summary>A printing as it lies on a table to be sold.</summary>
/// <param name="EditionId">The printing.</param>
/// <param name="Title">Of the book.</param>
/// <param name="Slug">The title's address.</param>
/// <param name="Colour">Of the cover; empty for none chosen.</param>
/// <param name="Printing">Which printing, from 1.</param>
/// <param name="Price">Of a copy.</param>
/// <param name="OnHand">Copies on hand; below 0 where more went than were known of.</param>
public sealed record CopiesForSale(Guid EditionId, string Title, string Slug, string Colour, int Printing, decimal Price, long OnHand);

/// <summary>What an import wrote.</summary>
/// <param name="Lines">How many lines; those that were there already are not among them.</param>
/// <param name="Editions">Editions it was about.</param>
/// <param name="CountNeeded">Of these, the ones that ask to be counted now.</param>
public sealed record LedgerImport(int Lines, IReadOnlyList<Guid> Editions, IReadOnlyList<Guid> CountNeeded);

/// <summary>A printing by what a list of sales may call it.</summary>
/// <param name="Id">The printing.</param>
/// <param name="TitleId">Its title.</param>
/// <param name="Title">The title's words.</param>
/// <param name="Slug">The title in addresses.</param>
/// <param name="Printing">First is 1.</param>
/// <param name="PrintedOn">Day of printing; null while it is being planned.</param>
public sealed record EditionName(Guid Id, Guid TitleId, string Title, string Slug, int Printing, DateOnly? PrintedOn);
