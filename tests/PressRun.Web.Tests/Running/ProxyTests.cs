using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using PressRun.Data.Running;
using PressRun.Web.Running;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Running;

/// <summary>What is believed of a proxy. Addresses are those set aside for documents (RFC 5737).</summary>
public class ProxyTests
{
    private const string Host = "Host: 127.0.0.1\r\n";
    private const string Forwarded = "GET / HTTP/1.1\r\n" + Host + "X-Forwarded-For: 192.0.2.7\r\nX-Forwarded-Proto: https\r\nX-Forwarded-Host: books.example\r\n\r\n";

    [Theory]
    [InlineData("")]
    [InlineData("192.0.2.1")]
    [InlineData("", "--ForwardedHeaders_Enabled=true")]
    public async Task A_server_believes_no_forwarded_header_of_whoever_is_not_named_as_its_proxy_on_this_machine_either(string trusted, params string[] more)
    {
        await using var app = await StartAsync(trusted, more);

        Assert.EndsWith("http 127.0.0.1 from 127.0.0.1", await RawRequests.AnswerTo(app, Forwarded), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("127.0.0.1")]
    [InlineData("192.0.2.1, 127.0.0.0/8")]
    public async Task A_proxy_that_is_named_by_its_address_or_its_network_is_believed(string trusted)
    {
        await using var app = await StartAsync(trusted);

        Assert.EndsWith("https books.example from 192.0.2.7", await RawRequests.AnswerTo(app, Forwarded), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("GET / HTTP/1.0\r\nHost: 127.0.0.1\r\n\r\n", "127.0.0.1")]
    [InlineData("GET / HTTP/1.1\r\n" + Host + "X-Forwarded-Host: books.example\r\n\r\n", "books.example")]
    [InlineData("GET / HTTP/1.1\r\n" + Host + "X-Forwarded-Host: books.example:8443\r\n\r\n", "books.example:8443")]
    [InlineData("GET / HTTP/1.1\r\n" + Host + "X-Forwarded-Host: other.example\r\n\r\n", "127.0.0.1")]
    [InlineData("GET / HTTP/1.1\r\n" + Host + "X-Forwarded-Host: books.example.other.example\r\n\r\n", "127.0.0.1")]
    public async Task A_proxy_may_forward_only_a_host_that_the_app_answers_to(string request, string host)
    {
        await using var app = await StartAsync("127.0.0.1");

        Assert.Contains($"http {host} from", await RawRequests.AnswerTo(app, request), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_host_that_is_none_is_a_bad_request_when_a_proxy_forwards_it_too()
    {
        await using var app = await StartAsync("127.0.0.1");

        Assert.StartsWith("HTTP/1.1 400 ", await RawRequests.AnswerTo(app, "GET / HTTP/1.1\r\n" + Host + "X-Forwarded-Host: 127.0.0.1:99999\r\n\r\n"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_address_is_refused_at_the_start()
    {
        var refused = await Assert.ThrowsAsync<StartRefusedException>(() => StartAsync("my proxy"));

        Assert.Contains("my proxy", refused.Message, StringComparison.Ordinal);
    }

    private static async Task<WebApplication> StartAsync(string trusted, params string[] more)
    {
        var builder = WebApplication.CreateBuilder(["AllowedHosts=127.0.0.1;books.example", $"--PressRun:TrustedProxies={trusted}", .. more]);
        builder.AddPressRunHost();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var app = builder.Build();
        app.UsePressRunHost();
        app.MapGet("/", (HttpContext context) => context.Response.WriteAsync($"{context.Request.Scheme} {context.Request.Host} from {context.Connection.RemoteIpAddress}"));
        await app.StartAsync(TestContext.Current.CancellationToken);
        return app;
    }
}
