using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.Presses;
using PressRun.Data.Running;

namespace PressRun.Data.People;

/// <summary>What a new account needs.</summary>
/// <param name="Name">What others read.</param>
/// <param name="Email">Where mail reaches them, and the name they sign in by.</param>
/// <param name="Password">As typed; null for somebody whom another server signs in.</param>
/// <param name="Link">Who they are at that server.</param>
public sealed record NewAccount(string Name, string Email, string? Password, AccountLink? Link = null);

/// <summary>Who somebody is at another server, which opens their account.</summary>
/// <param name="Server">That server's address: of another one, the same subject is somebody else.</param>
/// <param name="Subject">Who they are there.</param>
public sealed record AccountLink(string Server, string Subject);

/// <summary>What became of making an account: who it is, or what stands in the way.</summary>
/// <param name="User">Null where nothing was made.</param>
/// <param name="Problem">A sentence for whoever typed.</param>
public sealed record AccountResult(User? User, string? Problem);

/// <summary>Accounts: made, signed in by, changed.</summary>
public sealed class Accounts(UserManager<User> users, PressRunDbContext db, IPasswordHasher<User> hasher, TimeProvider time)
{
    // Any number will do, as long as nothing else in the database locks by it.
    private const long FirstLock = 5_080_003;

    // Looked at where nobody has the address, so that the answer takes as long as for one whom somebody has.
    private static string? nobodysHash;

    /// <summary>True where somebody has an account.</summary>
    public Task<bool> AnyAsync(CancellationToken cancel = default) => db.Users.AnyAsync(cancel);

    /// <summary>Makes the first account, and gives it the presses that are there; only while nobody has one.</summary>
    public async Task<AccountResult> MakeFirstAsync(NewAccount account, CancellationToken cancel = default)
    {
        await using var all = await db.Database.BeginTransactionAsync(cancel);
        await db.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({FirstLock})", cancel);
        if (await db.Users.AnyAsync(cancel))
        {
            return new AccountResult(null, "Somebody has made the first account in between. Ask them for an invitation.");
        }

        var made = await MakeAsync(account, isHost: true);
        if (made.User is not null)
        {
            await HostPresses.GiveAsync(db, time.GetUtcNow(), cancel);
            await all.CommitAsync(cancel);
        }

        return made;
    }

    /// <summary>Makes an account for whoever holds an invitation, and lets them in: both, or neither.</summary>
    public async Task<(AccountResult Account, PressId? Press)> JoinAsync(NewAccount account, string invitation, CancellationToken cancel = default)
    {
        await using var all = await db.Database.BeginTransactionAsync(cancel);
        var made = await MakeAsync(account, isHost: false);
        if (made.User is not { } user)
        {
            return (made, null);
        }

        if (await InvitationStore.AcceptAsync(db, invitation, user.Id, time.GetUtcNow(), cancel) is not { } press)
        {
            return (new AccountResult(null, "This invitation has been used in between, or taken back."), null);
        }

        // The press's name is one of theirs from now on.
        var called = await db.Presses.Where(row => row.Id == press).Select(row => row.Name).SingleAsync(cancel);
        if (account.Password is { } password && PasswordRules.Problem(password, account.Name, account.Email, called) is { } problem)
        {
            return (new AccountResult(null, problem), null);
        }

        await all.CommitAsync(cancel);
        return (made, press);
    }

    /// <summary>The one spelling by which an address is looked up, and so is counted; null where it is no text that can be one.</summary>
    public string? Known(string email)
    {
        try
        {
            return email.Length <= User.LongestEmail ? users.NormalizeEmail(email) : null;
        }
        catch (ArgumentException)
        {
            // Half a sign, or one that is none in any script.
            return null;
        }
    }

    /// <summary>Whose address and password these are; null where they do not belong together. It takes the same time whether or not anybody has
    /// the address.</summary>
    public async Task<User?> VerifyAsync(string email, string password)
    {
        var user = await FindByAddressAsync(email);
        if (user?.PasswordHash is null)
        {
            var nobody = new User();
            nobodysHash ??= hasher.HashPassword(nobody, Secret.New());
            hasher.VerifyHashedPassword(nobody, nobodysHash, password);
            return null;
        }

        return await users.CheckPasswordAsync(user, password) ? user : null;
    }

    /// <summary>An account, or null.</summary>
    public Task<User?> FindAsync(Guid user) => users.FindByIdAsync(user.ToString());

    /// <summary>Whose account an address is; null where nobody has it, or it is none.</summary>
    public async Task<User?> FindByAddressAsync(string email) => Known(email) is null ? null : await users.FindByEmailAsync(email);

    /// <summary>Whose account another server opens for somebody; null where it opens none.</summary>
    public Task<User?> FindByLinkAsync(AccountLink link)
    {
        ArgumentNullException.ThrowIfNull(link);
        return users.FindByLoginAsync(link.Server, link.Subject);
    }

    /// <summary>Has another server open somebody's account; who already opens an account there, goes on opening that one.</summary>
    public async Task<bool> LinkAsync(User user, AccountLink link)
    {
        ArgumentNullException.ThrowIfNull(link);
        return (await MakingAsync(() => users.AddLoginAsync(user, new UserLoginInfo(link.Server, link.Subject, null)))).Succeeded;
    }

