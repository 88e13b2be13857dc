namespace PressRun.Web.People;

/// <summary>Addresses that somebody is sent on to: of this app only, whoever wrote the link, in the letters that an address is sent
/// with.</summary>
internal static class OwnAddress
{
    /// <summary>The address where it is a path of this host, else the start.</summary>
    public static string Of(string? to) => to is ['/', ..] and not ['/', '/' or '\\', ..] && to.All(sign => char.IsAscii(sign) && !char.IsControl(sign)) ? to : "";
}
