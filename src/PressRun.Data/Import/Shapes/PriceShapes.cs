using PressRun.Data.Import.Tables;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Paper;

namespace PressRun.Data.Import.Shapes;

/// <summary>Columns that prices with steps share.</summary>
internal static class StepColumns
{
    public static Column From(string title) => new("from", title, Cells.StepFrom)
    {
        Step = StepPart.From, Words = Cells.Words("from|quantity|qty|from quantity|minimum quantity|ab|menge|a partir de|desde|units"),
    };

    public static Column Each(string title) => new("each", title, Cells.Money)
    {
        Step = StepPart.Price, Words = Cells.Words("each|price|price each|unit price|per unit|per sheet|per side|cost|preis|stuckpreis|je seite|je bogen|pro seite|pro bogen|prix|precio"),
    };

    public static Column Rule { get; } = new("rule", "Steps", new ChoiceCell<StepRule>(
        ("all units", StepRule.AllUnits), ("each its own", StepRule.Incremental), ("allUnits", StepRule.AllUnits), ("incremental", StepRule.Incremental)))
    {
        OfThing = true, Words = Cells.Words("rule|steps|step rule"),
    };

    /// <summary>Key of the column of sheets.</summary>
    public const string SheetKey = "sheet";

    public static Column Sheet(ReferenceCell sheets) => new(SheetKey, "Sheet", sheets)
    {
        Required = true, OfThing = true, Words = Cells.Words("sheet|sheet size|size|format|bogen|bogenformat|druckformat|feuille|vel|foglio"),
    };

    public static object? Unless(StepRule rule) => rule == StepRule.AllUnits ? null : rule;

    public static List<PriceStep>? Steps(IReadOnlyList<object?[]> rows, int from, int each, Refuse refuse)
    {
        var steps = rows.Select(row => new PriceStep((long)row.Value(from, 1m), row.Value<decimal>(each))).ToList();
        return StepRows.RiseFromOne(steps, step => step.From, from, refuse) ? steps : null;
    }
}

/// <summary>Print prices, a row a step.</summary>
/// <param name="sheets">The list's sheets.</param>
public sealed class PrintShape(ReferenceCell sheets) : TableShape<PrintPrice>
{
    private const int Inks = 0;
    private const int SheetOf = 1;
    private const int From = 2;
    private const int Each = 3;
    private const int Rule = 4;

    /// <inheritdoc/>
    public override string Name => "print prices";

    /// <inheritdoc/>
    public override IReadOnlyList<Column> Columns { get; } =
    [
        new("ink", "Ink", PrintWords.Ink)
        {
            Required = true, OfThing = true, Words = Cells.Words("ink|inks|colour|color|printing|print|druck|druckart|farbe|farbigkeit|encre|impression|kleur|bedrukking|stampa"),
        },
        StepColumns.Sheet(sheets),
        StepColumns.From("From side") with { Kind = Cells.StepFromSide },
        StepColumns.Each("A side") with { Kind = Cells.MoneyOfSide, Required = true },
        StepColumns.Rule,
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<int> Naming => [Inks, SheetOf];

    /// <inheritdoc/>
    public override IEnumerable<object?[]> Rows(PrintPrice thing) =>
        thing.Steps.Select(step => (object?[])[thing.Ink, thing.SheetId, (decimal)step.From, step.Each, StepColumns.Unless(thing.Rule)]);

    /// <inheritdoc/>
    public override PrintPrice? Thing(IReadOnlyList<object?[]> rows, Refuse refuse) =>
        StepColumns.Steps(rows, From, Each, refuse) is { } steps
            ? new PrintPrice(rows[0].Value<Ink>(Inks), rows[0].Text(SheetOf), steps, rows[0].Value<StepRule>(Rule))
            : null;

    /// <inheritdoc/>
    public override bool MayRepeat => true;

    /// <inheritdoc/>
    public override PrintPrice? Again(PrintPrice first, PrintPrice again) => SayTheSame(first, again) ? first : null;

    /// <inheritdoc/>
    public override (string Key, int Column)? KeyOf(PrintPrice thing) => ($"{thing.Ink}|{thing.SheetId}", Inks);

    /// <inheritdoc/>
    public override bool GoesOn(object?[] before, object?[] row) => Equals(before[Inks], row[Inks]) && Equals(before[SheetOf], row[SheetOf]);
}

/// <summary>Paper prices, a row a step.</summary>
/// <param name="papers">The press's papers.</param>
/// <param name="stocks">How they are named.</param>
/// <param name="sheets">The list's sheets.</param>
public sealed class PaperShape(IReadOnlyList<Stock> papers, ReferenceCell stocks, ReferenceCell sheets) : TableShape<PaperPrice>
{
    private const int StockOf = 0;
    private const int SheetOf = 1;
    private const int From = 2;
    private const int Each = 3;
    private const int Rule = 4;
    private const int Weight = 5;

