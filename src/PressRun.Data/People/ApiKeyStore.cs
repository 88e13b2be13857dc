using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.Presses;

namespace PressRun.Data.People;

/// <summary>A key with which a program speaks for a press.</summary>
/// <param name="Id">Names it; opens nothing.</param>
/// <param name="Name">What it is for.</param>
/// <param name="MayWrite">False for one that only reads.</param>
/// <param name="MadeAt">When it was made.</param>
/// <param name="Maker">Name of who made it; null where nobody signed in, or before that was noted.</param>
/// <param name="UsedOn">The last day on which it was used ; null for never.</param>
public sealed record ApiKey(Guid Id, string Name, bool MayWrite, DateTimeOffset MadeAt, string? Maker, DateOnly? UsedOn);

/// <summary>Keys for the HTTP interface. Their secrets are kept as hashes and shown once.</summary>
public sealed class ApiKeyStore
{
    /// <summary>What every key begins with, so that one that got somewhere it should not be is recognised.</summary>
    public const string Prefix = "pressrun_";

    private readonly PressDatabase database;

    internal ApiKeyStore(PressDatabase database) => this.database = database;

    /// <summary>The press's keys that hold, the newest first.</summary>
    public async Task<IReadOnlyList<ApiKey>> ListAsync(PressId press, CancellationToken cancel = default) => await database.ReadAsync(
        press,
        async db => (await db.ApiKeys.AsNoTracking().Where(key => key.RevokedAt == null)
            .LeftJoin(db.Users, key => key.MadeBy, user => user.Id, (key, user) => new { key, maker = user!.Name })
            .OrderByDescending(both => both.key.MadeAt).ToListAsync(cancel)).ConvertAll(both => both.key.ToRecord(both.maker)),
        cancel,
        PressRole.Owner);

    /// <summary>A new key. It ends when it is revoked, and with its maker's being an owner of the press.</summary>
    /// <returns>Its secret, which is not kept.</returns>
    public Task<string> MakeAsync(PressId press, string name, bool mayWrite, CancellationToken cancel = default)
    {
        var secret = Prefix + Secret.New();
        return database.WriteAsync(
            press,
            async db =>
            {
                // Whoever is just being taken out leaves none behind: that comes before this, or ends it.
                await PeopleStore.HoldAsync(db, database.Guard, PressRole.Owner, cancel);
                db.ApiKeys.Add(new ApiKeyRow
                {
                    Id = Guid.CreateVersion7(), Name = name, MayWrite = mayWrite, SecretHash = Secret.Hash(secret), MadeAt = database.Now, MadeBy = (Visiting.Now as Visitor.Person)?.UserId,
                });
                await db.SaveChangesAsync(cancel);
                return secret;
            },
            cancel,
            PressRole.Owner);
    }

    /// <summary>Ends a key; the next request with it is refused.</summary>
    public Task RevokeAsync(PressId press, Guid key, CancellationToken cancel = default) =>
        database.WriteAsync(press, db => EndAsync(db.ApiKeys.Where(row => row.Id == key), database.Now, cancel), cancel, PressRole.Owner);

    /// <summary>Ends the keys that somebody made for a press, in a transaction of the caller's.</summary>
    internal static Task EndOfAsync(PressRunDbContext db, Guid maker, DateTimeOffset now, CancellationToken cancel) => EndAsync(db.ApiKeys.Where(row => row.MadeBy == maker), now, cancel);

    private static Task<int> EndAsync(IQueryable<ApiKeyRow> keys, DateTimeOffset now, CancellationToken cancel) =>
        keys.Where(row => row.RevokedAt == null).ExecuteUpdateAsync(set => set.SetProperty(row => row.RevokedAt, now), cancel);

    /// <summary>Whom a secret lets in; null for one that holds no more, or never did.</summary>
    public async Task<(Visitor.Key Visitor, bool MayWrite)?> FindAsync(string secret, CancellationToken cancel = default)
    {
        if (!secret.StartsWith(Prefix, StringComparison.Ordinal))
        {
            return null;
        }

        var hash = Secret.Hash(secret);
        var found = await database.ReadServerAsync(
            db => db.ApiKeys.IgnoreQueryFilters().AsNoTracking().SingleOrDefaultAsync(key => key.SecretHash == hash && key.RevokedAt == null, cancel), cancel);
        if (found is null)
        {
            return null;
        }

        var today = database.Today;
        if (found.UsedOn != today)
        {
            await database.WriteServerAsync(
                db => db.ApiKeys.IgnoreQueryFilters().Where(key => key.PressId == found.PressId && key.Id == found.Id)
                    .ExecuteUpdateAsync(set => set.SetProperty(key => key.UsedOn, today), cancel),
                cancel);
        }

        return (new Visitor.Key(found.Id, found.PressId), found.MayWrite);
    }
}
