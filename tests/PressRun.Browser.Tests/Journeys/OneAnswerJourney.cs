using System.Net.Http.Headers;
using PressRun.Browser.Tests.Running;
using PressRun.JobFile;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class OneAnswerJourney(Chromium chromium, SampleApp sample)
{
    [Theory]
    [InlineData("The Ballast Atlas", 1)]
    [InlineData("Gulls v. the Harbour Board", 3)]
    [InlineData("Tarpaulin Weather", 2)]
    public async Task A_run_costs_the_same_on_its_page_over_http_and_at_the_command_line(string title, int printing)
    {
        var book = await sample.Stored.BookAsync(title, printing);
        var plan = await sample.Stored.ChosenPlanAsync(book.Edition.Id);
        var landed = Reckoned.At(plan).Totals.LandedCost;
        var job = JobWriter.Write(plan.Build());

        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path + "/run");
        await Expect(visit.Page.Locator("p.sentence").First).ToContainTextAsync($"cost {sample.Stored.Format.Sum(landed)}, that is");
        Assert.Equal(landed, CommandLine.LandedCost(await OverHttpAsync(job)));
        Assert.Equal(landed, CommandLine.LandedCost(await CommandLine.EstimateAsync(job)));
    }

    private async Task<string> OverHttpAsync(byte[] job)
    {
        using var http = new HttpClient { BaseAddress = sample.Address };
        using var body = new ByteArrayContent(job) { Headers = { ContentType = new MediaTypeHeaderValue("application/json") } };
        using var answer = await http.PostAsync(new Uri("api/v1/estimate", UriKind.Relative), body, TestContext.Current.CancellationToken);
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(answer.IsSuccessStatusCode, text);
        return text;
    }
}
