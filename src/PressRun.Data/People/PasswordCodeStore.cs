using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.Presses;

namespace PressRun.Data.People;

/// <summary>
/// Codes by which somebody who has forgotten their password sets another. An owner makes one for somebody whose presses are all the owner's, since
/// whoever gives the code opens all of them; whoever runs the server makes one for anybody. A code holds once and for a day; only its hash is kept.
/// </summary>
public sealed class PasswordCodeStore
{
    /// <summary>How long a code holds.</summary>
    public static readonly TimeSpan Holds = TimeSpan.FromHours(24);

    private readonly PressDatabase database;

    internal PasswordCodeStore(PressDatabase database) => this.database = database;

    /// <summary>A new code for somebody of a press, in place of an earlier one.</summary>
    /// <returns>The code, which is not kept; null with what stands in its way.</returns>
    public Task<(PeopleResult Result, string? Code)> MakeAsync(PressId press, Guid user, CancellationToken cancel = default) => database.WriteAsync<(PeopleResult, string?)>(
        press,
        async db =>
        {
            if (!await db.Memberships.AnyAsync(member => member.UserId == user, cancel))
            {
                return (PeopleResult.Gone, null);
            }

            return Visiting.Now is Visitor.Person maker && await MayAsync(db, maker.UserId, user, cancel)
                ? (PeopleResult.Done, await KeepAsync(db, user, maker.UserId, cancel))
                : (PeopleResult.NotYours, null);
        },
        cancel,
        PressRole.Owner);

    /// <summary>A new code for whoever signs in by an address, made by whoever runs the server.</summary>
    /// <param name="known">The address as it is looked up.</param>
    /// <param name="cancel">Ends the wait.</param>
    /// <returns>The code, which is not kept; null where nobody has the address.</returns>
    public Task<string?> MakeForHostAsync(string known, CancellationToken cancel = default) => database.WriteServerAsync(
        async db => await db.Users.Where(user => user.NormalizedEmail == known).Select(user => (Guid?)user.Id).SingleOrDefaultAsync(cancel) is { } user
            ? await KeepAsync(db, user, null, cancel)
            : null,
        cancel);

    /// <summary>Takes a code, which then opens nothing any more, in a transaction of the caller's, which ends all sign-ins of its person.</summary>
    /// <returns>Whose it is; null where it holds no more, or never did.</returns>
    internal static async Task<Guid?> TakeAsync(PressRunDbContext db, string code, DateTimeOffset now, CancellationToken cancel)
    {
        var hash = Secret.HashTyped(code);
        var holding = db.PasswordCodes.Where(row => row.SecretHash == hash && row.ExpiresAt > now);
        if (await holding.AsNoTracking().SingleOrDefaultAsync(cancel) is not { } row)
        {
            return null;
        }

        // Whoever joins another press meanwhile has done so and is seen here, or waits and then finds their sign-in ended. Another code for them need not wait.
        await db.Database.ExecuteSqlAsync($"SELECT 1 FROM users WHERE id = {row.UserId} FOR NO KEY UPDATE", cancel);
        if (await holding.ExecuteDeleteAsync(cancel) == 0)
        {
            return null;
        }

        // The owner may have lost a press since, or the person found another.
        return row.MadeBy is not { } maker || await MayAsync(db, maker, row.UserId, cancel) ? row.UserId : null;
    }

    private static async Task<bool> MayAsync(PressRunDbContext db, Guid maker, Guid user, CancellationToken cancel)
    {
        var members = db.Memberships.IgnoreQueryFilters();
        return maker != user
            && !await db.Users.AnyAsync(row => row.Id == user && row.IsHost, cancel)
            && !await members.AnyAsync(
                member => member.UserId == user && !members.Any(owner => owner.PressId == member.PressId && owner.UserId == maker && owner.Role == PressRole.Owner), cancel);
    }

    private async Task<string> KeepAsync(PressRunDbContext db, Guid user, Guid? maker, CancellationToken cancel)
    {
        var code = Secret.NewToType();
        await db.PasswordCodes.Where(row => row.UserId == user).ExecuteDeleteAsync(cancel);
        db.PasswordCodes.Add(new PasswordCodeRow { UserId = user, SecretHash = Secret.HashTyped(code), MadeBy = maker, ExpiresAt = database.Now + Holds });
        await db.SaveChangesAsync(cancel);
        return code;
    }
}
