using System.Globalization;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Web.Shared.Wording;
using PressRun.Web.Tests.Support;
using static PressRun.Web.Shared.Wording.Texts;

namespace PressRun.Web.Tests.Shared;

/// <summary>Sentences that other projects put together, told in another language.</summary>
public sealed class JoinedTextsTests : IDisposable
{
    private readonly CultureInfo before = CultureInfo.CurrentUICulture;

    public JoinedTextsTests() => CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("de");

    public void Dispose() => CultureInfo.CurrentUICulture = before;

    [Fact]
    public void What_the_engine_refuses_is_told_with_its_figures()
    {
        var job = ARun.Job with { Edition = ARun.Job.Edition with { Binding = Binding.Saddle, Parts = [.. ARun.Job.Edition.Parts.Select(part => part with { Pages = 33 })] } };
        var problem = PreparedJob.Prepare(job).Problems.First(problem => problem.Rule.Contains("32 or 36", StringComparison.Ordinal));

        var said = SayWhole(problem.Rule);

        Assert.Contains("32 oder 36", said, StringComparison.Ordinal);
        Assert.DoesNotContain("pages", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Reasons_within_a_sentence_are_told_too()
    {
        var said = SayWhole("No sheet of the shop takes this part: on 'a3' there is no price for colour print and paper 'silk'; for 'b4' the piece is too large by 2 mm across and 3.5 mm along.");

        Assert.DoesNotMatch("price|print|paper|large|across|along|part", said);
        Assert.Matches("'a3'.*'silk'.*'b4'.*2 mm.*3.5 mm", said);
    }

    [Fact]
    public void What_people_typed_stays_as_it_is()
    {
        var said = SayWhole("There is no paper of this name. Did you mean Shelf {0} (70?)?");

        Assert.Contains("Shelf {0} (70?)", said, StringComparison.Ordinal);
        Assert.DoesNotContain("mean", said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sentence_that_is_none_of_them_stays_as_it_is() => Assert.Equal("No sentence of ours at all.", SayWhole("No sentence of ours at all."));

    [Fact]
    public void In_English_nothing_is_looked_for()
    {
        CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("en");
        Assert.Equal("The file is larger than 5 bytes.", SayWhole("The file is larger than 5 bytes."));
    }

    [Fact]
    public void Every_sentence_is_known_again_as_itself() => Assert.All(JoinedTexts.Formats, format =>
    {
        var sentence = string.Format(CultureInfo.InvariantCulture, format, 12, 34, 56, 78, 90);
        Assert.Equal(string.Format(CultureInfo.InvariantCulture, Translation.Of(CultureInfo.CurrentUICulture)!.Find(null, format) ?? "not told", 12, 34, 56, 78, 90), SayWhole(sentence));
    });
}
