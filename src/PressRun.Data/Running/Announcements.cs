using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Npgsql;
using PressRun.Data.Presses;

namespace PressRun.Data.Running;

/// <summary>Tells all nodes, in the transaction that makes it so.</summary>
internal static class Announcing
{
    /// <summary>The channel of PostgreSQL's LISTEN and NOTIFY.</summary>
    public const string Channel = "pressrun_news";

    /// <summary>A sign-in has ended.</summary>
    public static Task SessionEndedAsync(PressRunDbContext db, Guid session, CancellationToken cancel) => TellAsync(db, $"session {session}", cancel);

    /// <summary>What somebody may do has changed.</summary>
    public static Task RightsChangedAsync(PressRunDbContext db, Guid user, CancellationToken cancel) => TellAsync(db, $"user {user}", cancel);

    /// <summary>Something has happened to a quote of the context's press, or was looked at.</summary>
    public static Task QuotesChangedAsync(PressRunDbContext db, CancellationToken cancel) => TellAsync(db, $"quotes {db.Press.Value}", cancel);

    private static Task<int> TellAsync(PressRunDbContext db, string words, CancellationToken cancel) =>
        db.Database.ExecuteSqlAsync($"SELECT pg_notify({Channel}, {words})", cancel);
}

/// <summary>What other nodes, or this one, have done to people's access.</summary>
public interface IAccessNews
{
    /// <summary>A sign-in has ended: its id.</summary>
    event Action<Guid> SessionEnded;

    /// <summary>What somebody may do has changed: the user's id.</summary>
    event Action<Guid> RightsChanged;

    /// <summary>News may have been missed, as the line to the database was down: look at everything again.</summary>
    event Action Missed;
}

/// <summary>What has happened to quotes, on whatever node.</summary>
public interface IQuoteNews
{
    /// <summary>Something has happened to a press's quotes, or was looked at: whose.</summary>
    event Action<PressId> QuotesChanged;

    /// <summary>News may have been missed, as the line to the database was down: look at everything again.</summary>
    event Action Missed;
}

/// <summary>Listens on a connection of its own, and takes a new one where it is lost.</summary>
internal sealed partial class ServerNews(Database database, TimeProvider time, ILogger<ServerNews> logger) : BackgroundService, IAccessNews, IQuoteNews
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);

    public event Action<Guid>? SessionEnded;

    public event Action<Guid>? RightsChanged;

    public event Action<PressId>? QuotesChanged;

    public event Action? Missed;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await ListenAsync(stoppingToken);
            }
            catch (Exception exception) when (exception is NpgsqlException or IOException or InvalidOperationException)
            {
                LogLost(logger, exception.Message);
                await Task.Delay(Pause, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
        }
    }

    private async Task ListenAsync(CancellationToken cancel)
    {
        await using var connection = await database.Source.OpenConnectionAsync(cancel);
        connection.Notification += (_, news) => Hear(news.Payload);
        await using (var listen = new NpgsqlCommand("LISTEN " + Announcing.Channel, connection))
        {
            await listen.ExecuteNonQueryAsync(cancel);
        }

        Missed?.Invoke();
        while (true)
        {
            await connection.WaitAsync(cancel);
        }
    }

    private void Hear(string words)
    {
        if (words.Split(' ') is not [var kind, var id] || !Guid.TryParse(id, out var of))
        {
            return;
        }

        switch (kind)
        {
            case "session":
                SessionEnded?.Invoke(of);
                break;
            case "user":
                RightsChanged?.Invoke(of);
                break;
            case "quotes":
                QuotesChanged?.Invoke(new PressId(of));
                break;
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "News from other nodes cannot be heard: {Reason}")]
    private static partial void LogLost(ILogger logger, string reason);
}
