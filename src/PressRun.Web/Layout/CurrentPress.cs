using System.Globalization;
using PressRun.Data.Presses;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Layout;

/// <summary>Finds the press that a visit is about: the one the browser last chose, else the first one there is.</summary>
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
        return press is null ? null : PressView.Of(press, CultureInfo.CurrentCulture);
    }
}
