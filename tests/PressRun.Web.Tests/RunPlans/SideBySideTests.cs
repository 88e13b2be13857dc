using Bunit;
using PressRun.Web.RunPlans;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.RunPlans;

public class SideBySideTests
{
    [Fact]
    public async Task Plans_of_different_runs_are_said_to_be_so_and_one_press_compares_them_for_the_same()
    {
        await using var page = new BunitContext();
        var (open, answer) = APlan.Worked(APlan.Source(100));
        var (other, _) = APlan.Worked(APlan.Source(300));
        var beside = page.Render<SideBySide>(parameters => parameters
            .Add(part => part.Open, open).Add(part => part.OpenAnswer, answer).Add(part => part.Others, [other]).Add(part => part.Format, Written.Metric));
        Assert.Contains("Not the same run: 100 against 300 copies", beside.Find(".beside-quantity").TextContent, StringComparison.Ordinal);
        Assert.Equal("300", Second(beside, "Copies"));

        await beside.Find(".beside-quantity button").ClickAsync(new());
        Assert.Contains("Both for 100 copies", beside.Find(".beside-quantity").TextContent, StringComparison.Ordinal);
        Assert.Equal("100", Second(beside, "Copies"));
        Assert.Equal(Written.Metric.Money(answer.Estimate.Totals.LandedCost), Second(beside, "Landed cost"));
    }

    [Fact]
    public async Task Plans_of_the_same_run_need_no_such_note()
    {
        await using var page = new BunitContext();
        var (open, answer) = APlan.Worked(APlan.Source(100));
        Assert.Empty(page.Render<SideBySide>(parameters => parameters
            .Add(part => part.Open, open).Add(part => part.OpenAnswer, answer).Add(part => part.Others, [APlan.Worked(APlan.Source(100)).Costing]).Add(part => part.Format, Written.Metric))
            .FindAll(".beside-quantity"));
    }

    private static string Second(IRenderedComponent<SideBySide> beside, string what) =>
        beside.FindAll("tbody tr").First(row => row.QuerySelector("th")!.TextContent.StartsWith(what, StringComparison.Ordinal)).QuerySelectorAll("td")[1].TextContent;
}
