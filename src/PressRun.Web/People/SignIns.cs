using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Authentication;
using PressRun.Data.Access;
using PressRun.Data.People;

namespace PressRun.Web.People;

/// <summary>Signs people in and out, and counts their tries.</summary>
public sealed class SignIns(Accounts accounts, SessionStore sessions, AttemptStore attempts, IHttpContextAccessor http, TimeProvider time)
{
    /// <summary>Said of every address and password that do not belong together, whether or not somebody has the address.</summary>
    public const string NoMatch = "This address and this password do not belong together.";

    /// <summary>Said when there were too many tries.</summary>
    public const string TooMany = "There were too many tries. Wait a quarter of an hour, then try again.";

    private const int BitsOfHousehold = 64;

    private static readonly TimeSpan Quarter = TimeSpan.FromMinutes(15);
    private static readonly AttemptLimit OfAddress = new("sign-in address", 10, Quarter);
    private static readonly AttemptLimit OfPlace = new("sign-in place", 100, Quarter);
    private static readonly AttemptLimit OfSecrets = new("secret place", 30, Quarter);

    private HttpContext Http => http.HttpContext!;

    /// <summary>Signs in by address and password.</summary>
    /// <returns>What stands in the way, in a sentence; null where it is done.</returns>
    public async Task<string?> ByPasswordAsync(string email, string password)
    {
        // As it is looked up: another spelling of the same address has no tries of its own.
        var address = accounts.Known(email.Trim()) ?? "";
        if (!await attempts.TakeAsync(OfPlace, Place()) || !await attempts.TakeAsync(OfAddress, address))
        {
            return TooMany;
        }

        if (await accounts.VerifyAsync(email.Trim(), password) is not { } user)
        {
            return NoMatch;
        }

        await attempts.ForgetAsync(OfAddress, address);
        await BeginAsync(user);
        return null;
    }

    /// <summary>Counts a try of a secret, such as the owner's code or an invitation; false where it is one too many.</summary>
    public Task<bool> MayTryAsync() => attempts.TakeAsync(OfSecrets, Place());

    /// <summary>Signs somebody in who is known to be themselves. A sign-in that was there before ends: nothing of it goes on under the new one.</summary>
    public async Task BeginAsync(User user)
    {
        ArgumentNullException.ThrowIfNull(user);
        await EndOwnAsync();
        var session = await sessions.BeginAsync(user.Id, Devices.Name(Http.Request.Headers.UserAgent.ToString()));
        var who = WhoClaims.Of(new Visitor.Person(user.Id, session), user.Name, SignInSetup.People);
        await Http.SignInAsync(SignInSetup.People, who, new AuthenticationProperties { IsPersistent = true, IssuedUtc = time.GetUtcNow(), ExpiresUtc = time.GetUtcNow() + SessionStore.Longest });
    }

    /// <summary>Signs out here.</summary>
    public async Task EndAsync()
    {
        await EndOwnAsync();
        await Http.SignOutAsync(SignInSetup.People);
    }

    private async Task EndOwnAsync()
    {
        if (WhoClaims.Person((await Http.AuthenticateAsync(SignInSetup.People)).Principal) is { } before)
        {
            await sessions.EndAsync(before.UserId, before.SessionId);
        }
    }

    // An address of the newer kind is one of very many that a household has; its first half is the household's.
    private string Place()
    {
        var address = Http.Connection.RemoteIpAddress ?? IPAddress.None;
        address = address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
        return address.AddressFamily == AddressFamily.InterNetworkV6
            ? Convert.ToHexString(address.GetAddressBytes().AsSpan(0, BitsOfHousehold / 8))
            : address.ToString();
    }
}
