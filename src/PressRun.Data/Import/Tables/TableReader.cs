using PressRun.Data.Titles;

namespace PressRun.Data.Import.Tables;

/// <summary>A row of cells as text.</summary>
/// <param name="Number">How the source numbers it.</param>
/// <param name="Cells">Text by column.</param>
/// <param name="Units">Unit of numbers without one, by column; null where the manners' own holds.</param>
public sealed record TextRow(int Number, IReadOnlyList<string> Cells, IReadOnlyList<string?>? Units = null);

/// <summary>A table that was read whole.</summary>
/// <param name="Things">What its right rows are, in order.</param>
/// <param name="Problems">What is wrong with the others.</param>
public sealed record TableRead<T>(IReadOnlyList<ReadThing<T>> Things, IReadOnlyList<CellProblem> Problems)
    where T : class;

/// <summary>Reads rows of cells into things, holding no more than one thing at a time. Blank rows are passed over; a row that leaves the first
/// column of a thing with steps empty, or repeats it and leaves another of those that name it empty, goes on with the thing above.</summary>
public static class TableReader
{
    /// <summary>What is said of a thing that stands in its table twice.</summary>
    /// <param name="above">True where the other stands further up.</param>
    /// <param name="onRows">True where a thing may stand on several rows.</param>
    public static string StandsTwice(bool above, bool onRows) => (above, onRows) switch
    {
        (true, true) => "This stands further up already. Keep the rows of one together, and each only once.",
        (true, false) => "This stands further up already; each has a name of its own.",
        (false, true) => "This stands further down already. Keep the rows of one together, and each only once.",
        (false, false) => "This stands further down already; each has a name of its own.",
    };

    /// <summary>Reads a table that is at hand.</summary>
    public static TableRead<T> Read<T>(this TableShape<T> shape, IReadOnlyList<IReadOnlyList<string>> rows, CellManners manners)
        where T : class
    {
        var problems = new List<CellProblem>();
        var things = shape.Read(rows.Select((cells, number) => new TextRow(number, cells)), manners, problems.Add).ToList();
        return new TableRead<T>(things, problems);
    }

    /// <summary>Reads rows as they come; things with problems are left out and their problems told.</summary>
    /// <param name="shape">How rows become things.</param>
    /// <param name="rows">The rows.</param>
    /// <param name="manners">How cells are understood.</param>
    /// <param name="problem">Told of every problem.</param>
    /// <param name="repeats">True for somebody's file, in which a thing or a row of it may be said again.</param>
    /// <param name="same">Told the numbers of a row of a file and of the one above that says the same; null for nobody.</param>
    public static IEnumerable<ReadThing<T>> Read<T>(
        this TableShape<T> shape, IEnumerable<TextRow> rows, CellManners manners, Action<CellProblem> problem, bool repeats = false, Action<int, int>? same = null)
        where T : class
    {
        var reading = new Reading<T>(shape, manners, problem, repeats, same ?? ((_, _) => { }));
        foreach (var row in rows)
        {
            if (reading.Take(row) is { } whole)
            {
                yield return whole;
            }
        }

        if (reading.Finish() is { } last)
        {
            yield return last;
        }
    }

