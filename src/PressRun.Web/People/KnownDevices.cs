using System.Security.Cryptography;
using Microsoft.AspNetCore.DataProtection;
using PressRun.Data.People;
using Secret = PressRun.Data.People.Secret;

namespace PressRun.Web.People;

/// <summary>
/// Remembers on a device who has signed in there, so that strangers who try somebody's address from everywhere do not keep them out: their own
/// device is counted by itself. What is remembered opens nothing, and is worth nothing to anybody but this server. It holds as long as the password:
/// whoever had an earlier one would otherwise go on guessing on as many devices as they had signed in on.
/// </summary>
public sealed class KnownDevices(IDataProtectionProvider protection)
{
    /// <summary>Name of the cookie.</summary>
    public const string CookieName = "device";

    private const int MostPeople = 5;
    private static readonly TimeSpan Remembered = TimeSpan.FromDays(180);

    private readonly ITimeLimitedDataProtector protector = protection.CreateProtector("PressRun.KnownDevices").ToTimeLimitedDataProtector();

    /// <summary>The name by which somebody's tries on a device are counted, where they have signed in there since they have their password; else null.</summary>
    public string? Of(HttpContext http, User user)
    {
        ArgumentNullException.ThrowIfNull(http);
        ArgumentNullException.ThrowIfNull(user);
        return Read(http) is [var device, .. var people] && people.Contains(Name(user)) ? device : null;
    }

    /// <summary>Remembers that somebody has signed in.</summary>
    public void Remember(HttpContext http, User user)
    {
        ArgumentNullException.ThrowIfNull(http);
        ArgumentNullException.ThrowIfNull(user);
        var kept = Read(http) ?? [Secret.New()];
        var name = Name(user);
        var all = string.Join(' ', [kept[0], name, .. kept.Skip(1).Where(other => other != name).Take(MostPeople - 1)]);
        http.Response.Cookies.Append(CookieName, protector.Protect(all, Remembered), new CookieOptions
        {
            Path = "/", HttpOnly = true, IsEssential = true, MaxAge = Remembered, SameSite = SameSiteMode.Lax, Secure = http.Request.IsHttps,
        });
    }

    private static string Name(User user) => Convert.ToHexString(Secret.Hash($"{user.NormalizedEmail} {user.PasswordHash}"));

    private string[]? Read(HttpContext http)
    {
        try
        {
            return http.Request.Cookies[CookieName] is { } kept ? protector.Unprotect(kept).Split(' ') : null;
        }
        catch (CryptographicException)
        {
            // Too old, or not ours.
            return null;
        }
    }
}
