using System.Text.RegularExpressions;

namespace PressRun.Web.Tests.Architecture;

/// <summary>Reads out of the app's scripts what they would say to people by themselves.</summary>
internal static partial class TextsOfScripts
{
    /// <summary>All scripts that the app serves.</summary>
    public static IReadOnlyList<string> Names { get; } =
        [.. typeof(TextsOfScripts).Assembly.GetManifestResourceNames().Where(name => name.EndsWith(".js", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    /// <summary>What stands in one of them.</summary>
    public static string Text(string name)
    {
        using var script = new StreamReader(typeof(TextsOfScripts).Assembly.GetManifestResourceStream(name)!);
        return script.ReadToEnd();
    }

    /// <summary>Strings that are sentences, or two words beside each other: keys, names of elements and of methods are one word each.</summary>
    public static IEnumerable<string> Said(string script) =>
        Pieces().Matches(script).Select(piece => piece.Groups["text"]).Where(text => text.Success && Words().IsMatch(text.Value)).Select(text => text.Value);

    // Remarks and patterns are read over, so that quotation marks in them begin nothing. A pattern stands where no number can be divided.
    [GeneratedRegex("""//[^\n]*|/\*.*?\*/|(?<=[(,=:!&|?{};]\s*)/(?:[^\\/\n\[]|\\.|\[(?:[^\]\\\n]|\\.)*\])+/|'(?<text>(?:[^'\\\n]|\\.)*)'|"(?<text>(?:[^"\\\n]|\\.)*)"|`(?<text>(?:[^`\\]|\\.)*)`""", RegexOptions.Singleline)]
    private static partial Regex Pieces();

    [GeneratedRegex(@"[A-Za-z]{2,} [A-Za-z]{2,}|^[A-Z][a-z]+[.!?:]$")]
    private static partial Regex Words();
}
