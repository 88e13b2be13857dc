using CsCheck;
using PressRun.Engine.Editions;
using PressRun.Engine.Imposing;
using PressRun.Engine.Sheets;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Imposing;

public sealed class VirtualFoldTests
{
    [Fact]
    public void Every_copy_of_every_binding_and_layout_reads_each_page_once_in_order_and_upright() => ImposedGen.Any.Sample(run =>
    {
        for (var copy = 0; copy < 4; copy++)
        {
            var book = VirtualFold.Read(run.Block, run.Sheets, copy: copy);
            Assert.Equal(Enumerable.Range(1, book.Pages), book.Sides.Select(side => side.Page).OfType<int>());
            Assert.All(book.Sides, side => Assert.True(side.IsUpright));
            Assert.True(book.IsRight);
        }
    });

    [Theory]
    [InlineData(Binding.Saddle)]
    [InlineData(Binding.Side)]
    [InlineData(Binding.Perfect)]
    [InlineData(Binding.Loose)]
    public void Up_to_96_pages_one_to_eight_on_a_sheet_in_every_layout_fold_into_a_book(Binding binding)
    {
        foreach (var layout in Enum.GetValues<Layout>())
        {
            for (var up = 1; up <= 8; up++)
            {
                for (var pages = 4; pages <= 96; pages += 4)
                {
                    var edition = binding == Binding.Perfect && pages > 4 ? Edition(binding, Part(4, "cover"), Part(pages - 4)) : Edition(binding == Binding.Perfect ? Binding.Side : binding, Part(pages));
                    var pieceWidth = edition.Binding is Binding.Saddle or Binding.Perfect ? 205 : 100;
                    var run = ImposedGen.Made(edition, Sheet(width: pieceWidth * up, height: 200), layout, 3);
                    Assert.True(VirtualFold.Read(run.Block, run.Sheets).IsRight, run.ToString());
                }
            }
        }
    }

    [Fact]
    public void A_dummy_of_arrows_turned_in_space_reads_the_same_whatever_the_shop_did() =>
        Gen.Select(ImposedGen.Any, Gen.Enum<TurnEdge>(), Gen.Int[0, 5]).Sample((run, turn, copy) =>
        {
            var book = VirtualFold.Read(run.Block, run.Sheets, turn, copy);
            if (run.Sheets.Any(sheet => sheet.Sheet.MixedLayout && sheet.IsTwoSided && sheet.Turn != turn))
            {
                // Places of a mixed layout do not lie on each other when the sheet is turned the wrong way: backs are cut through.
                Assert.False(book.IsRight);
                return;
            }

            var dummy = PaperDummy.Read(run.Block, run.Sheets, sheet => sheet.IsTwoSided ? turn : sheet.Turn, copy);
            Assert.Equal(dummy, book.Sides.Where(side => side.Page is not null).Select(side => (side.Page!.Value, side.IsUpright)));
        });

    [Fact]
    public void Sheets_are_as_many_as_the_estimate_pays_for_and_hold_pieces_for_every_copy() => ImposedGen.Any.Sample(run =>
    {
        Assert.Equal(run.Estimate.Parts.Select(part => part.OnSheets!.Sheets), run.Sheets.GroupBy(sheet => sheet.PartIndex).Select(part => part.Sum(sheet => sheet.Prints)));
        var piles = run.Sheets.SelectMany(sheet => sheet.Stacks.Where(stack => stack.Pile is not null).Select(stack => (stack.Pile, sheet.Prints))).GroupBy(stack => stack.Pile).ToList();
        Assert.Equal(Enumerable.Range(1, run.Block.PiecesPerCopy), piles.Select(pile => pile.Key!.Value).Order());
        Assert.All(piles, pile => Assert.True(pile.Sum(stack => stack.Prints) >= run.Estimate.CopiesToStart, "Each copy has its piece."));
    });

    [Theory]
    // Common practice: two pages beside each other on a landscape sheet are turned on its short edge, portrait leaves on the long one.
    [InlineData(Binding.Saddle, 100, 150, 200, 150, TurnEdge.Short)]
    [InlineData(Binding.Saddle, 60, 150, 120, 150, TurnEdge.Long)]
    [InlineData(Binding.Side, 100, 150, 100, 150, TurnEdge.Long)]
    [InlineData(Binding.Side, 150, 100, 150, 100, TurnEdge.Short)] // Landscape pages.
    [InlineData(Binding.Side, 150, 100, 100, 150, TurnEdge.Short)] // The same, lying on a portrait sheet with their heads to the right.
    public void The_edge_that_runs_along_the_spine_is_the_one_to_turn_about(Binding binding, int width, int height, int sheetWidth, int sheetHeight, TurnEdge ask)
    {
        var run = ImposedGen.Made(Edition(binding, Part(8)) with { Page = MmSize(width, height) }, Sheet(width: sheetWidth, height: sheetHeight), Layout.StepAndRepeat, 10);
        var advice = Assert.Single(VirtualFold.Advise(run.Block, run.Sheets));
        Assert.Equal(ask, advice.Ask);
        Assert.True(VirtualFold.Read(run.Block, run.Sheets, advice.Ask).IsRight);
        var other = VirtualFold.Read(run.Block, run.Sheets, advice.Ask == TurnEdge.Long ? TurnEdge.Short : TurnEdge.Long);
        Assert.Equal(other.NotUpright.Order(), advice.UpsideDown);
        Assert.Equal(4, advice.UpsideDown.Count);
        Assert.False(other.IsRight);
    }

    [Fact]
    public void A_part_that_is_printed_on_one_side_cannot_be_turned_over_wrongly()
    {
        var run = ImposedGen.Made(Edition(Binding.Saddle, Part(4, "cover", inside: Ink.None), Part(8)), Sheet(), Layout.StepAndRepeat, 10);
        var advice = VirtualFold.Advise(run.Block, run.Sheets);
        Assert.Null(advice[0].Ask);
        Assert.Empty(advice[0].UpsideDown);
        Assert.NotNull(advice[1].Ask);
        var single = ImposedGen.Made(Edition(Binding.Loose, Part(1)), Sheet(), Layout.StepAndRepeat, 10);
        Assert.Null(Assert.Single(VirtualFold.Advise(single.Block, single.Sheets)).Ask);
        Assert.All(Enum.GetValues<TurnEdge>(), turn => Assert.Equal([1, 2], VirtualFold.Read(run.Block, run.Sheets, turn).Sides.Take(2).Select(side => side.Page!.Value)));
    }
}
