namespace PressRun.Web.People;

/// <summary>Names a device by what its browser says of itself, well enough to know one's own again.</summary>
internal static class Devices
{
    // In the order in which they are looked for: later ones also call themselves by earlier names.
    private static readonly (string Mark, string Name)[] Systems =
        [("Android", "Android"), ("iPhone", "iPhone"), ("iPad", "iPad"), ("Windows", "Windows"), ("Mac OS X", "Mac"), ("CrOS", "Chromebook"), ("Linux", "Linux")];

    private static readonly (string Mark, string Name)[] Browsers =
        [("Edg/", "Edge"), ("OPR/", "Opera"), ("Firefox/", "Firefox"), ("Chrome/", "Chrome"), ("Safari/", "Safari")];

    /// <summary>Such as <c>Firefox on Linux</c>.</summary>
    public static string Name(string userAgent)
    {
        var browser = Browsers.FirstOrDefault(known => userAgent.Contains(known.Mark, StringComparison.Ordinal)).Name ?? Say($"A browser");
        var system = Systems.FirstOrDefault(known => userAgent.Contains(known.Mark, StringComparison.Ordinal)).Name;
        return system is null ? browser : Say($"{browser} on {system}");
    }
}
