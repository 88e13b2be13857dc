using System.Globalization;
using Microsoft.AspNetCore.Components;

namespace PressRun.Web.Shared.Wording;

/// <summary>
/// Every text of the app goes through here, so that it can be told in another language. The English text stands where it is used, as an interpolated string; it is
/// looked up whole, with its gaps numbered (<c>{0} of {1}</c>), so that another language may put them in another order. Without a translation it stays as it is.
/// </summary>
public static class Texts
{
    /// <summary>The language that texts are told in now: the first that the viewer reads and the app speaks.</summary>
    public static CultureInfo Language => Translation.Of(CultureInfo.CurrentUICulture)?.Language ?? Translation.Own;

    /// <summary>A text in plain letters.</summary>
    public static string Say(FormattableString text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Filled(Told(null, text), text.GetArguments());
    }

    /// <summary>A text whose words turn with a number: of one, or of any other.</summary>
    public static string Say(decimal number, FormattableString one, FormattableString other) => Say(number == 1m ? one : other);

    /// <summary>A text whose words mean several things, each of which another language may call otherwise.</summary>
    /// <param name="about">What it is about, for translators: <c>state of a quote</c>.</param>
    /// <param name="text">The text.</param>
    public static string Say(string about, FormattableString text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Filled(Told(about, text), text.GetArguments());
    }

    /// <summary>A text that was put together elsewhere, such as the rule of a refused value: as it is where no translation knows all of it.</summary>
    public static string SayWhole(string text) => Translation.Of(CultureInfo.CurrentUICulture) is { } translation ? translation.Find(null, text) ?? JoinedTexts.Find(text) ?? text : text;

    /// <summary>What a text without gaps may be called, whoever wrote it down: in each language that the app speaks.</summary>
    public static IEnumerable<string> InEveryLanguage(FormattableString text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Translation.Languages.Select(language => Translation.Of(language)?.Find(null, text.Format) ?? text.Format);
    }

    /// <summary>A text with elements in it (<c>&lt;strong&gt;{cost}&lt;/strong&gt; each</c>), well formed as XML. What fills its gaps is never read as markup: words are
    /// shown as they are, a <see cref="Shown"/> with its unit set apart, a fragment as it renders.</summary>
    public static RenderFragment Put(FormattableString text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return MarkedText.Of(Told(null, text), text.GetArguments());
    }

    /// <summary>A text with elements in it, whose words turn with a number.</summary>
    public static RenderFragment Put(decimal number, FormattableString one, FormattableString other) => Put(number == 1m ? one : other);

    /// <summary>Words with their gaps filled, as the viewer's culture writes what is not a text yet.</summary>
    internal static string Filled(string words, object?[] gaps) => gaps.Length == 0 ? words : string.Format(CultureInfo.CurrentCulture, words, gaps);

    private static string Told(string? about, FormattableString text) => Translation.Of(CultureInfo.CurrentUICulture)?.Find(about, text.Format) ?? text.Format;
}
