using System.Text.RegularExpressions;

namespace PressRun.Web.Tests.Architecture;

/// <summary>Rules of the pages that are read in their text: what somebody called a thing may be written from right to left, and is held apart from the words around it (HTML, the
/// <c>bdi</c> element; UAX #9); files are asked of the page's own press.</summary>
public sealed partial class PageTextTests
{
    private const string Pages = "pages.";

    // What the app itself calls a part of its page.
    private static readonly HashSet<string> Own = ["Section.Title"];

    [Fact]
    public void Every_name_that_stands_in_a_page_is_held_apart()
    {
        var lines = Lines();
        var bare = lines.SelectMany(line => Bare().Matches(line.Text).Select(name => name.Groups["name"].Value).Where(name => !Own.Contains(name)).Select(name => $"{line.Page}:{line.Number}: @{name}")).ToList();

        Assert.True(bare.Count == 0, $"Write <bdi>@name</bdi>:{Environment.NewLine}{string.Join(Environment.NewLine, bare)}");
    }

    // Which press the browser has chosen is another question once it has gone over to a second one in another tab.
    [Fact]
    public void Every_file_that_a_page_offers_is_asked_of_the_press_of_the_page()
    {
        var links = Lines().SelectMany(line => Downloads().Matches(line.Text).Select(link => (line.Page, Link: link.Value))).ToList();

        Assert.True(links.Count > 8, "The links are found.");
        Assert.All(links, link => Assert.True(link.Link.Contains(".File(", StringComparison.Ordinal) || link.Link.Contains("@FileAddress", StringComparison.Ordinal), $"{link.Page}: {link.Link}"));
    }

    // Its event hands what is thrown to the browser, where nobody reads it.
    [Fact]
    public void Files_are_chosen_in_the_one_field_that_says_what_goes_wrong() =>
        Assert.Contains("FileField", Assert.Single(Lines(), line => line.Text.Contains("<InputFile", StringComparison.Ordinal)).Page, StringComparison.Ordinal);

    private static List<(string Page, int Number, string Text)> Lines()
    {
        var assembly = typeof(PageTextTests).Assembly;
        var lines = new List<(string, int, string)>();
        foreach (var page in assembly.GetManifestResourceNames().Where(name => name.StartsWith(Pages, StringComparison.Ordinal)))
        {
            using var reader = new StreamReader(assembly.GetManifestResourceStream(page)!);
            lines.AddRange(reader.ReadToEnd().Split('\n').Select((text, at) => (page[Pages.Length..], at + 1, text)));
        }

        Assert.True(lines.Count > 3000, "The pages are found.");
        return lines;
    }

    [GeneratedRegex("""<a [^>]*\bdownload>""")]
    private static partial Regex Downloads();

    // In the text of an element; a browser tells what an option or the title of a page says by itself, and holds it in its own way.
    [GeneratedRegex("""(?<!<(?:bdi|option)\b[^<]*)(?<=>[^<"]*)@(?<name>[A-Za-z]+(?:\.[A-Za-z]+)*\.(?:Title|Name|By|About))\b(?![.(=!?])""")]
    private static partial Regex Bare();
}
