using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Engine.Costing;
using PressRun.Web.Libraries.Grid;

namespace PressRun.Web.Libraries.Shops;

/// <summary>A table of a price list, edited with the others and stored with them as one document.</summary>
public abstract class ListSection(string key, string title, string addLabel, string note, int columnCount)
{
    /// <summary>Its name in addresses.</summary>
    public string Key { get; } = key;

    /// <summary>What it is called.</summary>
    public string Title { get; } = title;

    /// <summary>What adds a row to it.</summary>
    public string AddLabel { get; } = addLabel;

    /// <summary>A sentence that explains it.</summary>
    public string Note { get; } = note;

    /// <summary>The text and its edits.</summary>
    public GridDocument Document { get; } = new(columnCount);

    /// <summary>What was found out about the text.</summary>
    public GridState State { get; protected set; } = GridState.Clean;

    /// <summary>The columns.</summary>
    public abstract IReadOnlyList<Column> Columns { get; }

    /// <summary>Shows what a list says and forgets the edits.</summary>
    public abstract void Load(Shop list, PriceListTable tables);

    /// <summary>Reads the text into a list, with the tables that know its papers and sheets.</summary>
    /// <returns>The list with what stands here; null where a cell waits to be mended, which <see cref="State"/> then says.</returns>
    public abstract Shop? Read(Shop list, PriceListTable tables);

    /// <summary>Writes the rows in their usual form after they were stored, or says that they are not.</summary>
    public abstract void Settle(Shop list, PriceListTable tables, bool stored);
}

/// <summary>A table of a price list whose rows become things of one type.</summary>
/// <param name="key">Its name in addresses.</param>
/// <param name="title">What it is called.</param>
/// <param name="addLabel">What adds a row to it.</param>
/// <param name="note">A sentence that explains it.</param>
/// <param name="manners">The viewer's decimal mark and units.</param>
/// <param name="shapeOf">How its rows are read.</param>
/// <param name="get">Its things in a list.</param>
/// <param name="set">A list with other things.</param>
public sealed class ListSection<T>(
    string key,
    string title,
    string addLabel,
    string note,
    CellManners manners,
    Func<PriceListTable, TableShape<T>> shapeOf,
    Func<Shop, IEnumerable<T>> get,
    Func<Shop, IReadOnlyList<T>, Shop> set)
    : ListSection(key, title, addLabel, note, shapeOf(PriceListTable.For([], [])).Columns.Count)
    where T : class
{
    private TableShape<T> shape = shapeOf(PriceListTable.For([], []));
    private int loads;

    /// <inheritdoc/>
    public override IReadOnlyList<Column> Columns => shape.Columns;

    /// <summary>Fills in what a row leaves empty and can be known, before it is read; null for nothing.</summary>
    public Func<GridRow, GridRow>? Complete { get; init; }

    /// <inheritdoc/>
    public override void Load(Shop list, PriceListTable tables)
    {
        shape = shapeOf(tables);
        loads++;
        Document.Load(Texts(list).Select((texts, at) => new GridRow($"{loads}-{at}", texts)));
        State = GridState.Clean;
    }

    /// <inheritdoc/>
    public override Shop? Read(Shop list, PriceListTable tables)
    {
        shape = shapeOf(tables);
        var rows = Filled();
        var read = shape.Read([.. rows.Select(row => row.Cells)], manners);
        if (read.Problems.Count > 0)
        {
            State = new GridState(
                read.Problems.DistinctBy(problem => (problem.Row, problem.Column)).ToDictionary(problem => (rows[problem.Row].Key, problem.Column), problem => problem.Rule),
                new Dictionary<string, string>(),
                rows.Select(row => row.Key).ToHashSet(StringComparer.Ordinal));
            return null;
        }

        return set(list, [.. read.Things.Select(thing => thing.Thing)]);
    }

    /// <inheritdoc/>
    public override void Settle(Shop list, PriceListTable tables, bool stored)
    {
        shape = shapeOf(tables);
        var rows = Filled();
        if (!stored)
        {
            State = GridState.Clean with { Unsaved = rows.Select(row => row.Key).ToHashSet(StringComparer.Ordinal) };
            return;
        }

        var texts = Texts(list).ToList();
        if (texts.Count == rows.Count)
        {
            Document.Settle(rows.Select((row, at) => (row.Key, Cells: (IReadOnlyList<string>)texts[at])).ToDictionary(row => row.Key, row => row.Cells), []);
        }

        State = GridState.Clean;
    }

    private List<GridRow> Filled() => shape.Gathered(Document.Rows.Where(row => !row.IsBlank).Select(row => Complete?.Invoke(row) ?? row), row => row.Cells);

    private IEnumerable<string[]> Texts(Shop list) => get(list).SelectMany(thing => shape.Texts(thing, manners));
}
