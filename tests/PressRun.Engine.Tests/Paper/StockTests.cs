using PressRun.Engine.Measures;
using PressRun.Engine.Paper;

namespace PressRun.Engine.Tests.Paper;

public sealed class StockTests
{
    [Fact]
    public void Bulk_times_grammage_is_the_caliper()
    {
        // PAP-20. ISO 534: bulk is thickness over grammage in cm³/g; computed.
        var stock = Stock(100m, null, 1.2m, null);
        Assert.Equal(120m, stock.Caliper.Micrometres);
        Assert.False(stock.CaliperIsEstimated);
    }

    [Fact]
    public void A_stated_caliper_goes_before_bulk_and_finish() =>
        Assert.Equal(230m, Stock(216m, 230m, 1.2m, Finish.Coated).Caliper.Micrometres);

    [Theory]
    [InlineData(Finish.Coated, 90)]
    [InlineData(Finish.Uncoated, 130)]
    public void A_finish_alone_gives_its_usual_bulk_and_the_caliper_is_called_estimated(Finish finish, int micrometres)
    {
        // Usual bulks of 0.9 and 1.3 cm³/g: common practice.
        var stock = Stock(100m, null, null, finish);
        Assert.Equal(micrometres, stock.Caliper.Micrometres);
        Assert.True(stock.CaliperIsEstimated);
    }

    private static Stock Stock(decimal grammage, decimal? micrometres, decimal? bulk, Finish? finish) =>
        new("id", "name", PaperWeight.FromGrammage(grammage), micrometres is { } caliper ? Length.FromMicrometres(caliper) : null, bulk, finish);
}
