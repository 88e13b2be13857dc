using System.Collections.Frozen;
using System.Globalization;
using System.Reflection;
using System.Xml.Linq;

namespace PressRun.Web.Shared.Wording;

/// <summary>One language's texts, read from the one file that holds them: XLIFF 2.0 (OASIS standard, ISO 21720), the form that translators' tools read and write.</summary>
public sealed class Translation
{
    private const string Ending = ".xlf";
    private static readonly XNamespace Xliff = "urn:oasis:names:tc:xliff:document:2.0";

    private static readonly FrozenDictionary<string, Translation> ByLanguage = Read().ToFrozenDictionary(read => read.Language.Name, StringComparer.Ordinal);

    private readonly FrozenDictionary<(string? About, string Text), string> texts;

    private Translation(XElement root)
    {
        Language = CultureInfo.GetCultureInfo(root.Attribute("trgLang")!.Value);
        texts = root.Descendants(Xliff + "unit")
            .Select(unit => (Key: (unit.Attribute("name")?.Value, unit.Descendants(Xliff + "source").Single().Value), Said: unit.Descendants(Xliff + "target").SingleOrDefault()?.Value))
            .Where(unit => !string.IsNullOrEmpty(unit.Said))
            .ToFrozenDictionary(unit => unit.Key, unit => unit.Said!);
    }

    /// <summary>The language that the texts are written in.</summary>
    public static CultureInfo Own { get; } = CultureInfo.GetCultureInfo("en");

    /// <summary>All languages that the app speaks, its own first.</summary>
    public static IReadOnlyList<CultureInfo> Languages { get; } = [Own, .. ByLanguage.Values.Select(translation => translation.Language).OrderBy(language => language.Name, StringComparer.Ordinal)];

    /// <summary>Of this translation.</summary>
    public CultureInfo Language { get; }

    /// <summary>What is told.</summary>
    public IReadOnlyDictionary<(string? About, string Text), string> All => texts;

    /// <summary>The translation for a culture or for the language of which it is a region's; null where the app does not speak it.</summary>
    public static Translation? Of(CultureInfo culture)
    {
        ArgumentNullException.ThrowIfNull(culture);
        return ByLanguage.GetValueOrDefault(culture.Name) ?? ByLanguage.GetValueOrDefault(culture.TwoLetterISOLanguageName);
    }

    /// <summary>What a text is in this language; null where it has none.</summary>
    public string? Find(string? about, string text) => texts.GetValueOrDefault((about, text));

    private static IEnumerable<Translation> Read()
    {
        var assembly = typeof(Translation).Assembly;
        foreach (var name in assembly.GetManifestResourceNames().Where(name => name.EndsWith(Ending, StringComparison.Ordinal)))
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            yield return new Translation(XElement.Load(stream, LoadOptions.PreserveWhitespace));
        }
    }
}
