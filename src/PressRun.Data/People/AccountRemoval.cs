using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.Quotes;
using PressRun.Data.Running;

namespace PressRun.Data.People;

/// <summary>
/// Deletes accounts: the name, the mail address and every way in, with drafts, mail that waits and invitations in the same name. What somebody signed in a press's
/// books (answers, remarks, names in tallies) is text of those books and stays.
/// </summary>
public sealed class AccountRemoval
{
    private readonly PressDatabase database;

    internal AccountRemoval(PressDatabase database) => this.database = database;

    /// <summary>Deletes somebody's own account; they have shown that they are themselves.</summary>
    /// <returns>Names of the presses that would be without an owner: where there is one, nothing is deleted.</returns>
    public Task<IReadOnlyList<string>> DeleteAsync(Guid user, CancellationToken cancel = default) =>
        database.WriteServerAsync(db => DeleteAsync(db, user, byHost: false, cancel), cancel);

    /// <summary>Deletes the account of whoever signs in by an address, for whoever runs the server. A press to which nobody else belongs goes to whoever set the server
    /// up, or waits for the next first owner.</summary>
    /// <param name="known">The address as it is looked up.</param>
    /// <param name="cancel">Ends the wait.</param>
    /// <returns>Names of the presses whose other people would be without an owner; null where nobody has the address.</returns>
    public Task<IReadOnlyList<string>?> DeleteForHostAsync(string known, CancellationToken cancel = default) => database.WriteServerAsync<IReadOnlyList<string>?>(
        async db =>
        {
            if (await db.Users.Where(row => row.NormalizedEmail == known).Select(row => (Guid?)row.Id).SingleOrDefaultAsync(cancel) is not { } user)
            {
                return null;
            }

            var held = await DeleteAsync(db, user, byHost: true, cancel);
            await HostPresses.GiveAsync(db, database.Now, cancel);
            return held;
        },
        cancel);

    private async Task<IReadOnlyList<string>> DeleteAsync(PressRunDbContext db, Guid user, bool byHost, CancellationToken cancel)
    {
        // As with every change to a press's people: two last owners who go at once would leave none.
        await db.Database.ExecuteSqlAsync($"SELECT 1 FROM presses WHERE id IN (SELECT press_id FROM memberships WHERE user_id = {user}) ORDER BY id FOR UPDATE", cancel);
        await db.Database.ExecuteSqlAsync($"SELECT 1 FROM users WHERE id = {user} FOR UPDATE", cancel);
        var held = await HeldAsync(db, user, byHost, cancel);
        if (held.Count > 0)
        {
            return held;
        }

        foreach (var own in await db.Memberships.IgnoreQueryFilters().AsNoTracking().Where(member => member.UserId == user).ToListAsync(cancel))
        {
            db.Press = own.PressId;
            await PeopleStore.EndWaysBackAsync(db, user, own.Role == PressRole.Owner, null, database.Now, cancel);
            await QuoteStore.EndOfAsync(db, user, database.Now, cancel);
        }

        await SessionStore.EndOthersAsync(db, user, null, database.Now, cancel);
        await TakeOutAsync(db, user, cancel);
        await Announcing.RightsChangedAsync(db, user, cancel);
        return held;
    }

    private static async Task<List<string>> HeldAsync(PressRunDbContext db, Guid user, bool byHost, CancellationToken cancel)
    {
        var members = db.Memberships.IgnoreQueryFilters();
        return await members.Where(own => own.UserId == user && own.Role == PressRole.Owner
                && !members.Any(other => other.PressId == own.PressId && other.UserId != user && other.Role == PressRole.Owner)
                && (!byHost || members.Any(other => other.PressId == own.PressId && other.UserId != user)))
            .Join(db.Presses, own => own.PressId, press => press.Id, (_, press) => press.Name).Order().ToListAsync(cancel);
    }

    // The rest goes with the account: places in presses, sign-ins, passkeys, links to another server, codes.
    private static async Task TakeOutAsync(PressRunDbContext db, Guid user, CancellationToken cancel)
    {
        var (person, email) = (user.ToString(), await db.Users.Where(row => row.Id == user).Select(row => row.Email).SingleOrDefaultAsync(cancel));
        await db.Drafts.IgnoreQueryFilters().Where(draft => draft.Person == person).ExecuteDeleteAsync(cancel);
        await db.Mails.IgnoreQueryFilters().Where(mail => mail.Address == email).ExecuteDeleteAsync(cancel);

        // Somebody must go on being the one who gets presses without people: whoever has owned one for longest.
        await db.Database.ExecuteSqlAsync(
            $"""
            UPDATE users SET is_host = true WHERE EXISTS (SELECT 1 FROM users host WHERE host.id = {user} AND host.is_host) AND id = (
                SELECT user_id FROM memberships WHERE role = {nameof(PressRole.Owner)} AND user_id <> {user} ORDER BY since, user_id LIMIT 1)
            """,
            cancel);
        await db.Users.Where(row => row.Id == user).ExecuteDeleteAsync(cancel);
    }
}
