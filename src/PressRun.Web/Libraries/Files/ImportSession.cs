using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Notes;
using PressRun.Data.Import.Tables;
using PressRun.Web.Shared;

namespace PressRun.Web.Libraries.Files;

/// <summary>A file on its way into a table: taken, mapped, looked at, brought in, perhaps taken back. The file lies with the server, without a name, until the page is left.</summary>
public sealed class ImportSession : IDisposable
{
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(250);

    private readonly Dictionary<string, CsvMapping> said = new(StringComparer.Ordinal);
    private IImportTarget target = null!;
    private CellManners own = null!;
    private Func<Task> show = () => Task.CompletedTask;
    private PassingFile? file;
    private CancellationTokenSource? running;

    /// <summary>The file; null where none is taken yet.</summary>
    public CsvSource? Source { get; private set; }

    /// <summary>Which table it goes into.</summary>
    public ImportTable? Table { get; private set; }

    /// <summary>What its columns mean.</summary>
    public CsvMapping? Mapping { get; private set; }

    /// <summary>The heads, and the first rows below them.</summary>
    public IReadOnlyList<CsvRow> Top { get; private set; } = [];

    /// <summary>What would come of it.</summary>
    public CsvPreview? Preview { get; private set; }

    /// <summary>What is being done just now; null where nothing is.</summary>
    public ImportWork? Busy { get; private set; }

    /// <summary>The row it has come to.</summary>
    public int Progress { get; private set; }

    /// <summary>What stands in the way; null where nothing does.</summary>
    public string? Problem { get; private set; }

    /// <summary>What was done, in a sentence; null before.</summary>
    public string? Done { get; private set; }

    /// <summary>Tables that the file may be of.</summary>
    public IReadOnlyList<ImportTable> Tables => target.Tables;

    /// <summary>Where the target finds what it has already; null where it replaces that.</summary>
    public IFindsDuplicates? Finder => target as IFindsDuplicates;

    /// <summary>What the file says beside its rows, where the target has use for it.</summary>
    public TermChoice Noted { get; private set; } = new();

    /// <summary>Where terms go that the notes state; null where the target has none.</summary>
    public ITakesTerms? Terms => target as ITakesTerms;

    /// <summary>How many things would come in.</summary>
    public int Coming => (Preview?.Things ?? 0) - (Finder?.LeftOut ?? 0);

    /// <summary>Heads of the file.</summary>
    public IReadOnlyList<string> Heads => Top.FirstOrDefault(row => row.Number == Mapping?.HeadRow)?.Cells ?? [];

    /// <summary>Begins.</summary>
    public void Start(IImportTarget into, CellManners manners, Func<Task> showProgress) => (target, own, show) = (into, manners, showProgress);

    /// <summary>Lets go of a file for another.</summary>
    public void Clear()
    {
        Forget();
        (Source, Mapping, Preview, Problem, Done, Noted) = (null, null, null, null, null, new TermChoice());
        Terms?.Begin();
    }

    /// <summary>Takes a file from the browser and guesses what it is.</summary>
    public async Task TakeAsync(BrowserFile chosen)
    {
        Clear();
        var mine = file = PassingFile.In(Path.GetTempPath());
        await DoAsync(ImportWork.Taking, async cancel =>
        {
            await chosen.ReadAsync(mine.FillAsync, cancel);

            // Beside the page, which may be left meanwhile and then ends it.
            (Source, Table, Mapping, Top) = await Task.Run(() => Looked(mine, cancel), cancel);
        });
    }

    private (CsvSource Source, ImportTable Table, CsvMapping Mapping, IReadOnlyList<CsvRow> Top) Looked(PassingFile taken, CancellationToken cancel)
    {
        const int looked = 14;
        var source = CsvSource.Open(taken.Read, cancel);
        var guesses = target.Tables.Select(table => (Table: table, Mapping: Guess(source, table, cancel))).ToList();
        var (table, mapping) = guesses.MaxBy(guess => (MappingGuess.Covers(guess.Mapping, guess.Table.Columns), guess.Mapping.Columns.Count(column => column.Column is not null)));
        return (source, table, mapping, [.. source.Rows().Take(looked)]);
    }

