using System.Net.Sockets;
using System.Text;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using PressRun.Web.Running;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Running;

public class BrokenRequestTests
{
    private const string Host = "Host: 127.0.0.1\r\n";

    private readonly TaskCompletionSource reading = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly TaskCompletionSource done = new(TaskCreationOptions.RunContinuationsAsynchronously);

    [Theory]
    [InlineData("GET / HTTP/1.0\r\n\r\n")]
    [InlineData("GET / HTTP/1.1\r\nHost:\r\n\r\n")]
    [InlineData("GET / HTTP/1.1\r\nHost: 127.0.0.1:99999\r\n\r\n")]
    [InlineData("POST / HTTP/1.1\r\n" + Host + "Transfer-Encoding: chunked\r\n\r\nzz\r\n")]
    [InlineData("POST / HTTP/1.1\r\n" + Host + "Transfer-Encoding: chunked\r\n\r\nFFFFFFFFFFFFFFFFFF\r\nab\r\n")]
    public async Task A_request_that_is_broken_itself_is_a_bad_request(string request)
    {
        await using var app = await StartAsync();

        Assert.StartsWith("HTTP/1.1 400 ", await RawRequests.AnswerTo(app, request), StringComparison.Ordinal);
    }

    // RFC 9457: a program reads a refusal by its media type and members, whatever refused it.
    [Theory]
    [InlineData("", "Transfer-Encoding: chunked\r\n\r\nzz\r\n", "HTTP/1.1 400 ", "The request is broken")]
    [InlineData("", "Transfer-Encoding: chunked\r\n\r\nFFFFFFFFFFFFFFFFFF\r\nab\r\n", "HTTP/1.1 400 ", "The request is broken")]
    [InlineData("", "Content-Length: 1000\r\n\r\n", "HTTP/1.1 413 ", "The request body is too large")]
    [InlineData("/loft", "Transfer-Encoding: chunked\r\n\r\nzz\r\n", "HTTP/1.1 400 ", "The request is broken")]
    public async Task A_program_whose_request_is_broken_is_told_so_in_problem_details(string pathBase, string rest, string status, string title)
    {
        await using var app = await StartAsync(pathBase: pathBase, mostBytes: 100);

        var answer = await RawRequests.AnswerTo(app, $"POST {pathBase}/api/v1/estimate HTTP/1.1\r\n{Host}Content-Type: application/json\r\n{rest}");

        Assert.StartsWith(status, answer, StringComparison.Ordinal);
        Assert.Contains("Content-Type: application/problem+json\r\n", answer, StringComparison.Ordinal);
        Assert.Contains($"\"title\":\"{title}\"", answer, StringComparison.Ordinal);
    }

    // Without more ado the web server writes a stack trace for each of them.
    [Theory]
    [InlineData("/form", false)]
    [InlineData("/form", true)]
    [InlineData("/token", false)]
    [InlineData("/token", true)]
    public async Task A_form_that_breaks_off_leaves_nothing_in_the_log(string path, bool isReset)
    {
        using var heard = new HeardLines();
        await using var app = await StartAsync(heard);
        using (var client = new TcpClient())
        {
            await client.ConnectAsync("127.0.0.1", new Uri(app.Urls.Single()).Port, TestContext.Current.CancellationToken);
            var stream = client.GetStream();
            await stream.WriteAsync(Encoding.ASCII.GetBytes($"POST {path} HTTP/1.1\r\n{Host}Content-Type: application/x-www-form-urlencoded\r\nContent-Length: 1000\r\n\r\nname=A"), TestContext.Current.CancellationToken);
            await reading.Task.WaitAsync(TestContext.Current.CancellationToken);
            client.LingerState = new LingerOption(isReset, 0);
        }

        await done.Task.WaitAsync(TestContext.Current.CancellationToken);
        // Stopped, it has ended what it does with each line.
        await app.StopAsync(TestContext.Current.CancellationToken);
        Assert.Empty(heard.Lines);
    }

    private async Task<WebApplication> StartAsync(HeardLines? heard = null, string pathBase = "", long? mostBytes = null)
    {
        var builder = WebApplication.CreateBuilder();
        builder.Configuration["PathBase"] = pathBase;
        builder.AddPressRunHost();
        builder.WebHost.ConfigureKestrel(server => server.Limits.MaxRequestBodySize = mostBytes ?? server.Limits.MaxRequestBodySize);
        builder.Services.AddAntiforgery();
        if (heard is not null)
        {
            builder.Logging.ClearProviders().AddProvider(heard).AddFilter((_, level) => level >= LogLevel.Warning);
        }

        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var app = builder.Build();
        app.Use(async (context, next) =>
        {
            reading.TrySetResult();
            try
            {
                await next(context);
            }
            finally
            {
                done.TrySetResult();
            }
        });
        app.UsePressRunHost();
        app.UseAntiforgery();
        app.UseTokensOrNothing();
        app.MapPost("/form", async (HttpContext context) => await context.Request.ReadFormAsync()).DisableAntiforgery();
        app.MapPost("/token", () => Results.Ok()).WithMetadata(new RequireAntiforgeryTokenAttribute());
        app.MapPost("/api/v1/estimate", async (HttpContext context) => await context.Request.Body.CopyToAsync(Stream.Null));
        app.MapPost("/", async (HttpContext context) => await context.Request.Body.CopyToAsync(Stream.Null));
        await app.StartAsync(TestContext.Current.CancellationToken);
        return app;
    }
}
