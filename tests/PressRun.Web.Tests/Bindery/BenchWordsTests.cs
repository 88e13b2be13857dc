using PressRun.Data.Titles;
using PressRun.Engine.Bench;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Web.Bindery;
using PressRun.Web.Shared.Wording;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Bindery;

public sealed class BenchWordsTests
{
    private static readonly PressFormat Format = ABench.Format;

    [Fact]
    public void A_folded_book_is_told_from_its_first_sheet_to_its_fold()
    {
        var view = ABench.View();
        Assert.Equal("100 good copies", BenchSentence.Copies(view, Format));
        Assert.Contains(Lines(WorkKind.Collate), line => line.Contains("to pile 8. Pages 16 and 17 then look up", StringComparison.Ordinal));
        Assert.Contains(Lines(WorkKind.Staple), line => line.Contains("stop at 140 mm", StringComparison.Ordinal));
        Assert.Contains(Lines(WorkKind.Staple), line => line.Contains("Staple at 50 mm and 150 mm from the head", StringComparison.Ordinal));
        Assert.Contains(Lines(WorkKind.Fold), line => line.Contains("page 1 lies in front and page 32 behind", StringComparison.Ordinal));

        IReadOnlyList<string> Lines(WorkKind kind) => BenchWords.Lines(view, view.Sheet!.Steps.First(step => step.Kind == kind), Format);
    }

    [Fact]
    public void A_set_that_is_folded_before_it_is_stapled_is_opened_again()
    {
        var view = ABench.View(bench => bench with { Steps = [Step("fold"), Step("staple")] });
        Assert.StartsWith("Open the folded set", BenchWords.Lines(view, view.Sheet!.Steps.Single(step => step.Kind == WorkKind.Staple), Format)[1], StringComparison.Ordinal);
        var other = ABench.View(bench => bench with { Steps = [Step("staple"), Step("fold")] });
        Assert.StartsWith("Turn the set over", BenchWords.Lines(other, other.Sheet!.Steps.Single(step => step.Kind == WorkKind.Staple), Format)[1], StringComparison.Ordinal);
    }

    [Fact]
    public void A_spine_is_cut_by_itself_before_binding_and_the_other_edges_after()
    {
        var two = Length.FromMillimetres(2m);
        var view = ABench.View(edition: book => book with { Binding = Binding.Side, Trim = new Trim(two, two, two, two) });
        Assert.Equal([(1, Edge.Spine)], BenchWords.CutsOf(view, WorkKind.TrimSpine).Select(cut => (cut.Number, cut.Cut.Edge)));
        Assert.Equal([(2, Edge.Head), (3, Edge.ForeEdge), (4, Edge.Foot)], BenchWords.CutsOf(view, WorkKind.Trim).Select(cut => (cut.Number, cut.Cut.Edge)));
        Assert.Empty(BenchWords.CutsOf(view, WorkKind.Fold));
    }

    [Theory]
    [InlineData(1, "1 minute")]
    [InlineData(40, "40 minutes")]
    [InlineData(61, "1 hour")]
    [InlineData(150, "2.5 hours")]
    public void A_time_is_written_as_one_says_it(int minutes, string words) => Assert.Equal(words, BenchSentence.Time(minutes, Format));

    [Theory]
    [InlineData(WorkKind.Trim, null, "Trim")]
    [InlineData(WorkKind.Trim, "trim", "Trim")]
    [InlineData(WorkKind.Staple, "stitch", "Staple (stitch)")]
    [InlineData(WorkKind.Other, "wrap in paper", "Wrap in paper")]
    [InlineData(WorkKind.CutApart, null, "Cut apart")]
    public void A_step_is_called_by_the_trades_word_with_the_presss_own_beside_it(WorkKind kind, string? name, string title) =>
        Assert.Equal(title, BenchWords.TitleOf(new WorkStep(1, kind, name, 10, 0m, null)));

    [Fact]
    public void A_table_without_a_cutter_is_not_warned_of_blades()
    {
        var view = ABench.View(shop: list => list with { Delivers = PressRun.Engine.Costing.Delivered.CutPieces });
        Assert.DoesNotContain(BenchWords.Dangers(view), line => line.StartsWith("Cutter", StringComparison.Ordinal));
        Assert.Contains(BenchWords.Dangers(view), line => line.StartsWith("Stapler: wear eye protection", StringComparison.Ordinal));
        Assert.Contains(BenchWords.Dangers(ABench.View()), line => line.StartsWith("Cutter", StringComparison.Ordinal));
    }

    private static BenchStep Step(string name) => new(name, 0m, 1m, 0m, 0m, 1, 0m);
}
