namespace PressRun.Web.Libraries.Grid;

/// <summary>A row of an edited table.</summary>
/// <param name="Key">What the row is known by as long as the page is open; a stored row's key does not change with its text.</param>
/// <param name="Cells">Text by column, also of columns that are not shown.</param>
public sealed record GridRow(string Key, IReadOnlyList<string> Cells)
{
    /// <summary>True where nothing stands in it.</summary>
    public bool IsBlank => Cells.All(string.IsNullOrWhiteSpace);

    /// <summary>The row with another text in one cell.</summary>
    public GridRow With(int column, string text) => this with { Cells = [.. Cells.Select((old, at) => at == column ? text : old)] };
}

/// <summary>The text of an edited table with its edits, which can be taken back and done again. An empty row always stands at the end, to type or
/// paste into. It knows nothing of what the text means.</summary>
public sealed class GridDocument(int columnCount)
{
    /// <summary>Most rows that a table is edited with; longer ones come in as a file.</summary>
    public const int MostRows = 2_000;

    internal const string NewKey = "new-";

    private const int MostEdits = 100;

    private readonly List<(string What, IReadOnlyList<GridRow> Before)> done = [];
    private readonly Stack<(string What, IReadOnlyList<GridRow> After)> undone = new();
    private int added;

    /// <summary>The rows, the empty one at the end too.</summary>
    public IReadOnlyList<GridRow> Rows { get; private set; } = [];

    /// <summary>What undo takes back, in words; null where there is nothing.</summary>
    public string? Undoable => done.Count > 0 ? done[^1].What : null;

    /// <summary>What redo does again, in words; null where there is nothing.</summary>
    public string? Redoable => undone.TryPeek(out var edit) ? edit.What : null;

    /// <summary>Shows other rows and forgets the edits.</summary>
    public void Load(IEnumerable<GridRow> rows)
    {
        done.Clear();
        undone.Clear();
        Rows = WithRoom([.. rows]);
    }

    /// <summary>Changes rows as one edit.</summary>
    /// <param name="what">What it is, in words: <c>a pasted block</c>.</param>
    /// <param name="change">The rows as they become.</param>
    /// <returns>False where nothing changes.</returns>
    public bool Edit(string what, Func<IReadOnlyList<GridRow>, IReadOnlyList<GridRow>> change)
    {
        var before = Rows;
        var after = WithRoom(change(before));
        if (after.SequenceEqual(before))
        {
            return false;
        }

        done.Add((what, before));
        if (done.Count > MostEdits)
        {
            done.RemoveAt(0);
        }

        undone.Clear();
        Rows = after;
        return true;
    }

    /// <summary>Changes one cell.</summary>
    public bool Set(string row, int column, string text, string what) =>
        Edit(what, rows => [.. rows.Select(old => old.Key == row && old.Cells[column] != text ? old.With(column, text) : old)]);

    /// <summary>How many rows a block may have that is put in at a row.</summary>
    public int RoomFrom(string row) => Math.Max(MostRows, Rows.Count) - FirstAt(Rows, row);

    /// <summary>Puts a block of cells in, from one cell on to the right and down; rows that it lacks are added.</summary>
    /// <param name="row">Row of the upper left cell.</param>
    /// <param name="columns">Columns that the block's cells go to, in order; what goes past them is left out.</param>
    /// <param name="block">Text by row and cell.</param>
    /// <param name="what">What it is, in words.</param>
    public bool Put(string row, IReadOnlyList<int> columns, IReadOnlyList<IReadOnlyList<string>> block, string what) => Edit(what, rows =>
    {
        var all = rows.ToList();
        var first = FirstAt(rows, row);
        for (var down = 0; down < block.Count; down++)
        {
            if (first + down == all.Count)
            {
                all.Add(NewRow());
            }

            var cells = all[first + down].Cells.ToArray();
            for (var right = 0; right < Math.Min(columns.Count, block[down].Count); right++)
            {
                cells[columns[right]] = block[down][right];
            }

            if (!cells.SequenceEqual(all[first + down].Cells))
            {
                all[first + down] = all[first + down] with { Cells = cells };
            }
        }

        return all;
    });

