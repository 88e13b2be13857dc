using System.Net;
using System.Net.Sockets;
using System.Text;

namespace PressRun.Web.Tests.Support;

/// <summary>A mail server on this machine that greets and does not come to an end.</summary>
internal sealed class EndlessServer : IAsyncDisposable
{
    /// <summary>Bytes after which it gives up, so that no test fills the machine's memory.</summary>
    public const long Most = 256L * 1024 * 1024;

    private static readonly byte[] Greeting = Encoding.ASCII.GetBytes("220-" + new string('w', 900) + "\r\n");

    private readonly CancellationTokenSource ended = new();
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly TimeSpan pause;
    private readonly Task running;

    /// <param name="pause">Between two lines of its greeting.</param>
    public EndlessServer(TimeSpan pause)
    {
        this.pause = pause;
        listener.Start();
        running = GreetAsync();
    }

    /// <summary>Where it listens.</summary>
    public int Port => ((IPEndPoint)listener.LocalEndpoint).Port;

    /// <summary>Bytes that it was rid of.</summary>
    public long Sent { get; private set; }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await ended.CancelAsync();
        listener.Stop();
        await running.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        ended.Dispose();
    }

    private async Task GreetAsync()
    {
        using var caller = await listener.AcceptTcpClientAsync(ended.Token);
        for (var stream = caller.GetStream(); Sent < Most; Sent += Greeting.Length)
        {
            await stream.WriteAsync(Greeting, ended.Token);
            if (pause > TimeSpan.Zero)
            {
                await Task.Delay(pause, ended.Token);
            }
        }
    }
}