    private sealed class Reading<T>(TableShape<T> shape, CellManners manners, Action<CellProblem> problem, bool inFile, Action<int, int> same)
        where T : class
    {
        private readonly List<ReadRow> open = [];
        private readonly SameStep steps = new(shape.Columns, inFile);
        // Where nothing may be said again, the keys are enough.
        private readonly bool repeats = inFile && shape.MayRepeat;
        private readonly Dictionary<string, (T? Thing, int Row)> taken = new(StringComparer.Ordinal);
        private readonly int first = shape.Columns.Any(column => column.Step != StepPart.None)
            ? shape.Columns.ToList().FindIndex(column => column is { OfThing: true, Role: ColumnRole.Shown })
            : -1;

        /// <summary>Takes the next row; gives the thing before it, where this row begins another.</summary>
        public ReadThing<T>? Take(TextRow told)
        {
            if (told.Cells.All(string.IsNullOrWhiteSpace))
            {
                return null;
            }

            var row = shape.Told(told, manners);

            var above = open.Count > 0 ? open[^1].Values : null;
            var goesOnBlank = first >= 0 && above is not null && (string.IsNullOrWhiteSpace(row.Cells[first]) || Repeats(row, above));
            var values = new object?[shape.Columns.Count];
            var right = true;
            for (var column = 0; column < values.Length; column++)
            {
                right &= ReadCell(row, column, goesOnBlank ? above : null, values);
            }

            ReadThing<T>? whole = null;
            if (above is not null && !shape.GoesOn(above, values))
            {
                whole = Finish();
            }

            open.Add(new ReadRow(row, values, right));
            return whole;
        }

        /// <summary>The thing of the rows taken last.</summary>
        public ReadThing<T>? Finish()
        {
            if (open.Count == 0)
            {
                return null;
            }

            var rows = open.ToList();
            open.Clear();
            if (!rows.TrueForAll(row => row.Right))
            {
                return null;
            }

            var refused = false;
            rows = steps.Once(rows, same, RefuseAt);
            if (refused)
            {
                return null;
            }

            var thing = shape.Thing([.. rows.Select(row => row.Values)], (row, column, rule) => RefuseAt(rows[row].Row, column, rule));
            if (refused || thing is null)
            {
                return null;
            }

            while (shape.KeyOf(thing) is var (key, keyColumn) && !taken.TryAdd(key, (repeats ? thing : null, rows[0].Row.Number)))
            {
                var (known, knownRow) = taken[key];
                var again = known is null ? null : shape.Again(known, thing);
                if (again is null)
                {
                    RefuseAt(rows[0].Row, keyColumn, StandsTwice(above: true, rows.Count > 1 || first >= 0));
                    return null;
                }

                if (ReferenceEquals(again, known))
                {
                    same(rows[0].Row.Number, knownRow);
                    return null;
                }

                thing = again;
            }

            return new ReadThing<T>(thing, rows[0].Row.Number, rows.Count);

            void RefuseAt(TextRow row, int column, string rule)
            {
                refused = true;
                problem(new CellProblem(row.Number, column, row.Cells[column], rule));
            }
        }

        // True for a row that says again what names the thing above and leaves some of that to it.
        private bool Repeats(TextRow row, object?[] above) =>
            shape.Naming is [var name, ..]
            && shape.Naming.Any(column => column != name && string.IsNullOrWhiteSpace(row.Cells[column]))
            && shape.Naming.All(column => (column != name && string.IsNullOrWhiteSpace(row.Cells[column])) || SaysAgain(row, column, above[column]));

        private bool SaysAgain(TextRow row, int column, object? above) => shape.Columns[column].Kind.Read(row.Cells[column].Trim(), manners).Value switch
        {
            string text => above is string other && SearchText.Fold(text) == SearchText.Fold(other),
            var value => value is not null && Equals(value, above),
        };

        private bool ReadCell(TextRow row, int column, object?[]? above, object?[] values)
        {
            var text = row.Cells[column].Trim();
            var told = shape.Columns[column];
            if (text.Length == 0 && (above is null || !told.OfThing))
            {
                text = told.Otherwise ?? "";
            }

            if (text.Length == 0)
            {
                values[column] = told.OfThing ? above?[column] : null;
                if (values[column] is null && told.Required)
                {
                    problem(new CellProblem(row.Number, column, "", $"{told.Title} is needed. {Expected(told)}".TrimEnd()));
                    return false;
                }

                return true;
            }

            var read = told.Kind.Read(text, manners, row.Units?[column]);
            if (read.Rule is { } rule)
            {
                problem(new CellProblem(row.Number, column, text, rule));
                return false;
            }

            values[column] = read.Value;
            return true;
        }

        // A kind says what it expects when it is asked to read something that it cannot be.
        private string Expected(Column column) => column.Kind is TextCell ? "" : column.Kind.Read("?", manners).Rule ?? "";
    }
}
