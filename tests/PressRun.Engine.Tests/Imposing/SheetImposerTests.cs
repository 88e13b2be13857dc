using CsCheck;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Imposing;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Imposing;

public sealed class SheetImposerTests
{
    [Fact]
    public void Two_spreads_with_bleed_lie_on_12_by_18_inches()
    {
        // SIZ-11. Finished 5.5 × 8.5 in with 1/8 in of bleed: a spread of 11.25 × 8.75 in. Computed; the bleed was read in its source.
        var edition = Edition(Binding.Saddle, Part(4)) with { Page = InSize(5.5m, 8.5m), Bleed = true, Trim = new Trim(In(0.125m), In(0.125m), In(0.125m), default) };
        var sheet = new Sheet("square", In(12), In(18), Length.Zero, Length.Zero, false, GrainRule.Any);
        var made = Assert.Single(ImposedGen.Made(edition, sheet, Layout.StepAndRepeat, 10).Sheets);
        Assert.Equal(["A", "B"], made.Stacks.Select(stack => stack.Place.Letter));
        Assert.All(made.Stacks, stack => Assert.Equal(InSize(11.25m, 8.75m), new Engine.Editions.Size(stack.Place.Box.Width, stack.Place.Box.Height)));
        Assert.Equal(In(0.375m), made.Stacks[0].Place.Box.Left);
        Assert.Equal(In(0.25m), made.Stacks[0].Place.Box.Top);
    }

    [Fact]
    public void Eight_pages_of_a_quarter_of_letter_take_one_sheet_a_copy_and_one_cut_across_its_middle()
    {
        // Common practice: two folded pieces of 4.25 × 5.5 in pages lie on 8.5 × 11 in.
        var edition = Edition(Binding.Saddle, Part(8)) with { Page = InSize(4.25m, 5.5m) };
        var sheet = new Sheet("square", In(8.5m), In(11), Length.Zero, Length.Zero, false, GrainRule.Any);
        var made = Assert.Single(ImposedGen.Made(edition, sheet, Layout.CutAndStack, 10).Sheets);
        Assert.Equal([8, 1, 6, 3], made.Front.Pages.Select(page => page.Page));
        Assert.Equal([2, 7, 4, 5], made.Back.Pages.Select(page => page.Page));
        Assert.Equal([1, 2], made.Stacks.Select(stack => stack.Pile!.Value));
        var cut = Assert.Single(ApartCuts.Of(made));
        Assert.Equal((FenceSide.Top, In(5.5m)), (cut.Against, cut.Fence));
    }

