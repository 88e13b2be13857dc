using System.Diagnostics;
using System.Globalization;
using System.Net.Sockets;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Npgsql;
using PressRun.Data;
using PressRun.Data.People;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Web.Running;

namespace PressRun.Benchmarks.Share;

/// <summary>
/// The page of a share link beside a bare endpoint that looks the same row up by the same index and sends the same bytes, in turns within one run. Both are
/// asked over loopback by the same small client, which shares the machine with them and with the database.
/// </summary>
internal static class SharePageTimes
{
    private const int Readers = 16;
    private const int Rounds = 5;
    private static readonly TimeSpan Round = TimeSpan.FromSeconds(5);

    /// <summary>Measures and says.</summary>
    public static async Task<int> RunAsync()
    {
        var folder = Path.Combine(Path.GetTempPath(), "pressrun-measured-" + Guid.NewGuid().ToString("N")[..8]);
        await using var app = PressRunApp.Build(
        [
            $"--contentRoot={AppContext.BaseDirectory}", "--applicationName=PressRun.Web", "--urls=http://127.0.0.1:0", $"--PressRun:DataFolder={folder}", "--PressRun:Sample=true",
            "--PressRun:SignIn=off", "--Logging:LogLevel:Default=Warning",
        ]);
        await app.StartAsync();
        var secret = await ShareAsync(app.Services);
        using var http = new HttpClient();
        var page = await http.GetByteArrayAsync(new Uri($"{app.Urls.First()}/q/{secret}"));
        await using var source = NpgsqlDataSource.Create(
            $"Host={Path.Combine(folder, "socket")};Username=pressrun;Password={(await File.ReadAllTextAsync(Path.Combine(folder, "database-password"))).Trim()};Database=pressrun");
        await using var bare = Bare(source, page);
        await bare.StartAsync();

        var (ofBare, ofPage) = (new List<double>(), new List<double>());
        for (var round = 0; round <= Rounds; round++)
        {
            var (first, second) = (await PerSecondAsync(bare.Urls.First(), secret), await PerSecondAsync(app.Urls.First(), secret));
            if (round > 0)
            {
                ofBare.Add(first);
                ofPage.Add(second);
            }
        }

        Say("bare endpoint", ofBare, ofBare);
        Say("share page", ofPage, ofBare);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{page.Length} bytes, {Readers} readers, {Rounds} rounds of {Round.TotalSeconds} s in turns"));
        await bare.StopAsync();
        await app.StopAsync();
        Directory.Delete(folder, recursive: true);
        return 0;
    }

    private static async Task<string> ShareAsync(IServiceProvider services)
    {
        var press = (await services.GetRequiredService<PressStore>().ListAsync()).Single().Id;
        var quotes = services.GetRequiredService<QuoteStore>();
        var quote = (await quotes.FindAsync(press, 1))!.Quote;
        var link = new NewLink("A reader", new LinkRights(null, null, Remark: true, Agree: true), TimeProvider.System.GetUtcNow().AddDays(30), null);
        return ((SaveResult<MadeLink>.Saved)await quotes.LinkAsync(press, quote.Id, link, "The press")).Now.Secret;
    }

    private static WebApplication Bare(NpgsqlDataSource source, byte[] page)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var app = builder.Build();
        app.MapGet("/q/{secret}", async (HttpContext http, string secret) =>
        {
            await using var command = source.CreateCommand("SELECT ends_at, ended_at FROM quote_links WHERE secret_hash = $1");
            command.Parameters.Add(new NpgsqlParameter<byte[]> { TypedValue = Secret.Hash(secret) });
            await using var reader = await command.ExecuteReaderAsync();
            http.Response.StatusCode = await reader.ReadAsync() && reader.IsDBNull(1) ? StatusCodes.Status200OK : StatusCodes.Status410Gone;
            http.Response.ContentType = "text/html; charset=utf-8";
            http.Response.ContentLength = page.Length;
            await http.Response.Body.WriteAsync(page);
        });
        return app;
    }

    private static async Task<double> PerSecondAsync(string address, string secret)
    {
        var uri = new Uri(address);
        var began = Stopwatch.GetTimestamp();
        var counts = await Task.WhenAll(Enumerable.Range(0, Readers).Select(_ => Task.Run(() => ReadAsync(uri, secret, began))));
        return counts.Sum() / Stopwatch.GetElapsedTime(began).TotalSeconds;
    }

    // As little as an HTTP/1.1 client can do: every answer is as long as the first one.
    private static async Task<int> ReadAsync(Uri address, string secret, long began)
    {
        using var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        await socket.ConnectAsync(address.Host, address.Port);
        var request = Encoding.ASCII.GetBytes($"GET /q/{secret} HTTP/1.1\r\nHost: {address.Authority}\r\n\r\n");
        var buffer = new byte[256 * 1024];
        var (asked, length) = (0, 0);
        for (; Stopwatch.GetElapsedTime(began) < Round; asked++)
        {
            await socket.SendAsync(request);
            var read = 0;
            do
            {
                read += await socket.ReceiveAsync(buffer.AsMemory(read));
                length = length == 0 ? LengthOf(buffer.AsSpan(0, read)) : length;
            }
            while (length == 0 || read < length);
        }

        return asked;
    }

    // Head and body; 0 while the head is not whole.
    private static int LengthOf(ReadOnlySpan<byte> answer)
    {
        var end = answer.IndexOf("\r\n\r\n"u8);
        if (end < 0)
        {
            return 0;
        }

        var head = Encoding.ASCII.GetString(answer[..end]).Split("\r\n");
        return head[0].StartsWith("HTTP/1.1 200", StringComparison.Ordinal)
            ? end + 4 + int.Parse(head.Single(line => line.StartsWith("Content-Length:", StringComparison.OrdinalIgnoreCase))["Content-Length:".Length..], CultureInfo.InvariantCulture)
            : throw new InvalidOperationException(head[0]);
    }

    private static void Say(string what, List<double> rounds, List<double> beside) => Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"{what}: best {rounds.Max():0} a second ({rounds.Max() / beside.Max():0.00} of the bare one), median {Median(rounds):0} ({Median(rounds) / Median(beside):0.00})"));

    private static double Median(List<double> rounds) => rounds.Order().ElementAt(rounds.Count / 2);
}
