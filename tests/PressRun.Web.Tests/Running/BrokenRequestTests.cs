using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using PressRun.Web.Running;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Running;

public class BrokenRequestTests
{
    private const string Host = "Host: 127.0.0.1\r\n";

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

    private static async Task<WebApplication> StartAsync()
    {
        var builder = WebApplication.CreateBuilder();
        builder.AddPressRunHost();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var app = builder.Build();
        app.UsePressRunHost();
        app.MapPost("/", async (HttpContext context) => await context.Request.Body.CopyToAsync(Stream.Null));
        await app.StartAsync(TestContext.Current.CancellationToken);
        return app;
    }
}
