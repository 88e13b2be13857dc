namespace PressRun.Data.Import.Tables;

/// <summary>Notes what is wrong with a row of a thing.</summary>
/// <param name="row">Which row of the thing, from 0.</param>
/// <param name="column">Which column.</param>
/// <param name="rule">What would be right.</param>
public delegate void Refuse(int row, int column, string rule);

/// <summary>What a table has, whatever its rows become.</summary>
public interface ITableShape
{
    /// <summary>What its rows are, in the plural: <c>papers</c>.</summary>
    string Name { get; }

    /// <summary>The columns in order.</summary>
    IReadOnlyList<Column> Columns { get; }

    /// <summary>Columns that say of which thing a row is, the first of them never empty in a thing's first row; empty where each row is a thing.</summary>
    IReadOnlyList<int> Naming { get; }

    /// <summary>The cells of each row read, with what is wrong.</summary>
    IReadOnlyList<CellProblem> Problems(IReadOnlyList<IReadOnlyList<string>> rows, CellManners manners);
}

/// <summary>A table of things: how rows of cells become things and things rows. A thing with steps stands on as many rows as it has steps.</summary>
/// <typeparam name="T">What the rows become.</typeparam>
public abstract class TableShape<T> : ITableShape
    where T : class
{
    /// <inheritdoc/>
    public abstract string Name { get; }

    /// <inheritdoc/>
    public abstract IReadOnlyList<Column> Columns { get; }

    /// <inheritdoc/>
    public virtual IReadOnlyList<int> Naming => [];

    /// <summary>The rows of a thing: values by column, null where a cell is empty.</summary>
    public abstract IEnumerable<object?[]> Rows(T thing);

    /// <summary>The thing of its rows, whose cells are right one by one; null where something between them is refused.</summary>
    public abstract T? Thing(IReadOnlyList<object?[]> rows, Refuse refuse);

    /// <summary>What two things must not share, with the column that is told; null where anything may stand twice.</summary>
    public abstract (string Key, int Column)? KeyOf(T thing);

    /// <summary>What two things must not share by what people call them, whatever their ids: the key of the thing as if it had just been typed.</summary>
    public (string Key, int Column)? NamedBy(T thing)
    {
        var id = Columns.ToList().FindIndex(column => column is { Key: "id", Role: ColumnRole.Kept });
        var typed = id < 0 ? thing : Thing([.. Rows(thing).Select(row => row.Select((value, column) => column == id ? null : value).ToArray())], (_, _, _) => { });
        return typed is null ? null : KeyOf(typed);
    }

    /// <summary>True where somebody's file may say a thing again; what was read of such a file is remembered until its end.</summary>
    public virtual bool MayRepeat => false;

    /// <summary>Of a shape that may repeat: what a thing of somebody's file is that shares its key with one further up: that one, where it says the same again; the thing by a name of its own;
    /// null where it is refused.</summary>
    public virtual T? Again(T first, T again) => null;

    /// <summary>True where two things stand on the same rows.</summary>
    protected bool SayTheSame(T first, T again) => Rows(first).Zip(Rows(again), (one, other) => one.SequenceEqual(other)).All(same => same) && Rows(first).Count() == Rows(again).Count();

    /// <summary>A row as it is meant, before its cells are read.</summary>
    public virtual TextRow Told(TextRow row, CellManners manners) => row;

    /// <summary>True where a row is one more step of the thing of the row before.</summary>
    public virtual bool GoesOn(object?[] before, object?[] row) => false;

    /// <inheritdoc/>
    public IReadOnlyList<CellProblem> Problems(IReadOnlyList<IReadOnlyList<string>> rows, CellManners manners) => this.Read(rows, manners).Problems;

    /// <summary>The thing with what is not said of it taken from another.</summary>
    /// <param name="thing">What was read; its steps, where it has any, always count.</param>
    /// <param name="from">What was there before.</param>
    /// <param name="said">Columns that said something of the thing, even where they were empty.</param>
    public T Completed(T thing, T from, IReadOnlySet<int> said)
    {
        if (Rows(from).FirstOrDefault() is not { } old)
        {
            return thing;
        }

        var rows = Rows(thing).Select(row => row.Select((value, column) =>
            said.Contains(column) || Columns[column].Step != StepPart.None ? value : old[column]).ToArray()).ToList();
        return Thing(rows, (_, _, _) => { }) ?? thing;
    }

    /// <summary>The texts of a thing's rows.</summary>
    public IEnumerable<string[]> Texts(T thing, CellManners manners) => Rows(thing).Select(row =>
        row.Select((value, column) => value is null ? "" : Columns[column].Kind.Write(value, manners)).ToArray());
}

/// <summary>What is wrong with a cell.</summary>
/// <param name="Row">Its row, from 0, or as the source numbers them.</param>
/// <param name="Column">Its column, from 0.</param>
/// <param name="Value">What stands there.</param>
/// <param name="Rule">What would be right.</param>
public sealed record CellProblem(int Row, int Column, string Value, string Rule);

/// <summary>A thing with the rows it was read from.</summary>
/// <param name="Thing">The thing.</param>
/// <param name="Row">Its first row.</param>
/// <param name="RowCount">How many rows it stands on.</param>
public sealed record ReadThing<T>(T Thing, int Row, int RowCount)
    where T : class;