    [Fact]
    public void A_sheet_of_more_pieces_than_anybody_could_draw_is_told_of_and_no_list_of_them_is_made()
    {
        var job = Plain().With(shop => shop with { Sheets = [Sheet(width: 10_000m, height: 10_000m)] })
            .WithEdition(edition => edition with { Page = MmSize(1, 1), Parts = [Part(4)] }) with
        { Stocks = [PlainStock(grammage: 250m)] };
        var prepared = PreparedJob.Prepare(job).Value;
        var estimate = prepared.Estimate(10).Value;
        Assert.Equal(50_000_000, estimate.Parts[0].OnSheets!.PiecesPerSheet);

        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.NotNull(SheetImposer.TooMany(prepared, estimate));
        BenchCaution.Of(prepared, estimate, BenchLimits.Usual);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 1_000_000);
    }

    [Theory]
    [InlineData(Layout.StepAndRepeat)]
    [InlineData(Layout.Combined)] // 200 leaves, fewer than lie on a sheet: each fills one by itself.
    public void A_book_of_so_many_different_sheets_is_told_of_too(Layout layout)
    {
        var job = Plain().With(shop => shop with { Sheets = [Sheet(width: 2_000m, height: 2_000m)], Layout = layout })
            .WithEdition(edition => edition with { Binding = Binding.Loose, Page = MmSize(70, 70), Parts = [Part(400)] });
        var prepared = PreparedJob.Prepare(job).Value;

        Assert.Contains("places together", SheetImposer.TooMany(prepared, prepared.Estimate(1).Value)!.Rule, StringComparison.Ordinal);
        Assert.Null(SheetImposer.TooMany(PreparedJob.Prepare(Plain()).Value, PreparedJob.Prepare(Plain()).Value.Estimate(100).Value));
    }

    [Theory]
    [InlineData(3, 0.01)] // CRP-02.
    [InlineData(4, 0.015)] // CRP-01.
    public void The_art_of_a_nested_sheet_moves_by_the_paper_outside_it_and_keeps_its_outer_margin(int sheet, double shift)
    {
        // Color Vision Printing, "Saddle Stitch Binding: What is Creep?": offset = (n − 1) × caliper, of 0.005 in.
        var edition = Edition(Binding.Saddle, Part(16)) with { Page = InSize(4, 6), Trim = new Trim(default, default, In(0.125m), default) };
        var run = ImposedGen.Made(edition, new Sheet("square", In(9), In(6), Length.Zero, Length.Zero, false, GrainRule.Any), Layout.StepAndRepeat, 1);
        var thick = BookBlock.Of(edition, new Dictionary<string, Engine.Paper.Stock> { ["plain"] = PlainStock(micrometres: 127m) });
        var piece = Engine.Bench.Imposer.Impose(thick, Length.Zero).Pieces[sheet - 1];
        Assert.Equal((decimal)shift, piece.Shift.Inches);

        // Its page ends so much nearer to its own fold as the sheet is pushed out, so that all pages end at one line.
        var pages = run.Sheets[sheet - 1].Front.Pages;
        var push = run.Prepared.Impose().Pieces[sheet - 1].PushOut;
        Assert.All(pages, page => Assert.Equal(push, page.Shift));
        var fold = Assert.Single(run.Sheets[sheet - 1].Front.Folds).From.Across;
        Assert.Equal(In(4) - push, pages[1].Area.Right - fold);
        Assert.Equal(In(4) - push, fold - pages[0].Area.Left);
    }

    [Fact]
    public void A_sheet_that_repeats_goes_to_one_pile_and_one_of_different_pieces_to_as_many()
    {
        var sheet = Sheet(width: 400, height: 400);
        var repeated = ImposedGen.Made(Edition(Binding.Saddle, Part(8)), sheet, Layout.StepAndRepeat, 10).Sheets;
        Assert.Equal([[1, 1, 1, 1], [2, 2, 2, 2]], repeated.Select(made => made.Stacks.Select(stack => stack.Pile!.Value)));
        Assert.All(repeated, made => Assert.Equal(3, made.Prints));
        var stacked = Assert.Single(ImposedGen.Made(Edition(Binding.Saddle, Part(8)), sheet, Layout.CutAndStack, 10).Sheets);
        Assert.Equal([1, 2, null, null], stacked.Stacks.Select(stack => stack.Pile));
        Assert.Equal(10, stacked.Prints);
    }

    [Fact]
    public void Places_are_as_many_as_are_counted_and_lie_apart_within_the_sheet() => ImposedGen.Any.Sample(run =>
    {
        foreach (var sheet in run.Sheets)
        {
            var part = run.Block.Parts[sheet.PartIndex];
            var bleed = run.Block.Edition.Bleed;
            var boxes = sheet.Stacks.Select(stack => stack.Place.Box).ToList();
            Assert.Equal(PiecesOnSheet.Count(sheet.Sheet, part.Piece, bleed), boxes.Count);
            var margin = bleed ? sheet.Sheet.Margin : Length.Zero;
            Assert.All(boxes, box => Assert.True(
                box.Left >= margin - Mm(0.001m) && box.Top >= margin - Mm(0.001m)
                && box.Right <= sheet.Sheet.Width - margin + Mm(0.001m) && box.Bottom <= sheet.Sheet.Height - margin + Mm(0.001m)));
            var gutter = sheet.Sheet.Gutter;
            Assert.All(boxes.Index(), one => Assert.All(boxes.Skip(one.Index + 1), other => Assert.True(
                other.Left >= one.Item.Right + gutter || one.Item.Left >= other.Right + gutter
                || other.Top >= one.Item.Bottom + gutter || one.Item.Top >= other.Bottom + gutter)));
        }
    });

    [Fact]
    public void Both_sides_of_a_leaf_lie_behind_each_other_to_the_micrometre() => ImposedGen.Any.Sample(run =>
    {
        var facing = VirtualFold.Read(run.Block, run.Sheets).Sides.Chunk(2).Where(leaf => leaf.All(side => side.Page is not null)).Select(leaf => (leaf[0].Page!.Value, leaf[1].Page!.Value)).ToHashSet();
        foreach (var sheet in run.Sheets)
        {
            foreach (var front in sheet.Front.Pages)
            {
                var behind = sheet.Back.Pages.Where(back => back.Letter == front.Letter && (facing.Contains((front.Page, back.Page)) || facing.Contains((back.Page, front.Page))));
                Assert.All(behind, back => Assert.Equal(Micrometres(front.Area), Micrometres(Turned(sheet, back.Area))));
            }
        }
    });

    private static Box Turned(ImposedSheet sheet, Box box)
    {
        var upright = (sheet.Turn == TurnEdge.Long) == (sheet.Sheet.Height >= sheet.Sheet.Width);
        return upright ? box with { Left = sheet.Sheet.Width - box.Right } : box with { Top = sheet.Sheet.Height - box.Bottom };
    }

    private static (long, long, long, long) Micrometres(Box box) =>
        ((long)decimal.Round(box.Left.Micrometres), (long)decimal.Round(box.Top.Micrometres), (long)decimal.Round(box.Width.Micrometres), (long)decimal.Round(box.Height.Micrometres));
}
