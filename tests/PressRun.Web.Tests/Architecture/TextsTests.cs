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

    // What is read by machines and hosts, in the one language of docs and logs.
    private static readonly string[] NotForViewers = ["Api", "Running"];

    // What the host reads in the log or at a refused start, and names of limits.
    private static readonly string[] ForHosts = ["HostsCode", "HostsRemovals", "OwnerCode", "KeyHandler", "OtherServer", "OtherServerAway", "OtherServerSetup", "SignIns", "PasskeyRounds", "MailSettings", "MailFaults", "Refusals"];

    // What a program is answered that sends a message of the wrong shape; no page shows it.
    private static readonly string[] ForPrograms = ["KeptPages", "TallyEndpoints", "FairEndpoint"];

    // What is called so in every language: a standard size, a system in a browser's own line, typefaces, values of headers.
    private static readonly string[] Names = ["Half letter", "Quarter letter", "Mac OS X", "Public Sans", "Helvetica Neue", "noindex, nofollow, noarchive", "private, no-store"];

    // What a press keeps, in the language of its books.
    private static readonly string[] Kept = ["The shop of a job file"];

    // What the host reads in the log, at a refused start, or of an archive that is brought in by a setting.
    private static readonly string[] ForHostsOfData = ["Running", "PrivatePostgres", "Mail", "Archive"];

    private const string Mending =
        "New texts come into the files, and old ones go, by: dotnet build tests/PressRun.Browser.Programs -v quiet -p:RunAnalyzers=false && dotnet run --project tests/PressRun.Browser.Programs --no-build -- texts. "
        + "Then write the empty targets.";

    [Fact]
    public void Pages_write_no_words_that_are_not_looked_up() =>
        Nothing(TextsOfCode.WrittenByPages(App));

    [Fact]
    public void Sentences_are_looked_up_wherever_they_are_made() => Nothing(TextsOfCode.Unlooked(App).Where(found =>
        found.Type.StartsWith("PressRun.Web.", StringComparison.Ordinal)
        && !NotForViewers.Contains(Feature(found.Type)) && !ForHosts.Concat(ForPrograms).Contains(found.Type.Split('.')[^1]) && !Names.Contains(found.Words)));

    [Fact]
    public void What_stands_in_the_way_is_looked_up_too() =>
        Assert.DoesNotContain(TextsOfCode.RulesUnlooked(App), type => !NotForViewers.Contains(Feature(type)));

    // A script says nothing of its own: its page tells it the words in the viewer's language (docs/translations.md).
    [Fact]
    public void Scripts_say_no_words_of_their_own()
    {
        Assert.True(TextsOfScripts.Names.Count > 15, "The scripts are found.");
        Nothing(TextsOfScripts.Names.SelectMany(name => TextsOfScripts.Said(TextsOfScripts.Text(name)).Select(words => (name, words))));
    }

    [Fact]
    public void Words_of_a_script_are_found_and_no_others() => Assert.Equal(
        ["Copied.", "No line to here", "say it ${times}", "say it twice"],
        TextsOfScripts.Said(
            """
            // A remark says 'what it likes', and "so does this one".
            /* 'Over two lines
               as well' */
            says.textContent = 'Copied.'; // 'and here'
            if (/"|don't \/ care/.test(text)) throw new Error("No line to here");
            const one = tell('noLine'), keys = { 'Enter': 'input, select', label: `say it ${times}` };
            list.querySelector('.waiting [data-row] > input'); note(`say it twice`);
            """));

    // What reads the built app finds what it looks for: in a page that does all of it wrongly.
    [Fact]
    public void Words_that_are_not_looked_up_are_found()
    {
        var tests = typeof(LooseWords).Assembly.Location;
        var written = TextsOfCode.WrittenByPages(tests).Where(found => found.Type == typeof(LooseWords).FullName).Select(found => found.Words).ToList();
        var unlooked = TextsOfCode.Unlooked(tests).Where(found => found.Type == typeof(LooseWords).FullName).Select(found => found.Words).ToList();
        var looked = TextsOfCode.In(tests).Where(found => found.Type == typeof(LooseWords).FullName).ToList();

        Assert.Equal(["Loose content", "<p>Loose markup</p>", "aria-label=Loose label"], written);
        Assert.Equal(["A sentence that is only made"], unlooked);
        Assert.Equal([("a state", "told {0} of {1}", "Told"), (null, "kept too long", ".cctor")], looked.Select(found => (found.About, found.Text, found.Method)).OrderByDescending(found => found.Text));
    }

    // What other projects put together is known again by what stands between its gaps; warnings have their words by their codes.
    [Fact]
    public void Sentences_that_other_projects_put_together_are_known() =>
        Nothing(Others.SelectMany(TextsOfCode.Beginnings).Where(found => !Kept.Contains(found.Words) && !ForHostsOfData.Contains(Feature(found.Type))
            && found.Type != "PressRun.Engine.Costing.Warnings" && !Names.Contains(found.Words) && !TextsOfTables.All.Any(word => word.Text == found.Words)
            && !JoinedTexts.Formats.Any(format => format.StartsWith(found.Words, StringComparison.Ordinal))));

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
        Assert.DoesNotContain(TextsOfCode.In(App), found => found.Method == ".cctor");
    }

    // A rule of the look that goes by a word holds in one language only.
    [Fact]
    public void The_look_goes_by_no_words()
    {
        var here = typeof(TextsTests).Assembly;
        var sheets = here.GetManifestResourceNames().Where(name => name.EndsWith(".css", StringComparison.Ordinal)).ToList();
        Assert.Contains("pages.css", sheets);
        Assert.Empty(sheets.SelectMany(sheet => WordyRule().Matches(new StreamReader(here.GetManifestResourceStream(sheet)!).ReadToEnd()).Select(found => $"{sheet}: {found.Value}")));
    }

    // Without this the two tests below would hold of no language at all.
    [Fact]
    public void The_app_speaks_the_languages_whose_files_it_has() => Assert.Equal(["en", "de"], Translation.Languages.Select(language => language.Name));

    [Fact]
    public void A_language_tells_every_text_and_no_other()
    {
        var texts = TextsOfCode.In(App).Select(found => (found.About, found.Text)).Concat(Wholes.Select(text => ((string?)null, text))).Concat(TextsOfTables.All.Select(found => (found.About, found.Text))).ToHashSet();
        Mended(Translations.SelectMany(translation => texts.Where(text => !translation.All.ContainsKey(text)).Select(text => $"{File(translation)} does not tell: {About(text)}")
            .Concat(translation.All.Keys.Where(key => !texts.Contains(key)).Select(key => $"{File(translation)} tells what nothing says: {About(key)}"))));
    }

    [Fact]
    public void A_language_leaves_out_no_gap_and_no_element()
    {
        Mended(Translations.SelectMany(translation => translation.All.Where(told => !Parts(told.Key.Text).SequenceEqual(Parts(told.Value)))
            .Select(told => $"{File(translation)} has {Listed(told.Value)} for {Listed(told.Key.Text)}: {About(told.Key)} > {told.Value}")));
    }

    private static void Nothing(IEnumerable<(string Type, string Words)> found)
    {
        var lines = found.Select(line => $"{line.Type}: {line.Words}").ToList();
        Assert.True(lines.Count == 0, string.Join(Environment.NewLine, lines));
    }

    // Whole texts, and all of them: who has written several new ones wants to see them at once.
    private static void Mended(IEnumerable<string> found)
    {
        var lines = found.Order(StringComparer.Ordinal).ToList();
        Assert.True(lines.Count == 0, string.Join(Environment.NewLine, [.. lines, Mending]));
    }

    // The word of the trade is that of the newspapers there (docs/words.md).
    [Fact]
    public void In_German_a_press_is_no_newspaper() =>
        Assert.DoesNotContain(Translation.Of(System.Globalization.CultureInfo.GetCultureInfo("de"))!.All.Values, told => Regex.IsMatch(told, @"\b(Presse|Pressen|Beispielpresse)\b"));

    private static string File(Translation translation) => $"texts.{translation.Language.Name}.xlf";

    private static string About((string? About, string Text) text) => text.About is { } about ? $"{text.Text} ({about})" : text.Text;

    private static string Listed(string text) => $"[{string.Join(", ", Parts(text))}]";

    private static IEnumerable<Translation> Translations => Translation.Languages.Skip(1).Select(language => Translation.Of(language)!);

    private static IReadOnlyList<string> Wholes => TextsOfCode.Wholes([App, .. Others]);

    private static string[] Others => [typeof(PressRunDbContext).Assembly.Location, typeof(Estimate).Assembly.Location, typeof(JobReader).Assembly.Location];

    private static string Feature(string type) => type.Split('.') is [_, _, var feature, _, ..] ? feature : "";

    private static IEnumerable<string> Parts(string text) => Part().Matches(text).Select(match => match.Value).Order(StringComparer.Ordinal);

    [GeneratedRegex(@"\[(?:data-label|aria-label|title|placeholder|alt)[~|^$*]?='[^']+'")]
    private static partial Regex WordyRule();

    [GeneratedRegex(@"\{\d+\}|<[^>]+>")]
    private static partial Regex Part();
}
