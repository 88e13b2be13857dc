using System.Text.RegularExpressions;
using System.Xml.Linq;
using PressRun.Data;
using PressRun.Engine.Costing;
using PressRun.JobFile;
using PressRun.Web.Running;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Tests.Architecture;

/// <summary>What the app says can be told in another language, and each language tells all of it.</summary>
public sealed partial class TextsTests
{
    private static readonly string App = typeof(PressRunApp).Assembly.Location;

    // Features whose texts are still on their way here.
    private static readonly string[] OnTheirWay =
        ["Libraries", "Bindery", "Charts", "Tallies", "Fair", "Kept", "Copies", "Payouts", "Mail", "Editions", "Papers", "Posting", "Reprint", "RunPlans", "Quotes", "People", "Layout", "Shared"];

    // What is read by machines and hosts, in the one language of docs and logs.
    private static readonly string[] NotForViewers = ["Api", "Running"];

    public static TheoryData<string> Languages => [.. Translation.Languages.Skip(1).Select(language => language.Name)];

    [Fact]
    public void Pages_write_no_words_that_are_not_looked_up()
    {
        Assert.Empty(TextsOfCode.WrittenByPages(App).Where(found => !OnTheirWay.Contains(Feature(found.Type))).Select(found => $"{found.Type}: {found.Words}"));
    }

    [Fact]
    public void Sentences_are_looked_up_wherever_they_are_made()
    {
        Assert.Empty(TextsOfCode.Unlooked(App)
            .Where(found => !OnTheirWay.Contains(Feature(found.Type)) && !NotForViewers.Contains(Feature(found.Type)))
            .Select(found => $"{found.Type}: {found.Words}"));
    }

    [Fact]
    public void A_text_with_elements_is_well_formed()
    {
        foreach (var found in TextsOfCode.In(App).Where(found => found.Text.Contains('<', StringComparison.Ordinal)))
        {
            XElement.Parse($"<t>{found.Text}</t>");
        }
    }

    // A text that is told once, when its type is first used, stays in the language of whoever came first.
    [Fact]
    public void No_text_is_kept_from_one_viewer_to_the_next()
    {
        Assert.Empty(TextsOfCode.In(App).Where(found => found.Method == ".cctor"));
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void A_language_tells_every_text_and_no_other(string language)
    {
        var told = Translation.Of(new(language))!.All;
        var texts = TextsOfCode.In(App).Select(found => (found.About, found.Text)).Concat(Wholes.Select(text => ((string?)null, text))).ToHashSet();
        Assert.Empty(texts.Where(text => !told.ContainsKey(text)));
        Assert.Empty(told.Keys.Where(key => !texts.Contains(key)));
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void A_language_leaves_out_no_gap_and_no_element(string language)
    {
        foreach (var ((_, text), said) in Translation.Of(new(language))!.All)
        {
            Assert.Equal(Parts(text), Parts(said));
        }
    }

    private static IReadOnlyList<string> Wholes => TextsOfCode.Wholes(App, typeof(PressRunDbContext).Assembly.Location, typeof(Estimate).Assembly.Location, typeof(JobReader).Assembly.Location);

    private static string Feature(string type) => type.Split('.') is [_, _, var feature, _, ..] ? feature : "";

    private static IEnumerable<string> Parts(string text) => Part().Matches(text).Select(match => match.Value).Order(StringComparer.Ordinal);

    [GeneratedRegex(@"\{\d+\}|<[^>]+>")]
    private static partial Regex Part();
}
