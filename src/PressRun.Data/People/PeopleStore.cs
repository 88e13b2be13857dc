using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Data.Running;

namespace PressRun.Data.People;

/// <summary>Somebody of a press.</summary>
/// <param name="UserId">Who.</param>
/// <param name="Name">What others read.</param>
/// <param name="Email">Where mail reaches them.</param>
/// <param name="Role">What they may do.</param>
/// <param name="Since">Since when they belong to the press.</param>
/// <param name="LinksTo">Numbers of the quotes to which they made links that are open, one for each link.</param>
public sealed record Member(Guid UserId, string Name, string Email, PressRole Role, DateTimeOffset Since, IReadOnlyList<int> LinksTo);

/// <summary>What became of a change to a press's people.</summary>
public enum PeopleResult
{
    /// <summary>It is done.</summary>
    Done,

    /// <summary>They are not (any more) among the press's people.</summary>
    Gone,

    /// <summary>They are its last owner, and nobody could look after it without one.</summary>
    LastOwner,

    /// <summary>They belong elsewhere too, or set the server up: their account is not this press's to open.</summary>
    NotYours,
}

/// <summary>The people of a press.</summary>
public sealed class PeopleStore
{
    private readonly PressDatabase database;

    internal PeopleStore(PressDatabase database) => this.database = database;

    /// <summary>Everybody, by name.</summary>
    public async Task<IReadOnlyList<Member>> ListAsync(PressId press, CancellationToken cancel = default) => await database.ReadAsync(
        press,
        async db =>
        {
            var links = await QuoteStore.OpenAsync(db, database.Now, cancel);
            return (await db.Memberships.Join(db.Users, member => member.UserId, user => user.Id, (member, user) => new { member, user })
                .OrderBy(both => both.user.Name).ThenBy(both => both.user.Id).ToListAsync(cancel))
                .ConvertAll(both => new Member(both.user.Id, both.user.Name, both.user.Email!, both.member.Role, both.member.Since, [.. links[both.user.Id]]));
        },
        cancel,
        PressRole.Owner);

    /// <summary>Gives somebody another role.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such role.</exception>
    public Task<PeopleResult> ChangeAsync(PressId press, Guid user, PressRole role, CancellationToken cancel = default) => Enum.IsDefined(role)
        ? ChangeAsync(press, user, role, PressRole.Owner, cancel)
        : throw new ArgumentOutOfRangeException(nameof(role), role, "There is no such role.");

    /// <summary>Takes somebody out of the press; their account stays.</summary>
    public Task<PeopleResult> RemoveAsync(PressId press, Guid user, CancellationToken cancel = default) => ChangeAsync(press, user, null, PressRole.Owner, cancel);

    /// <summary>Lets the visitor leave a press.</summary>
    public Task<PeopleResult> LeaveAsync(PressId press, CancellationToken cancel = default) => Visiting.Now is Visitor.Person person
        ? ChangeAsync(press, person.UserId, null, PressRole.Reader, cancel)
        : Task.FromResult(PeopleResult.Gone);

    /// <summary>Numbers of the quotes to which the visitor made links that are open, one for each link: they end when the visitor leaves.</summary>
    public Task<IReadOnlyList<int>> OwnLinksAsync(PressId press, CancellationToken cancel = default)
    {
        var self = (Visiting.Now as Visitor.Person)?.UserId;
        return database.ReadAsync<IReadOnlyList<int>>(press, async db => await QuoteStore.OpenOfAsync(db, self, database.Now, cancel), cancel);
    }

    /// <summary>True where the visitor wants no mail of what readers of the press's quotes do.</summary>
    public Task<bool> IsWithoutMailAsync(PressId press, CancellationToken cancel = default)
    {
        var self = (Visiting.Now as Visitor.Person)?.UserId;
        return database.ReadAsync(press, db => db.Memberships.AnyAsync(member => member.UserId == self && member.WithoutMail, cancel), cancel);
    }

    /// <summary>Has the visitor told by mail, or not. It is their own to say, whatever their role.</summary>
    public Task<int> SetMailAsync(PressId press, bool without, CancellationToken cancel = default)
    {
        var self = (Visiting.Now as Visitor.Person)?.UserId;
        return database.WriteAsync(
            press, db => db.Memberships.Where(member => member.UserId == self).ExecuteUpdateAsync(set => set.SetProperty(member => member.WithoutMail, without), cancel), cancel, PressRole.Reader);
    }

    /// <summary>Has changes to who is of a press, and to what opens it, take turns, and asks once it is this one's turn what the visitor may do by now.</summary>
    internal static async Task HoldAsync(PressRunDbContext db, PressGuard guard, PressRole needs, CancellationToken cancel)
    {
        await db.Database.ExecuteSqlAsync($"SELECT 1 FROM presses WHERE id = {db.Press.Value} FOR UPDATE", cancel);
        await guard.DemandAsync(db, needs, cancel);
    }

    /// <summary>Ends what would let somebody back into the context's press, and what has their name there, in a transaction of the caller's.</summary>
    /// <param name="db">The context.</param>
    /// <param name="user">Whom.</param>
    /// <param name="wasOwner">True for somebody who owned the press.</param>
    /// <param name="left">The role that they keep; null for none.</param>
    /// <param name="now">The moment.</param>
    /// <param name="cancel">Gives up waiting.</param>
    internal static async Task EndWaysBackAsync(PressRunDbContext db, Guid user, bool wasOwner, PressRole? left, DateTimeOffset now, CancellationToken cancel)
    {
        // A link of an owner's would open the press to them again, and nobody can tell whose a link is: open ones end, and are made anew. Of anybody else those end that
        // could be theirs by the name on them, and would give them more than they keep.
        var known = await db.Users.Where(row => row.Id == user).Select(row => new { row.Name, row.Email }).SingleAsync(cancel);
        await InvitationStore.EndAsync(
            db, open => wasOwner || ((left is null || open.Role > left) && (SomebodysName.MayBe(open.For, known.Name) || SomebodysName.MayBe(open.For, known.Email!))), cancel);
        if (wasOwner)
        {
            await ApiKeyStore.EndOfAsync(db, user, now, cancel);
        }
    }

    private Task<PeopleResult> ChangeAsync(PressId press, Guid user, PressRole? role, PressRole needs, CancellationToken cancel) => database.WriteAsync(
        press,
        async db =>
        {
            // Two owners who take each other out at once would leave none.
            await HoldAsync(db, database.Guard, needs, cancel);
            var member = await db.Memberships.SingleOrDefaultAsync(row => row.UserId == user, cancel);
            if (member is null)
            {
                return PeopleResult.Gone;
            }

            var (wasOwner, isLess) = (member.Role == PressRole.Owner, role is null || role < member.Role);
            if (wasOwner && role != PressRole.Owner && !await db.Memberships.AnyAsync(row => row.UserId != user && row.Role == PressRole.Owner, cancel))
            {
                return PeopleResult.LastOwner;
            }

            if (role is { } given)
            {
                member.Role = given;
            }
            else
            {
                db.Memberships.Remove(member);
            }

            if (isLess)
            {
                await EndWaysBackAsync(db, user, wasOwner, role, database.Now, cancel);
            }

            // A reader makes no links either.
            if (role is null or PressRole.Reader)
            {
                await QuoteStore.EndOfAsync(db, user, database.Now, cancel);
            }

            await db.SaveChangesAsync(cancel);
            await Announcing.RightsChangedAsync(db, user, cancel);
            return PeopleResult.Done;
        },
        cancel,
        needs);
}
