using Microsoft.EntityFrameworkCore;

namespace PressRun.Data.Running;

/// <summary>
/// A node's turn at the migrations. Their own lock lasts for one migration: a second node that comes in between two of them would run the
/// second one too. This lock is a connection's, and is given back with it.
/// </summary>
internal sealed class MigrationTurn : IAsyncDisposable
{
    // Any number will do, as long as nothing else in the database locks by it.
    private const long Lock = 5_080_002;

    private static readonly TimeSpan LongestWait = TimeSpan.FromHours(1);

    private readonly PressRunDbContext holder;

    private MigrationTurn(PressRunDbContext holder) => this.holder = holder;

    /// <summary>Waits for the turn.</summary>
    public static async Task<MigrationTurn> TakeAsync(IDbContextFactory<PressRunDbContext> contexts, CancellationToken cancel)
    {
        var holder = await contexts.CreateDbContextAsync(cancel);
        try
        {
            holder.Database.SetCommandTimeout(LongestWait);
            await holder.Database.OpenConnectionAsync(cancel);
            await holder.Database.ExecuteSqlAsync($"SELECT pg_advisory_lock({Lock})", cancel);
            return new MigrationTurn(holder);
        }
        catch
        {
            await holder.DisposeAsync();
            throw;
        }
    }

    /// <summary>Gives the turn back. A closed connection would not do: it goes to the pool with its lock.</summary>
    public async ValueTask DisposeAsync()
    {
        try
        {
            await holder.Database.ExecuteSqlAsync($"SELECT pg_advisory_unlock({Lock})", CancellationToken.None);
        }
        catch (Npgsql.NpgsqlException)
        {
            // The server is gone, and with it the lock. Whatever was done before is what the caller must hear of.
        }

        await holder.DisposeAsync();
    }
}
