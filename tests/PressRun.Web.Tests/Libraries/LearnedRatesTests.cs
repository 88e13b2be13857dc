using Bunit;
using PressRun.Engine.Bench;
using PressRun.Engine.Copies;
using PressRun.Web.Libraries;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Libraries;

public class LearnedRatesTests
{
    private static readonly BenchStep Stitch = new("stitch", 10m, 30m, 0m, 0m, 1, 0.02m);

    [Fact]
    public async Task Nothing_is_taken_over_before_it_is_pressed_and_what_was_taken_goes_back_by_undo()
    {
        await using var page = new BunitContext();
        page.JSInterop.Mode = JSRuntimeMode.Loose;
        var (now, stored) = (Stitch, new List<BenchStep>());
        var rates = page.Render<LearnedRates>(set => set.Add(part => part.Press, ALedger.Press).Add(part => part.Learn, () => Task.FromResult(Runs(now))).Add(part => part.Put, (seen, step) =>
        {
            Assert.Equal(now, seen);
            stored.Add(now = step);
            return Task.FromResult<string?>(null);
        }));

        Assert.Contains("1 run, 100 copies, 5 spoiled; too few runs for a range", rates.Find("tbody tr").TextContent, StringComparison.Ordinal);
        Assert.Empty(stored);
        Assert.Equal("Use 36 s instead of 30 s", rates.Find("td button").TextContent);

        await rates.Find("td button").ClickAsync(new());
        Assert.Equal((36m, 0.05m), (stored.Single().SecondsPerCopy, stored.Single().Spoilage));
        Assert.Contains("as your runs say", rates.Find("tbody tr").TextContent, StringComparison.Ordinal);

        await rates.Find(".undo button").ClickAsync(new());
        Assert.Equal(Stitch, stored[^1]);
        Assert.Equal("Use 36 s instead of 30 s", rates.Find("td button").TextContent);
    }

    [Fact]
    public async Task Why_a_rate_was_not_taken_is_said_and_nothing_is_left_to_undo()
    {
        await using var page = new BunitContext();
        page.JSInterop.Mode = JSRuntimeMode.Loose;
        var rates = page.Render<LearnedRates>(set => set.Add(part => part.Press, ALedger.Press).Add(part => part.Learn, () => Task.FromResult(Runs(Stitch)))
            .Add(part => part.Put, (_, _) => Task.FromResult<string?>("Somebody else changed the table.")));
        await rates.Find("td button").ClickAsync(new());
        Assert.Equal("Somebody else changed the table.", rates.Find("[role=alert]").TextContent);
        Assert.Empty(rates.FindAll(".undo button"));
    }

    [Fact]
    public async Task Without_runs_it_says_what_would_be_offered_here()
    {
        await using var page = new BunitContext();
        var rates = page.Render<LearnedRates>(set => set.Add(part => part.Press, ALedger.Press).Add(part => part.Learn, () => Task.FromResult<IReadOnlyList<LearnedRate>>([]))
            .Add(part => part.Put, (_, _) => Task.FromResult<string?>(null)));
        Assert.Contains("Once minutes at the table are written down", rates.Markup, StringComparison.Ordinal);
        Assert.Empty(rates.FindAll("table"));
    }

    // 100 copies in 70 minutes, 10 of them set-up: 36 s a copy.
    private static IReadOnlyList<LearnedRate> Runs(BenchStep step) => LearnedRate.Of([step], [[new StepRun(new StepActual("stitch", 70m, 100, 5), 100 * step.SecondsPerCopy)]]);
}
