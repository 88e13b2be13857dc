using PressRun.Data;
using PressRun.Data.Import.Tables;
using PressRun.Engine.Costing;
using PressRun.Web.Libraries.Grid;

namespace PressRun.Web.Libraries;

/// <summary>One look at the text of a library's table, and what comes of its rows: how they stand when they are stored, and what is wrong with the others.</summary>
/// <param name="shape">How rows become things.</param>
/// <param name="rows">The rows that have something in them.</param>
/// <param name="read">What was read from them.</param>
/// <param name="manners">The viewer's decimal mark and units.</param>
internal sealed class LibraryLook<T>(TableShape<LibraryItem<T>> shape, IReadOnlyList<GridRow> rows, TableRead<LibraryItem<T>> read, CellManners manners)
    where T : class
{
    /// <summary>The things whose every cell could be read.</summary>
    public IReadOnlyList<ReadThing<LibraryItem<T>>> Things => read.Things;

    /// <summary>Which things stand in the table, stored or waiting; what is stored and not among them has been taken out.</summary>
    public HashSet<(string Id, string Table)> Present { get; } = [];

    /// <summary>How each row that is stored reads from now on, by the row's key.</summary>
    public Dictionary<string, IReadOnlyList<string>> Texts { get; } = new(StringComparer.Ordinal);

    /// <summary>What is wrong with a cell.</summary>
    public Dictionary<(string Row, int Column), string> Problems { get; } = read.Problems.DistinctBy(problem => (problem.Row, problem.Column))
        .ToDictionary(problem => (rows[problem.Row].Key, problem.Column), problem => problem.Rule);

    /// <summary>What is said of a row, by its key.</summary>
    public Dictionary<string, string> Notes { get; } = [];

    /// <summary>Keys of the rows that are not stored.</summary>
    public HashSet<string> Unsaved { get; } = [.. Unread(rows, read)];

    /// <summary>Writes a thing's rows as it is stored.</summary>
    public void Settle(ReadThing<LibraryItem<T>> thing, LibraryItem<T> now)
    {
        foreach (var (step, line) in shape.Texts(now, manners).Index())
        {
            Texts[rows[thing.Row + step].Key] = line;
        }
    }

    /// <summary>Leaves a thing's rows as they were typed, and says why.</summary>
    public void Wait(ReadThing<LibraryItem<T>> thing, string note)
    {
        Wait(thing);
        Notes[rows[thing.Row].Key] = note;
    }

    /// <summary>Leaves a thing's rows as they were typed, because something is wrong with a cell of its first.</summary>
    public void Refuse(ReadThing<LibraryItem<T>> thing, int column, string rule)
    {
        Wait(thing);
        Problems[(rows[thing.Row].Key, column)] = rule;
    }

    /// <summary>Leaves a thing's rows as they were typed, because rules that only the library knows are broken.</summary>
    public void Refuse(ReadThing<LibraryItem<T>> thing, IReadOnlyList<Problem> problems)
    {
        Wait(thing);
        var row = rows[thing.Row].Key;
        foreach (var problem in problems)
        {
            // Such a rule names its field by the path in the contract: $.mailer.
            var key = problem.Path.Split('.', '[').ElementAtOrDefault(1);
            var column = shape.Columns.ToList().FindIndex(column => column.Key == key);
            if (column >= 0 && shape.Columns[column].Role == ColumnRole.Shown)
            {
                Problems[(row, column)] = problem.Rule;
            }
            else
            {
                Notes[row] = SayWhole(problem.Rule);
            }
        }
    }

    private void Wait(ReadThing<LibraryItem<T>> thing) => Unsaved.UnionWith(KeysOf(thing));

    private IEnumerable<string> KeysOf(ReadThing<LibraryItem<T>> thing) => Enumerable.Range(thing.Row, thing.RowCount).Select(row => rows[row].Key);

    private static IEnumerable<string> Unread(IReadOnlyList<GridRow> rows, TableRead<LibraryItem<T>> read)
    {
        var right = read.Things.SelectMany(thing => Enumerable.Range(thing.Row, thing.RowCount)).ToHashSet();
        return Enumerable.Range(0, rows.Count).Where(row => !right.Contains(row)).Select(row => rows[row].Key);
    }
}
