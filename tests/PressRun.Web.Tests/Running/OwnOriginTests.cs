using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.Logging;
using PressRun.Web.Running;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Running;

public class OwnOriginTests
{
    [Theory]
    [InlineData("POST", "/api/v1/estimate", null, null, HttpStatusCode.OK)]
    [InlineData("POST", "/api/v1/estimate", "http://localhost:5080", "same-origin", HttpStatusCode.OK)]
    [InlineData("POST", "/api/v1/estimate", "http://other.example", null, HttpStatusCode.Forbidden)]
    [InlineData("POST", "/api/v1/estimate", "http://localhost:5081", "same-site", HttpStatusCode.Forbidden)]
    [InlineData("POST", "/api/v1/estimate", "null", null, HttpStatusCode.Forbidden)]
    [InlineData("POST", "/api/v1/estimate", null, "cross-site", HttpStatusCode.Forbidden)]
    [InlineData("POST", "/_blazor/negotiate", "http://other.example", null, HttpStatusCode.Forbidden)]
    [InlineData("GET", "/_blazor", "http://other.example", null, HttpStatusCode.Forbidden)]
    [InlineData("GET", "/_blazor", "http://localhost:5080", null, HttpStatusCode.OK)]
    [InlineData("GET", "/", null, "cross-site", HttpStatusCode.OK)]
    public async Task Another_sites_page_can_follow_a_link_here_and_nothing_else(string method, string path, string? origin, string? site, HttpStatusCode expected)
    {
        using var told = new HeardLines();
        await using var app = await StartAsync(told);

        var (status, _) = await SendAsync(app, method, path, origin, site);

        Assert.Equal(expected, status);
    }

    [Theory]
    [InlineData("https://books.example", "same-origin", true)]
    [InlineData("https://books.example", null, true)]
    [InlineData("https://books.example", "same-site", false)]
    [InlineData("https://books.example", "cross-site", false)]
    [InlineData("null", null, false)]
    public async Task Where_a_proxy_seems_to_rename_the_host_the_answer_says_what_to_set_and_the_log_once(string origin, string? site, bool isRenamed)
    {
        using var told = new HeardLines();
        await using var app = await StartAsync(told);

        var (_, page) = await SendAsync(app, "POST", "/sign-in", origin, site);
        await SendAsync(app, "POST", "/sign-in", origin, site);

        Assert.Contains("This was not taken", page, StringComparison.Ordinal);
        Assert.Equal(isRenamed, page.Contains("PressRun__TrustedProxies", StringComparison.Ordinal));
        Assert.Equal(isRenamed ? 1 : 0, told.Lines.Count(line => line.Contains("PressRun__TrustedProxies", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_program_is_told_by_a_problem_document()
    {
        using var told = new HeardLines();
        await using var app = await StartAsync(told);

        var (_, problem) = await SendAsync(app, "POST", "/api/v1/estimate", "https://books.example", "same-origin");

        Assert.Contains("urn:pressrun:problem:other-site", problem, StringComparison.Ordinal);
    }

    private static async Task<(HttpStatusCode Status, string Text)> SendAsync(WebApplication app, string method, string path, string? origin, string? site)
    {
        using var client = app.GetTestClient();
        using var request = new HttpRequestMessage(new HttpMethod(method), "http://localhost:5080" + path);
        if (origin is not null)
        {
            request.Headers.Add("Origin", origin);
        }

        if (site is not null)
        {
            request.Headers.Add("Sec-Fetch-Site", site);
        }

        using var response = await client.SendAsync(request, TestContext.Current.CancellationToken);
        return (response.StatusCode, await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    private static async Task<WebApplication> StartAsync(HeardLines told)
    {
        var builder = WebApplication.CreateBuilder();
        builder.WebHost.UseTestServer();
        builder.Logging.AddProvider(told);
        var app = builder.Build();
        app.UseOwnOriginOnly();
        app.MapFallback(() => "here");
        app.Map("/{**any}", () => "here");
        await app.StartAsync(TestContext.Current.CancellationToken);
        return app;
    }
}
