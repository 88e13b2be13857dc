using System.Globalization;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;

namespace PressRun.Data.Tests.Import;

public sealed class LargeFileTests
{
    private const int Rows = 100_000;
    private const long MostMegabytes = 64;

    private static readonly CellManners English = new(CultureInfo.GetCultureInfo("en"), UnitSystem.Metric);

    [Fact]
    public void A_hundred_thousand_rows_are_read_without_being_held()
    {
        using var file = new TempCsv("Paper,Weight,Caliper (\u00B5m)\n" + string.Concat(Enumerable.Range(1, Rows).Select(row => $"Paper number {row} of a very long list,{60 + (row % 200)} gsm,{100 + (row % 150)}\n")));
        var source = CsvSource.Open(file.Path);
        var shape = new StockShape();
        var mapping = MappingGuess.Of(source, shape.Columns, English);
        var before = GC.GetTotalMemory(forceFullCollection: true);
        var most = 0L;

        var preview = CsvReading.Preview(source, mapping, shape, English, new AtEach(row =>
        {
            if (row % 20_000 == 0)
            {
                most = Math.Max(most, GC.GetTotalMemory(forceFullCollection: true) - before);
            }
        }));

        Assert.Equal((Rows, Rows, 0), (preview.Rows, preview.Things, preview.ProblemCount));
        Assert.InRange(most, long.MinValue, MostMegabytes * 1024 * 1024);
    }

    [Fact]
    public void A_file_past_the_limit_is_refused_with_a_sentence()
    {
        using var file = new TempCsv("Paper\n" + string.Concat(Enumerable.Repeat("x\n", CsvSource.MostRows + 1)));

        Assert.Contains("more than", Assert.Throws<CsvRefusedException>(() => CsvSource.Open(file.Path).Rows().Count()).Message, StringComparison.Ordinal);
    }

    private sealed class AtEach(Action<int> act) : IProgress<int>
    {
        public void Report(int value) => act(value);
    }
}
