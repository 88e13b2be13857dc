using PressRun.Data.Import.Tables;
using PressRun.Data.Titles;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.JobFile;

namespace PressRun.Data.Import.Shapes;

/// <summary>A paper as a shop offers it: what it is, and what a sheet of it costs, plain and printed.</summary>
/// <param name="Paper">The paper, without an id.</param>
/// <param name="SheetId">The sheet.</param>
/// <param name="Steps">By rising number of sheets, the first from 1.</param>
public sealed record PaperOffer(Stock Paper, string SheetId, IReadOnlyList<OfferStep> Steps);

/// <summary>A step of an offer.</summary>
/// <param name="From">First sheet that it holds for.</param>
/// <param name="Sheet">Price of a sheet of the paper.</param>
/// <param name="Black">Price of a side in black; null where the file says none.</param>
/// <param name="Colour">Price of a side in colour; null where the file says none.</param>
public readonly record struct OfferStep(long From, decimal Sheet, decimal? Black, decimal? Colour);

/// <summary>Papers with what a shop charges for them, a row a step: what a price list holds that names each paper with its weight, and often what printing on it costs.</summary>
/// <param name="sheets">The list's sheets.</param>
public sealed class OfferShape(ReferenceCell sheets) : TableShape<PaperOffer>
{
    /// <summary>Column of a side in black.</summary>
    public const int Black = 8;

    /// <summary>Column of a side in colour.</summary>
    public const int Colour = 9;

    private const int NameOf = 0;
    private const int Weight = 1;
    private const int Caliper = 2;
    private const int Bulk = 3;
    private const int Finish = 4;
    private const int SheetOf = 5;
    private const int From = 6;
    private const int Each = 7;

    private static readonly IReadOnlyList<Column> OfPaper = new StockShape().Columns;

    /// <inheritdoc/>
    public override string Name => "papers with prices";

    /// <inheritdoc/>
    public override IReadOnlyList<Column> Columns { get; } =
    [
        .. OfPaper.Where(column => column.Role == ColumnRole.Shown).Select(column => column with { OfThing = true }),
        StepColumns.Sheet(sheets),
        StepColumns.From("From sheet"),
        StepColumns.Each("A sheet") with { Required = true, Words = Cells.Words("each|price|per sheet|je bogen|pro bogen|la feuille|cost|preis|stuckpreis|prix|precio|papier|paper|papierpreis") },
        new("black", "A side in black", Cells.MoneyOfSide)
        {
            Words = Cells.Words("black|black side|print black|printing black|b w|bw|black and white|mono|schwarz|druck schwarz|schwarz weiss|schwarzweiss|s w|sw|noir|n b|nb|impression noir|zwart|zwart wit|nero|b n|bn|negro"),
        },
        new("colour", "A side in colour", Cells.MoneyOfSide)
        {
            Words = Cells.Words("colour|color|colour side|print colour|printing colour|full colour|farbe|farbig|druck farbig|druck farbe|bunt|4c|4 0|4 4|cmyk|couleur|impression couleur|kleur|colori|colore"),
        },
    ];

    /// <inheritdoc/>
    public override IEnumerable<object?[]> Rows(PaperOffer thing) => thing.Steps.Select(step => (object?[])
    [
        thing.Paper.Name, thing.Paper.Weight, thing.Paper.StatedCaliper, thing.Paper.Bulk, thing.Paper.Finish, thing.SheetId, (decimal)step.From, step.Sheet, step.Black, step.Colour,
    ]);

    /// <inheritdoc/>
    public override PaperOffer? Thing(IReadOnlyList<object?[]> rows, Refuse refuse)
    {
        var first = rows[0];
        var paper = new Stock("", first.Text(NameOf), first.Value<PaperWeight>(Weight), first.Maybe<Length>(Caliper), first.Maybe<decimal>(Bulk), first.Maybe<Finish>(Finish));
        if (paper.Caliper <= Length.Zero)
        {
            refuse(0, Caliper, "Write a caliper, a bulk or a finish, so that the paper's thickness is known.");
            return null;
        }

        return StepColumns.Steps(rows, From, Each, refuse) is { } steps
            ? new PaperOffer(paper, first.Text(SheetOf), [.. steps.Select((step, row) => new OfferStep(step.From, step.Each, rows[row].Maybe<decimal>(Black), rows[row].Maybe<decimal>(Colour)))])
            : null;
    }

    /// <inheritdoc/>
    public override bool MayRepeat => true;

    /// <inheritdoc/>
    public override PaperOffer? Again(PaperOffer first, PaperOffer again) => SayTheSame(first, again) ? first : null;

    /// <inheritdoc/>
    public override (string Key, int Column)? KeyOf(PaperOffer thing) => ($"{SearchText.Fold(thing.Paper.Name)}|{thing.Paper.Weight}|{thing.SheetId}", NameOf);

    /// <inheritdoc/>
    public override bool GoesOn(object?[] before, object?[] row) =>
        SearchText.Fold(before.Text(NameOf)) == SearchText.Fold(row.Text(NameOf)) && Equals(before[Weight], row[Weight]) && Equals(before[SheetOf], row[SheetOf]);
}
