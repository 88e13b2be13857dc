using System.Security.Cryptography;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using PressRun.Web.Tests.Architecture;

namespace PressRun.Browser.Programs.Texts;

/// <summary>Brings the files of the translations to what the code says now: new texts come in without a translation, texts that are gone go.</summary>
internal static class TranslationFiles
{
    private static readonly XNamespace Xliff = "urn:oasis:names:tc:xliff:document:2.0";

    /// <summary>Writes each file anew, texts by feature and in the order of the code.</summary>
    public static void Renew()
    {
        string[] assemblies = [.. new[] { "Web", "Data", "Engine", "JobFile" }.Select(name => Path.Combine(AppContext.BaseDirectory, "app", $"PressRun.{name}.dll"))];
        var texts = TextsOfCode.In(assemblies[0])
            .Concat(TextsOfCode.Wholes(assemblies).Select(text => new TextOfCode(null, text, "PressRun.Web.Rules.", "")))
            .Concat(TextsOfTables.All)
            .DistinctBy(found => (found.About, found.Text)).ToList();
        foreach (var path in Directory.GetFiles(Path.Combine(Repository.Root, "src", "PressRun.Web", "Translations"), "*.xlf"))
        {
            var old = XElement.Load(path, LoadOptions.PreserveWhitespace);
            var told = old.Descendants(Xliff + "unit").ToDictionary(unit => (unit.Attribute("name")?.Value, unit.Descendants(Xliff + "source").Single().Value), unit => unit.Descendants(Xliff + "target").Single().Value);
            var renewed = new XElement(
                Xliff + "xliff", new XAttribute("version", "2.0"), old.Attribute("srcLang"), old.Attribute("trgLang"), new XAttribute(XNamespace.Xml + "space", "preserve"),
                texts.GroupBy(found => Feature(found.Type)).OrderBy(feature => feature.Key, StringComparer.Ordinal).Select(feature => new XElement(
                    Xliff + "file", new XAttribute("id", feature.Key), feature.Select(found => Unit(found, told.GetValueOrDefault((found.About, found.Text), ""))))));
            using var writer = XmlWriter.Create(path, new XmlWriterSettings { Indent = true, Encoding = new UTF8Encoding(false), NewLineChars = "\n" });
            renewed.Save(writer);
            Console.WriteLine($"{Path.GetFileName(path)}: {texts.Count} texts, {texts.Count(found => told.GetValueOrDefault((found.About, found.Text), "").Length == 0)} of them not translated");
        }
    }

    private static XElement Unit(TextOfCode found, string said) => new(
        Xliff + "unit", new XAttribute("id", "t" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{found.About}\n{found.Text}")))[..12]),
        found.About is { } about ? new XAttribute("name", about) : null,
        new XElement(Xliff + "segment", new XElement(Xliff + "source", found.Text), new XElement(Xliff + "target", said)));

    private static string Feature(string type) => type.Split('.') is [_, _, var feature, _, ..] ? feature : "App";
}
