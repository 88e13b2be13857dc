using System.Buffers.Text;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace PressRun.Data.People;

/// <summary>A passkey of somebody's: a key pair whose other half never leaves their device, or their devices.</summary>
/// <param name="Id">Names it; opens nothing.</param>
/// <param name="Name">What its owner calls it.</param>
/// <param name="MadeAt">When it was added.</param>
/// <param name="IsCopied">True where the device keeps copies of it elsewhere, so that it outlives the device.</param>
public sealed record Passkey(string Id, string Name, DateTimeOffset MadeAt, bool IsCopied);

/// <summary>Passkeys as they are kept, by the framework and beside the accounts: the public half, and how often it was used.</summary>
public sealed class AccountPasskeys(UserManager<User> users, PressRunDbContext db)
{
    /// <summary>Most passkeys of one person.</summary>
    public const int Most = 10;

    // Any number will do, as long as nothing else in the database locks by it.
    private const long AddLock = 5_080_006;

    /// <summary>Somebody's passkeys, the first first.</summary>
    public async Task<IReadOnlyList<Passkey>> ListAsync(User user) =>
        [.. (await users.GetPasskeysAsync(user)).OrderBy(key => key.CreatedAt)
            .Select(key => new Passkey(Base64Url.EncodeToString(key.CredentialId), key.Name ?? "", key.CreatedAt, key.IsBackedUp))];

    /// <summary>Adds one.</summary>
    /// <returns>What stands in the way, in a sentence; null where it is added.</returns>
    public async Task<string?> AddAsync(User user, UserPasskeyInfo passkey)
    {
        // One after the other: by an id that somebody has, the framework would write over theirs.
        await using var all = await db.Database.BeginTransactionAsync();
        await db.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({AddLock})");
        if ((await users.GetPasskeysAsync(user)).Count >= Most)
        {
            return $"You have {Most} passkeys. Take one out first.";
        }

        if (await users.FindByPasskeyIdAsync(passkey.CredentialId) is not null || !await KeepAsync(user, passkey))
        {
            return "Your account was changed elsewhere in between. Try again.";
        }

        await all.CommitAsync();
        return null;
    }

    /// <summary>Keeps what its use changed of one, such as the count by which a copy of it would be found out.</summary>
    /// <returns>False where the account was changed elsewhere in between.</returns>
    public async Task<bool> KeepAsync(User user, UserPasskeyInfo passkey) => (await users.AddOrUpdatePasskeyAsync(user, passkey)).Succeeded;

    /// <summary>Takes all of somebody's out in a transaction of the caller's.</summary>
    internal static Task<int> RemoveAllAsync(PressRunDbContext db, Guid user, CancellationToken cancel) =>
        db.Set<IdentityUserPasskey<Guid>>().Where(row => row.UserId == user).ExecuteDeleteAsync(cancel);
}