    /// <inheritdoc/>
    public override string Name => "paper prices";

    /// <inheritdoc/>
    public override IReadOnlyList<Column> Columns { get; } =
    [
        new("stock", "Paper", stocks)
        {
            Required = true, OfThing = true, Words = Cells.Words("paper|stock|paper name|name|material|description|product|papier|papel|sorte"),
        },
        StepColumns.Sheet(sheets),
        StepColumns.From("From sheet"),
        StepColumns.Each("A sheet") with { Required = true },
        StepColumns.Rule,
        new("weight", "Weight of the paper", new WeightCell()) { Role = ColumnRole.Hint, OfThing = true, Words = StockShape.WeightWords },
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<int> Naming => [StockOf, SheetOf];

    /// <inheritdoc/>
    public override IEnumerable<object?[]> Rows(PaperPrice thing) =>
        thing.Steps.Select(step => (object?[])[thing.StockId, thing.SheetId, (decimal)step.From, step.Each, StepColumns.Unless(thing.Rule), null]);

    /// <inheritdoc/>
    public override PaperPrice? Thing(IReadOnlyList<object?[]> rows, Refuse refuse) =>
        StepColumns.Steps(rows, From, Each, refuse) is { } steps
            ? new PaperPrice(rows[0].Text(StockOf), rows[0].Text(SheetOf), steps, rows[0].Value<StepRule>(Rule))
            : null;

    /// <inheritdoc/>
    public override bool MayRepeat => true;

    /// <inheritdoc/>
    public override PaperPrice? Again(PaperPrice first, PaperPrice again) => SayTheSame(first, again) ? first : null;

    /// <inheritdoc/>
    public override (string Key, int Column)? KeyOf(PaperPrice thing) => ($"{thing.StockId}|{thing.SheetId}", StockOf);

    /// <inheritdoc/>
    public override bool GoesOn(object?[] before, object?[] row) => Equals(before[StockOf], row[StockOf]) && Equals(before[SheetOf], row[SheetOf]);

    /// <summary>The row with its paper named by its id, where the weight beside it says which one is meant: shops give papers of several weights one name.</summary>
    public override TextRow Told(TextRow row, CellManners manners)
    {
        var (name, weight) = (row.Cells[StockOf].Trim(), row.Cells[Weight].Trim());
        if (name.Length == 0 || weight.Length == 0 || Columns[Weight].Kind.Read(weight, manners, row.Units?[Weight]).Value is not PaperWeight known)
        {
            return row;
        }

        var folded = SearchText.Fold(name);
        var meant = papers.Where(paper => paper.Weight == known && SearchText.Fold(paper.Name) is var own && (own == folded || own.StartsWith(folded + " ", StringComparison.Ordinal))).Take(2).ToList();
        var stands = papers.Any(paper => SearchText.Fold(paper.Name) == folded);
        return meant.Count == 1 ? Named(meant[0].Id) : stands && meant.Count == 0 ? Named($"{name} {weight}") : row;

        TextRow Named(string stock) => row with { Cells = [.. row.Cells.Select((cell, column) => column == StockOf ? stock : cell)] };
    }
}
