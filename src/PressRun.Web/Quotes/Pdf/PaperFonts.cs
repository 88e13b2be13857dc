using System.Reflection;
using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace PressRun.Web.Quotes.Pdf;

/// <summary>The app's own two faces for documents, embedded as far as a document uses them (SIL Open Font License, texts beside the files).</summary>
public sealed class PaperFonts : IFontResolver
{
    private const string Book = "Literata";
    private const string Plain = "PublicSans";

    // Beyond these the sans has no letters, and the book face, with Greek and Cyrillic, stands in for it.
    private const char LastOfSans = '\u024F';
    private const char FirstPunctuation = '\u2000';

    private PaperFonts()
    {
    }

    /// <summary>A face for headings and sentences.</summary>
    /// <param name="size">In points.</param>
    /// <param name="strong">Half bold.</param>
    public static XFont Serif(double size, bool strong = false) => Font(Book, size, strong);

    /// <summary>A face for everything else, or the book face where the words have letters that it lacks.</summary>
    /// <param name="words">What is to be set.</param>
    /// <param name="size">In points.</param>
    /// <param name="strong">Half bold.</param>
    public static XFont Sans(string words, double size, bool strong = false) =>
        Font(words.Any(letter => letter is > LastOfSans and < FirstPunctuation) ? Book : Plain, size, strong);

    /// <summary>Lets documents find the faces; once for the process.</summary>
    public static void Provide() => GlobalFontSettings.FontResolver ??= new PaperFonts();

    /// <inheritdoc/>
    public FontResolverInfo ResolveTypeface(string familyName, bool bold, bool italic) => new($"{(familyName == Plain ? Plain : Book)}-{(bold ? "SemiBold" : "Regular")}");

    /// <inheritdoc/>
    public byte[] GetFont(string faceName)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(faceName)
            ?? throw new InvalidOperationException($"There is no face {faceName} among the app's resources.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    private static XFont Font(string family, double size, bool strong) => new(family, size, strong ? XFontStyleEx.Bold : XFontStyleEx.Regular);
}
