using System.Globalization;
using Bunit;
using PressRun.Data.Access;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;
using PressRun.Web.Shared.Wording;
using PressRun.Web.Tallies;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Tallies;

/// <summary>What the page says before its script runs.</summary>
public class TallyPageTests
{
    [Fact]
    public async Task What_lies_on_the_table_and_what_is_wanted_stand_there_first()
    {
        await using var context = new BunitContext();
        var work = TallyService.WorkOf(Records.Source(), BenchLimits.Usual)!;
        var page = Beginning(context, View(work, null), PressRole.Editor);

        Assert.Equal([Written.Metric.Count(work.Copies), Written.Metric.Count(work.Wanted)], page.FindAll("input").Select(field => field.GetAttribute("value")));
        Assert.Equal(work.Steps.Count, page.FindAll("ol.tally-plan li").Count);
    }

    [Fact]
    public async Task A_reader_is_told_who_begins_and_offered_nothing_that_would_be_refused()
    {
        await using var context = new BunitContext();
        var page = Beginning(context, View(TallyService.WorkOf(Records.Source(), BenchLimits.Usual), null), PressRole.Reader);

        Assert.Empty(page.FindAll("form"));
        Assert.Contains("its editors begin a tally", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_work_or_without_a_plan_it_says_so()
    {
        await using var context = new BunitContext();
        var shop = new PlannedWork(Guid.NewGuid(), "Bound there", 100, 100, []);

        Assert.Contains("nothing to tally", Beginning(context, View(shop, null), PressRole.Owner).Markup, StringComparison.Ordinal);
        Assert.Contains("No plan of this printing can be worked out", Beginning(context, View(null, null), PressRole.Owner).Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_reader_looks_on_and_taps_nothing()
    {
        await using var context = new BunitContext();
        var reader = Counting(context, PressRole.Reader);
        var editor = Counting(context, PressRole.Editor);

        Assert.Empty(reader.FindAll("[data-tally-count], [data-tally-start], [data-tally-undo], [data-tally-end]"));
        Assert.Equal(4, editor.FindAll("[data-tally-count]").Count);
        Assert.Equal(2, reader.FindAll("[data-tally-go]").Count);
        Assert.Contains("You may look on", reader.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Only_work_with_blades_or_staples_is_warned_of()
    {
        await using var context = new BunitContext();
        var folded = ATally.Of();
        var stapled = folded with { Tally = folded.Tally with { Steps = [new TallyStep("stitch", WorkKind.Staple, 0m, null)] } };

        Assert.Empty(Counting(context, PressRole.Editor, folded).FindAll(".caution"));
        Assert.Contains("what the makers of your tools and your local rules say", Counting(context, PressRole.Editor, stapled).Find(".caution").TextContent, StringComparison.Ordinal);
    }

    private static IRenderedComponent<TallyBeginning> Beginning(BunitContext context, TallyView view, PressRole role) => context.Render<TallyBeginning>(parameters => parameters
        .Add(page => page.View, view).Add(page => page.Press, Press(role)).Add(page => page.Path, "titles/marsh-letters/1/tally").Add(page => page.Address, "titles/marsh-letters/1"));

    private static IRenderedComponent<TallyCounting> Counting(BunitContext context, PressRole role, Data.Tallies.TallyWhole? tally = null) => context.Render<TallyCounting>(parameters => parameters
        .Add(page => page.View, View(null, tally ?? ATally.Of(ATally.Done(0, 5)))).Add(page => page.Press, Press(role))
        .Add(page => page.Path, "titles/marsh-letters/1/tally").Add(page => page.Address, "titles/marsh-letters/1"));

    private static TallyView View(PlannedWork? work, Data.Tallies.TallyWhole? tally) => new(
        new TitleRecord(Guid.NewGuid(), "marsh-letters", "Marsh Letters", "", "", "", false, 1), Records.Edition(), work, tally, tally is null ? null : TallyNow.Of(tally, 0));

    private static PressView Press(PressRole role) => PressView.Of(Records.Source().Press, CultureInfo.GetCultureInfo("en-IE")) with { Role = role };
}
