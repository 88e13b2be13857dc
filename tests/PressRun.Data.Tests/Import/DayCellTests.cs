using System.Globalization;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;

namespace PressRun.Data.Tests.Import;

public sealed class DayCellTests
{
    [Theory]
    [InlineData("en-US", "05.11.2026", null, "2026-11-05")]
    [InlineData("de-DE", "05.11.2026", null, "2026-11-05")]
    [InlineData("en-US", "05/11/2026", null, "2026-05-11")]
    [InlineData("en-IE", "05/11/2026", null, "2026-11-05")]
    [InlineData("en-US", "05/11/2026", DayCell.DayFirst, "2026-11-05")]
    [InlineData("en-IE", "5-11-26", DayCell.MonthFirst, "2026-05-11")]
    [InlineData("en-US", "2026-11-05", DayCell.DayFirst, "2026-11-05")]
    [InlineData("de-DE", "5. November 2026", null, "2026-11-05")]
    [InlineData("en-IE", "13/11/2026", DayCell.MonthFirst, null)]
    [InlineData("en-IE", "31.02.2026", null, null)]
    public void A_day_is_read_in_the_order_of_its_column_of_its_signs_or_of_the_person(string culture, string text, string? order, string? day) =>
        Assert.Equal(day, (new DayCell().Read(text, new CellManners(CultureInfo.GetCultureInfo(culture), UnitSystem.Metric), order).Value as DateOnly?)?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));

    [Theory]
    [InlineData("2026-11-31", "The calendar has no such day: write another, such as 2026-03-02.")]
    [InlineData("soon", "Write a day as year-month-day, such as 2026-03-02.")]
    public void What_is_written_rightly_and_is_no_day_is_told_apart_from_what_is_written_wrongly(string text, string rule) =>
        Assert.Equal(rule, new DayCell().Read(text, new CellManners(CultureInfo.InvariantCulture, UnitSystem.Metric)).Rule);

    [Theory]
    [InlineData("05/11/2026", "13/11/2026", DayCell.DayFirst)]
    [InlineData("05/11/2026", "11/13/2026", DayCell.MonthFirst)]
    [InlineData("05/11/2026", "06/11/2026", null)]
    [InlineData("13/11/2026", "11/13/2026", null)]
    public void One_cell_that_has_a_number_over_twelve_settles_the_order_of_its_column(string one, string other, string? order)
    {
        using var file = new TempCsv($"Sold on;Title;Copies\n{one};Tidepool Almanac;2\n{other};Tidepool Almanac;1\n");
        var table = new LedgerShape(new ReferenceCell("title", []), (title, _) => title, [], DateOnly.MaxValue).Columns;
        var mapping = MappingGuess.Of(CsvSource.Open(file.Path), table, new CellManners(CultureInfo.GetCultureInfo("en-US"), UnitSystem.Metric));

        Assert.Equal("Day", table[mapping.Columns[0].Column!.Value].Title);
        Assert.Equal(order, mapping.Columns[0].Unit);
    }
}
