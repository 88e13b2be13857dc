using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.TestHost;
using PressRun.Web.Running;

namespace PressRun.Web.Tests.Running;

public class HostCookiesTests
{
    [Theory]
    [InlineData("https", "__Host-people=ours; people=a neighbour's; table=dark", "people=ours")]
    [InlineData("https", "\u00a0__Host-people=a neighbour's; \u2003__Host-people=a neighbour's;\v__Host-people=a neighbour's;\t__Host-people=ours", "people=ours")]
    [InlineData("http", "people=ours; __Host-people=another's; table=dark", "people=ours;table=dark")]
    [InlineData("http", null, "")]
    public async Task Cookies_are_known_by_their_plain_names_and_only_those_that_fit_how_the_page_came(string scheme, string? sent, string known)
    {
        var (read, _) = await AskAsync(scheme, sent, _ => { });

        Assert.Equal(known, read);
    }

    [Fact]
    public async Task Over_tls_a_cookie_is_tied_to_the_host_whatever_path_it_was_given_and_taken_back_in_the_same_way()
    {
        var (_, set) = await AskAsync("https", null, response =>
        {
            response.Cookies.Append("people", "x", new CookieOptions { Path = "/press", Domain = "example.org", HttpOnly = true, SameSite = SameSiteMode.Lax });
            response.Cookies.Delete("old");
        });

        Assert.Equal("__Host-people=x; path=/; secure; samesite=lax; httponly", set[0]);
        Assert.StartsWith("__Host-old=; expires=Thu, 01 Jan 1970 00:00:00 GMT; path=/; secure", set[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_tls_a_cookie_goes_out_as_it_is()
    {
        var (_, set) = await AskAsync("http", null, response => response.Cookies.Append("people", "x", new CookieOptions { Path = "/press" }));

        Assert.Equal(["people=x; path=/press"], set);
    }

    private static async Task<(string Read, string[] Set)> AskAsync(string scheme, string? sent, Action<HttpResponse> answer)
    {
        var builder = WebApplication.CreateBuilder();
        builder.WebHost.UseTestServer();
        await using var app = builder.Build();
        app.UseHostCookies();
        app.MapGet("/", (HttpContext http) =>
        {
            answer(http.Response);
            return string.Join(';', http.Request.Cookies.Select(cookie => $"{cookie.Key}={cookie.Value}"));
        });
        await app.StartAsync(TestContext.Current.CancellationToken);
        using var client = app.GetTestClient();
        using var request = new HttpRequestMessage(HttpMethod.Get, $"{scheme}://localhost/");
        if (sent is not null)
        {
            request.Headers.Add("Cookie", sent);
        }

        using var response = await client.SendAsync(request, TestContext.Current.CancellationToken);
        return (await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), response.Headers.TryGetValues("Set-Cookie", out var set) ? [.. set] : []);
    }
}
