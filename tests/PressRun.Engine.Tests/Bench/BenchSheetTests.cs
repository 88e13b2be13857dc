using CsCheck;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Sheets;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Bench;

public sealed class BenchSheetTests
{
    [Fact]
    public void Piles_stand_in_the_order_of_the_book_with_a_piece_for_every_copy_started() => JobGen.Any.Sample(job =>
    {
        if (job.Prepared().Estimate(job.Quantity) is not { Succeeded: true } estimate)
        {
            return;
        }

        var sheet = BenchSheet.Of(job.Prepared(), estimate.Value, BenchLimits.Usual);
        Assert.Equal(Enumerable.Range(1, sheet.Imposition.Pieces.Count), sheet.Piles.Select(pile => pile.Number));
        Assert.All(sheet.Piles, pile => Assert.True(pile.Pieces >= estimate.Value.CopiesToStart));
        Assert.True(sheet.Book.IsRight);
        Assert.Equal(job.Edition.Parts.Select((_, index) => index), sheet.Turns.Select(turn => turn.PartIndex));
    });

    [Fact]
    public void Repeated_places_give_pieces_beyond_the_copies_started_where_the_press_cuts()
    {
        // 10 copies, two places: five sheets; 11 copies: six sheets with twelve pieces.
        var job = Plain().With(shop => shop with { Sheets = [Sheet(width: 400, height: 200)], Layout = Layout.StepAndRepeat });
        Assert.Equal([10], SheetOf(job, 10).Piles.Select(pile => pile.Pieces));
        Assert.Equal([12], SheetOf(job, 11).Piles.Select(pile => pile.Pieces));
        Assert.Equal([11], SheetOf(job.With(shop => shop with { Delivers = Delivered.CutPieces }), 11).Piles.Select(pile => pile.Pieces));
    }

    [Fact]
    public void Sheets_that_are_cut_alike_are_cut_by_one_list()
    {
        var job = Plain().WithEdition(_ => Edition(Binding.Saddle, Part(4, "cover"), Part(8))).With(shop => shop with { Sheets = [Sheet(width: 400)], Layout = Layout.StepAndRepeat });
        var plan = Assert.Single(SheetOf(job, 10).Apart);
        Assert.Equal([1, 2, 3], plan.Sheets);
        Assert.Equal([Mm(200)], plan.Cuts.Select(cut => cut.Fence));
        Assert.Empty(SheetOf(job.With(shop => shop with { Delivers = Delivered.CutPieces }), 10).Apart);
    }

    [Fact]
    public void Thin_paper_on_a_sheet_that_suits_it_raises_no_caution() => Assert.Empty(SheetOf(Plain(), 10).Cautions);

    [Fact]
    public void Heavy_paper_folded_across_its_grain_is_pointed_out_and_is_scored()
    {
        // The piece of 200 × 300 fits on 300 × 200 only with its spine across the sheet's grain.
        var job = Plain().WithEdition(edition => edition with { Page = MmSize(100, 300) }).With(shop => shop with { Sheets = [Sheet(width: 300, height: 200)] });
        Assert.Empty(SheetOf(job, 10).Cautions);
        var heavy = job with { Stocks = [PlainStock(grammage: 171m)] };
        var sheet = SheetOf(heavy, 10);
        Assert.Equal([BenchCautionCode.AgainstGrain, BenchCautionCode.FoldUnscored], sheet.Cautions.Select(caution => caution.Code));
        Assert.All(sheet.Cautions, caution => Assert.Equal("inside", caution.Part!.Part.Name));
        Assert.Equal([BenchCautionCode.AgainstGrain], SheetOf(job with { Stocks = [PlainStock(grammage: 170m)] }, 10).Cautions.Select(caution => caution.Code));

        // The shop scores it.
        var scored = heavy.With(shop => shop with { Finishing = [new Finishing("creasing", FinishingUnit.Copy, 0.1m, 0m)] });
        Assert.Equal([BenchCautionCode.AgainstGrainScored], SheetOf(scored, 10).Cautions.Select(caution => caution.Code));
    }

    [Theory]
    [InlineData(30, false)] // 3 mm of paper and 3 mm to bend over: a leg of 6 mm.
    [InlineData(31, true)]
    public void A_staple_holds_what_its_leg_leaves_after_the_bend(int leaves, bool tooThick)
    {
        var job = Plain().WithEdition(_ => Edition(Binding.Side, Part(2 * leaves)));
        Assert.Equal(tooThick, SheetOf(job, 10).Cautions.Any(caution => caution.Code == BenchCautionCode.StapleTooShort));

        // A folded sheet goes under the staple once, with four pages on it.
        var folded = Plain().WithEdition(_ => Edition(Binding.Saddle, Part(4 * leaves)) with { Trim = new Trim(default, default, Mm(6), default) })
            .With(shop => shop with { Sheets = [Sheet(width: 250)] });
        var caution = SheetOf(folded, 10).Cautions.SingleOrDefault(found => found.Code == BenchCautionCode.StapleTooShort);
        Assert.Equal(tooThick, caution is not null);
        Assert.Equal(tooThick ? (Mm(3.1m), Mm(3)) : (Length.Zero, Length.Zero), (caution?.Has ?? Length.Zero, caution?.May ?? Length.Zero));
    }

