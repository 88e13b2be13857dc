using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Web.Libraries;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Libraries;

public class CommonWaysTests
{
    private static readonly ChannelShape Shape = new([]);

    [Fact]
    public void Each_is_read_as_it_stands_and_takes_nothing_but_a_shops_discount()
    {
        var read = Shape.Read([.. CommonWays.All.Select(Row)], LibraryManners.Of(ALedger.Press));

        Assert.Empty(read.Problems);
        Assert.Equal(CommonWays.All.Count, read.Things.Count);
        Assert.All(read.Things.Select(thing => thing.Thing.Item), way => Assert.True(way is { Mix: > 0m, FeeRate: 0m, FeeFixed: 0m, TaxRate: 0m, TradeDiscount: < 1m }, way.Name));
        Assert.Contains(read.Things, way => way.Thing.Item.TradeDiscount == 0.4m);
    }

    private static IReadOnlyList<string> Row(IReadOnlyList<string> cells) =>
        [.. Shape.Columns.Select(column => CommonWays.Columns.ToList().IndexOf(column.Key) is var at and >= 0 ? cells[at] : "")];
}
