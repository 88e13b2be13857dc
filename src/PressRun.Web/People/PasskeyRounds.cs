using System.Net;
using System.Security.Cryptography;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using PressRun.Data.People;

namespace PressRun.Web.People;

/// <summary>
/// Passkeys (W3C Web Authentication, level 3): what a browser is asked, and what its answer is worth. The question stays in a cookie of the browser
/// that asked, protected and for some minutes; it is answered once, whichever node it comes to.
/// </summary>
public sealed class PasskeyRounds(IPasskeyHandler<User> handler, AccountPasskeys passkeys, AttemptStore attempts, IDataProtectionProvider protection, IHttpContextAccessor http)
{
    /// <summary>Name of the cookie.</summary>
    public const string CookieName = "passkey";

    /// <summary>Said where an answer is worth nothing.</summary>
    public static string NoMatch => Say($"This passkey opens nothing here, or it was asked for too long ago. Try again, or sign in with your password.");

    /// <summary>How long a browser has to answer.</summary>
    public static readonly TimeSpan Lasts = TimeSpan.FromMinutes(5);

    // An answer of usual length has about a thousand characters; longer ones are not read.
    private const int LongestAnswer = 32_768;

    private static readonly AttemptLimit Answers = new("passkey round", 1, Lasts);

    private HttpContext Http => http.HttpContext!;

    /// <summary>True where browsers make passkeys for the address that is asked: it has a name, and is reached by https or is this machine
    /// itself.</summary>
    public static bool CanBe(HttpRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        var host = request.Host.Host;
        return !IPAddress.TryParse(host, out _) && (request.IsHttps || host == "localhost" || host.EndsWith(".localhost", StringComparison.Ordinal));
    }

    /// <summary>Asks for a new passkey of somebody who has signed in.</summary>
    /// <returns>What the browser is given, as JSON.</returns>
    public async Task<string> AskForNewAsync(User user, Guid session)
    {
        ArgumentNullException.ThrowIfNull(user);
        var asked = await handler.MakeCreationOptionsAsync(new PasskeyUserEntity { Id = user.Id.ToString(), Name = user.Email!, DisplayName = user.Name }, Http);
        Remember(asked.AttestationState ?? "", OfNew(user, session));
        return asked.CreationOptionsJson;
    }

    /// <summary>Asks for any passkey of this server.</summary>
    /// <returns>What the browser is given, as JSON.</returns>
    public async Task<string> AskForAnyAsync()
    {
        var asked = await handler.MakeRequestOptionsAsync(null, Http);
        Remember(asked.AssertionState ?? "", OfAny);
        return asked.RequestOptionsJson;
    }

    /// <summary>Adds the passkey that was made for somebody.</summary>
    /// <returns>What stands in the way, in a sentence; null where it is added.</returns>
    public async Task<string?> AddAsync(User user, Guid session, string name, string answer)
    {
        ArgumentNullException.ThrowIfNull(user);
        if (await TakeAsync(OfNew(user, session), answer) is not { } state)
        {
            return NoMatch;
        }

        var made = await handler.PerformAttestationAsync(new PasskeyAttestationContext { HttpContext = Http, CredentialJson = answer, AttestationState = state });
        if (!made.Succeeded || made.UserEntity.Id != user.Id.ToString())
        {
            return NoMatch;
        }

        made.Passkey.Name = name;
        return await passkeys.AddAsync(user, made.Passkey);
    }

    /// <summary>Whose passkey answered; null where it is nobody's.</summary>
    public async Task<User?> WhoseAsync(string answer)
    {
        if (await TakeAsync(OfAny, answer) is not { } state)
        {
            return null;
        }

        var shown = await handler.PerformAssertionAsync(new PasskeyAssertionContext { HttpContext = Http, CredentialJson = answer, AssertionState = state });
        return shown.Succeeded && await passkeys.KeepAsync(shown.User, shown.Passkey) ? shown.User : null;
    }

    private IDataProtector OfAny => protection.CreateProtector("PressRun.Passkeys", "any");

    private IDataProtector OfNew(User user, Guid session) => protection.CreateProtector("PressRun.Passkeys", "new", user.Id.ToString(), session.ToString());

    private void Remember(string state, IDataProtector protector) =>
        Http.Response.Cookies.Append(CookieName, protector.ToTimeLimitedDataProtector().Protect(state, Lasts), Options());

    // The question to an answer, once.
    private async Task<string?> TakeAsync(IDataProtector protector, string answer)
    {
        if (Http.Request.Cookies[CookieName] is not { } kept || answer.Length is 0 or > LongestAnswer)
        {
            return null;
        }

        Http.Response.Cookies.Delete(CookieName, Options());
        try
        {
            var state = protector.ToTimeLimitedDataProtector().Unprotect(kept);
            return await attempts.TakeAsync(Answers, state) ? state : null;
        }
        catch (CryptographicException)
        {
            // Too old, another person's, or not ours.
            return null;
        }
    }

    private CookieOptions Options() => new() { Path = "/", HttpOnly = true, IsEssential = true, MaxAge = Lasts, SameSite = SameSiteMode.Strict, Secure = Http.Request.IsHttps };
}
