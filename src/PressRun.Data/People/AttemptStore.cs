using Microsoft.EntityFrameworkCore;

namespace PressRun.Data.People;

/// <summary>How many tries there may be of something, in a time that begins with the first.</summary>
/// <param name="Kind">What is tried.</param>
/// <param name="Most">Tries allowed.</param>
/// <param name="Within">The time.</param>
public sealed record AttemptLimit(string Kind, int Most, TimeSpan Within);

/// <summary>Counts tries in the database, so that the limit holds across nodes and starts. What they are counted by is kept as a hash.</summary>
public sealed class AttemptStore
{
    private readonly PressDatabase database;

    internal AttemptStore(PressDatabase database) => this.database = database;

    /// <summary>Counts a try before it is made.</summary>
    /// <returns>False where it is one too many, and so must not be made.</returns>
    public async Task<bool> TakeAsync(AttemptLimit limit, string of, CancellationToken cancel = default)
    {
        var (now, ends, hash) = (database.Now, database.Now + limit.Within, Hash(limit, of));
        var count = await database.WriteServerAsync(
            async db => (await db.Database.SqlQuery<int>(
                $"""
                INSERT INTO attempts (kind, "of", ends_at, count) VALUES ({limit.Kind}, {hash}, {ends}, 1)
                ON CONFLICT (kind, "of") DO UPDATE SET
                  count = CASE WHEN attempts.ends_at < {now} THEN 1 ELSE attempts.count + 1 END,
                  ends_at = CASE WHEN attempts.ends_at < {now} THEN {ends} ELSE attempts.ends_at END
                RETURNING count AS "Value"
                """).ToListAsync(cancel))[0],
            cancel);
        return count <= limit.Most;
    }

    /// <summary>Takes a try back that was right: only wrong ones are counted.</summary>
    public Task GiveBackAsync(AttemptLimit limit, string of, CancellationToken cancel = default)
    {
        var hash = Hash(limit, of);
        return database.WriteServerAsync(
            db => db.Attempts.Where(row => row.Kind == limit.Kind && row.Of == hash && row.Count > 0).ExecuteUpdateAsync(set => set.SetProperty(row => row.Count, row => row.Count - 1), cancel), cancel);
    }

    /// <summary>Takes out the counts whose time is over.</summary>
    /// <returns>How many those were.</returns>
    public Task<int> SweepAsync(CancellationToken cancel = default)
    {
        var now = database.Now;
        return database.WriteServerAsync(db => db.Attempts.Where(row => row.EndsAt < now).ExecuteDeleteAsync(cancel), cancel);
    }

    private static byte[] Hash(AttemptLimit limit, string of) => Secret.Hash($"{limit.Kind} {of}");
}
