using System.Globalization;
using PressRun.Data.Presses;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Layout;

/// <summary>Finds the press that a visit is about: the one the browser last chose, else the first one there is for this visitor.</summary>
public sealed class CurrentPress(PressStore presses)
{
    /// <summary>Name of the cookie that remembers the choice. It opens nothing by itself: only presses that the visitor may see are looked at.</summary>
    public const string CookieName = "press";

    /// <summary>The press, or null where there is none yet.</summary>
    /// <param name="chosen">What the cookie says; null where there is none.</param>
    public async Task<PressView?> FindAsync(string? chosen)
    {
        var all = await presses.ListAsync();
        var press = all.FirstOrDefault(candidate => candidate.Id.ToString() == chosen) ?? (all.Count > 0 ? all[0] : null);
        return press is not null && await presses.RoleAsync(press.Id) is { } role ? PressView.Of(press, CultureInfo.CurrentCulture) with { Role = role } : null;
    }

    /// <summary>The press that a file is asked of: the one that the link names (<see cref="PressView.File"/>), else the browser's; null where the visitor does not belong to it.</summary>
    public async Task<PressView?> OfFileAsync(HttpContext http)
    {
        ArgumentNullException.ThrowIfNull(http);
        string? named = http.Request.Query["press"];
        var press = await FindAsync(named ?? http.Request.Cookies[CookieName]);
        return named is null || press?.Record.Id.ToString() == named ? press : null;
    }

    /// <summary>Has a browser remember a press.</summary>
    public static void Choose(HttpContext http, PressId press) =>
        http.Response.Cookies.Append(CookieName, press.ToString(), new CookieOptions { Path = "/", SameSite = SameSiteMode.Lax, MaxAge = TimeSpan.FromDays(365) });
}
