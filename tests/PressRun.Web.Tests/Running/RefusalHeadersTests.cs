using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.TestHost;
using PressRun.Web.Layout;
using PressRun.Web.Running;

namespace PressRun.Web.Tests.Running;

public sealed class RefusalHeadersTests
{
    [Theory]
    [InlineData("GET", "http://other.example/", null, HttpStatusCode.BadRequest, "no-referrer", "default-src 'none'")]
    [InlineData("POST", "http://press.example/", "http://other.example", HttpStatusCode.Forbidden, "same-origin", "default-src 'self'")]
    [InlineData("GET", "http://press.example/", null, HttpStatusCode.OK, "same-origin", "default-src 'self'")]
    [InlineData("GET", "http://press.example/q/anything", null, HttpStatusCode.OK, "no-referrer", "default-src 'self'")]
    [InlineData("GET", "http://press.example/join/anything", null, HttpStatusCode.OK, "strict-origin", "default-src 'self'")]
    [InlineData("GET", "http://press.example/sign-in?said=NotLinked&to=%2Fjoin%2Fanything", null, HttpStatusCode.OK, "strict-origin", "default-src 'self'")]
    public async Task What_is_refused_at_the_door_carries_headers_as_pages_do(string method, string address, string? origin, HttpStatusCode status, string referrers, string policy)
    {
        var builder = WebApplication.CreateBuilder(["--AllowedHosts=press.example"]);
        builder.AddPressRunHost();
        builder.WebHost.UseTestServer();
        await using var app = builder.Build();
        app.UsePressRunHost();
        app.UsePageHeaders();
        app.UseOwnOriginOnly();
        app.Map("/{**any}", () => "here");
        await app.StartAsync(TestContext.Current.CancellationToken);
        using var client = app.GetTestClient();
        using var request = new HttpRequestMessage(new HttpMethod(method), address);
        if (origin is not null)
        {
            request.Headers.Add("Origin", origin);
        }

        using var answer = await client.SendAsync(request, TestContext.Current.CancellationToken);

        Assert.Equal(status, answer.StatusCode);
        Assert.Equal(referrers, Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.StartsWith(policy, Assert.Single(answer.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", Assert.Single(answer.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
        Assert.True(answer.Headers.CacheControl!.NoStore);
    }

    // CSP level 3, 6.4.2: form-action holds of where a form's answer leads, too, and an own page by http is none of "self" behind https.
    [Theory]
    [InlineData("http://press.example/account?said=Gone#here", "/account?said=Gone#here")]
    [InlineData("http://press.example//elsewhere.example/", "http://press.example//elsewhere.example/")]
    [InlineData("https://elsewhere.example/authorize", "https://elsewhere.example/authorize")]
    [InlineData("/sign-in", "/sign-in")]
    public async Task Whoever_is_sent_on_within_the_app_stays_at_the_address_by_which_they_came(string told, string sent)
    {
        var builder = WebApplication.CreateBuilder(["--AllowedHosts=press.example"]);
        builder.AddPressRunHost();
        builder.WebHost.UseTestServer();
        await using var app = builder.Build();
        app.UsePressRunHost();
        app.UsePageHeaders();
        app.Map("/{**any}", (HttpContext http) => http.Response.Redirect(told));
        await app.StartAsync(TestContext.Current.CancellationToken);
        using var client = app.GetTestClient();

        using var answer = await client.GetAsync(new Uri("http://press.example/form"), TestContext.Current.CancellationToken);

        Assert.Equal(sent, answer.Headers.Location?.OriginalString);
    }
}
