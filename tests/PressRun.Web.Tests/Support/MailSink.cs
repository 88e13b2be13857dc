using System.Buffers;
using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using MimeKit;
using SmtpServer;
using SmtpServer.ComponentModel;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace PressRun.Web.Tests.Support;

/// <summary>A mail server on this machine that takes mail, or refuses it as it is told.</summary>
public sealed class MailSink : IAsyncDisposable
{
    private readonly CancellationTokenSource ended = new();
    private readonly ConcurrentQueue<MimeMessage> taken = new();
    private readonly Task running;

    /// <summary>Starts it at a free port.</summary>
    /// <param name="answers">Codes that it answers one after the other, and then takes all.</param>
    public MailSink(params IEnumerable<int> answers)
    {
        using (var free = new TcpListener(IPAddress.Loopback, 0))
        {
            free.Start();
            Port = ((IPEndPoint)free.LocalEndpoint).Port;
        }

        var services = new ServiceProvider();
        services.Add(new Store(taken, new ConcurrentQueue<int>(answers)));
        var options = new SmtpServerOptionsBuilder().ServerName("sink.example").Endpoint(endpoint => endpoint.Endpoint(new IPEndPoint(IPAddress.Loopback, Port))).Build();
        running = new SmtpServer.SmtpServer(options, services).StartAsync(ended.Token);
    }

    /// <summary>Where it listens.</summary>
    public int Port { get; }

    /// <summary>What it has taken, the first one first.</summary>
    public IReadOnlyList<MimeMessage> Taken => [.. taken];

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await ended.CancelAsync();
        await running.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        ended.Dispose();
    }

    private sealed class Store(ConcurrentQueue<MimeMessage> taken, ConcurrentQueue<int> answers) : MessageStore
    {
        public override async Task<SmtpResponse> SaveAsync(ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
        {
            if (answers.TryDequeue(out var code))
            {
                return new SmtpResponse((SmtpReplyCode)code, "not now");
            }

            using var bytes = new MemoryStream(buffer.ToArray());
            taken.Enqueue(await MimeMessage.LoadAsync(bytes, cancellationToken));
            return SmtpResponse.Ok;
        }
    }
}
