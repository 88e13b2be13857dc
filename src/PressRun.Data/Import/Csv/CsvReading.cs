using PressRun.Data.Import.Tables;
using PressRun.Data.Titles;

namespace PressRun.Data.Import.Csv;

/// <summary>What stands in a file, before anything of it is stored.</summary>
/// <param name="Heads">Its heads.</param>
/// <param name="Rows">Rows below the heads that hold anything.</param>
/// <param name="Things">How many things they are.</param>
/// <param name="Sample">The first rows as the table would show them.</param>
/// <param name="Problems">What is wrong, at most <see cref="CsvReading.MostProblems"/> of it.</param>
/// <param name="ProblemCount">How many problems there are in all.</param>
public sealed record CsvPreview(
    IReadOnlyList<string> Heads, int Rows, int Things, IReadOnlyList<string[]> Sample, IReadOnlyList<CellProblem> Problems, int ProblemCount)
{
    /// <summary>How many rows say what a row above says; such a row counts once.</summary>
    public int SameCount { get; init; }

    /// <summary>The first of them, each with the row that it repeats.</summary>
    public IReadOnlyList<(int Row, int First)> Same { get; init; } = [];

    /// <summary>What is done with some rows that one may not expect, in sentences.</summary>
    public IReadOnlyList<string> Told { get; init; } = [];

    /// <summary>Words that the problems told are about and that mean nothing to a column of a few words: each once, with its column.</summary>
    public IReadOnlyList<WordMeaning> UnknownWords(IReadOnlyList<Column> table, CellManners manners) =>
    [
        .. Problems
            .Where(problem => problem.Value.Length > 0 && table[problem.Column].Kind is { Choices.Count: > 0 } kind && kind.Read(problem.Value, manners).Rule is not null)
            .DistinctBy(problem => (problem.Column, SearchText.Fold(problem.Value)))
            .Select(problem => new WordMeaning(problem.Column, problem.Value, "")),
    ];
}

/// <summary>Reads a mapped file as things of a table, row by row.</summary>
public static class CsvReading
{
    /// <summary>Most problems that are told one by one.</summary>
    public const int MostProblems = 5_000;

    /// <summary>Rows of a preview's sample, at least.</summary>
    public const int SampleSize = 12;

    // Enough to see what kind of rows they are.
    private const int MostSame = 3;

    private const int ProgressEvery = 500;

    /// <summary>The rows of a file as rows of the table.</summary>
    /// <param name="source">The file.</param>
    /// <param name="mapping">What its columns mean.</param>
    /// <param name="table">Columns of the table.</param>
    /// <param name="progress">Told the number of the row every now and then; null for nobody.</param>
    /// <param name="cancel">Stops it.</param>
    public static IEnumerable<TextRow> Rows(
        CsvSource source, CsvMapping mapping, IReadOnlyList<Column> table, IProgress<int>? progress = null, CancellationToken cancel = default)
    {
        foreach (var row in source.Rows())
        {
            if (row.Number <= mapping.HeadRow)
            {
                continue;
            }

            if (row.Number > mapping.LastRow)
            {
                yield break;
            }

            cancel.ThrowIfCancellationRequested();
            foreach (var text in mapping.Apply(row, table))
            {
                yield return text;
            }

            if (row.Number % ProgressEvery == 0)
            {
                progress?.Report(row.Number);
            }
        }
    }

    /// <summary>The things of a file.</summary>
    public static IEnumerable<ReadThing<T>> Things<T>(
        CsvSource source, CsvMapping mapping, TableShape<T> shape, CellManners own, Action<CellProblem> problem, CancellationToken cancel = default)
        where T : class =>
        shape.Read(Rows(source, mapping, shape.Columns, null, cancel), mapping.Manners(own), problem, repeats: true);

    /// <summary>Reads a whole file without storing anything.</summary>
    public static CsvPreview Preview<T>(
        CsvSource source, CsvMapping mapping, TableShape<T> shape, CellManners own, IProgress<int>? progress = null, CancellationToken cancel = default)
        where T : class
    {
        var problems = new List<CellProblem>();
        var (count, rows, things, lastRow, wrongRow) = (0, 0, 0, 0, 0);
        var wrongColumns = new HashSet<int>();
        var sample = new List<string[]>();
        var same = new List<(int Row, int First)>();
        var sameCount = 0;
        foreach (var read in shape.Read(Counted(), mapping.Manners(own), Note, repeats: true, NoteSame))
        {
            things++;
            if (sample.Count < SampleSize)
            {
                sample.AddRange(shape.Texts(read.Thing, own));
            }
        }

        return new CsvPreview(Heads(source, mapping), rows, things, sample, problems, count) { SameCount = sameCount, Same = same };

        void NoteSame(int row, int first)
        {
            sameCount++;
            if (same.Count < MostSame)
            {
                same.Add((row, first));
            }
        }

        IEnumerable<TextRow> Counted()
        {
            foreach (var row in Rows(source, mapping, shape.Columns, progress, cancel))
            {
                rows += row.Number == lastRow ? 0 : 1;
                lastRow = row.Number;
                yield return row;
            }
        }

        // A cell that several steps of its row repeat is told once.
        void Note(CellProblem problem)
        {
            if (problem.Row != wrongRow)
            {
                (wrongRow, wrongColumns) = (problem.Row, []);
            }

            if (!wrongColumns.Add(problem.Column))
            {
                return;
            }

            count++;
            if (problems.Count < MostProblems)
            {
                problems.Add(problem);
            }
        }
    }

    /// <summary>The heads of a file.</summary>
    public static IReadOnlyList<string> Heads(CsvSource source, CsvMapping mapping) =>
        source.Rows().Skip(mapping.HeadRow - 1).FirstOrDefault()?.Cells ?? [];
}
