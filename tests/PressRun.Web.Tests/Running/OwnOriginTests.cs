using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using PressRun.Web.Running;

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
        var builder = WebApplication.CreateBuilder();
        builder.WebHost.UseTestServer();
        await using var app = builder.Build();
        app.UseOwnOriginOnly();
        app.MapFallback(() => "here");
        app.Map("/{**any}", () => "here");
        await app.StartAsync(TestContext.Current.CancellationToken);
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

        Assert.Equal(expected, response.StatusCode);
    }
}
