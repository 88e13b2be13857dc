using Bunit;
using PressRun.Web.Editions;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Editions;

/// <summary>What the book's page says that the book comes to: which figure is planned, and which was paid.</summary>
public sealed class ConsequenceListTests
{
    [Fact]
    public async Task Costs_say_that_they_are_planned_and_what_was_paid_stands_before_them()
    {
        await using var page = new BunitContext();
        var source = APlan.Source(100);
        var now = EditionConsequences.Of(source, source.Edition, "#336699");

        var rows = page.Render<ConsequenceList>(set => set.Add(list => list.Now, now).Add(list => list.PaidForEach, 2.345m).Add(list => list.RunAddress, "run").Add(list => list.Format, Written.Metric))
            .FindAll("dt").Take(3).Select(row => row.TextContent).ToArray();

        Assert.Equal(["A copy cost, paid", "A copy costs, planned", "The run costs, planned"], rows);
    }
}
