using System.Text.RegularExpressions;

namespace PressRun.Web.Tests.Architecture;

/// <summary>What somebody called a thing may be written from right to left, and is held apart from the words around it (HTML, the <c>bdi</c> element; UAX #9).</summary>
public sealed partial class NamesApartTests
{
    private const string Pages = "pages.";

    // What the app itself calls a part of its page.
    private static readonly HashSet<string> Own = ["Section.Title"];

    [Fact]
    public void Every_name_that_stands_in_a_page_is_held_apart()
    {
        var assembly = typeof(NamesApartTests).Assembly;
        var pages = assembly.GetManifestResourceNames().Where(name => name.StartsWith(Pages, StringComparison.Ordinal)).ToList();
        Assert.True(pages.Count > 60, "The pages are found.");
        var bare = new List<string>();
        foreach (var page in pages)
        {
            using var reader = new StreamReader(assembly.GetManifestResourceStream(page)!);
            for (var number = 1; reader.ReadLine() is { } line; number++)
            {
                bare.AddRange(Bare().Matches(line).Select(name => name.Groups["name"].Value).Where(name => !Own.Contains(name)).Select(name => $"{page[Pages.Length..]}:{number}: @{name}"));
            }
        }

        Assert.True(bare.Count == 0, $"Write <bdi>@name</bdi>:{Environment.NewLine}{string.Join(Environment.NewLine, bare)}");
    }

    // In the text of an element; a browser tells what an option or the title of a page says by itself, and holds it in its own way.
    [GeneratedRegex("""(?<!<(?:bdi|option)\b[^<]*)(?<=>[^<"]*)@(?<name>[A-Za-z]+(?:\.[A-Za-z]+)*\.(?:Title|Name|By|About))\b(?![.(=!?])""")]
    private static partial Regex Bare();
}
