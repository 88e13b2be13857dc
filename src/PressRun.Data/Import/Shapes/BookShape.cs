using PressRun.Data.Import.Tables;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.JobFile;

namespace PressRun.Data.Import.Shapes;

/// <summary>Whole-book prices, a row a step. Several may fit one book, and the first of them wins, so that nothing stands twice.</summary>
/// <param name="stocks">The press's papers.</param>
public sealed class BookShape(ReferenceCell stocks) : TableShape<BookPrice>
{
    private const int BindingOf = 0;
    private const int PagesFrom = 1;
    private const int PagesTo = 2;
    private const int Stocks = 3;
    private const int From = 4;
    private const int Each = 5;
    private const int PerPage = 6;

    /// <inheritdoc/>
    public override string Name => "whole-book prices";

    /// <inheritdoc/>
    public override IReadOnlyList<Column> Columns { get; } =
    [
        new("binding", "Binding", new ChoiceCell<Binding>(
            ("saddle", Binding.Saddle), ("side", Binding.Side), ("perfect", Binding.Perfect), ("loose", Binding.Loose),
            ("stapled", Binding.Saddle), ("stitched", Binding.Saddle), ("glued", Binding.Perfect), ("klebebindung", Binding.Perfect),
            ("folded and stapled", Binding.Saddle), ("stapled at the side", Binding.Side), ("glued spine", Binding.Perfect), ("loose leaves", Binding.Loose)))
        {
            Required = true, OfThing = true, Words = Cells.Words("binding|bound|bindung|reliure"),
        },
        new("pagesFrom", "Pages from", new NumberCell(JobRules.Pages)) { OfThing = true, Words = Cells.Words("pages from|min pages|from pages") },
        new("pagesTo", "to", new NumberCell(JobRules.Pages)) { OfThing = true, Words = Cells.Words("pages to|max pages|to pages|pages") },
        new("stocks", "Papers from the outside", new ReferenceListCell(stocks)) { OfThing = true, Words = Cells.Words("papers|stocks|paper|stock") },
        StepColumns.From("From copy"),
        StepColumns.Each("A copy"),
        new("perPage", "and each page", Cells.Money) { Words = Cells.Words("per page|each page|page price|seitenpreis") },
    ];

    /// <inheritdoc/>
    public override IEnumerable<object?[]> Rows(BookPrice thing) => thing.Steps.Select(step => (object?[])
        [thing.Binding, (decimal)thing.PagesFrom, (decimal)thing.PagesTo, thing.StockIds, (decimal)step.From, step.Each, step.PerPage == 0m ? null : step.PerPage]);

    /// <inheritdoc/>
    public override BookPrice? Thing(IReadOnlyList<object?[]> rows, Refuse refuse)
    {
        var first = rows[0];
        var (from, to) = ((int)first.Value(PagesFrom, 1m), (int)first.Value(PagesTo, (decimal)Job.MostPages));
        if (to < from)
        {
            refuse(0, PagesTo, "The most pages are not fewer than the fewest.");
            return null;
        }

        for (var row = 0; row < rows.Count; row++)
        {
            if (rows[row][Each] is null && rows[row][PerPage] is null)
            {
                refuse(row, Each, "Write what a copy costs, or what each of its pages costs, or both.");
                return null;
            }
        }

        var steps = rows.Select(row => new BookStep((long)row.Value(From, 1m), row.Value<decimal>(Each), row.Value<decimal>(PerPage))).ToList();
        return StepRows.RiseFromOne(steps, step => step.From, From, refuse)
            ? new BookPrice(first.Value<Binding>(BindingOf), from, to, (IReadOnlyList<string>?)first[Stocks], steps)
            : null;
    }

    /// <inheritdoc/>
    public override (string Key, int Column)? KeyOf(BookPrice thing) => null;

    /// <inheritdoc/>
    public override bool GoesOn(object?[] before, object?[] row) =>
        Equals(before[BindingOf], row[BindingOf])
        && Equals(before[PagesFrom], row[PagesFrom])
        && Equals(before[PagesTo], row[PagesTo])
        && Same((IReadOnlyList<string>?)before[Stocks], (IReadOnlyList<string>?)row[Stocks])
        && row.Value(From, 1m) > 1m;

    private static bool Same(IReadOnlyList<string>? left, IReadOnlyList<string>? right) =>
        left is null || right is null ? left is null && right is null : left.SequenceEqual(right, StringComparer.Ordinal);
}