    /// <summary>Takes the file for another table.</summary>
    public void Choose(ImportTable table)
    {
        Table = table;
        Mapping = Guess(Source!, table, CancellationToken.None);
    }

    /// <summary>Reads the file in another way.</summary>
    public void Map(CsvMapping mapping) => said[Table!.Key] = Mapping = mapping;

    /// <summary>Looks at what would come of the file.</summary>
    public async Task LookAsync()
    {
        Stop();
        Preview = null;
        if (Source is { } source && Mapping is { } mapping && Table is { } table)
        {
            await DoAsync(ImportWork.Looking, async cancel =>
            {
                if (Terms is { } terms)
                {
                    var notes = await Task.Run(() => FileNotes.Of(source, mapping, table.Columns, own, cancel), cancel);
                    Noted.Look(notes, mapping.Manners(own));
                    terms.Place.Look(Noted.Day);
                    Mapping = mapping = mapping with { LastRow = notes.LastRow };
                }

                var preview = await Task.Run(() => target.Preview(table, source, mapping, Watcher(), cancel), cancel);
                if (Finder is { } finder && preview is { ProblemCount: 0, Things: > 0 })
                {
                    await Task.Run(() => finder.FindAsync(source, mapping, cancel), cancel);
                }

                if (Terms is { } list && preview.ProblemCount == 0)
                {
                    await Task.Run(() => list.ReadAsync(table, source, mapping, cancel), cancel);
                }

                Preview = preview;
            });
        }
    }

    /// <summary>Brings the file in.</summary>
    public Task RunAsync() => DoAsync(ImportWork.BringingIn, async cancel =>
    {
        if (Terms is { } terms)
        {
            terms.Taken = Noted.Taken(terms.List);
        }

        var done = await Task.Run(() => target.RunAsync(Table!, Source!, Mapping!, Watcher(), cancel), cancel);
        (Done, Problem) = (done.Said, done.Problem);
    });

    /// <summary>Takes back what was brought in.</summary>
    public Task TakeBackAsync() => DoAsync(ImportWork.TakingBack, async _ =>
    {
        Problem = await target.TakeBackAsync();
        Done = Problem is null ? null : Done;
    });

    /// <summary>Stops what is being done.</summary>
    public void Stop() => running?.Cancel();

    /// <inheritdoc/>
    public void Dispose()
    {
        Stop();
        running?.Dispose();
        Forget();
    }

    private async Task DoAsync(ImportWork what, Func<CancellationToken, Task> work)
    {
        using var mine = new CancellationTokenSource();
        running = mine;
        (Busy, Progress, Problem) = (what, 0, null);
        try
        {
            await show();
            await work(mine.Token);
        }
        catch (Exception stopped) when (stopped is OperationCanceledException || (stopped is ObjectDisposedException && mine.IsCancellationRequested))
        {
            Problem = Say($"Stopped. Nothing was stored.");
        }
        catch (CsvRefusedException refusal)
        {
            Problem = SayWhole(refusal.Message);
        }
        catch (IOException)
        {
            Problem = Say($"The file could not be read to its end. Choose it again.");
        }
        finally
        {
            Busy = null;
            running = running == mine ? null : running;
        }
    }

    // What a person said once of a table's rows and words holds for the next file too, but for what that one has a column for.
    private CsvMapping Guess(CsvSource source, ImportTable table, CancellationToken cancel)
    {
        var guess = MappingGuess.Of(source, table.Columns, own, cancel);
        return said.TryGetValue(table.Key, out var before)
            ? guess with { Meanings = before.Meanings, Everywhere = before.Everywhere.Where(pair => guess.Columns.All(column => column.Column != pair.Key)).ToDictionary() }
            : guess;
    }

    private Watch Watcher() => new(this);

    private void Forget()
    {
        file?.Dispose();
        file = null;
    }

    // Tells the page now and then, however fast the rows go by.
    private sealed class Watch(ImportSession session) : IProgress<int>
    {
        private readonly System.Diagnostics.Stopwatch since = System.Diagnostics.Stopwatch.StartNew();

        public void Report(int value)
        {
            session.Progress = value;
            if (since.Elapsed >= BetweenLooks)
            {
                since.Restart();
                _ = session.show();
            }
        }
    }
}
