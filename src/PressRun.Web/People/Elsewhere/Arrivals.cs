using System.Security.Claims;
using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.DataProtection;
using PressRun.Data.People;
using PressRun.Web.Running;

namespace PressRun.Web.People.Elsewhere;

/// <summary>Somebody whom another server knows, and nobody here yet.</summary>
/// <param name="Subject">Who they are there; never given to anybody else.</param>
/// <param name="Name">What they are called there; empty where that is no name here.</param>
/// <param name="Email">Their address, where that server has seen that it is theirs and it is one; else null.</param>
public sealed record Arrival(string Subject, string Name, string? Email)
{
    internal const string EmailClaim = "email";
    internal const string VerifiedClaim = "email_verified";
    internal const string NameClaim = "name";

    // OpenID Connect Core 1.0, section 2.
    private const int LongestSubject = 255;

    /// <summary>Reads what the server says (OpenID Connect Core 1.0, 5.1).</summary>
    /// <returns>Null where it says of nobody who they are: at many servers people choose what they are known by.</returns>
    internal static Arrival? Of(ClaimsPrincipal who)
    {
        var (name, email) = (who.FindFirstValue(NameClaim)?.Trim(), who.FindFirstValue(EmailClaim));
        var isSeen = string.Equals(who.FindFirstValue(VerifiedClaim), "true", StringComparison.OrdinalIgnoreCase);
        return who.FindFirstValue("sub") is { Length: > 0 and <= LongestSubject } subject && subject.All(letter => char.IsAscii(letter) && !char.IsControl(letter))
            ? new(subject, User.IsName(name) ? name! : "", isSeen && User.IsEmail(email) ? email : null)
            : null;
    }
}

/// <summary>
/// What happens to whoever comes back from the other server. An account that is linked is signed in. Nobody else gets one by coming: they need an
/// invitation, or the password of an account with the very address that the server vouches for. Until they have shown it, who they are there waits
/// in their browser, protected and for some minutes.
/// </summary>
public sealed class Arrivals(OtherServer? server, OtherServerAway told, Accounts accounts, WaysInStore ways, IDataProtectionProvider protection, IHttpContextAccessor http)
{
    /// <summary>Name of the cookie.</summary>
    public const string CookieName = "arrival";

    /// <summary>Said where the server did not say who somebody is.</summary>
    public const string Failed = "NotTold";

    /// <summary>Said where the server cannot be asked.</summary>
    public const string Away = "Away";

    /// <summary>Said to somebody whom the server knows and nobody here does.</summary>
    public const string Unknown = "Unknown";

    /// <summary>Said to somebody who has an account that is not linked yet.</summary>
    public const string NotLinked = "NotLinked";

    private static readonly TimeSpan Waits = TimeSpan.FromMinutes(10);

    private readonly ITimeLimitedDataProtector protector = protection.CreateProtector("PressRun.Arrivals").ToTimeLimitedDataProtector();

    private HttpContext Http => http.HttpContext!;

    /// <summary>The server's name; null where nobody signs in by another.</summary>
    public string? ServerName => server?.Name;

    /// <summary>Who waits in this browser; null for nobody.</summary>
    public Arrival? Waiting
    {
        get
        {
            try
            {
                return server is not null && Http.Request.Cookies[CookieName] is { } kept ? JsonSerializer.Deserialize<Arrival>(protector.Unprotect(kept)) : null;
            }
            catch (CryptographicException)
            {
                // Too old, or not ours.
                return null;
            }
        }
    }

    /// <summary>The link by which the account of whoever waits is kept.</summary>
    public AccountLink? WaitingLink => Waiting is { } arrival ? Link(arrival) : null;

    /// <summary>The words for what became of it; null for nothing to say.</summary>
    public string? Words(string? said) => said switch
    {
        _ when server is null => null,
        Failed => Say($"{server.Name} did not say who you are. Try again, or sign in with your password."),
        Away => Say($"{server.Name} cannot be reached just now. Try again later, or sign in with your password."),
        Unknown => Say($"{server.Name} knows you, and nobody here does yet. Open the invitation that an owner of the press sends you, and choose {server.Name} there."),
        NotLinked => Say($"You have an account here that {server.Name} does not open yet. Sign in by it this once, and from then on {server.Name} opens it."),
        _ => null,
    };

