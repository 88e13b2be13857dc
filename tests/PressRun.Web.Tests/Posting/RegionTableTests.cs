using Bunit;
using PressRun.Data.RunPlans;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Web.Papers;
using PressRun.Web.Posting;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Posting;

public class RegionTableTests
{
    private static readonly PapersView View = APost.View() with { Mailers = [APost.Board] };

    [Fact]
    public async Task Each_number_of_copies_says_its_service_its_cost_and_what_is_to_spare_in_mass_thickness_and_leaves()
    {
        await using var page = new BunitContext();
        var table = Table(page);

        Assert.Equal(["1 copy", "2 copies", "5 copies"], table.FindAll("th[scope=rowgroup]").Select(head => head.TextContent));

        // By hand: 65.92 g of 75, 3.04 mm of 20, and what is to spare never told as more than it is; leaves of 140 × 200 mm at 80 g/m² weigh 2.24 g: four more.
        Assert.Equal(
            ["Heronpost flat", "1.50", "1.80", "1.80", "65.9g", "9g", "16.9mm", "4"],
            table.FindAll("tr.best")[0].QuerySelectorAll("td").Select(cell => cell.TextContent.Trim()));
    }

    [Fact]
    public async Task What_is_refused_stands_with_every_limit_and_by_how_much()
    {
        await using var page = new BunitContext();
        var refused = Table(page).FindAll("details.lines tbody tr")[0];

        Assert.Equal(
            ["1", "Board envelope", "Heronpost slim", "10 mm too long, 1.0 mm too thick, 5.9 g too heavy"],
            refused.QuerySelectorAll("td").Select(cell => cell.TextContent));
    }

    [Fact]
    public async Task A_region_that_is_closed_says_its_answer_in_its_summary()
    {
        await using var page = new BunitContext();
        var table = Table(page);

        Assert.False(table.Find("details.region").HasAttribute("open"));
        Assert.Equal("1 copy for 1.80, in Board envelope", table.Find("details.region > summary .answer").TextContent);
    }

    [Fact]
    public async Task Of_a_run_in_halves_each_mailer_says_both()
    {
        await using var page = new BunitContext();
        var source = View.Source;
        var halved = View with { Source = source with { Plan = source.Plan with { SecondHalf = new PlanHalf(source.Edition.Parts[1].Id, "g150") } } };
        var answer = PostingAnswer.Of(halved, "post", Length.FromMillimetres(1m));
        var whole = PostingAnswer.Of(View, "post", Length.FromMillimetres(1m));
        Assert.Equal(whole.Table.Select(row => row.Choice.Mass), answer.Table.Select(row => row.Choice.Mass));

        var table = page.Render<RegionTable>(parameters => parameters
            .Add(part => part.Region, "home")
            .Add(part => part.Rows, answer.Table)
            .Add(part => part.Others, answer.OtherHalf!.Table)
            .Add(part => part.Papers, ["Thin", "Heron 150"])
            .Add(part => part.Format, Written.Metric)
            .Add(part => part.ServiceName, View.ServiceName)
            .Add(part => part.Binding, Binding.Saddle)
            .Add(part => part.LeavesOf, 1)
            .Add(part => part.Part, "inside"));

        // By hand: twelve leaves of 140 × 200 mm at 150 g/m² instead of 80 are 23.52 g heavier: past 75 g, so 2.20 and not 1.50.
        Assert.Equal(["1.50", "2.20"], table.FindAll("tbody.count")[0].QuerySelectorAll("tr").Skip(1).Select(row => row.QuerySelectorAll("td")[1].TextContent));
        Assert.Equal("Board envelope on Heron 150, cheapest", table.FindAll("tbody.count")[0].QuerySelectorAll("tr th")[2].TextContent);
        Assert.Equal("on Thin: 1 copy for 1.80, in Board envelope; on Heron 150: 1 copy for 2.50, in Board envelope", table.Find("details.region > summary .answer").TextContent);
        Assert.Contains("Board envelope, on Heron 150", table.Find("details.lines").TextContent, StringComparison.Ordinal);
    }

    private static IRenderedComponent<RegionTable> Table(BunitContext page) => page.Render<RegionTable>(parameters => parameters
        .Add(part => part.Region, "home")
        .Add(part => part.Rows, PostingAnswer.Of(View, "post", Length.FromMillimetres(1m)).Table)
        .Add(part => part.Format, Written.Metric)
        .Add(part => part.ServiceName, View.ServiceName)
        .Add(part => part.Binding, Binding.Saddle)
        .Add(part => part.LeavesOf, 1)
        .Add(part => part.Part, "inside"));
}
