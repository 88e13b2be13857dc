using PressRun.Data;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;
using PressRun.Data.Shops;
using PressRun.Engine.Costing;
using PressRun.Engine.Paper;
using PressRun.Web.Libraries.Grid;

namespace PressRun.Web.Libraries.Shops;

/// <summary>A price list while it is edited: its tables and terms, each change stored with the whole list as soon as what it touches is right.</summary>
public sealed class PriceListEditor
{
    private readonly PriceListStore store;
    private readonly PressId press;
    private readonly IReadOnlyList<Stock> stocks;
    private readonly ListSection<Engine.Sheets.Sheet> sheets;
    private Shop? refused;

    /// <summary>Opens a list.</summary>
    public PriceListEditor(PriceListStore store, PressId press, IReadOnlyList<Stock> stocks, CellManners manners, PriceListRecord record)
    {
        (this.store, this.press, this.stocks, Manners, Record) = (store, press, stocks, manners, record);
        sheets = ListSections.Sheets(manners);
        Sections =
        [
            sheets, ListSections.Print(manners), ListSections.Paper(manners), ListSections.Books(manners), ListSections.Finishing(manners),
            ListSections.Discounts(manners), ListSections.Delivery(manners),
        ];
        LoadAll();
    }

    /// <summary>The list as it is stored.</summary>
    public PriceListRecord Record { get; private set; }

    /// <summary>Its tables in order.</summary>
    public IReadOnlyList<ListSection> Sections { get; }

    /// <summary>The viewer's decimal mark and units.</summary>
    public CellManners Manners { get; }

    /// <summary>What stands in the way of the whole list; null where nothing does.</summary>
    public string? Problem { get; private set; }

    /// <summary>The list as somebody else stored it meanwhile; null where nobody did.</summary>
    public PriceListRecord? Theirs { get; private set; }

    private PriceListTable Tables => TablesOf(Record.Prices);

    /// <summary>Stores what a table says now, where it is right.</summary>
    public async Task ChangedAsync(ListSection section)
    {
        var named = section == sheets ? Renamed(Record.Prices) : Record.Prices;
        if (section.Read(named, Tables) is { } list)
        {
            await StoreAsync(PriceListTable.WithNamedSheets(list), section);
        }
    }

    /// <summary>Stores a term. Answers null when it is stored, otherwise what would be right.</summary>
    public async Task<string?> SetAsync(Term term, string text)
    {
        var (list, rule) = term.Typed(Record.Prices, text, Manners);
        if (list is null)
        {
            return SayWhole(rule!);
        }

        if (text.Trim().Length > 0 && term.Lacks?.Invoke(Record.Prices) is { } lacking)
        {
            return SayWhole(lacking);
        }

        await StoreAsync(list, null);
        return Problem;
    }

    /// <summary>Stores a whole list in place of this one, as a file or an undo brings it. Answers null when it is stored.</summary>
    public async Task<string?> ReplaceAsync(Shop list)
    {
        await StoreAsync(list, null);
        LoadAll();
        return Problem;
    }

    /// <summary>Goes on with what somebody else stored.</summary>
    public void TakeTheirs()
    {
        if (Theirs is { } theirs)
        {
            Record = theirs;
            (Theirs, Problem, refused) = (null, null, null);
            LoadAll();
        }
    }

    /// <summary>Stores the own version over what somebody else stored.</summary>
    public async Task SaveOverTheirsAsync()
    {
        if (Theirs is { } theirs && refused is { } mine)
        {
            Record = theirs;
            Theirs = null;
            await StoreAsync(mine, null);
            LoadAll();
        }
    }

    private PriceListTable TablesOf(Shop list) => PriceListTable.For(stocks, list.Sheets);

    private async Task StoreAsync(Shop list, ListSection? from)
    {
        var sheetsBefore = Record.Prices.Sheets;
        var result = await store.SaveAsync(press, Record with { Prices = list });
        (Problem, Theirs, refused) = (null, null, null);
        switch (result)
        {
            case SaveResult<PriceListRecord>.Saved saved:
                Record = saved.Now;
                from?.Settle(Record.Prices, Tables, stored: true);
                if (!sheetsBefore.SequenceEqual(Record.Prices.Sheets))
                {
                    LoadOthers(from);
                }

                return;
            case SaveResult<PriceListRecord>.Conflict conflict:
                (Theirs, refused) = (conflict.Theirs, list);
                Problem = Say($"Somebody else changed this list in between; yours is not stored yet.");
                break;
            case SaveResult<PriceListRecord>.Refused problems:
                Problem = string.Join(" ", problems.Problems.Select(ListSections.Told).Distinct());
                break;
            default:
                Problem = Say($"This list has been taken out in between.");
                break;
        }

        from?.Settle(list, Tables, stored: false);
    }

    private void LoadAll() => LoadOthers(null);

    // Tables that name sheets show them by what they are called now; what waits to be mended elsewhere is left as it was typed.
    private void LoadOthers(ListSection? but)
    {
        foreach (var section in Sections.Where(section => section != but && section.State.Problems.Count == 0))
        {
            section.Load(Record.Prices, Tables);
        }
    }

    // A sheet that got another name keeps its prices.
    private Shop Renamed(Shop list)
    {
        var names = sheets.Document.Rows.Where(row => !row.IsBlank).Select(row => row.Cells[0].Trim()).ToList();
        var gone = list.Sheets.Select(sheet => sheet.Id).Except(names, StringComparer.Ordinal).ToList();
        var come = names.Except(list.Sheets.Select(sheet => sheet.Id), StringComparer.Ordinal).ToList();
        return gone is [var old] && come is [var now] && names.Count == list.Sheets.Count
            ? list with
            {
                Print = [.. list.Print.Select(price => price.SheetId == old ? price with { SheetId = now } : price)],
                Paper = [.. list.Paper.Select(price => price.SheetId == old ? price with { SheetId = now } : price)],
            }
            : list;
    }
}
