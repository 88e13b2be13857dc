using System.Diagnostics;
using System.Globalization;
using PressRun.Engine.Costing;
using PressRun.Engine.Ladder;
using PressRun.Engine.Tests.Support;

namespace PressRun.Benchmarks.Spreadsheet;

/// <summary>
/// A ladder of 5,000 quantities against the same table in a general-purpose spreadsheet without a window. Both are timed in one run; the
/// spreadsheet's figures must equal ours first.
/// </summary>
internal static class SpreadsheetComparison
{
    private const int Quantities = 5000;
    private const int Runs = 10;
    private const int OurRuns = 20;

    public static int Run()
    {
        if (HeadlessOffice.Executable is null)
        {
            Console.WriteLine("No headless spreadsheet was found (Debian: libreoffice-calc); nothing was compared.");
            return 1;
        }

        var folder = Directory.CreateTempSubdirectory("pressrun-spreadsheet-");
        try
        {
            return Compare(folder.FullName);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static int Compare(string folder)
    {
        var prepared = PreparedJob.Prepare(ExampleJob.Create()).Value;
        var sheet = new CostingSheet(prepared);
        var (table, numbers, empty) = (Path.Combine(folder, "table.fods"), Path.Combine(folder, "numbers.fods"), Path.Combine(folder, "empty.fods"));
        sheet.Write(table, Quantities);
        sheet.WriteNumbers(numbers, Quantities);
        CostingSheet.WriteEmpty(empty);
        var office = new HeadlessOffice(folder);

        // The first start of a profile sets it up, and the first table is the one that is compared figure by figure.
        office.Convert(empty);
        var differences = Differences(office.Convert(table).Written, sheet.LandedCostColumn, prepared);
        if (differences.Count > 0)
        {
            Console.WriteLine($"The spreadsheet's figures differ from ours at {differences.Count} quantities, first at {differences[0]}.");
            return 1;
        }

        // In turns, so that other work on the machine falls on all alike; the fastest of each, since other work only ever adds.
        var (start, reading, whole, ours) = (TimeSpan.MaxValue, TimeSpan.MaxValue, TimeSpan.MaxValue, TimeSpan.MaxValue);
        for (var run = 0; run < Runs; run++)
        {
            start = Faster(start, office.Convert(empty).Took);
            reading = Faster(reading, office.Convert(numbers).Took);
            whole = Faster(whole, office.Convert(table).Took);
            ours = Enumerable.Range(0, OurRuns).Aggregate(ours, (fastest, _) => Faster(fastest, Ours()));
        }

        Console.WriteLine($"{Quantities} quantities, {sheet.Columns} formulas a quantity, landed costs equal at all of them");
        Row("spreadsheet: start with an empty document", start, null);
        Row("spreadsheet: the table, recalculated, less the start", whole - start, ours);
        Row("spreadsheet: the table, recalculated, less as many plain numbers", whole - reading, ours);
        Row("ours: prepare the job, cost the ladder, find the better buys", ours, null);
        return 0;
    }

    private static TimeSpan Ours()
    {
        var job = ExampleJob.Create();
        var watch = Stopwatch.StartNew();
        PreparedJob.Prepare(job).Value.Ladder(new LadderRange(1, Quantities, 1));
        return watch.Elapsed;
    }

    private static List<int> Differences(string written, int column, PreparedJob prepared)
    {
        var lines = File.ReadAllLines(written);
        return [.. Enumerable.Range(1, Quantities).Where(quantity =>
        {
            prepared.LandedCost(quantity, out var cost);
            var theirs = decimal.Parse(lines[quantity - 1].Split(',')[column], NumberStyles.Float, CultureInfo.InvariantCulture);
            return decimal.Round(theirs, 6) != cost;
        })];
    }

    private static TimeSpan Faster(TimeSpan one, TimeSpan other) => one < other ? one : other;

    private static void Row(string what, TimeSpan took, TimeSpan? ours)
    {
        var times = ours is { } unit ? string.Create(CultureInfo.InvariantCulture, $"{took / unit,8:F0} × ours") : string.Empty;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what,-72} {took.TotalMilliseconds,10:F1} ms {times}"));
    }
}
