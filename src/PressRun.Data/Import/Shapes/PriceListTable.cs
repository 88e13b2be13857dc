using PressRun.Data.Import.Tables;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Sheets;
using PressRun.JobFile;

namespace PressRun.Data.Import.Shapes;

/// <summary>The tables of a price list, which name the press's papers and the list's own sheets. A sheet with a standard size's name needs no
/// row of its own: it is added with that size.</summary>
public sealed class PriceListTable
{
    private PriceListTable(IReadOnlyList<Stock> papers, ReferenceCell stocks, ReferenceCell sheets)
    {
        Sheets = new SheetShape();
        Print = new PrintShape(sheets);
        Paper = new PaperShape(papers, stocks, sheets);
        Offers = new OfferShape(sheets);
        Books = new BookShape(stocks);
        Finishing = new FinishingShape();
        Discounts = new DiscountShape();
        Delivery = new DeliveryShape();
    }

    /// <summary>Sheet sizes.</summary>
    public SheetShape Sheets { get; }

    /// <summary>Print prices.</summary>
    public PrintShape Print { get; }

    /// <summary>Paper prices.</summary>
    public PaperShape Paper { get; }

    /// <summary>Papers with their prices, as a shop's own list has them.</summary>
    public OfferShape Offers { get; }

    /// <summary>Whole-book prices.</summary>
    public BookShape Books { get; }

    /// <summary>Finishing.</summary>
    public FinishingShape Finishing { get; }

    /// <summary>Discounts.</summary>
    public DiscountShape Discounts { get; }

    /// <summary>Delivery.</summary>
    public DeliveryShape Delivery { get; }

    /// <summary>The tables of a list with these sheets, for a press with these papers.</summary>
    public static PriceListTable For(IEnumerable<Stock> stocks, IEnumerable<Sheet> sheets)
    {
        var (papers, own) = (stocks.ToList(), sheets.ToList());
        return new PriceListTable(
            papers,
            new ReferenceCell("paper", [.. papers.Select(stock => (stock.Id, stock.Name))]),
            new ReferenceCell("sheet", [.. own.Select(sheet => (sheet.Id, sheet.Id))], name => StandardSizes.Find(name)?.Name ?? SheetMeasures.Find(name, own) ?? SheetMeasures.Named(name)));
    }

    /// <summary>The list with a sheet for each standard size that its prices name.</summary>
    public static Shop WithNamedSheets(Shop list)
    {
        var known = list.Sheets.Select(sheet => sheet.Id).ToHashSet(StringComparer.Ordinal);
        var named = list.Print.Select(price => price.SheetId).Concat(list.Paper.Select(price => price.SheetId)).Distinct().Where(id => !known.Contains(id));
        var added = named.Select(StandardSizes.Find).OfType<NamedSize>().Select(SheetOf).ToList();
        return added.Count == 0 ? list : list with { Sheets = [.. list.Sheets, .. added] };
    }

    /// <summary>A sheet of a standard size, without margin and gutter.</summary>
    public static Sheet SheetOf(NamedSize size) => new(size.Name, size.Size.Width, size.Size.Height, Length.Zero, Length.Zero, false, GrainRule.Any);

    /// <summary>A list without prices.</summary>
    public static Shop Empty(string shopName, DateOnly validFrom) =>
        new(shopName, validFrom, [], [], [], [], [], default, [], Collating.Never, Layout.Best, 0m, null, OrderRules.None);
}

/// <summary>A price list as one table: each row says in its first column what it is, and uses the columns of that.</summary>
/// <param name="stocks">The press's papers.</param>
public sealed class PriceListFile(IReadOnlyList<Stock> stocks)
{
    /// <summary>Key of the column that says what a row is.</summary>
    public const string Line = "line";

    private const string ValueKey = "value";
    private const string SheetLine = "sheet";
    private const string PrintLine = "print";
    private const string PaperLine = "paper";
    private const string BookLine = "book";
    private const string FinishingLine = "finishing";
    private const string DiscountLine = "discount";
    private const string DeliveryLine = "delivery";

    private static readonly string[] Lines = [SheetLine, PrintLine, PaperLine, BookLine, FinishingLine, DiscountLine, DeliveryLine];

    private static readonly string Known = $"Write what the row is: {string.Join(", ", Lines)}, or one of {string.Join(", ", Terms.All.Select(term => term.Key))}.";

    /// <summary>The columns: those of all tables, each once.</summary>
    public IReadOnlyList<Column> Columns { get; } = ColumnsOf(PriceListTable.For(stocks, []));

    /// <summary>The rows of a list.</summary>
    public IEnumerable<string[]> Texts(Shop list, CellManners manners)
    {
        var tables = PriceListTable.For(stocks, list.Sheets);
        var rows = Terms.All.Select(term => (term.Key, Text: term.Text(list, manners))).Where(term => term.Text.Length > 0)
            .Select(term => Row(term.Key, (ValueKey, term.Text)));
        return rows
            .Concat(Of(SheetLine, tables.Sheets, list.Sheets))
            .Concat(Of(PrintLine, tables.Print, list.Print))
            .Concat(Of(PaperLine, tables.Paper, list.Paper))
            .Concat(Of(BookLine, tables.Books, list.BookPrices))
            .Concat(Of(FinishingLine, tables.Finishing, list.Finishing))
            .Concat(Of(DiscountLine, tables.Discounts, list.Order.Discounts.Select(step => new Discount(step))))
            .Concat(Of(DeliveryLine, tables.Delivery, (list.Order.Delivery?.Steps ?? []).Select(step => new DeliveryPrice(step))));

        IEnumerable<string[]> Of<T>(string line, TableShape<T> shape, IEnumerable<T> things)
            where T : class =>
            things.SelectMany(thing => shape.Texts(thing, manners)).Select(texts =>
                Row(line, [.. texts.Select((text, column) => (shape.Columns[column].Key, text)).Where((_, column) => shape.Columns[column].Role != ColumnRole.Hint)]));
    }

