using System.Text.RegularExpressions;
using PressRun.Web.Fair;
using PressRun.Web.Kept;
using PressRun.Web.People;
using PressRun.Web.Tallies;

namespace PressRun.Web.Tests.Kept;

/// <summary>Scripts say nothing of their own: a page tells its script each word that it asks for, and none besides.</summary>
public sealed partial class KeptWordsTests
{
    private static readonly string[] OfQueue = ["queue", "written-list", "kept-page"];

    public static TheoryData<string[], string[]> Scripts => new()
    {
        { [.. OfQueue, "fair"], [.. FairWords.OfScript().Keys] },
        { [.. OfQueue, "tally"], [.. TallyWords.OfCounting().Keys] },
        { ["passkeys"], [.. PasskeyWords.OfScript().Keys] },
        { ["tally-begin"], [.. TallyWords.OfBeginning().Keys.Except(KeptWords.OfMessages().Keys)] },
    };

    [Theory]
    [MemberData(nameof(Scripts))]
    public void A_page_tells_its_script_what_it_asks_for(string[] scripts, string[] told)
    {
        var text = string.Concat(scripts.Select(Script));
        var asked = Asked().Matches(text).SelectMany(call => Name().Matches(call.Groups[1].Value)).Select(name => name.Groups[1].Value);

        Assert.Empty(asked.Except(told));
        Assert.DoesNotContain(told, name => !text.Contains($"'{name}'", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_two_texts_the_first_is_for_one() =>
        Assert.Equal(["{number} entry is under way to the ledger.", "{number} entries are under way to the ledger."], (string[])FairWords.OfScript()["underWay"]);

    private static string Script(string name)
    {
        using var script = new StreamReader(typeof(KeptWordsTests).Assembly.GetManifestResourceStream($"{name}.js")!);
        return script.ReadToEnd();
    }

    // Names stand in the first argument; a few calls choose among several.
    [GeneratedRegex(@"\btell\(([^,;]*)")]
    private static partial Regex Asked();

    [GeneratedRegex("'(\\w+)'")]
    private static partial Regex Name();
}
