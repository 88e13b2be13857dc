using System.Globalization;

namespace PressRun.Web.Shared;

/// <summary>What an address asks of a page after its question mark. Pages take it as text and read it here: what cannot be read asks for nothing, while the framework would end the
/// page at it, and anybody can write anything there.</summary>
internal static class FromAddress
{
    /// <summary>An id, or null.</summary>
    public static Guid? Id(string? text) => Guid.TryParse(text, out var id) ? id : null;

    /// <summary>A whole number that is no less than 0, or null.</summary>
    public static int? Number(string? text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    /// <summary>True for <c>true</c>.</summary>
    public static bool Yes(string? text) => bool.TryParse(text, out var yes) && yes;
}
