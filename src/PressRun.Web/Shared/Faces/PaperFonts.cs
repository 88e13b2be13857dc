using System.Reflection;
using System.Text;
using PdfSharp.Fonts;

namespace PressRun.Web.Shared.Faces;

/// <summary>The app's own faces for documents, embedded as far as a document uses them (licences beside the files): a book face with Latin, Greek and Cyrillic, a
/// sans with Latin, and a third one for the scripts of East Asia.</summary>
public sealed class PaperFonts : IFontResolver
{
    /// <summary>The book face.</summary>
    internal const string Book = "Literata";

    private const string Plain = "PublicSans";
    private const string East = "DroidSansFallback";

    private static readonly Dictionary<string, Lazy<FaceLetters>> Letters = new[] { Book, Plain, East }
        .ToDictionary(family => family, family => new Lazy<FaceLetters>(() => FaceLetters.Read(Resource(FileOf(family, bold: false)))), StringComparer.Ordinal);

    private PaperFonts()
    {
    }

    /// <summary>A face for headings and sentences.</summary>
    /// <param name="size">In points.</param>
    /// <param name="strong">Half bold.</param>
    public static Face Serif(double size, bool strong = false) => new(Book, size, strong);

    /// <summary>A face for everything else, or the book face where the words have letters that it has and the sans lacks: words are of one face.</summary>
    /// <param name="words">What is to be set.</param>
    /// <param name="size">In points.</param>
    /// <param name="strong">Half bold.</param>
    public static Face Sans(string words, double size, bool strong = false) =>
        new(words.EnumerateRunes().Any(letter => !Has(Plain, letter) && Has(Book, letter)) ? Book : Plain, size, strong);

    /// <summary>Lets documents find the faces; once for the process.</summary>
    public static void Provide() => GlobalFontSettings.FontResolver ??= new PaperFonts();

    /// <inheritdoc/>
    public FontResolverInfo ResolveTypeface(string familyName, bool bold, bool italic) =>
        new(FileOf(familyName, bold), mustSimulateBold: bold && familyName == East, mustSimulateItalic: false);

    /// <inheritdoc/>
    public byte[] GetFont(string faceName) => Resource(faceName);

    /// <summary>The family that sets a letter, the wanted one where it can; null where none has it.</summary>
    internal static string? FamilyOf(Rune letter, string wanted) => Has(wanted, letter) ? wanted : Has(Book, letter) ? Book : Has(East, letter) ? East : null;

    private static bool Has(string family, Rune letter) => Letters[family].Value.Has(letter.Value);

    private static string FileOf(string family, bool bold) => family == East ? East : $"{family}-{(bold ? "SemiBold" : "Regular")}";

    private static byte[] Resource(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"There is no face {name} among the app's resources.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
