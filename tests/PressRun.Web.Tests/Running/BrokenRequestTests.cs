using System.Net.Sockets;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using PressRun.Web.Running;

namespace PressRun.Web.Tests.Running;

public class BrokenRequestTests
{
    private const string Host = "Host: 127.0.0.1\r\n";

    [Theory]
    [InlineData("GET / HTTP/1.0\r\n\r\n")]
    [InlineData("GET / HTTP/1.1\r\nHost:\r\n\r\n")]
    [InlineData("GET / HTTP/1.1\r\nHost: 127.0.0.1:99999\r\n\r\n")]
    [InlineData("GET / HTTP/1.1\r\n" + Host + "X-Forwarded-Host: 127.0.0.1:99999\r\n\r\n")]
    [InlineData("POST / HTTP/1.1\r\n" + Host + "Transfer-Encoding: chunked\r\n\r\nzz\r\n")]
    [InlineData("POST / HTTP/1.1\r\n" + Host + "Transfer-Encoding: chunked\r\n\r\nFFFFFFFFFFFFFFFFFF\r\nab\r\n")]
    public async Task A_request_that_is_broken_itself_is_a_bad_request(string request)
    {
        await using var app = await StartAsync();

        Assert.StartsWith("HTTP/1.1 400 ", await AnswerTo(app, request), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("GET / HTTP/1.0\r\nHost: 127.0.0.1\r\n\r\n", "127.0.0.1")]
    [InlineData("GET / HTTP/1.1\r\n" + Host + "X-Forwarded-Host: books.example\r\n\r\n", "books.example")]
    [InlineData("GET / HTTP/1.1\r\n" + Host + "X-Forwarded-Host: books.example:8443\r\n\r\n", "books.example:8443")]
    [InlineData("GET / HTTP/1.1\r\n" + Host + "X-Forwarded-Host: other.example\r\n\r\n", "127.0.0.1")]
    [InlineData("GET / HTTP/1.1\r\n" + Host + "X-Forwarded-Host: books.example.other.example\r\n\r\n", "127.0.0.1")]
    public async Task A_proxy_may_forward_only_a_host_that_the_app_answers_to(string request, string host)
    {
        await using var app = await StartAsync();

        Assert.EndsWith($"host {host}", await AnswerTo(app, request), StringComparison.Ordinal);
    }

    private static async Task<WebApplication> StartAsync()
    {
        var builder = WebApplication.CreateBuilder(["AllowedHosts=127.0.0.1;books.example"]);
        builder.AddPressRunHost();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var app = builder.Build();
        app.UsePressRunHost();
        app.MapGet("/", (HttpContext context) => context.Response.WriteAsync($"host {context.Request.Host}"));
        app.MapPost("/", async (HttpContext context) => await context.Request.Body.CopyToAsync(Stream.Null));
        await app.StartAsync(TestContext.Current.CancellationToken);
        return app;
    }

    private static async Task<string> AnswerTo(WebApplication app, string request)
    {
        using var client = new TcpClient();
        await client.ConnectAsync("127.0.0.1", new Uri(app.Urls.Single()).Port, TestContext.Current.CancellationToken);
        await using var stream = client.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(request.Replace("\r\n\r\n", "\r\nConnection: close\r\n\r\n", StringComparison.Ordinal)), TestContext.Current.CancellationToken);
        using var reader = new StreamReader(stream, Encoding.ASCII);
        var answer = (await reader.ReadToEndAsync(TestContext.Current.CancellationToken)).TrimEnd();
        // A body without a length is sent in one chunk, whose size stands before it and whose end is a chunk of none.
        return answer.EndsWith("\r\n0", StringComparison.Ordinal) ? answer[..^3].TrimEnd() : answer;
    }
}
