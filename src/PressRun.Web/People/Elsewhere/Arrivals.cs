using System.Security.Claims;
using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.DataProtection;
using PressRun.Data.People;

namespace PressRun.Web.People.Elsewhere;

/// <summary>Somebody whom another server knows, and nobody here yet.</summary>
/// <param name="Subject">Who they are there; never given to anybody else.</param>
/// <param name="Name">What they are called there; may be empty.</param>
/// <param name="Email">Their address, where that server has seen that it is theirs; else null.</param>
public sealed record Arrival(string Subject, string Name, string? Email)
{
    internal const string EmailClaim = "email";
    internal const string VerifiedClaim = "email_verified";
    internal const string NameClaim = "name";

    /// <summary>Reads what the server says (OpenID Connect Core 1.0, 5.1).</summary>
    internal static Arrival Of(ClaimsPrincipal who) => new(
        who.FindFirstValue("sub")!,
        who.FindFirstValue(NameClaim)?.Trim() ?? "",
        string.Equals(who.FindFirstValue(VerifiedClaim), "true", StringComparison.OrdinalIgnoreCase) ? who.FindFirstValue(EmailClaim) : null);
}

/// <summary>
/// What happens to whoever comes back from the other server. An account that is linked is signed in. Nobody else gets one by coming: they need an
/// invitation, or the password of an account with the very address that the server vouches for. Until they have shown it, who they are there waits
/// in their browser, protected and for some minutes.
/// </summary>
public sealed class Arrivals(OtherServer? server, Accounts accounts, PasskeyStore passkeys, IDataProtectionProvider protection, IHttpContextAccessor http)
{
    /// <summary>Name of the cookie.</summary>
    public const string CookieName = "arrival";

    /// <summary>Said where the server did not say who somebody is.</summary>
    public const string Failed = "NotTold";

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

    /// <summary>True where the server opens somebody's account.</summary>
    public async Task<bool> IsLinkedAsync(User user) => server is not null && await accounts.IsLinkedAsync(user, server.Key);

    /// <summary>True where somebody would still come in without the server.</summary>
    public async Task<bool> MayUnlinkAsync(User user)
    {
        ArgumentNullException.ThrowIfNull(user);
        return user.PasswordHash is not null || (await passkeys.ListAsync(user)).Count > 0;
    }

    /// <summary>Has the server open somebody's account no more.</summary>
    /// <returns>False where it is their only way in.</returns>
    public async Task<bool> UnlinkAsync(User user)
    {
        if (server is null || !await MayUnlinkAsync(user))
        {
            return false;
        }

        await accounts.UnlinkAsync(user, server.Key);
        return true;
    }

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

        try
        {
            var own = OwnAddress.Of(to);
            await http.ChallengeAsync(OtherServerSetup.Scheme, new AuthenticationProperties { RedirectUri = own.Length == 0 ? http.Request.PathBase + "/" : own });
            return Results.Empty;
        }
        catch (Exception away) when (away is InvalidOperationException or IOException or HttpRequestException or TimeoutException)
        {
            // It does not say where people are sent.
            return Results.LocalRedirect($"{http.Request.PathBase}/sign-in?said={Failed}");
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

        var has = arrival.Email is { } email && await accounts.HasAsync(email);
        return $"{Http.Request.PathBase}/sign-in?said={(has ? NotLinked : Unknown)}" + (to.Length == 0 ? "" : "&to=" + Uri.EscapeDataString(to));
    }

    private AccountLink Link(Arrival arrival) => new(server!.Key, arrival.Subject);

    private CookieOptions Options() => new() { Path = "/", HttpOnly = true, IsEssential = true, MaxAge = Waits, SameSite = SameSiteMode.Lax, Secure = Http.Request.IsHttps };
}
