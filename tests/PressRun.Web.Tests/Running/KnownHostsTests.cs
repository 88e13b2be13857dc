using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using PressRun.Data.Running;
using PressRun.Web.Running;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Running;

/// <summary>Which host names are answered to. Names and addresses are those set aside for documents (RFC 2606, RFC 5737).</summary>
public sealed class KnownHostsTests
{
    [Theory]
    [InlineData("books.example", "", false)]
    [InlineData("books.example", " ", false)]
    [InlineData("127.0.0.1:5080", "", true)]
    [InlineData("localhost", "", true)]
    [InlineData("[::1]:5080", "", true)]
    [InlineData("books.example:8443", "books.example", true)]
    [InlineData("127.0.0.1:5080", "books.example", true)]
    [InlineData("books.example.other.example", "books.example", false)]
    [InlineData("zines.example", "books.example; zines.example", true)]
    public async Task It_answers_to_the_names_that_are_allowed_and_always_to_those_of_this_machine(string name, string allowed, bool answers)
    {
        await using var app = await StartAsync(allowed);

        Assert.StartsWith(answers ? "HTTP/1.1 200 " : "HTTP/1.1 400 ", await RawRequests.AnswerTo(app, Asking("/", name)), StringComparison.Ordinal);
    }

    // Each would let nobody in, or everybody.
    [Theory]
    [InlineData("https://books.example")]
    [InlineData("books.example:443")]
    [InlineData("books.example,zines.example")]
    [InlineData("*.books.example")]
    [InlineData("*")]
    public async Task What_is_no_name_alone_is_refused_at_the_start(string wrong)
    {
        var refused = await Assert.ThrowsAsync<StartRefusedException>(() => StartAsync("zines.example;" + wrong));

        Assert.StartsWith($"AllowedHosts holds {wrong}, which is no host name. Write the name alone", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_name_is_told_what_to_set_and_the_log_once()
    {
        var told = new HeardLines();
        await using var app = await StartAsync("", told);

        var answer = await RawRequests.AnswerTo(app, Asking("/", "books.example"));
        await RawRequests.AnswerTo(app, Asking("/", "zines.example"));

        Assert.Contains("AllowedHosts", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("books.example", answer, StringComparison.Ordinal);
        Assert.Contains("books.example", Assert.Single(told.Lines, line => line.Contains("AllowedHosts", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/livez", "200")]
    [InlineData("/press/readyz", "200")]
    [InlineData("/other/readyz", "400")]
    [InlineData("/readyz/x", "400")]
    [InlineData("/", "400")]
    public async Task A_supervisor_asks_by_any_name_whether_the_server_lives_and_nothing_else(string path, string status)
    {
        await using var app = await StartAsync("");

        Assert.StartsWith($"HTTP/1.1 {status} ", await RawRequests.AnswerTo(app, Asking(path, "192.0.2.7")), StringComparison.Ordinal);
        Assert.StartsWith($"HTTP/1.1 {status} ", await RawRequests.AnswerTo(app, $"GET {path} HTTP/1.0\r\n\r\n"), StringComparison.Ordinal);
    }

    private static string Asking(string path, string name) => $"GET {path} HTTP/1.1\r\nHost: {name}\r\n\r\n";

    private static async Task<WebApplication> StartAsync(string allowed, ILoggerProvider? told = null)
    {
        var builder = WebApplication.CreateBuilder(["--PathBase=/press", $"--AllowedHosts={allowed}"]);
        builder.AddPressRunHost();
        if (told is not null)
        {
            builder.Logging.AddProvider(told);
        }

        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var app = builder.Build();
        app.UsePressRunHost();
        app.MapGet("/{**any}", () => "here");
        await app.StartAsync(TestContext.Current.CancellationToken);
        return app;
    }
}
