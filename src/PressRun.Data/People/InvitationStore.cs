using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.Presses;
using PressRun.Data.Running;

namespace PressRun.Data.People;

/// <summary>An invitation that nobody has used yet.</summary>
/// <param name="Id">Names it; opens nothing.</param>
/// <param name="For">Whom it is meant for, in the words of whoever made it.</param>
/// <param name="Role">What it gives.</param>
/// <param name="ExpiresAt">Until when it holds.</param>
public sealed record Invitation(Guid Id, string For, PressRole Role, DateTimeOffset ExpiresAt);

/// <summary>What an invitation says to whoever opens its link.</summary>
/// <param name="Press">Name of the press.</param>
/// <param name="For">Whom it is meant for.</param>
/// <param name="Role">What it gives.</param>
public sealed record InvitationLook(string Press, string For, PressRole Role);

/// <summary>Invitations by link. A link opens once, for some days; only its hash is kept.</summary>
public sealed class InvitationStore
{
    /// <summary>How long an invitation holds.</summary>
    public static readonly TimeSpan Holds = TimeSpan.FromDays(7);

    private readonly PressDatabase database;

    internal InvitationStore(PressDatabase database) => this.database = database;

    /// <summary>The invitations of a press that hold, the newest first.</summary>
    public async Task<IReadOnlyList<Invitation>> ListAsync(PressId press, CancellationToken cancel = default)
    {
        var now = database.Now;
        return await database.ReadAsync(
            press,
            db => db.Invitations.Where(row => row.UsedAt == null && row.ExpiresAt > now).OrderByDescending(row => row.MadeAt)
                .Select(row => new Invitation(row.Id, row.For, row.Role, row.ExpiresAt)).ToListAsync(cancel),
            cancel,
            PressRole.Owner);
    }

    /// <summary>A new invitation.</summary>
    /// <returns>The secret for its link, which is not kept.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such role.</exception>
    public Task<string> InviteAsync(PressId press, string whom, PressRole role, CancellationToken cancel = default)
    {
        if (!Enum.IsDefined(role))
        {
            throw new ArgumentOutOfRangeException(nameof(role), role, "There is no such role.");
        }

        var secret = Secret.New();
        return database.WriteAsync(
            press,
            async db =>
            {
                // As with keys: whoever is just being taken out leaves none behind.
                await PeopleStore.HoldAsync(db, database.Guard, PressRole.Owner, cancel);
                var now = database.Now;
                db.Invitations.Add(new InvitationRow
                {
                    Id = Guid.CreateVersion7(), For = whom, Role = role, SecretHash = Secret.Hash(secret), MadeAt = now, ExpiresAt = now + Holds,
                });
                await db.SaveChangesAsync(cancel);
                return secret;
            },
            cancel,
            PressRole.Owner);
    }

    /// <summary>Takes an invitation back.</summary>
    public async Task WithdrawAsync(PressId press, Guid invitation, CancellationToken cancel = default) => await database.WriteAsync(
        press, db => db.Invitations.Where(row => row.Id == invitation && row.UsedAt == null).ExecuteDeleteAsync(cancel), cancel, PressRole.Owner);

    /// <summary>Takes out the invitations that were used or whose time is over, with whom they were for.</summary>
    /// <returns>How many those were.</returns>
    public Task<int> SweepAsync(CancellationToken cancel = default)
    {
        var now = database.Now;
        return database.WriteServerAsync(db => db.Invitations.IgnoreQueryFilters().Where(row => row.UsedAt != null || row.ExpiresAt < now).ExecuteDeleteAsync(cancel), cancel);
    }

    /// <summary>What a link says; null where it holds no more, or never did.</summary>
    public Task<InvitationLook?> LookAsync(string secret, CancellationToken cancel = default)
    {
        var (hash, now) = (Secret.Hash(secret), database.Now);
        return database.ReadServerAsync(
            db => Holding(db, hash, now).Join(db.Presses, row => row.PressId, press => press.Id, (row, press) => new InvitationLook(press.Name, row.For, row.Role))
                .SingleOrDefaultAsync(cancel),
            cancel);
    }

    /// <summary>Lets somebody in by a link, which then opens nothing any more.</summary>
    /// <returns>The press; null where the link holds no more.</returns>
    public Task<PressId?> AcceptAsync(string secret, Guid user, CancellationToken cancel = default) =>
        database.WriteServerAsync(db => AcceptAsync(db, secret, user, database.Now, cancel), cancel);

    internal static async Task<PressId?> AcceptAsync(PressRunDbContext db, string secret, Guid user, DateTimeOffset now, CancellationToken cancel)
    {
        var hash = Secret.Hash(secret);
        if (await Holding(db, hash, now).AsNoTracking().SingleOrDefaultAsync(cancel) is not { } row)
        {
            return null;
        }

        // In turn with every other change to the press's people, as it looks at more of its invitations than this one.
        await db.Database.ExecuteSqlAsync($"SELECT 1 FROM presses WHERE id = {row.PressId.Value} FOR UPDATE", cancel);
        if (Visiting.Now is Visitor.Person person && person.UserId == user && !await SessionStore.HoldAsync(db, person, now, cancel))
        {
            return null;
        }

        if (await Holding(db, hash, now).ExecuteUpdateAsync(set => set.SetProperty(used => used.UsedAt, now), cancel) == 0)
        {
            return null;
        }

        db.Press = row.PressId;
        var member = await db.Memberships.SingleOrDefaultAsync(known => known.UserId == user, cancel);
        if (member is null)
        {
            db.Memberships.Add(new MembershipRow { PressId = row.PressId, UserId = user, Role = row.Role, Since = now });
        }
        else if (member.Role < row.Role)
        {
            member.Role = row.Role;
        }

        await db.SaveChangesAsync(cancel);

        // Whoever was sent a second link, as the first seemed lost, would come back by it after being taken out, whatever they are called by then.
        var known = await db.Users.Where(person => person.Id == user).Select(person => new { person.Name, person.Email }).SingleAsync(cancel);
        await EndAsync(db, open => new[] { row.For, known.Name, known.Email! }.Any(name => SomebodysName.Same(open.For, name)), cancel);
        await Announcing.RightsChangedAsync(db, user, cancel);
        return row.PressId;
    }

    /// <summary>Ends those open invitations of the context's press of which something holds, in a transaction of the caller's.</summary>
    internal static async Task EndAsync(PressRunDbContext db, Func<InvitationRow, bool> which, CancellationToken cancel)
    {
        var ended = (await db.Invitations.AsNoTracking().Where(row => row.UsedAt == null).ToListAsync(cancel)).Where(which).Select(row => row.Id).ToList();
        await db.Invitations.Where(row => row.UsedAt == null && ended.Contains(row.Id)).ExecuteDeleteAsync(cancel);
    }

    private static IQueryable<InvitationRow> Holding(PressRunDbContext db, byte[] hash, DateTimeOffset now) =>
        db.Invitations.IgnoreQueryFilters().Where(row => row.SecretHash == hash && row.UsedAt == null && row.ExpiresAt > now);
}
