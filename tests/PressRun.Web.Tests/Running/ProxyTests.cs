using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
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
    public async Task Who_forwards_and_is_not_named_is_told_to_the_log_once_an_hour_with_the_setting()
    {
        var (told, clock) = (new HeardLines(), new HandClock());
        await using var app = await StartAsync("192.0.2.1", told, clock);

        await RawRequests.AnswerTo(app, "GET / HTTP/1.1\r\n" + Host + "\r\n");
        Assert.DoesNotContain(told.Lines, line => line.Contains("PressRun__TrustedProxies", StringComparison.Ordinal));
        await RawRequests.AnswerTo(app, Forwarded);
        await RawRequests.AnswerTo(app, Forwarded);
        Assert.Contains("127.0.0.1 forwards headers", Assert.Single(told.Lines, line => line.Contains("PressRun__TrustedProxies", StringComparison.Ordinal)), StringComparison.Ordinal);
        clock.Pass(TimeSpan.FromHours(1));
        await RawRequests.AnswerTo(app, Forwarded);
        Assert.Equal(2, told.Lines.Count(line => line.Contains("PressRun__TrustedProxies", StringComparison.Ordinal)));
        Assert.DoesNotContain(told.Lines, line => line.Contains("192.0.2.7", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Of_a_proxy_that_is_named_nothing_is_told()
    {
        var told = new HeardLines();
        await using var app = await StartAsync("127.0.0.1", told, new HandClock());

        await RawRequests.AnswerTo(app, Forwarded);

        Assert.DoesNotContain(told.Lines, line => line.Contains("PressRun__TrustedProxies", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("", "192.0.2.1", null)]
    [InlineData("books.example;zines.example", "", null)]
    [InlineData("books.example;zines.example", "192.0.2.1", "https://books.example/press")]
    public void Where_visitors_find_it_is_known_once_a_proxy_and_a_name_are(string allowed, string trusted, string? address) => Assert.Equal(
        address,
        PublicAddress.Of(new ConfigurationBuilder().AddInMemoryCollection([new("AllowedHosts", allowed), new("PressRun:TrustedProxies", trusted), new("PathBase", "/press")]).Build()));

    [Fact]
    public async Task What_is_no_address_is_refused_at_the_start()
    {
        var refused = await Assert.ThrowsAsync<StartRefusedException>(() => StartAsync("my proxy"));

        Assert.Contains("my proxy", refused.Message, StringComparison.Ordinal);
    }

    private static Task<WebApplication> StartAsync(string trusted, params string[] more) => StartAsync(trusted, null, TimeProvider.System, more);

    private static async Task<WebApplication> StartAsync(string trusted, ILoggerProvider? told, TimeProvider clock, params string[] more)
    {
        var builder = WebApplication.CreateBuilder(["--AllowedHosts=127.0.0.1;books.example", $"--PressRun:TrustedProxies={trusted}", .. more]);
        builder.Services.AddSingleton(clock);
        builder.AddPressRunHost();
        if (told is not null)
        {
            builder.Logging.AddProvider(told);
        }

        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var app = builder.Build();
        app.UsePressRunHost();
        app.MapGet("/", (HttpContext context) => context.Response.WriteAsync($"{context.Request.Scheme} {context.Request.Host} from {context.Connection.RemoteIpAddress}"));
        await app.StartAsync(TestContext.Current.CancellationToken);
        return app;
    }
}
