using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Notes;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.RunPlans;
using PressRun.Data.Shops;
using PressRun.Data.Stocks;
using PressRun.Engine.Costing;
using PressRun.Web.Libraries.Shops;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Libraries.Files;

/// <summary>Brings a file into a price list: into one of its tables, where it adds prices and replaces those for the same thing, or as the whole list.</summary>
public sealed class PriceListImport : IImportTarget, ITakesTerms
{
    private const string Whole = "whole";

    // The name under which the table of papers with their prices is chosen.
    private const string Together = "together";

    private readonly PressView press;
    private readonly PlanStore plans;
    private readonly OpenList open;
    private readonly OfferImport offers;
    private readonly CellManners own;
    private readonly PriceListFile file;
    private readonly Dictionary<string, ITablePart> parts;
    private readonly DateOnly today;
    private Shop? wouldBe;
    private IReadOnlyList<JobSource> looked = [];
    private (IReadOnlyList<NotedTerm> Terms, PlanChanges Changes)? changes;

    /// <summary>For the list that is open.</summary>
    /// <param name="view">The shop with the list open.</param>
    /// <param name="press">Whose it is.</param>
    /// <param name="shops">Where lists are kept.</param>
    /// <param name="stocks">Where papers go that the file brings along.</param>
    /// <param name="plans">Plans that go by the list.</param>
    public PriceListImport(ShopView view, PressView press, ShopService shops, StockStore stocks, PlanStore plans)
    {
        (this.press, this.plans, open, own, file, today) = (press, plans, new OpenList(shops, press, view), LibraryManners.Of(press), new PriceListFile(view.Stocks), shops.Today);
        var tables = PriceListTable.For(view.Stocks, List.Sheets);
        offers = new OfferImport(tables.Offers, stocks, press, open);
        parts = new Dictionary<string, ITablePart>(StringComparer.Ordinal)
        {
            ["paper"] = new TablePart<PaperPrice>(tables.Paper, list => list.Paper, (list, prices) => list with { Paper = prices }),
            ["print"] = new TablePart<PrintPrice>(tables.Print, list => list.Print, (list, prices) => list with { Print = prices }),
            ["sheets"] = new TablePart<Engine.Sheets.Sheet>(tables.Sheets, list => list.Sheets, (list, sheets) => list with { Sheets = sheets }),
            ["books"] = new TablePart<BookPrice>(tables.Books, list => list.BookPrices, (list, prices) => list with { BookPrices = prices }),
            ["finishing"] = new TablePart<Finishing>(tables.Finishing, list => list.Finishing, (list, operations) => list with { Finishing = operations }),
        };
        Tables = [.. parts.Select(part => new ImportTable(part.Key, part.Value.Name, part.Value.Columns)), new ImportTable(Together, tables.Offers.Name, tables.Offers.Columns), new ImportTable(Whole, RowWords.WholeList, file.Columns)];
        Place = PlaceNow();
    }

    /// <inheritdoc/>
    public string Name => Say($"prices of {open.View.Shop.Name}");

    /// <inheritdoc/>
    public string BackTo => $"{ShopAddress}?list={open.View.Editor!.Record.Id}";

    /// <inheritdoc/>
    public string ShopAddress => $"shops/{open.View.Shop.Id}";

    /// <inheritdoc/>
    public IReadOnlyList<ImportTable> Tables { get; }

    /// <inheritdoc/>
    public Shop List => open.Prices;

    /// <inheritdoc/>
    public IReadOnlyList<NotedTerm> Taken { get; set; } = [];

    /// <inheritdoc/>
    public ListPlace Place { get; private set; }

    /// <inheritdoc/>
    public void Begin() => (Place, wouldBe, looked, changes) = (PlaceNow(), null, [], null);

    /// <inheritdoc/>
    public async Task ReadAsync(ImportTable table, CsvSource source, CsvMapping mapping, CancellationToken cancel)
    {
        looked = await plans.OfListAsync(press.Record.Id, open.View.Editor!.Record.Id, PlanChanges.MostLooked, cancel);
        wouldBe = table.Key == Together ? offers.Into(source, mapping, cancel) : Read(table, source, mapping, _ => { }, cancel);
        changes = null;
        Changes([]);
    }

    /// <inheritdoc/>
    public PlanChanges Changes(IReadOnlyList<NotedTerm> terms)
    {
        if (changes is not { } known || !known.Terms.SequenceEqual(terms))
        {
            changes = (terms, PlanChanges.Of(Math.Max(open.View.Uses.Count, looked.Count), looked, NotedTerm.Into(wouldBe ?? List, terms)));
        }

        return changes.Value.Changes;
    }

