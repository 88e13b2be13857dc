using System.Text.RegularExpressions;

namespace PressRun.Browser.Tests.Journeys;

/// <summary>Sentences that several pages say. A sign may stand before them.</summary>
internal static class Said
{
    /// <summary>Beside a field whose text was typed earlier and not saved.</summary>
    public static Regex TypedEarlier { get; } = new("Typed here earlier and not saved yet\\. Enter saves it, Escape forgets it\\.$");
}
