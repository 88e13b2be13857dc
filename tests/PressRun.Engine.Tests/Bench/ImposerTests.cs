using PressRun.Engine.Bench;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Bench;

public sealed class ImposerTests
{
    [Fact]
    public void Page_3_of_40_lies_beside_page_38_on_one_of_ten_sheets()
    {
        // PAG-01, PAG-02. Java Glossary, entry "imposition", mindprod.com.
        var pieces = Impose(Edition(Binding.Saddle, Part(40))).Pieces;
        Assert.Equal(10, pieces.Count);
        var face = Assert.Single(pieces.SelectMany(piece => new[] { piece.Outer, piece.Inner }), face => face.Contains(3));
        Assert.Equal([38, 3], face);
    }

    [Fact]
    public void Eight_pages_pair_as_in_the_printers_tutorial()
    {
        // PAG-03. magazine-printer.com, tutorial on imposition, part 3: every pair sums to nine.
        var pieces = Impose(Edition(Binding.Saddle, Part(8))).Pieces;
        Assert.Equal([8, 1], pieces[0].Outer);
        Assert.Equal([2, 7], pieces[0].Inner);
        Assert.Equal([6, 3], pieces[1].Outer);
        Assert.Equal([4, 5], pieces[1].Inner);
    }

    [Theory]
    [InlineData(8, 2)] // PAG-05. ntmcmillan.com, booklet page counts.
    [InlineData(16, 4)] // PAG-05. The same page.
    public void A_folded_booklet_takes_a_sheet_for_every_four_pages(int pages, int sheets) =>
        Assert.Equal(sheets, Impose(Edition(Binding.Saddle, Part(pages))).Pieces.Count);

    [Theory]
    [InlineData(17, 8.5)] // Common practice.
    [InlineData(11, 5.5)] // Common practice.
    [InlineData(8.5, 4.25)] // Common practice.
    public void The_staplers_stop_is_at_half_of_the_sheet_that_is_folded(double sheet, double stop) =>
        Assert.Equal((decimal)stop, Impose(Edition(Binding.Saddle, Part(4)) with { Page = InSize((decimal)sheet / 2m, 8.5m) }).StaplerStop!.Value.Inches);

    [Fact]
    public void A_block_trimmed_half_an_inch_on_three_sides_is_cut_at_8_then_5_then_7_and_a_half()
    {
        // Common practice: a block of 5.5 × 8.5 in; head, then fore-edge, then foot.
        var half = In(0.5m);
        var cuts = Impose(Edition(Binding.Saddle, Part(4)) with { Page = InSize(5, 7.5m), Trim = new Trim(half, half, half, Length.Zero) }).Cuts;
        Assert.Equal([new Cut(Edge.Head, In(8)), new Cut(Edge.ForeEdge, In(5)), new Cut(Edge.Foot, In(7.5m))], cuts);
    }

    [Fact]
    public void A_spine_trim_is_cut_first_while_the_leaves_are_loose()
    {
        var edition = Edition(Binding.Side, Part(4)) with { Trim = new Trim(Mm(1), Mm(2), Mm(3), Mm(4)) };
        Assert.Equal(
            [new Cut(Edge.Spine, Mm(103)), new Cut(Edge.Head, Mm(202)), new Cut(Edge.ForeEdge, Mm(100)), new Cut(Edge.Foot, Mm(200))],
            Impose(edition).Cuts);
    }

    [Fact]
    public void Edges_that_are_not_trimmed_are_not_cut() => Assert.Empty(Impose(Edition(Binding.Saddle, Part(4))).Cuts);

    [Theory]
    [InlineData(Binding.Saddle, 100)]
    [InlineData(Binding.Side, 5)]
    public void Staples_stand_a_quarter_of_the_height_from_head_and_foot(Binding binding, int stop)
    {
        // Common practice; the height is that of the piece before trimming.
        var imposition = Impose(Edition(binding, Part(4)) with { Trim = new Trim(Mm(3), Mm(1), Length.Zero, Length.Zero) });
        Assert.Equal([Mm(51), Mm(153)], imposition.StaplesFromHead);
        Assert.Equal(Mm(stop), imposition.StaplerStop);
    }

    [Theory]
    [InlineData(Binding.Perfect)]
    [InlineData(Binding.Loose)]
    public void What_is_not_stapled_has_neither_stop_nor_staples(Binding binding)
    {
        var imposition = Impose(Edition(binding, Part(4, "cover"), Part(8)));
        Assert.Null(imposition.StaplerStop);
        Assert.Empty(imposition.StaplesFromHead);
    }

    [Fact]
    public void A_perfect_cover_carries_the_first_and_last_two_pages_and_leaves_run_on_from_page_3()
    {
        var pieces = Impose(Edition(Binding.Perfect, Part(4, "cover"), Part(4), Part(2, "plate"))).Pieces;
        Assert.Equal(4, pieces.Count);
        Assert.Equal([10, 1], pieces[0].Outer);
        Assert.Equal([2, 9], pieces[0].Inner);
        Assert.Equal(["inside", "inside", "plate"], pieces.Skip(1).Select(piece => piece.PartName));
        Assert.Equal([3, 4, 5, 6, 7, 8], pieces.Skip(1).SelectMany(piece => piece.Outer.Concat(piece.Inner)));
        Assert.All(pieces, piece => Assert.Equal(Length.Zero, piece.PushOut));
    }

    [Fact]
    public void An_odd_last_page_of_prints_leaves_its_back_blank_and_unprinted_backs_carry_no_page()
    {
        var pieces = Impose(Edition(Binding.Loose, Part(3), Part(2, "cards", inside: Ink.None))).Pieces;
        Assert.Equal([[1], [3], [4], [5]], pieces.Select(piece => piece.Outer));
        Assert.Equal([[2], [], [], []], pieces.Select(piece => piece.Inner));
    }

    [Fact]
    public void Each_nested_sheet_is_pushed_out_by_the_calipers_outside_it_and_shifted_back_by_as_much()
    {
        var edition = Edition(Binding.Saddle, Part(4, "cover", "heavy"), Part(8)) with { Fold = FoldShape.Rounded };
        var pieces = Imposer.Impose(Block(edition, PlainStock("heavy", micrometres: 300), PlainStock()), Length.Zero).Pieces;
        double[] pushedOut = [0, 0.3 * Math.PI / 2, 0.4 * Math.PI / 2];
        for (var index = 0; index < pieces.Count; index++)
        {
            Assert.Equal(pushedOut[index], (double)pieces[index].PushOut.Millimetres, 1e-12);
            Assert.Equal(pieces[index].PushOut, pieces[index].Shift);
        }
    }

    private static Imposition Impose(Edition edition) => Imposer.Impose(Block(edition, PlainStock()), BenchRates.UsualStapleFromSpine);
}
