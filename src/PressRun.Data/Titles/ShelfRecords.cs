using PressRun.Data.Copies;

namespace PressRun.Data.Titles;

/// <summary>What of the shelf to show.</summary>
/// <param name="Search">Beginnings of words of title or maker; null or blank shows all.</param>
/// <param name="Skip">Titles to pass over.</param>
/// <param name="Take">Titles to show, at most 200.</param>
/// <param name="Archived">True shows the archived titles instead.</param>
/// <param name="OnlyAsking">True shows only titles that need a decision.</param>
/// <param name="OnlyDue">True shows only titles that are due to be ordered, those that run out first first.</param>
public sealed record ShelfFilter(string? Search = null, int Skip = 0, int Take = 50, bool Archived = false, bool OnlyAsking = false, bool OnlyDue = false);

/// <summary>A stretch of the shelf.</summary>
/// <param name="Titles">By title.</param>
/// <param name="Total">Titles that the filter finds in all.</param>
/// <param name="Totals">What the search finds in all, whether or not it needs a decision.</param>
public sealed record ShelfPage(IReadOnlyList<ShelfTitle> Titles, int Total, ShelfTotals Totals);

/// <summary>Sums over all that a search finds.</summary>
/// <param name="Titles">Titles.</param>
/// <param name="Asking">Of them, titles that need a decision.</param>
/// <param name="Planned">Of them, titles with a printing that is not printed yet.</param>
/// <param name="PrintingsOnHand">Printings of which copies are on hand.</param>
/// <param name="CopiesOnHand">Their copies.</param>
/// <param name="Due">Titles that are due to be ordered.</param>
public sealed record ShelfTotals(int Titles, int Asking, int Planned, int PrintingsOnHand, long CopiesOnHand, int Due = 0);

/// <summary>A printing that is not printed yet, with the plan it goes by.</summary>
/// <param name="TitleId">Its title.</param>
/// <param name="PlanId">The plan.</param>
/// <param name="PlanVersion">The plan's row version.</param>
/// <param name="EditionVersion">The edition's row version.</param>
public sealed record PlannedPrinting(Guid TitleId, Guid PlanId, uint PlanVersion, uint EditionVersion);

/// <summary>A printing by its address.</summary>
/// <param name="Title">The title.</param>
/// <param name="Slug">The title in addresses.</param>
/// <param name="Printing">First is 1.</param>
public sealed record PrintingName(string Title, string Slug, int Printing);

/// <summary>A title on the shelf, with no more than the shelf shows of it.</summary>
/// <param name="Id">The title.</param>
/// <param name="Slug">Its name in addresses.</param>
/// <param name="Title">Its words.</param>
/// <param name="By">Who made it.</param>
/// <param name="Colour">Colour of its cover.</param>
/// <param name="Outlook">How long its copies last, as last reckoned; null where nothing is known of that.</param>
/// <param name="Editions">Its printings, latest first, archived ones left out.</param>
public sealed record ShelfTitle(Guid Id, string Slug, string Title, string By, string Colour, TitleOutlook? Outlook, IReadOnlyList<ShelfEdition> Editions);

/// <summary>A printing on the shelf, with no more than the shelf shows of it.</summary>
/// <param name="Id">The printing.</param>
/// <param name="Printing">First is 1.</param>
/// <param name="PrintedOn">Day of printing; null while it is being planned.</param>
/// <param name="CopiesPrinted">Copies that were printed; null while it is being planned.</param>
/// <param name="CopiesOnHand">Copies left.</param>
/// <param name="CountNeeded">True where more copies went than were known of.</param>
/// <param name="Price">Price of a copy, in the press's currency.</param>
/// <param name="Version">Its row version.</param>
/// <param name="Plan">The plan it goes by; null where none is chosen.</param>
/// <param name="Printed">What its ledger says of its printings.</param>
public sealed record ShelfEdition(
    Guid Id, int Printing, DateOnly? PrintedOn, int? CopiesPrinted, long CopiesOnHand, bool CountNeeded, decimal Price, uint Version, ShelfPlan? Plan,
    PrintedCopies Printed);

/// <summary>What the ledger of a printing says of what was printed.</summary>
/// <param name="Copies">Good copies that came, less what was taken back.</param>
/// <param name="Cost">What they cost, in the press's currency; 0 where nobody wrote it down.</param>
public readonly record struct PrintedCopies(long Copies, decimal Cost);

/// <summary>The plan that a printing goes by.</summary>
/// <param name="Id">The plan.</param>
/// <param name="Version">Its row version.</param>
/// <param name="Quantity">Copies it plans.</param>
public sealed record ShelfPlan(Guid Id, uint Version, int Quantity);
