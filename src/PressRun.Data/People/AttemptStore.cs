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
    // The longest time of any limit; rows older than this say nothing.
    private static readonly TimeSpan Kept = TimeSpan.FromDays(1);

    private readonly PressDatabase database;

    internal AttemptStore(PressDatabase database) => this.database = database;

    /// <summary>Counts a try before it is made.</summary>
    /// <returns>False where it is one too many, and so must not be made.</returns>
    public async Task<bool> TakeAsync(AttemptLimit limit, string of, CancellationToken cancel = default)
    {
        var (now, begins, hash) = (database.Now, database.Now - limit.Within, Hash(limit, of));
        var count = await database.WriteServerAsync(
            async db => (await db.Database.SqlQuery<int>(
                $"""
                INSERT INTO attempts (kind, "of", since, count) VALUES ({limit.Kind}, {hash}, {now}, 1)
                ON CONFLICT (kind, "of") DO UPDATE SET
                  count = CASE WHEN attempts.since < {begins} THEN 1 ELSE attempts.count + 1 END,
                  since = CASE WHEN attempts.since < {begins} THEN {now} ELSE attempts.since END
                RETURNING count AS "Value"
                """).ToListAsync(cancel))[0],
            cancel);
        return count <= limit.Most;
    }

    /// <summary>Forgets the tries, once one of them was right.</summary>
    public Task ForgetAsync(AttemptLimit limit, string of, CancellationToken cancel = default)
    {
        var (hash, old) = (Hash(limit, of), database.Now - Kept);
        return database.WriteServerAsync(
            db => db.Attempts.Where(row => (row.Kind == limit.Kind && row.Of == hash) || row.Since < old).ExecuteDeleteAsync(cancel), cancel);
    }

    private static byte[] Hash(AttemptLimit limit, string of) => Secret.Hash($"{limit.Kind} {of}");
}
