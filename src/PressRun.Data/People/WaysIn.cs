using System.Buffers.Text;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace PressRun.Data.People;

/// <summary>By what somebody comes into their account.</summary>
/// <param name="HasPassword">True where they have a password.</param>
/// <param name="Passkeys">How many passkeys they have.</param>
/// <param name="IsLinked">True where the other server that is set opens their account.</param>
public sealed record WaysIn(bool HasPassword, int Passkeys, bool IsLinked)
{
    /// <summary>True where they would still come in without the other server.</summary>
    public bool MayUnlink => HasPassword || Passkeys > 0;

    /// <summary>True where they would still come in without one of their passkeys.</summary>
    public bool MayRemovePasskey => HasPassword || IsLinked || Passkeys > 1;
}

/// <summary>Takes ways into accounts out, but never the last one, and with each ends the sign-ins that may have come by it.</summary>
public sealed class WaysInStore
{
    private readonly PressDatabase database;

    internal WaysInStore(PressDatabase database) => this.database = database;

    /// <summary>By what somebody comes in.</summary>
    /// <param name="user">Who.</param>
    /// <param name="server">The other server that is set; null for none.</param>
    /// <param name="cancel">Ends the wait.</param>
    public Task<WaysIn> OfAsync(Guid user, string? server, CancellationToken cancel = default) => database.ReadServerAsync(db => ReadAsync(db, user, server, cancel), cancel);

    /// <summary>Takes one of somebody's passkeys out and ends their sign-ins but one; another's passkey is left alone.</summary>
    /// <returns>False where it is their only way in.</returns>
    public Task<bool> RemovePasskeyAsync(Guid user, Guid here, string passkey, string? server, CancellationToken cancel = default)
    {
        var id = Base64Url.IsValid(passkey) ? Base64Url.DecodeFromChars(passkey) : [];
        return TakeOutAsync(
            user, here, server, ways => ways.MayRemovePasskey,
            db => db.Set<IdentityUserPasskey<Guid>>().Where(row => row.UserId == user && row.CredentialId == id).ExecuteDeleteAsync(cancel), cancel);
    }

    /// <summary>Has a server open somebody's account no more and ends their sign-ins but one.</summary>
    /// <returns>False where it is their only way in.</returns>
    public Task<bool> UnlinkAsync(Guid user, Guid here, string server, CancellationToken cancel = default) => TakeOutAsync(
        user, here, server, ways => ways.MayUnlink,
        db => db.Set<IdentityUserLogin<Guid>>().Where(row => row.UserId == user && row.LoginProvider == server).ExecuteDeleteAsync(cancel), cancel);

    private static Task<WaysIn> ReadAsync(PressRunDbContext db, Guid user, string? server, CancellationToken cancel) => db.Users.Where(row => row.Id == user)
        .Select(row => new WaysIn(
            row.PasswordHash != null,
            db.Set<IdentityUserPasskey<Guid>>().Count(key => key.UserId == user),
            db.Set<IdentityUserLogin<Guid>>().Any(login => login.UserId == user && login.LoginProvider == server)))
        .SingleAsync(cancel);

    private Task<bool> TakeOutAsync(Guid user, Guid here, string? server, Func<WaysIn, bool> may, Func<PressRunDbContext, Task<int>> takeOut, CancellationToken cancel) => database.WriteServerAsync(
        async db =>
        {
            // Two that are taken out at once would leave none.
            await db.Database.ExecuteSqlAsync($"SELECT 1 FROM users WHERE id = {user} FOR UPDATE", cancel);
            if (!may(await ReadAsync(db, user, server, cancel)))
            {
                return false;
            }

            if (await takeOut(db) > 0)
            {
                // Whoever is just coming in by it finds another stamp, and does not.
                var stamp = Secret.New();
                await db.Users.Where(row => row.Id == user)
                    .ExecuteUpdateAsync(set => set.SetProperty(row => row.SecurityStamp, stamp).SetProperty(row => row.ConcurrencyStamp, stamp), cancel);
                await SessionStore.EndOthersAsync(db, user, here, database.Now, cancel);
            }

            return true;
        },
        cancel);
}
