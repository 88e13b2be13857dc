using System.Globalization;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;
using PressRun.Web.Libraries.Files;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Libraries;

public class ImportSessionTests
{
    private static readonly CellManners Manners = new(CultureInfo.InvariantCulture, UnitSystem.Metric);

    [Fact]
    public async Task Whoever_leaves_the_page_ends_the_guess_at_what_their_file_is()
    {
        var slow = new SlowCell();
        using var session = new ImportSession();
        session.Start(new Target(slow), Manners, () => Task.CompletedTask);
        var taking = session.TakeAsync(ChosenFile.Of("name,more\na,b\nc,d\n"));
        await slow.Begun.Task.WaitAsync(TestContext.Current.CancellationToken);

        session.Dispose();
        slow.Go.Set();
        await taking;

        // The cells of one column are read at once, and no other's after that.
        Assert.Equal(2, slow.Times);
        Assert.Null(session.Source);
    }

    [Fact]
    public async Task A_file_is_taken_as_what_it_looks_like_most()
    {
        var slow = new SlowCell();
        slow.Go.Set();
        using var session = new ImportSession();
        session.Start(new Target(slow), Manners, () => Task.CompletedTask);
        await session.TakeAsync(ChosenFile.Of("name,more\na,b\nc,d\n"));

        Assert.Equal("things", session.Table!.Key);
        Assert.Equal(["name", "more"], session.Heads);
    }

    private sealed class SlowCell : CellKind
    {
        public TaskCompletionSource Begun { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public ManualResetEventSlim Go { get; } = new();

        public int Times { get; private set; }

        public override CellRead Read(string text, CellManners manners, string? unit = null)
        {
            Begun.TrySetResult();
            Go.Wait();
            Times++;
            return CellRead.Of(text);
        }

        public override string Write(object value, CellManners manners) => (string)value;
    }

    private sealed class Target(SlowCell cell) : IImportTarget
    {
        public string Name => "things";

        public string BackTo => "things";

        public IReadOnlyList<ImportTable> Tables { get; } = [new("things", "things", [new Column("name", "Name", cell) { Words = ["name"] }])];

        public CsvPreview Preview(ImportTable table, CsvSource source, CsvMapping mapping, IProgress<int> progress, CancellationToken cancel) => throw new NotSupportedException();

        public Task<ImportDone> RunAsync(ImportTable table, CsvSource source, CsvMapping mapping, IProgress<int> progress, CancellationToken cancel) => throw new NotSupportedException();

        public Task<string?> TakeBackAsync() => throw new NotSupportedException();
    }
}
