using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.Running;

namespace PressRun.Data.People;

/// <summary>A sign-in on one device.</summary>
/// <param name="Id">Stands in the device's cookie.</param>
/// <param name="Device">What the browser calls itself, shortened.</param>
/// <param name="BeganAt">When somebody signed in.</param>
/// <param name="SeenAt">When it was last used, to within some minutes.</param>
public sealed record Session(Guid Id, string Device, DateTimeOffset BeganAt, DateTimeOffset SeenAt);

/// <summary>Sign-ins. What ends one is told to every node at once.</summary>
public sealed class SessionStore
{
    /// <summary>Longest name of a device, in characters.</summary>
    public const int LongestDevice = 120;

    /// <summary>A sign-in ends after so long, however much it is used.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromDays(30);

    /// <summary>A sign-in ends when it has not been used for so long.</summary>
    public static readonly TimeSpan LongestIdle = TimeSpan.FromDays(7);

    // So often a use is written down; more would write at every click.
    private static readonly TimeSpan Notes = TimeSpan.FromMinutes(5);

    private readonly PressDatabase database;

    internal SessionStore(PressDatabase database) => this.database = database;

    /// <summary>Begins a sign-in.</summary>
    /// <param name="user">Who has shown that they are themselves, as they were found then.</param>
    /// <param name="device">What their browser calls itself.</param>
    /// <param name="cancel">Ends the wait.</param>
    /// <returns>Its id for the cookie: random, and worth nothing without the server's protection of it. Null where what they showed was changed
    /// meanwhile, as by the owner of an account whose password somebody else has.</returns>
    public Task<Guid?> BeginAsync(User user, string device, CancellationToken cancel = default) => database.WriteServerAsync<Guid?>(
        async db =>
        {
            // A change either waits for this one, and then ends it, or is seen here.
            var found = await db.Users.FromSql($"SELECT * FROM users WHERE id = {user.Id} FOR SHARE").AsNoTracking().SingleOrDefaultAsync(cancel);
            if (found is null || found.SecurityStamp != user.SecurityStamp)
            {
                return null;
            }

            var now = database.Now;
            var session = new SessionRow { Id = Guid.NewGuid(), UserId = user.Id, Device = Short(device), BeganAt = now, SeenAt = now, ExpiresAt = now + Longest };
            db.Sessions.Add(session);
            await db.SaveChangesAsync(cancel);
            return session.Id;
        },
        cancel);

    /// <summary>True while a sign-in lasts; asking is no use of it.</summary>
    public async Task<bool> LastsAsync(Guid user, Guid session, CancellationToken cancel = default) => await SeenAsync(user, session, cancel) is not null;

    /// <summary>True while a sign-in lasts, and notes that it is used.</summary>
    public async Task<bool> UseAsync(Guid user, Guid session, CancellationToken cancel = default)
    {
        var now = database.Now;
        if (await SeenAsync(user, session, cancel) is not { } seen)
        {
            return false;
        }

        if (now - seen > Notes)
        {
            await database.WriteServerAsync(
                db => db.Sessions.Where(row => row.Id == session && row.SeenAt < now).ExecuteUpdateAsync(set => set.SetProperty(row => row.SeenAt, now), cancel), cancel);
        }

        return true;
    }

    /// <summary>Somebody's sign-ins that last, the latest used first.</summary>
    public async Task<IReadOnlyList<Session>> OfUserAsync(Guid user, CancellationToken cancel = default) =>
        await database.ReadServerAsync(
            db => Lasting(db, user, database.Now).OrderByDescending(row => row.SeenAt)
                .Select(row => new Session(row.Id, row.Device, row.BeganAt, row.SeenAt)).ToListAsync(cancel),
            cancel);

    /// <summary>Ends one of somebody's sign-ins; another's is left alone.</summary>
    public Task EndAsync(Guid user, Guid session, CancellationToken cancel = default) => database.WriteServerAsync(
        db => EndAsync(db, db.Sessions.Where(row => row.UserId == user && row.EndedAt == null && row.Id == session), database.Now, cancel), cancel);

    /// <summary>Ends all of somebody's sign-ins but one.</summary>
    public Task EndOthersAsync(Guid user, Guid kept, CancellationToken cancel = default) =>
        database.WriteServerAsync(db => EndOthersAsync(db, user, kept, database.Now, cancel), cancel);

    /// <summary>Takes out the sign-ins that have ended in any way.</summary>
    /// <returns>How many those were.</returns>
    public Task<int> SweepAsync(CancellationToken cancel = default)
    {
        var now = database.Now;
        var idleSince = now - LongestIdle;
        return database.WriteServerAsync(
            db => db.Sessions.Where(row => row.EndedAt != null || row.ExpiresAt < now || row.SeenAt < idleSince).ExecuteDeleteAsync(cancel), cancel);
    }

    /// <summary>Somebody's sign-ins that have not ended in any way.</summary>
    internal static IQueryable<SessionRow> Lasting(PressRunDbContext db, Guid user, DateTimeOffset now)
    {
        var idleSince = now - LongestIdle;
        return db.Sessions.Where(row => row.UserId == user && row.EndedAt == null && row.ExpiresAt > now && row.SeenAt > idleSince);
    }

    /// <summary>True while a sign-in lasts by which somebody is about to come into a press, in a transaction of the caller's: what ends it, as a code for a forgotten password does, waits until that is done, or
    /// is seen here.</summary>
    internal static async Task<bool> HoldAsync(PressRunDbContext db, Visitor.Person person, DateTimeOffset now, CancellationToken cancel)
    {
        await db.Database.ExecuteSqlAsync($"SELECT 1 FROM users WHERE id = {person.UserId} FOR SHARE", cancel);
        return await Lasting(db, person.UserId, now).AnyAsync(row => row.Id == person.SessionId, cancel);
    }

    private Task<DateTimeOffset?> SeenAsync(Guid user, Guid session, CancellationToken cancel) => database.ReadServerAsync(
        db => Lasting(db, user, database.Now).Where(row => row.Id == session).Select(row => (DateTimeOffset?)row.SeenAt).SingleOrDefaultAsync(cancel), cancel);

    /// <summary>Ends all of somebody's sign-ins but one in a transaction of the caller's; all of them where none is named.</summary>
    internal static Task<int> EndOthersAsync(PressRunDbContext db, Guid user, Guid? kept, DateTimeOffset now, CancellationToken cancel) =>
        EndAsync(db, db.Sessions.Where(row => row.UserId == user && row.EndedAt == null && (kept == null || row.Id != kept)), now, cancel);

    private static async Task<int> EndAsync(PressRunDbContext db, IQueryable<SessionRow> ending, DateTimeOffset now, CancellationToken cancel)
    {
        var ids = await ending.Select(row => row.Id).ToListAsync(cancel);
        await ending.ExecuteUpdateAsync(set => set.SetProperty(row => row.EndedAt, now), cancel);
        foreach (var id in ids)
        {
            await Announcing.SessionEndedAsync(db, id, cancel);
        }

        return ids.Count;
    }

    private static string Short(string device)
    {
        var plain = new string([.. device.Where(letter => !char.IsControl(letter))]);
        return plain.Length <= LongestDevice ? plain : plain[..LongestDevice];
    }
}