    /// <summary>Forgets who waits.</summary>
    public void Forget() => Http.Response.Cookies.Delete(CookieName, Options());

    /// <summary>Links the account of somebody who has just signed in with whoever waits, where the server vouches for that account's address.</summary>
    public async Task LinkAsync(User user)
    {
        ArgumentNullException.ThrowIfNull(user);
        if (Waiting is { Email: { } email } arrival && accounts.Known(email) == user.NormalizedEmail)
        {
            await accounts.LinkAsync(user, Link(arrival));
        }

        if (Http.Request.Cookies.ContainsKey(CookieName))
        {
            Forget();
        }
    }

    /// <summary>By what somebody comes in.</summary>
    public Task<WaysIn> WaysInAsync(Guid user) => ways.OfAsync(user, server?.Key);

    /// <summary>Has the server open somebody's account no more, and ends their other sign-ins.</summary>
    /// <param name="user">Whose.</param>
    /// <param name="here">The sign-in that lasts.</param>
    /// <returns>False where it is their only way in.</returns>
    public async Task<bool> UnlinkAsync(Guid user, Guid here) => server is not null && await ways.UnlinkAsync(user, here, server.Key);

    /// <summary>Takes one of somebody's passkeys out, and ends their other sign-ins; another's is left alone.</summary>
    /// <param name="user">Whose.</param>
    /// <param name="here">The sign-in that lasts.</param>
    /// <param name="passkey">Its id.</param>
    /// <returns>False where it is their only way in.</returns>
    public Task<bool> RemovePasskeyAsync(Guid user, Guid here, string passkey) => ways.RemovePasskeyAsync(user, here, passkey, server?.Key);

    /// <summary>Sends somebody to the server.</summary>
    /// <param name="http">The request.</param>
    /// <param name="to">Where they go on afterwards, as it was asked for.</param>
    public async Task<IResult> GoAsync(HttpContext http, string? to)
    {
        ArgumentNullException.ThrowIfNull(http);
        if (server is null)
        {
            return Results.NotFound();
        }

        var own = OwnAddress.Of(to);
        if (!OwnOrigin.IsOwnStep(http.Request))
        {
            // Where the server asks nothing, coming back ends the sign-in that this browser has: whoever only opens a link chooses that for themselves.
            return Results.LocalRedirect($"{http.Request.PathBase}/sign-in" + (own.Length == 0 ? "" : "?to=" + Uri.EscapeDataString(own)));
        }

        try
        {
            await http.ChallengeAsync(OtherServerSetup.Scheme, new AuthenticationProperties { RedirectUri = own.Length == 0 ? http.Request.PathBase + "/" : own });
            return Results.Empty;
        }
        catch (Exception away) when (away is InvalidOperationException or IOException or HttpRequestException or TimeoutException)
        {
            // It does not say where people are sent.
            told.Tell(server, away);
            return Results.LocalRedirect($"{http.Request.PathBase}/sign-in?said={Away}");
        }
    }

    /// <summary>Whose account opens for somebody whom the server knows; null where none does.</summary>
    internal Task<User?> WhoseAsync(Arrival arrival) => accounts.FindByLinkAsync(Link(arrival));

    /// <summary>Has somebody wait in their browser who has no account here that would open.</summary>
    /// <param name="arrival">Who they are at the other server.</param>
    /// <param name="to">Where they were going; empty for nowhere.</param>
    /// <returns>Where they go on.</returns>
    internal async Task<string> KeepAsync(Arrival arrival, string to)
    {
        Http.Response.Cookies.Append(CookieName, protector.Protect(JsonSerializer.Serialize(arrival), Waits), Options());
        if (to.StartsWith($"{Http.Request.PathBase}/join/", StringComparison.Ordinal))
        {
            return to;
        }

        var has = arrival.Email is { } email && await accounts.FindByAddressAsync(email) is not null;
        return $"{Http.Request.PathBase}/sign-in?said={(has ? NotLinked : Unknown)}" + (to.Length == 0 ? "" : "&to=" + Uri.EscapeDataString(to));
    }

    private AccountLink Link(Arrival arrival) => new(server!.Key, arrival.Subject);

    private CookieOptions Options() => new() { Path = "/", HttpOnly = true, IsEssential = true, MaxAge = Waits, SameSite = SameSiteMode.Lax, Secure = Http.Request.IsHttps };
}