    /// <summary>Reads a whole list.</summary>
    /// <param name="rows">Rows of <see cref="Columns"/>, held whole: a list is one document.</param>
    /// <param name="shopName">Name of the shop.</param>
    /// <param name="validFrom">Day from which it holds.</param>
    /// <param name="manners">How cells are understood.</param>
    /// <param name="problem">Told of every problem.</param>
    /// <returns>Whole only where no problem was told.</returns>
    public Shop Read(IReadOnlyList<TextRow> rows, string shopName, DateOnly validFrom, CellManners manners, Action<CellProblem> problem)
    {
        var byLine = rows.Where(row => !row.Cells.All(string.IsNullOrWhiteSpace))
            .ToLookup(row => row.Cells[0].Trim(), StringComparer.OrdinalIgnoreCase);
        var list = PriceListTable.Empty(shopName, validFrom);
        foreach (var term in Terms.All)
        {
            list = ReadTerm(list, term, [.. byLine[term.Key]], manners, problem);
        }

        foreach (var row in byLine.Where(group => !IsKnown(group.Key)).SelectMany(group => group))
        {
            problem(new CellProblem(row.Number, 0, row.Cells[0], Known));
        }

        var sheets = Things(SheetLine, new SheetShape());
        var tables = PriceListTable.For(stocks, sheets);
        list = list with
        {
            Sheets = sheets,
            Print = Things(PrintLine, tables.Print),
            Paper = Things(PaperLine, tables.Paper),
            BookPrices = Things(BookLine, tables.Books),
            Finishing = Things(FinishingLine, tables.Finishing),
            Order = list.Order with { Discounts = [.. Things(DiscountLine, tables.Discounts).Select(discount => discount.Step)] },
        };
        var delivery = Things(DeliveryLine, tables.Delivery);
        return PriceListTable.WithNamedSheets(delivery.Count == 0 ? list : Terms.WithDeliverySteps(list, [.. delivery.Select(price => price.Step)]));

        List<T> Things<T>(string line, TableShape<T> shape)
            where T : class
        {
            // What is only a hint in other people's files is no column of a saved list.
            var places = shape.Columns.Select(column => column.Role == ColumnRole.Hint ? -1 : IndexOf(column.Key)).ToArray();
            return [.. shape.Read(
                byLine[line].Select(row => new TextRow(
                    row.Number, [.. places.Select(place => place < 0 ? "" : row.Cells[place])], row.Units is { } units ? [.. places.Select(place => place < 0 ? null : units[place])] : null)),
                manners,
                found => problem(found with { Column = places[found.Column] })).Select(read => read.Thing)];
        }
    }

    private static List<Column> ColumnsOf(PriceListTable tables) =>
    [
        new(Line, "Line", new TextCell(JobRules.Id)) { Required = true, Words = ["line", "what", "kind", "section"] },
        new(ValueKey, "Value", new TextCell(JobRules.Name)) { Words = ["value", "wert", "valeur"] },
        .. new ITableShape[] { tables.Sheets, tables.Print, tables.Paper, tables.Books, tables.Finishing, tables.Discounts, tables.Delivery }
            .SelectMany(shape => shape.Columns).Where(column => column.Role != ColumnRole.Hint).DistinctBy(column => column.Key).Select(column => column with { Title = column.Key, Required = false }),
    ];

    private static bool IsKnown(string line) =>
        Lines.Contains(line, StringComparer.OrdinalIgnoreCase) || Terms.All.Any(term => string.Equals(term.Key, line, StringComparison.OrdinalIgnoreCase));

    private int IndexOf(string key)
    {
        for (var column = 0; column < Columns.Count; column++)
        {
            if (Columns[column].Key == key)
            {
                return column;
            }
        }

        throw new ArgumentOutOfRangeException(nameof(key), key, "No table of a price list has this column.");
    }

    private string[] Row(string line, params IReadOnlyList<(string Key, string Text)> cells)
    {
        var row = new string[Columns.Count];
        Array.Fill(row, "");
        row[0] = line;
        foreach (var (key, text) in cells)
        {
            row[IndexOf(key)] = text;
        }

        return row;
    }

    private Shop ReadTerm(Shop list, Term term, IReadOnlyList<TextRow> rows, CellManners manners, Action<CellProblem> problem)
    {
        var place = IndexOf(ValueKey);
        foreach (var row in rows.Skip(1))
        {
            problem(new CellProblem(row.Number, 0, row.Cells[0], "This stands further up already; keep one of them."));
        }

        if (rows.Count == 0)
        {
            return list;
        }

        var (changed, rule) = term.Typed(list, rows[0].Cells[place], manners);
        if (rule is not null)
        {
            problem(new CellProblem(rows[0].Number, place, rows[0].Cells[place], rule));
        }

        return changed ?? list;
    }
}