    [Fact]
    public void A_staple_has_to_hold_the_thicker_half_of_a_run_on_two_papers()
    {
        // 25 leaves of 0.1 mm are held, 25 of 0.13 mm are 3.25 mm.
        var job = Plain().WithEdition(_ => Edition(Binding.Side, Part(50))) with { Stocks = [PlainStock(), PlainStock("thick", micrometres: 130m)] };
        job = job.With(shop => shop with { Paper = [PaperAt(0.05m), PaperAt(0.06m, "thick")] });
        Assert.Equal(Mm(2.5m), SheetOf(job, 10).UnderStaple);
        Assert.DoesNotContain(SheetOf(job, 10).Cautions, caution => caution.Code == BenchCautionCode.StapleTooShort);
        var halves = SheetOf(job with { SecondHalf = new SecondHalf(0, "thick") }, 10);
        Assert.Equal(Mm(3.25m), halves.UnderStaple);
        Assert.Equal(Mm(3.25m), halves.Cautions.Single(caution => caution.Code == BenchCautionCode.StapleTooShort).Has);
    }

    [Fact]
    public void Creep_may_stand_out_by_what_the_press_allows_beyond_the_trim()
    {
        // 31 sheets of 0.1 mm: the innermost stands out by 3 mm.
        var job = Plain().WithEdition(_ => Edition(Binding.Saddle, Part(124)));
        var caution = SheetOf(job, 10).Cautions.Single(found => found.Code == BenchCautionCode.CreepBeyondTrim);
        Assert.Equal((Mm(3), Length.Zero), (caution.Has, caution.May));
        var lenient = BenchLimits.Usual with { CreepBeyondTrim = Mm(3) };
        Assert.DoesNotContain(BenchSheet.Of(job.Prepared(), job.Prepared().Estimate(10).Value, lenient).Cautions, found => found.Code == BenchCautionCode.CreepBeyondTrim);
    }

    [Fact]
    public void What_the_shop_staples_and_folds_is_the_shops_to_judge()
    {
        var job = Plain().WithEdition(_ => Edition(Binding.Saddle, Part(124)) with { Trim = new Trim(default, default, Mm(6), default) }) with { Stocks = [PlainStock(grammage: 200m)] };
        job = job.With(shop => shop with { Sheets = [Sheet(width: 250)] }).WithBench(bench => bench with { Steps = [Step("trim")] });
        Assert.Equal([BenchCautionCode.StapleTooShort, BenchCautionCode.FoldUnscored], SheetOf(job, 10).Cautions.Select(caution => caution.Code));
        Assert.Equal([BenchCautionCode.FoldUnscored], SheetOf(With("stitch"), 10).Cautions.Select(caution => caution.Code));
        Assert.Equal([BenchCautionCode.StapleTooShort], SheetOf(With("machine folding"), 10).Cautions.Select(caution => caution.Code));

        Job With(string operation) => job.With(shop => shop with { Finishing = [new Finishing(operation, FinishingUnit.Copy, 0.1m, 0m)] });
    }

    [Fact]
    public void Of_a_glued_book_only_the_cover_is_folded()
    {
        var edition = Edition(Binding.Perfect, Part(4, "cover", "heavy"), Part(8, stock: "heavy"));
        var job = Plain() with { Edition = edition, Stocks = [PlainStock("heavy", 250m)] };
        job = job.With(shop => shop with { Paper = [PaperAt(0.05m, "heavy")], Sheets = [Sheet(width: 210)] });
        Assert.Equal(["cover"], SheetOf(job, 10).Cautions.Select(caution => caution.Part!.Part.Name));
    }

    [Fact]
    public void Staples_and_boxes_are_counted_for_the_whole_run()
    {
        // 1,000 copies of one folded sheet, 200 × 200 mm of 100 g/m²: 4 g each; 23 kg hold 5,750 of them.
        var sheet = SheetOf(Plain(), 1000);
        Assert.Equal((G(4000), 5750L, 2040L), (sheet.Packed, sheet.CopiesInBox, sheet.StaplesOf(1020)));
        Assert.Equal(0, SheetOf(Plain().WithEdition(_ => Edition(Binding.Loose, Part(2))), 10).StaplesOf(10));
    }

    private static BenchSheet SheetOf(Job job, int quantity) => BenchSheet.Of(job.Prepared(), job.Prepared().Estimate(quantity).Value, BenchLimits.Usual);
}
