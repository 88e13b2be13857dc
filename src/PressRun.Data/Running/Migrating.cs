using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.Extensions.Logging;
using Npgsql;

namespace PressRun.Data.Running;

/// <summary>Brings a database up to this program's model, or refuses it untouched.</summary>
internal static partial class Migrating
{
    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(1);

    // Seconds between two lines of a start that waits.
    private const int ToldEach = 10;

    /// <summary>Waits for the server, then migrates. Several nodes may do so at once: they take turns.</summary>
    /// <exception cref="StartRefusedException">The server does not answer, refuses, or holds a newer database.</exception>
    public static async Task BringUpAsync(IDbContextFactory<PressRunDbContext> contexts, TimeProvider time, ILogger logger, CancellationToken cancel)
    {
        var began = time.GetTimestamp();
        for (var waited = 0; ; waited++)
        {
            try
            {
                await using var turn = await MigrationTurn.TakeAsync(contexts, cancel);
                await using var db = await contexts.CreateDbContextAsync(cancel);
                await RefuseNewerAsync(db, cancel);
                await db.Database.MigrateAsync(cancel);
                return;
            }
            catch (Exception exception) when (Find<NpgsqlException>(exception) is { } problem)
            {
                if (!MayPass(problem) || time.GetElapsedTime(began) > LongestWait)
                {
                    var words = problem is PostgresException told ? told.MessageText : problem.Message;
                    throw new StartRefusedException($"The database cannot be used: {words}", exception);
                }

                if (waited % ToldEach == 0)
                {
                    LogWaiting(logger, problem.Message);
                }

                await Task.Delay(TimeSpan.FromSeconds(1), time, cancel);
            }
        }
    }

    private static async Task RefuseNewerAsync(PressRunDbContext db, CancellationToken cancel)
    {
        // An empty database gets its history first: the migrations look into it and would log its absence as a failure.
        await db.GetService<IHistoryRepository>().CreateIfNotExistsAsync(cancel);
        var unknown = (await db.Database.GetAppliedMigrationsAsync(cancel)).Except(db.Database.GetMigrations()).ToList();
        if (unknown.Count > 0)
        {
            throw new StartRefusedException(
                $"The database was last used by a newer PressRun (it has {string.Join(", ", unknown)}, which this one does not know). Nothing was changed. "
                + "Start the newer PressRun, or put back a backup from before its first start.");
        }
    }

    // A server that is starting, or not reachable yet; wrong passwords and missing databases do not pass.
    private static bool MayPass(NpgsqlException problem) =>
        problem is PostgresException told ? told.SqlState == PostgresErrorCodes.CannotConnectNow : problem.IsTransient;

    private static T? Find<T>(Exception? exception)
        where T : Exception =>
        exception is null ? null : exception as T ?? Find<T>(exception.InnerException);

    [LoggerMessage(Level = LogLevel.Information, Message = "Waiting for the database: {Reason}")]
    private static partial void LogWaiting(ILogger logger, string reason);
}