    /// <summary>Empties cells.</summary>
    public bool Clear(IReadOnlyCollection<string> rows, IReadOnlyCollection<int> columns, string what) => Edit(what, all =>
        [.. all.Select(row => rows.Contains(row.Key) && columns.Any(column => row.Cells[column].Length > 0)
            ? row with { Cells = [.. row.Cells.Select((text, at) => columns.Contains(at) ? "" : text)] }
            : row)]);

    /// <summary>Takes rows out.</summary>
    public bool Remove(IReadOnlyCollection<string> rows, string what) => Edit(what, all => [.. all.Where(row => !rows.Contains(row.Key))]);

    /// <summary>Writes rows as they are known now, without that being an edit: text in its usual form, and the id that a new row got, which the
    /// row keeps through undo and redo.</summary>
    /// <param name="settled">The rows by key.</param>
    /// <param name="kept">Columns that are kept beside a row.</param>
    /// <param name="read">The rows as they were read: what somebody typed into one of them since stays. Null where nobody could.</param>
    public void Settle(IReadOnlyDictionary<string, IReadOnlyList<string>> settled, IReadOnlyCollection<int> kept, IReadOnlyCollection<GridRow>? read = null)
    {
        var shown = Enumerable.Range(0, columnCount).Except(kept).ToList();
        var seen = read?.ToDictionary(row => row.Key, row => row.Cells, StringComparer.Ordinal);
        Rows = [.. Rows.Select(row => !settled.TryGetValue(row.Key, out var cells) || cells.SequenceEqual(row.Cells) ? row : TypedSince(row) ? Kept(row) : row with { Cells = cells })];
        for (var at = 0; at < done.Count; at++)
        {
            done[at] = done[at] with { Before = Keeping(done[at].Before) };
        }

        IReadOnlyList<GridRow> Keeping(IReadOnlyList<GridRow> rows) => rows.Any(Lacks) ? [.. rows.Select(row => Lacks(row) ? Kept(row) : row)] : rows;

        bool TypedSince(GridRow row) => seen?.GetValueOrDefault(row.Key) is { } then && shown.Any(column => then[column] != row.Cells[column]);

        bool Lacks(GridRow row) => settled.TryGetValue(row.Key, out var cells) && kept.Any(column => row.Cells[column].Length == 0 && cells[column].Length > 0);

        GridRow Kept(GridRow row) =>
            row with { Cells = [.. row.Cells.Select((text, at) => text.Length == 0 && kept.Contains(at) ? settled[row.Key][at] : text)] };
    }

    /// <summary>Puts rows back that must not go, without that being an edit.</summary>
    public void PutBack(IEnumerable<GridRow> rows) => Rows = WithRoom([.. Rows.Where(row => !row.IsBlank), .. rows]);

    /// <summary>Takes back the last edit.</summary>
    public bool Undo()
    {
        if (done.Count == 0)
        {
            return false;
        }

        undone.Push((done[^1].What, Rows));
        Rows = done[^1].Before;
        done.RemoveAt(done.Count - 1);
        return true;
    }

    /// <summary>Does again what was taken back last.</summary>
    public bool Redo()
    {
        if (!undone.TryPop(out var edit))
        {
            return false;
        }

        done.Add((edit.What, Rows));
        Rows = edit.After;
        return true;
    }

    private static int FirstAt(IReadOnlyList<GridRow> rows, string row) => rows.Select((candidate, at) => (candidate.Key, at)).FirstOrDefault(found => found.Key == row).at;

    private IReadOnlyList<GridRow> WithRoom(IReadOnlyList<GridRow> rows) => rows.Count > 0 && rows[^1].IsBlank ? rows : [.. rows, NewRow()];

    private GridRow NewRow() => new($"{NewKey}{++added}", [.. Enumerable.Repeat("", columnCount)]);
}