    /// <summary>Changes what others read.</summary>
    /// <param name="user">Whose name.</param>
    /// <param name="name">The new one, which <see cref="User.IsName"/>.</param>
    /// <returns>False where the account was changed elsewhere in between.</returns>
    public async Task<bool> RenameAsync(User user, string name)
    {
        ArgumentNullException.ThrowIfNull(user);
        user.Name = name.Trim();
        return (await users.UpdateAsync(user)).Succeeded;
    }

    /// <summary>Changes a password and ends all of somebody's sign-ins but one: both, or neither.</summary>
    /// <param name="user">Whose.</param>
    /// <param name="here">The sign-in that lasts.</param>
    /// <param name="now">The one there is, as typed; not asked for where there is none.</param>
    /// <param name="next">The new one, as typed.</param>
    /// <param name="cancel">Ends the wait.</param>
    /// <returns>What stands in the way, in a sentence; null where it is changed.</returns>
    public async Task<string?> ChangePasswordAsync(User user, Guid here, string now, string next, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(user);
        await using var all = await db.Database.BeginTransactionAsync(cancel);
        var changed = user.PasswordHash is null ? await users.AddPasswordAsync(user, next) : await users.ChangePasswordAsync(user, now, next);
        if (!changed.Succeeded)
        {
            return Told(changed);
        }

        await SessionStore.EndOthersAsync(db, user.Id, here, time.GetUtcNow(), cancel);
        await all.CommitAsync(cancel);
        return null;
    }

    /// <summary>Sets a new password for whoever a code was made for, ends all their sign-ins and takes their passkeys out: all of it, or
    /// nothing.</summary>
    /// <returns>Null where the code holds no more, or never did.</returns>
    public async Task<AccountResult?> ResetPasswordAsync(string code, string next, CancellationToken cancel = default)
    {
        await using var all = await db.Database.BeginTransactionAsync(cancel);
        if (await PasswordCodeStore.TakeAsync(db, code, time.GetUtcNow(), cancel) is not { } id || await FindAsync(id) is not { } user)
        {
            return null;
        }

        await users.RemovePasswordAsync(user);
        var set = await users.AddPasswordAsync(user, next);
        if (!set.Succeeded)
        {
            return new AccountResult(null, Told(set));
        }

        // Whoever lost their password to somebody else may have got passkeys from them.
        await AccountPasskeys.RemoveAllAsync(db, id, cancel);
        await SessionStore.EndOthersAsync(db, id, null, time.GetUtcNow(), cancel);
        await all.CommitAsync(cancel);
        return new AccountResult(user, null);
    }

    private async Task<AccountResult> MakeAsync(NewAccount account, bool isHost)
    {
        var (name, email) = (account.Name.Trim(), account.Email.Trim());
        if (Problem(name, email) is { } problem)
        {
            return new AccountResult(null, problem);
        }

        var user = new User { Id = Guid.CreateVersion7(), Name = name, Email = email, UserName = email, IsHost = isHost, CreatedAt = time.GetUtcNow() };
        var made = await MakingAsync(() => account.Password is { } password ? users.CreateAsync(user, password) : users.CreateAsync(user));
        if (made.Succeeded && account.Link is { } link && !await LinkAsync(user, link))
        {
            return new AccountResult(null, "You have an account here already. Sign in, and open the link again.");
        }

        return made.Succeeded ? new AccountResult(user, null) : new AccountResult(null, Told(made));
    }

    // Of two that are made at once the second finds nobody, and the first all the same when it is kept.
    private async Task<IdentityResult> MakingAsync(Func<Task<IdentityResult>> make)
    {
        try
        {
            return await make();
        }
        catch (DbUpdateException exception) when (Collision.Is(exception))
        {
            db.ChangeTracker.Clear();
            return IdentityResult.Failed(users.ErrorDescriber.DuplicateEmail(""));
        }
    }

    private static string? Problem(string name, string email)
    {
        if (!User.IsName(name))
        {
            return $"Write the name that others are to read, of at most {User.LongestName} characters.";
        }

        return User.IsEmail(email) ? null : "Write a mail address such as name@example.org.";
    }

    private static string Told(IdentityResult result) => result.Errors.First().Code switch
    {
        "DuplicateEmail" or "DuplicateUserName" => "Somebody with this address has an account here. If it is you, sign in and open the link again.",
        "PasswordMismatch" => "This is not the password that you have now.",
        "ConcurrencyFailure" => "Your account was changed elsewhere in between. Try again.",
        _ => result.Errors.First().Description,
    };
}

/// <summary>Presses that nobody belongs to, as single-user mode makes them.</summary>
internal static class HostPresses
{
    /// <summary>Gives them to whoever set the server up.</summary>
    public static Task<int> GiveAsync(PressRunDbContext db, DateTimeOffset now, CancellationToken cancel) => db.Database.ExecuteSqlAsync(
        $"""
        INSERT INTO memberships (press_id, user_id, role, since)
        SELECT press.id, host.id, {nameof(PressRole.Owner)}, {now} FROM presses press CROSS JOIN (SELECT id FROM users WHERE is_host ORDER BY created_at LIMIT 1) host
        WHERE NOT EXISTS (SELECT 1 FROM memberships member WHERE member.press_id = press.id)
        """,
        cancel);
}
