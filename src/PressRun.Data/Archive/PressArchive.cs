using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Engine.Bench;
using PressRun.Engine.Copies;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Ladder;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Engine.Quoting;
using PressRun.Engine.Selling;

namespace PressRun.Data.Archive;

/// <summary>A whole press as one document of the form <c>pressrun/press/1</c>.</summary>
internal sealed record PressArchive(
    ArchivedPress Press,
    IReadOnlyList<Kept<Stock>> Stocks,
    IReadOnlyList<ArchivedShop> Shops,
    IReadOnlyList<Kept<Mailer>> Mailers,
    IReadOnlyList<Kept<PostageService>> Postage,
    IReadOnlyList<Kept<Channel>> Channels,
    BenchRates Bench,
    IReadOnlyList<ArchivedTitle> Titles,
    IReadOnlyList<ArchivedQuote> Quotes)
{
    /// <summary>From where on the press wants to be warned.</summary>
    public BenchLimits Limits { get; init; } = BenchLimits.Usual;

    /// <summary>Name and version of the form.</summary>
    public const string Schema = "pressrun/press/1";
}

/// <summary>A library's thing, and whether it is offered no more.</summary>
internal sealed record Kept<T>(T Item, bool Archived);

internal sealed record ArchivedPress(string Name, string Currency, UnitSystem Units, PaperRegion PaperRegion, bool ReclaimsTax);

internal sealed record ArchivedShop(string Id, string Name, bool Archived, IReadOnlyList<Shop> PriceLists);

internal sealed record ArchivedTitle(
    string Id, string Title, string By, string Colour, string About, bool Archived, IReadOnlyList<ArchivedEdition> Editions);

internal sealed record ArchivedEdition(
    Edition Edition,
    DateOnly? PrintedOn,
    int? CopiesPrinted,
    IReadOnlyList<ArchivedMovement> Movements,
    decimal Price,
    int FreeCopies,
    bool Archived,
    IReadOnlyList<ArchivedPlan> Plans,
    IReadOnlyList<ArchivedFix> Fixes,
    IReadOnlyList<Claim> Claims,
    IReadOnlyList<ArchivedPayment> Payments)
{
    /// <summary>Tallies of the table, the earliest first.</summary>
    public IReadOnlyList<ArchivedTally> Tallies { get; init; } = [];
}

/// <summary>What was paid to somebody out of an edition's sales.</summary>
internal sealed record ArchivedPayment(DateOnly Day, string Name, decimal Amount, string By);

/// <summary>A tally of the table. The line of the ledger that it went into is named by its place, its entries by theirs.</summary>
internal sealed record ArchivedTally(
    string Plan, DateTimeOffset BegunAt, int Copies, int Wanted, IReadOnlyList<TallyStep> Steps, IReadOnlyList<ArchivedTallyEntry> Entries, int? WrittenInto, int WrittenLines);

/// <summary>Something written down at the table.</summary>
internal sealed record ArchivedTallyEntry(TallyEntry Entry, DateTimeOffset At, int? TakesBack);

/// <summary>A note of what is to be mended at the next printing.</summary>
internal sealed record ArchivedFix(DateOnly NoticedOn, string Text, int? Page, int? MendedIn, int CarriedPast);

/// <summary>A line of the copies ledger. Lines are named by their place in the list, the first being 0.</summary>
internal sealed record ArchivedMovement(
    DateOnly Day,
    MovementKind Kind,
    int Change,
    decimal Amount,
    string? Channel,
    string Note,
    int? TakesBack,
    int? SettledBy,
    PrintingActual? Printing);

/// <summary>A plan. Its shop's list is the one that begins on <paramref name="ListFrom"/>; other papers stand by the part's name.</summary>
internal sealed record ArchivedPlan(
    string Name,
    string ShopId,
    DateOnly ListFrom,
    DateOnly Date,
    int Quantity,
    LadderRange? Ladder,
    bool Chosen,
    IReadOnlyDictionary<string, string> Stocks,
    IReadOnlyList<string>? Finishing,
    IReadOnlyList<string>? BenchSteps,
    PlanReprint? Reprint = null)
{
    /// <summary>The part whose second half of the run is on another paper, with that paper; null where all copies are alike.</summary>
    public (string Part, string StockId)? SecondHalf { get; init; }
}
