using System.Globalization;
using Microsoft.AspNetCore.Authentication;
using PressRun.Data.Access;
using PressRun.Data.People;
using PressRun.Web.People.Elsewhere;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.People;

/// <summary>Signs people in and out, and counts their tries.</summary>
public sealed class SignIns(Accounts accounts, AccountRemoval removal, SessionStore sessions, AttemptStore attempts, PasskeyRounds passkeys, Arrivals arrivals, KnownDevices devices, Refusals refusals, IHttpContextAccessor http, TimeProvider time)
{
    /// <summary>Said of every address and password that do not belong together, whether or not somebody has the address.</summary>
    public static string NoMatch => Say($"This address and this password do not belong together.");

    /// <summary>Said when there were too many tries.</summary>
    public static string TooMany =>
        Say($"There were too many tries. Try again in a quarter of an hour; where that does not help, on a device on which you have signed in before.");

    /// <summary>Wrong tries of one address from all places together. It is more than one place alone can reach, so that no single one keeps others
    /// out.</summary>
    public static readonly AttemptLimit OfAddress = new("sign-in address", 100, TimeSpan.FromHours(1));

    private static readonly TimeSpan Quarter = TimeSpan.FromMinutes(15);

    // Whoever is wrong too often in one place keeps themselves out, and nobody who is elsewhere.
    private static readonly AttemptLimit OfPlace = new("sign-in place", 100, Quarter);
    private static readonly AttemptLimit OfAddressInPlace = new("sign-in address in place", 10, Quarter);

    // A device on which somebody has signed in is counted by itself, for them only: all else may be somebody else's doing.
    private static readonly AttemptLimit OfDevice = new("sign-in device", 10, Quarter);

    /// <summary>Wrong tries of one address on all devices together that it knows: five times what one of them may make in an hour, so that no single one keeps the others out.</summary>
    public static readonly AttemptLimit OfDevices = new("sign-in devices", 200, TimeSpan.FromHours(1));

    private static readonly AttemptLimit OfSecrets = new("secret place", 30, Quarter);
    private static readonly AttemptLimit OfChange = new("password change", 10, Quarter);

    private HttpContext Http => http.HttpContext!;

    /// <summary>Signs in by address and password.</summary>
    /// <returns>What stands in the way, in a sentence; null where it is done.</returns>
    public async Task<string?> ByPasswordAsync(string email, string password)
    {
        // As it is looked up: another spelling of the same address has no tries of its own.
        var address = accounts.Known(email.Trim()) ?? "";
        var counted = await CountedAsync(address);
        foreach (var (limit, of) in counted)
        {
            if (!await MayAsync(limit, of, Telling(limit, address)))
            {
                return TooMany;
            }
        }

        if (await accounts.VerifyAsync(email.Trim(), password) is not { } user || !await BeginAsync(user))
        {
            refusals.Tell(Http, Refusals.Password);
            return NoMatch;
        }

        foreach (var (limit, of) in counted)
        {
            await attempts.GiveBackAsync(limit, of);
        }

        await arrivals.LinkAsync(user);
        return null;
    }

    /// <summary>Counts that a secret was wrong, such as the owner's code or an invitation; false where it was one too many. A right one is not
    /// counted and not kept waiting: secrets are too long to be guessed, and somebody else in the same place may be trying.</summary>
    public async Task<bool> MissAsync()
    {
        var may = await MayAsync(OfSecrets, Place.Of(Http.Connection.RemoteIpAddress), () => refusals.Tell(Http, Refusals.Place));
        if (may)
        {
            refusals.Tell(Http, Refusals.Secret);
        }

        return may;
    }

    /// <summary>Signs in by a passkey.</summary>
    /// <returns>What stands in the way, in a sentence; null where it is done.</returns>
    public async Task<string?> ByPasskeyAsync(string answer)
    {
        if (await passkeys.WhoseAsync(answer) is not { } user || !await BeginAsync(user))
        {
            return await MissAsync() ? PasskeyRounds.NoMatch : TooMany;
        }

        await arrivals.LinkAsync(user);
        return null;
    }

    /// <summary>Counts a try of one's own password by somebody who has signed in; false where it is one too many. Whoever sits at a device that
    /// was left open keeps nobody out elsewhere.</summary>
    private Task<bool> MayChangeAsync(Guid session) => MayAsync(OfChange, session.ToString(), () => refusals.Tell(Http, Refusals.Change));

    /// <summary>Changes somebody's password, ends their other sign-ins, and goes on knowing the device.</summary>
    /// <param name="user">Whose.</param>
    /// <param name="session">The sign-in that lasts.</param>
    /// <param name="now">The one there is, as typed; not asked for where there is none.</param>
    /// <param name="next">The new one, as typed.</param>
    /// <returns>What stands in the way, in a sentence; null where it is changed.</returns>
    public async Task<string?> ChangePasswordAsync(User user, Guid session, string now, string next)
    {
        ArgumentNullException.ThrowIfNull(user);
        var problem = !await MayChangeAsync(session) ? TooMany
            : (user.PasswordHash is null ? await ProblemOfAgeAsync(user, session) : null) ?? await accounts.ChangePasswordAsync(user, session, now, next);
        if (problem is null)
        {
            devices.Remember(Http, user);
        }

        return problem;
    }

