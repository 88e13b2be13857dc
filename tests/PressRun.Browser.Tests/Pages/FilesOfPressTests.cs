using System.Net;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Browser.Tests.Running;
using PressRun.Data;
using PressRun.Data.Presses;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;

namespace PressRun.Browser.Tests.Pages;

/// <summary>A page's files are those of its own press, whatever press the browser has gone over to in another tab.</summary>
public sealed class FilesOfPressTests(Chromium chromium, OwnApp own) : IClassFixture<OwnApp>
{
    [Fact]
    public async Task A_file_comes_from_the_press_that_its_link_names_and_from_no_other()
    {
        await using var stored = await Stored.OpenAsync(own.App);
        await using var visit = await Visit.BeginAsync(chromium.Browser, own.App.Address);
        await visit.OpenAsync("quotes/1");
        var link = (await visit.Page.Locator("a[href*='quote.csv']").GetAttributeAsync("href"))!;
        var second = Assert.IsType<SaveResult<PressRecord>.Saved>(
            await stored.Services.GetRequiredService<PressStore>().CreateAsync(new NewPress("Harbour Loft", "EUR", UnitSystem.Metric, PaperRegion.Iso))).Now.Id;

        Assert.EndsWith($"?press={stored.Press.Id}", link, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, await StatusAsync(link));
        Assert.Equal(HttpStatusCode.NotFound, await StatusAsync("quotes/1/quote.csv"));
        Assert.Equal(HttpStatusCode.NotFound, await StatusAsync($"quotes/1/quote.csv?press={Guid.NewGuid()}"));

        // The browser has gone over to the second press, which has no quote.
        async Task<HttpStatusCode> StatusAsync(string path)
        {
            using var http = new HttpClient(new HttpClientHandler { UseCookies = false }) { BaseAddress = own.App.Address };
            http.DefaultRequestHeaders.Add("Cookie", $"press={second}");
            using var answer = await http.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
            return answer.StatusCode;
        }
    }
}
