using PressRun.Data.Copies;
using PressRun.Data.Import.Tables;
using PressRun.Data.Titles;
using PressRun.Engine.Copies;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Import.Shapes;

/// <summary>Lines of the copies ledger, one a row: sales above all. Counts are not among them: what was found needs a look at each.</summary>
/// <param name="books">Titles and printings by id.</param>
/// <param name="printingOn">The printing that is meant by an id of <paramref name="books"/> on a day: a title's latest of that day, or the printing itself.</param>
/// <param name="channels">Ways of selling.</param>
/// <param name="lastDay">No line is of a later day.</param>
public sealed class LedgerShape(
    ReferenceCell books, Func<Guid, DateOnly, Guid> printingOn, IReadOnlyList<(string Id, string Name)> channels, DateOnly lastDay) : TableShape<NewMovement>
{
    private const int Day = 0;
    private const int Book = 1;
    private const int What = 2;
    private const int Channel = 3;
    private const int Copies = 4;
    private const int Amount = 5;
    private const int Each = 6;
    private const int Reference = 7;

    private static readonly TextRule Note = new("Write a reference on one line, at most 500 characters.", 500, true);

    /// <summary>The shape for the printings of a press. A file may name a printing by its words, or its title alone and then means the latest printing of
    /// that title that had been printed by the day of the row.</summary>
    /// <param name="names">All printings, those of a title in order.</param>
    /// <param name="printing">What a printing is called: <c>second printing</c>.</param>
    /// <param name="channels">Ways of selling.</param>
    /// <param name="lastDay">No line is of a later day.</param>
    public static LedgerShape Of(
        IReadOnlyList<EditionName> names, Func<int, string> printing, IReadOnlyList<(string Id, string Name)> channels, DateOnly lastDay)
    {
        var byTitle = names.ToLookup(name => name.TitleId);
        var also = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var name in names)
        {
            also.TryAdd(SearchText.Fold(name.Slug), name.TitleId.ToString());
            also.TryAdd(SearchText.Fold($"{name.Slug} {name.Printing}"), name.Id.ToString());
            also.TryAdd(SearchText.Fold($"{name.Title} {name.Printing}"), name.Id.ToString());
        }

        (string, string)[] known =
        [
            .. byTitle.Select(title => (title.Key.ToString(), title.First().Title)),
            .. names.Select(name => (name.Id.ToString(), $"{name.Title}, {printing(name.Printing)}")),
        ];
        return new LedgerShape(new ReferenceCell("book", known, text => also.GetValueOrDefault(SearchText.Fold(text))), PrintingOn, channels, lastDay);

        Guid PrintingOn(Guid id, DateOnly day)
        {
            var printings = byTitle[id].ToList();
            return printings.Count == 0
                ? id
                : (printings.LastOrDefault(one => one.PrintedOn <= day) ?? printings.Find(one => one.PrintedOn is not null) ?? printings[^1]).Id;
        }
    }

    /// <inheritdoc/>
    public override string Name => "sales";

    /// <inheritdoc/>
    public override IReadOnlyList<Column> Columns { get; } =
    [
        new("day", "Day", new DayCell()) { Required = true, Words = Cells.Words("day|date|sold on|order date|sale date|created|paid|datum|date de vente|fecha") },
        new("edition", "Book", books) { Required = true, Words = Cells.Words("edition|title|book|item|product|item name|name|sku|titel|titre|titulo|artikel") },
        new(
            "kind", "What happened",
            new ChoiceCell<MovementKind>(
                ("sold", MovementKind.Sold), ("sale", MovementKind.Sold), ("given away", MovementKind.GivenAway), ("spoiled", MovementKind.Spoiled),
                ("brought back", MovementKind.Returned), ("returned", MovementKind.Returned), ("refund", MovementKind.Returned), ("printed", MovementKind.Printed)))
        { Words = Cells.Words("kind|what happened|type|movement") },
        new("channel", "Through", new ReferenceCell("way of selling", channels)) { Words = Cells.Words("channel|through|way of selling|source|sold through|sales channel|kanal|canal|where") },
        new("copies", "Copies", new NumberCell(JobRules.Copies)) { Required = true, Words = Cells.Words("copies|quantity|qty|count|units|sold|menge|anzahl|quantite|cantidad") },
        new("amount", "Money", Cells.Money) { OneOf = "money", Words = Cells.Words("amount|total|money|takings|gross|line total|betrag|summe|montant|importe") },
        new("each", "Price of one", Cells.Money) { OneOf = "money", Words = Cells.Words("each|price|unit price|price each|item price|preis|einzelpreis|prix|precio") },
        new("reference", "Reference", new TextCell(Note)) { Words = Cells.Words("reference|ref|order|order number|order id|order no|receipt|invoice|transaction|note|bestellnummer|commande|pedido") },
    ];

    /// <inheritdoc/>
    public override IEnumerable<object?[]> Rows(NewMovement thing)
    {
        yield return
        [
            thing.Day, thing.EditionId.ToString(), thing.Kind, thing.ChannelId, (decimal)thing.Copies, MovesMoney(thing.Kind) ? thing.Amount : null, null,
            thing.Note.Length > 0 ? thing.Note : null,
        ];
    }

    /// <inheritdoc/>
    public override NewMovement? Thing(IReadOnlyList<object?[]> rows, Refuse refuse)
    {
        var row = rows[0];
        var day = row.Value<DateOnly>(Day);
        var kind = row.Value(What, MovementKind.Sold);
        var copies = (int)row.Value<decimal>(Copies);
        var amount = row.Maybe<decimal>(Amount) ?? (row.Maybe<decimal>(Each) * copies);
        if (day > lastDay)
        {
            refuse(0, Day, "Write the day on which it happened, not one to come.");
        }

        if (kind is MovementKind.Sold or MovementKind.Returned && amount is null)
        {
            refuse(0, Amount, "Write the money for all copies of the row, or the price of one; 0 where there was none.");
        }

        if (!MovesMoney(kind) && amount is > 0m)
        {
            refuse(0, row[Amount] is null ? Each : Amount, "Only sales, printings and what was brought back move money here.");
        }

        if (amount is { } money && !JobRules.Amount.Holds(money))
        {
            refuse(0, Each, JobRules.Amount.Sentence);
        }

        return new NewMovement(
            Guid.Empty, printingOn(Guid.Parse(row.Text(Book)), day), day, kind, copies, amount ?? 0m, row[Channel] as string, row.Text(Reference));
    }

    /// <inheritdoc/>
    public override (string Key, int Column)? KeyOf(NewMovement thing) => null;

    private static bool MovesMoney(MovementKind kind) => kind is MovementKind.Sold or MovementKind.Returned or MovementKind.Printed;
}
