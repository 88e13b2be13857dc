using System.Globalization;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;

namespace PressRun.Data.Tests.Import;

public sealed class SameStepTests
{
    private static readonly CellManners English = new(CultureInfo.GetCultureInfo("en-GB"), UnitSystem.Metric);

    [Fact]
    public void Rows_that_say_the_same_are_one_and_are_told()
    {
        var preview = Preview("""
            Ink,Sheet,A side
            black,SRA3,0.09
            black,SRA3,0.09
            colour,SRA3,0.35
            black,SRA3,0.09
            """);

        Assert.Equal((0, 2), (preview.ProblemCount, preview.Things));
        Assert.Equal(2, preview.SameCount);
        Assert.Equal([(3, 2), (5, 2)], preview.Same);
    }

    [Fact]
    public void Rows_that_contradict_each_other_are_named_with_what_would_mend_them()
    {
        var problem = Assert.Single(Preview("""
            Ink,Sheet,A side
            colour,SRA3,0.35
            black,SRA3,0.09
            black,SRA3,0.10
            """).Problems);

        Assert.Equal((4, "0.10"), (problem.Row, problem.Value));
        Assert.Equal("Rows 3 and 4 say 0.09 and 0.10 for the same. Keep one of them, or write under From side what sets them apart.", problem.Rule);
    }

    [Fact]
    public void Steps_that_fall_are_still_refused()
    {
        var problem = Assert.Single(Preview("""
            Ink,Sheet,From side,A side
            black,SRA3,1,0.09
            black,SRA3,1000,0.06
            black,SRA3,500,0.07
            """).Problems);

        Assert.StartsWith("Steps rise", problem.Rule, StringComparison.Ordinal);
    }

    [Fact]
    public void On_screen_a_row_that_says_another_again_is_to_be_taken_out()
    {
        var shape = PriceListTable.For([], []).Print;

        Assert.Contains("take one of the two out", Assert.Single(shape.Read([["black", "SRA3", "", "0.09", ""], ["black", "SRA3", "1", "0.09", ""]], English).Problems).Rule, StringComparison.Ordinal);
        Assert.Contains("0.09 and 0.10", Assert.Single(shape.Read([["black", "SRA3", "", "0.09", ""], ["black", "SRA3", "1", "0.10", ""]], English).Problems).Rule, StringComparison.Ordinal);
    }

    private static CsvPreview Preview(string text)
    {
        using var file = new TempCsv(text);
        var source = CsvSource.Open(file.Path);
        var shape = PriceListTable.For([], []).Print;
        return CsvReading.Preview(source, MappingGuess.Of(source, shape.Columns, English), shape, English);
    }
}
