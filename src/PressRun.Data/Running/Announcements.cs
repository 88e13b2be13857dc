using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Hosting;
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

/// <summary>Listens on a connection of its own, and takes a new one where it is lost. Where nothing is heard it asks whether anybody is there: a line can be
/// dead without having been closed.</summary>
internal sealed class ServerNews(Database database, TimeProvider time) : BackgroundService, IAccessNews, IQuoteNews
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(500);
    private static readonly TimeSpan Beat = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

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
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception exception) when (exception is NpgsqlException or IOException or InvalidOperationException or OperationCanceledException)
            {
                database.Reach.Misses(exception is OperationCanceledException ? "it took longer than it may" : exception.Message);
                await Task.Delay(Pause, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    private async Task ListenAsync(CancellationToken cancel)
    {
        await using var connection = await PatientlyAsync(patience => database.Source.OpenConnectionAsync(patience).AsTask(), cancel);
        connection.Notification += (_, news) => Hear(news.Payload);
        await AskAsync(connection, "LISTEN " + Announcing.Channel, cancel);
        database.Reach.Answers();
        Missed?.Invoke();
        while (true)
        {
            if (!await connection.WaitAsync(Beat, cancel))
            {
                await AskAsync(connection, "SELECT 1", cancel);
                await LookForRoomAsync(connection, cancel);
            }
        }
    }

    // More than may be free in the tables' last pages, so that it tells whether the disk has room. Counts of tries whose time is over are swept out.
    private async Task LookForRoomAsync(NpgsqlConnection connection, CancellationToken cancel)
    {
        if (!database.Reach.IsFull)
        {
            return;
        }

        try
        {
            const string attempt =
                """
                INSERT INTO attempts (kind, "of", ends_at, count)
                SELECT 'room', decode((SELECT string_agg(md5(random()::text || part || line), '') FROM generate_series(1, 125) AS part), 'hex'), now(), 0 FROM generate_series(1, 16) AS line
                """;
            await AskAsync(connection, attempt, cancel);
            database.Reach.HasRoom();
        }
        catch (PostgresException full) when (DatabaseAway.IsFull(full))
        {
            // Still none; it has been told.
        }
    }

    private Task<int> AskAsync(NpgsqlConnection connection, string statement, CancellationToken cancel) => PatientlyAsync(
        async patience =>
        {
            await using var command = new NpgsqlCommand(statement, connection);
            return await command.ExecuteNonQueryAsync(patience);
        },
        cancel);

    private async Task<T> PatientlyAsync<T>(Func<CancellationToken, Task<T>> work, CancellationToken cancel)
    {
        using var patience = new CancellationTokenSource(Patience, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(patience.Token, cancel);
        return await work(either.Token);
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
}