    /// <summary>Changes what others read of somebody; their browser knows it at once, others of theirs from their next sign-in on.</summary>
    /// <returns>What stands in the way, in a sentence; null where it is changed.</returns>
    public async Task<string?> RenameAsync(User user, Guid session, string name)
    {
        ArgumentNullException.ThrowIfNull(user);
        if (!User.IsName(name))
        {
            return Say($"Write the name that others are to read, in at most {User.LongestName} characters.");
        }

        if (!await accounts.RenameAsync(user, name))
        {
            return Say($"Your account was changed elsewhere in between. Try again.");
        }

        await NameAsync(user, session);
        return null;
    }

    /// <summary>Deletes the account of somebody who shows once more that they are themselves, and signs them out.</summary>
    /// <returns>What stands in the way, in a sentence; null where it is deleted.</returns>
    public async Task<string?> DeleteAsync(User user, Guid session, string password)
    {
        ArgumentNullException.ThrowIfNull(user);
        if (await ProblemOfOwnAsync(user, session, password) is { } problem)
        {
            return problem;
        }

        if (await removal.DeleteAsync(user.Id) is { Count: > 0 } held)
        {
            var presses = string.Join(", ", held.Select(Apart.Of));
            return Say($"Nothing was deleted. You are the last owner of {presses}, and nobody could look after it without one. Make somebody else an owner first, or ask whoever runs this server to delete the press.");
        }

        await Http.SignOutAsync(SignInSetup.People);
        return null;
    }

    /// <summary>Asks somebody who has signed in for their own password, before something is changed by which they sign in.</summary>
    /// <returns>What stands in the way, in a sentence; null where nothing does.</returns>
    public async Task<string?> ProblemOfOwnAsync(User user, Guid session, string password)
    {
        ArgumentNullException.ThrowIfNull(user);
        return !await MayChangeAsync(session) ? TooMany
            : user.PasswordHash is null ? await ProblemOfAgeAsync(user, session)
            : await accounts.VerifyAsync(user.Email!, password) is null ? Say($"This is not the password that you have now.")
            : null;
    }

    /// <summary>Asks somebody without a password for a fresh sign-in instead, so that nobody who finds their page open gives themselves a way in.</summary>
    private async Task<string?> ProblemOfAgeAsync(User user, Guid session)
    {
        var began = (await sessions.OfUserAsync(user.Id)).FirstOrDefault(own => own.Id == session)?.BeganAt;
        return began + Quarter > time.GetUtcNow() ? null : Say($"You signed in more than a quarter of an hour ago. Sign out and in again, and then do this first.");
    }

    /// <summary>Signs somebody in who is known to be themselves. A sign-in that was there before ends: nothing of it goes on under the new one.</summary>
    /// <param name="user">As they were found when they showed it.</param>
    /// <returns>False where what they showed holds no more.</returns>
    public async Task<bool> BeginAsync(User user)
    {
        ArgumentNullException.ThrowIfNull(user);
        if (await sessions.BeginAsync(user, Devices.Name(Http.Request.Headers.UserAgent.ToString())) is not { } session)
        {
            return false;
        }

        await EndOwnAsync();
        devices.Remember(Http, user);
        await NameAsync(user, session);
        return true;
    }

    /// <summary>Signs out here.</summary>
    public async Task EndAsync()
    {
        await EndOwnAsync();
        await Http.SignOutAsync(SignInSetup.People);
    }

    private Task NameAsync(User user, Guid session) => Http.SignInAsync(
        SignInSetup.People,
        WhoClaims.Of(new Visitor.Person(user.Id, session), user.Name, SignInSetup.People),
        new AuthenticationProperties { IsPersistent = true, IssuedUtc = time.GetUtcNow(), ExpiresUtc = time.GetUtcNow() + SessionStore.Longest });

    // One try too many is told to programs as well as to people: by the status of the page that says so, and by when to come back.
    private async Task<bool> MayAsync(AttemptLimit limit, string of, Action tell)
    {
        if (await attempts.TakeAsync(limit, of))
        {
            return true;
        }

        tell();
        Http.Response.StatusCode = StatusCodes.Status429TooManyRequests;
        Http.Response.Headers.RetryAfter = limit.Within.TotalSeconds.ToString("0", CultureInfo.InvariantCulture);
        return false;
    }

    private Action Telling(AttemptLimit limit, string address) => limit == OfAddress
        ? () => refusals.TellClosed(Http, address)
        : () => refusals.Tell(Http, limit == OfPlace ? Refusals.Place : limit == OfDevices ? Refusals.AccountOnDevices : Refusals.AccountHere);

    // Of whatever page: one that is open to everybody asks nobody who they are, and the sign-in is their browser's all the same.
    private async Task EndOwnAsync()
    {
        await Http.AuthenticateAsync(SignInSetup.People);
        if (Http.Features.Get<ShownSignIn>()?.Person is { } before)
        {
            await sessions.EndAsync(before.UserId, before.SessionId);
        }
    }

    private async Task<(AttemptLimit Limit, string Of)[]> CountedAsync(string address)
    {
        var place = Place.Of(Http.Connection.RemoteIpAddress);
        return await accounts.FindByAddressAsync(address) is { } user && devices.Of(Http, user) is { } device
            ? [(OfDevice, $"{device} {address}"), (OfDevices, address)]
            : [(OfPlace, place), (OfAddressInPlace, $"{place} {address}"), (OfAddress, address)];
    }
}