    /// <inheritdoc/>
    public CsvPreview Preview(ImportTable table, CsvSource source, CsvMapping mapping, IProgress<int> progress, CancellationToken cancel)
    {
        if (table.Key == Together)
        {
            return offers.Preview(source, mapping, progress, cancel);
        }

        if (parts.TryGetValue(table.Key, out var part))
        {
            return part.Preview(source, mapping, own, progress, cancel);
        }

        var problems = new List<CellProblem>();
        var rows = CsvReading.Rows(source, mapping, table.Columns, progress, cancel).ToList();
        file.Read(rows, List.Name, List.ValidFrom, mapping.Manners(own), problems.Add);
        return new CsvPreview(
            CsvReading.Heads(source, mapping), rows.Count, rows.Count, [.. rows.Take(CsvReading.SampleSize).Select(row => row.Cells.ToArray())],
            [.. problems.Take(CsvReading.MostProblems)], problems.Count);
    }

    /// <inheritdoc/>
    public async Task<ImportDone> RunAsync(ImportTable table, CsvSource source, CsvMapping mapping, IProgress<int> progress, CancellationToken cancel)
    {
        if (table.Key == Together)
        {
            return await offers.RunAsync(source, mapping, Taken, Place, progress, cancel);
        }

        var problems = new List<CellProblem>();
        var list = Read(table, source, mapping, problems.Add, cancel);
        if (problems.Count > 0)
        {
            return new ImportDone(null, Say($"Nothing was brought in. Row {problems[0].Row}: {SayWhole(problems[0].Rule)}"));
        }

        return await open.StoreAsync(Place.Dated(NotedTerm.Into(list, Taken)), Place.AsNew) is { } problem
            ? new ImportDone(null, Say($"Nothing was brought in. {problem}"))
            : new ImportDone($"{Place.Stored(press.Format, Taken.Count)}.", null);
    }

    /// <inheritdoc/>
    public async Task<string?> TakeBackAsync() => await open.TakeBackAsync() ?? await offers.TakeBackAsync();

    private ListPlace PlaceNow() => new(
        open.View.Shop.PriceLists,
        new PriceListHead(open.View.Editor!.Record.Id, List.ValidFrom),
        List is { Print: [], Paper: [], BookPrices: [], Finishing: [] } && open.View.Uses.Count == 0,
        today);

    private Shop Read(ImportTable table, CsvSource source, CsvMapping mapping, Action<CellProblem> problem, CancellationToken cancel) => parts.TryGetValue(table.Key, out var part)
        ? PriceListTable.WithNamedSheets(part.Into(List, source, mapping, own, problem, cancel))
        : file.Read([.. CsvReading.Rows(source, mapping, table.Columns, null, cancel)], List.Name, List.ValidFrom, mapping.Manners(own), problem);

    /// <summary>A table of a list, whatever its rows become.</summary>
    private interface ITablePart
    {
        string Name { get; }

        IReadOnlyList<Column> Columns { get; }

        CsvPreview Preview(CsvSource source, CsvMapping mapping, CellManners own, IProgress<int> progress, CancellationToken cancel);

        Shop Into(Shop list, CsvSource source, CsvMapping mapping, CellManners own, Action<CellProblem> problem, CancellationToken cancel);
    }

    private sealed class TablePart<T>(TableShape<T> shape, Func<Shop, IReadOnlyList<T>> get, Func<Shop, IReadOnlyList<T>, Shop> set) : ITablePart
        where T : class
    {
        public string Name => shape.Name;

        public IReadOnlyList<Column> Columns => shape.Columns;

        public CsvPreview Preview(CsvSource source, CsvMapping mapping, CellManners own, IProgress<int> progress, CancellationToken cancel) =>
            CsvReading.Preview(source, mapping, shape, own, progress, cancel);

        public Shop Into(Shop list, CsvSource source, CsvMapping mapping, CellManners own, Action<CellProblem> problem, CancellationToken cancel)
        {
            var come = CsvReading.Things(source, mapping, shape, own, problem, cancel).Select(read => read.Thing).ToList();
            var keys = come.Select(thing => shape.KeyOf(thing)?.Key).OfType<string>().ToHashSet(StringComparer.Ordinal);
            var byKey = come.Where(thing => shape.KeyOf(thing) is not null).ToDictionary(thing => shape.KeyOf(thing)!.Value.Key);
            var had = get(list).Select(thing => shape.KeyOf(thing)?.Key).OfType<string>().ToHashSet(StringComparer.Ordinal);
            return set(list, keys.Count == 0
                ? come
                : [.. get(list).Select(thing => byKey.GetValueOrDefault(shape.KeyOf(thing)!.Value.Key, thing)), .. come.Where(thing => !had.Contains(shape.KeyOf(thing)!.Value.Key))]);
        }
    }
}
