using Microsoft.EntityFrameworkCore;
using PressRun.Data.People;
using PressRun.Data.Presses;

namespace PressRun.Data.Access;

/// <summary>
/// Stands before every row of a press: each operation of a store passes here, on the connection that then does the work, so that no page and no
/// endpoint can forget to ask. Roles and sessions are read each time; what was taken away is gone with the next operation.
/// </summary>
/// <param name="signIn">False for single-user mode, in which whoever reaches the address may do everything.</param>
/// <param name="time">The clock by which sessions end.</param>
internal sealed class PressGuard(bool signIn, TimeProvider time)
{
    /// <summary>True where people sign in.</summary>
    public bool SignIn => signIn;

    /// <summary>Refuses a visitor who may not do this in the press of the context.</summary>
    /// <exception cref="AccessRefusedException">They may not.</exception>
    public async Task DemandAsync(PressRunDbContext db, PressRole needs, CancellationToken cancel)
    {
        if (await RoleAsync(db, cancel) is not { } role)
        {
            throw new AccessRefusedException();
        }

        if (role < needs)
        {
            throw new AccessRefusedException(role == PressRole.Reader
                ? "You may read this press and change nothing in it. Its owner can make you an editor."
                : "Only an owner of this press may do that.");
        }
    }

    /// <summary>What the visitor may do in the press of the context; null for nothing at all.</summary>
    public async Task<PressRole?> RoleAsync(PressRunDbContext db, CancellationToken cancel)
    {
        if (!signIn)
        {
            return PressRole.Owner;
        }

        switch (Visiting.Now)
        {
            case Visitor.Program:
                return PressRole.Owner;
            case Visitor.Person person:
                var lasting = Lasting(db, person);
                return await db.Memberships.Where(member => member.UserId == person.UserId && lasting.Any())
                    .Select(member => (PressRole?)member.Role).SingleOrDefaultAsync(cancel);
            case Visitor.Key key when key.Press == db.Press:
                return await db.ApiKeys.Where(row => row.Id == key.KeyId && row.RevokedAt == null)
                    .Select(row => (PressRole?)(row.MayWrite ? PressRole.Editor : PressRole.Reader)).SingleOrDefaultAsync(cancel);
            default:
                return null;
        }
    }

    /// <summary>The presses that the visitor may see.</summary>
    public IQueryable<PressRow> Visible(PressRunDbContext db)
    {
        switch (Visiting.Now)
        {
            case Visitor.Program:
            case var _ when !signIn:
                return db.Presses;
            case Visitor.Person person:
                var lasting = Lasting(db, person);
                return db.Presses.Where(press =>
                    lasting.Any() && db.Memberships.IgnoreQueryFilters().Any(member => member.PressId == press.Id && member.UserId == person.UserId));
            case Visitor.Key key:
                return db.Presses.Where(press => press.Id == key.Press
                    && db.ApiKeys.IgnoreQueryFilters().Any(row => row.PressId == key.Press && row.Id == key.KeyId && row.RevokedAt == null));
            default:
                return db.Presses.Where(_ => false);
        }
    }

    /// <summary>Refuses a visitor who may not make presses: that is for owners, and for anybody signed in while there is none.</summary>
    /// <exception cref="AccessRefusedException">They may not.</exception>
    public async Task DemandMayMakeAsync(PressRunDbContext db, CancellationToken cancel)
    {
        if (!await MayMakeAsync(db, cancel))
        {
            throw new AccessRefusedException("Only somebody who owns a press here may make another.");
        }
    }

    /// <summary>True where the visitor may make presses.</summary>
    public async Task<bool> MayMakeAsync(PressRunDbContext db, CancellationToken cancel)
    {
        if (!signIn || Visiting.Now is Visitor.Program)
        {
            return true;
        }

        return Visiting.Now is Visitor.Person person
            && await Lasting(db, person).AnyAsync(cancel)
            && await db.Users.AnyAsync(
                user => user.Id == person.UserId
                    && (user.IsHost || db.Memberships.IgnoreQueryFilters().Any(member => member.UserId == user.Id && member.Role == PressRole.Owner)),
                cancel);
    }

    /// <summary>Makes whoever made the press of the context its owner.</summary>
    /// <exception cref="AccessRefusedException">Their sign-in has ended meanwhile.</exception>
    public async Task GiveToMakerAsync(PressRunDbContext db, CancellationToken cancel)
    {
        if (signIn && Visiting.Now is Visitor.Person person && await db.Presses.AnyAsync(press => press.Id == db.Press, cancel))
        {
            if (!await SessionStore.HoldAsync(db, person, time.GetUtcNow(), cancel))
            {
                throw new AccessRefusedException();
            }

            db.Memberships.Add(new MembershipRow { PressId = db.Press, UserId = person.UserId, Role = PressRole.Owner, Since = time.GetUtcNow() });
            await db.SaveChangesAsync(cancel);
        }
    }

    private IQueryable<SessionRow> Lasting(PressRunDbContext db, Visitor.Person person) =>
        SessionStore.Lasting(db, person.UserId, time.GetUtcNow()).Where(session => session.Id == person.SessionId);
}
