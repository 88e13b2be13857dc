using PressRun.Engine.Copies;
using PressRun.Engine.Costing;
using PressRun.Engine.Tests.Support;

namespace PressRun.Engine.Tests.Copies;

public sealed class LeadTimeTests
{
    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(6, 0, 6)]
    [InlineData(6, 0.1, 7)]
    [InlineData(6, 4, 7)]
    [InlineData(6, 4.01, 8)]
    public void The_table_begins_when_the_sheets_are_there_and_a_begun_day_is_a_day(int shopDays, double hours, int days)
    {
        var estimate = PreparedJob.Prepare(ExampleJob.Create()).Value.Estimate(150).Value;
        Assert.Equal(days, LeadTime.Days(shopDays, estimate with { Totals = estimate.Totals with { BenchHours = (decimal)hours } }));
    }
}
