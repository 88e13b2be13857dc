using PressRun.Data;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Web.Libraries;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Libraries;

public class CommonMailersTests
{
    private static readonly MailerShape Shape = new();

    [Theory]
    [InlineData(PaperRegion.Iso)]
    [InlineData(PaperRegion.Us)]
    public void Each_is_read_as_it_stands_costs_nothing_yet_and_some_hold_each_common_page(PaperRegion region)
    {
        var read = Shape.Read([.. CommonMailers.Of(region).Select(Row)], LibraryManners.Of(ALedger.Press));
        List<Mailer> mailers = [.. read.Things.Select(thing => thing.Thing.Item)];

        Assert.Empty(read.Problems);
        Assert.Equal(CommonMailers.Of(region).Count, mailers.Count);
        Assert.All(mailers, mailer => Assert.True(mailer is { Price: 0m, Mass.Grams: > 0m } && mailer.Length >= mailer.Width, mailer.Name));
        Assert.All(new[] { "A5", "A6", "Half letter", "Quarter letter" }.Where(name => StandardSizes.Find(name)!.Region == region), name =>
            Assert.Contains(mailers, mailer => mailer.Holds(StandardSizes.Find(name)!.Size)));
    }

    private static IReadOnlyList<string> Row(IReadOnlyList<string> cells)
    {
        var row = Enumerable.Repeat("", Shape.Columns.Count).ToArray();
        foreach (var (key, cell) in CommonMailers.Columns.Zip(cells))
        {
            row[Shape.Columns.ToList().FindIndex(column => column.Key == key)] = cell;
        }

        return row;
    }
}
