using CsCheck;
using PressRun.Engine.Bench;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Editions;

public sealed class BookBlockTests
{
    [Theory]
    [InlineData(320, 1.09)] // WGT-01. Thomson-Shore, guide page on weight: 6 × 9 in on 60 lb.
    [InlineData(1000, 3.41)] // WGT-03. The same page.
    public void A_text_block_weighs_what_the_book_printers_table_says(int pages, double pounds)
    {
        var stock = new Stock("text", "text", PaperWeight.FromBasisWeight(60m, PaperCategory.Text), null, 1.3m, null);
        var block = Block(Edition(Binding.Side, Part(pages, stock: "text")) with { Page = InSize(6, 9) }, stock);
        Assert.Equal(pounds, (double)block.PaperMass.Pounds, 0.005);
    }

    [Theory]
    [InlineData(80, 2, 4.9896)] // WGT-04. Area × grammage (ISO 536); A4 of 80 g/m² is about 5 g; computed.
    [InlineData(150, 300, 1403.325)] // WGT-05. Formula as printed by dmzine.com.au; computed.
    public void Leaves_weigh_area_times_grammage(int grammage, int pages, double grams)
    {
        var block = Block(Edition(Binding.Side, Part(pages)) with { Page = MmSize(210, 297) }, PlainStock(grammage: grammage));
        Assert.Equal(grams, (double)block.PaperMass.Grams, 0.0001);
    }

    [Fact]
    public void A_book_with_its_cover_is_as_thick_as_the_printers_worked_example()
    {
        // SPN-01. Bookmobile, article on spine width: 316 pages of 400 pages an inch and 0.0156 in for the cover's two leaves give 0.8056 in.
        var text = new Stock("text", "text", PaperWeight.FromGrammage(90m), In(2m / 400m), null, null);
        var cover = new Stock("cover", "cover", PaperWeight.FromGrammage(250m), In(0.0156m / 2m), null, null);
        var block = Block(Edition(Binding.Perfect, Part(4, "cover", "cover"), Part(316, stock: "text")), text, cover);
        Assert.Equal(0.8056m, block.Thickness.Inches);
        Assert.Equal(0.79m, block.Spine.Inches);
    }

    [Fact]
    public void Four_hundred_and_thirty_five_pages_of_a_caliper_make_an_inch()
    {
        // PAP-24. Patterson Printing, page on spine diagrams: 0.0046 in is 435 pages an inch, within one.
        var stock = new Stock("plain", "plain", PaperWeight.FromGrammage(90m), In(0.0046m), null, null);
        Assert.True(Block(Edition(Binding.Side, Part(434)), stock).Thickness < In(1m));
        Assert.True(Block(Edition(Binding.Side, Part(436)), stock).Thickness > In(1m));
    }

    [Theory]
    [InlineData(4, 0.015)] // CRP-01. Color Vision Printing, article on creep: the fourth sheet of 0.005 in stands out by (4 − 1) calipers.
    [InlineData(3, 0.01)] // CRP-02. The same article.
    public void The_innermost_of_nested_sheets_stands_out_by_the_calipers_outside_it(int sheets, double inches)
    {
        var stock = new Stock("plain", "plain", PaperWeight.FromGrammage(104m), In(0.005m), null, null);
        var block = Block(Edition(Binding.Saddle, Part(4 * sheets)), stock);
        Assert.Equal((decimal)inches, block.Creep.Inches);
        Assert.Equal(block.Creep, Imposer.Impose(block, Length.Zero).Pieces[^1].PushOut);
    }

    [Fact]
    public void A_rounded_fold_multiplies_creep_by_half_pi()
    {
        var edition = Edition(Binding.Saddle, Part(16));
        var flat = Block(edition, PlainStock());
        var rounded = Block(edition with { Fold = FoldShape.Rounded }, PlainStock());
        Assert.Equal(Math.PI / 2, (double)(rounded.Creep.Millimetres / flat.Creep.Millimetres), 1e-15);
    }

    [Fact]
    public void A_folded_piece_is_two_trimmed_pages_wide_and_a_leaf_one()
    {
        // Common practice: the spine of a folded piece is not trimmed; every other trimmed edge widens the piece.
        var trim = new Trim(Mm(1), Mm(2), Mm(3), Mm(0));
        Assert.Equal(MmSize(206, 203), Block(Edition(Binding.Saddle, Part(4)) with { Trim = trim }, PlainStock()).Parts[0].Piece);
        Assert.Equal(MmSize(107, 203), Block(Edition(Binding.Side, Part(4)) with { Trim = trim with { Spine = Mm(4) } }, PlainStock()).Parts[0].Piece);
    }

    [Fact]
    public void A_perfect_cover_wraps_the_spine_in_size_and_mass()
    {
        var trim = new Trim(Mm(1), Mm(2), Mm(3), Mm(4));
        var block = Block(Edition(Binding.Perfect, Part(4, "cover", "heavy"), Part(100)) with { Trim = trim }, PlainStock(), PlainStock("heavy", 300m, 400m));
        Assert.Equal(Mm(5), block.Spine);
        Assert.Equal(MmSize((2 * 103) + 5, 203), block.Parts[0].Piece);
        Assert.Equal(MmSize(107, 203), block.Parts[1].Piece);
        Assert.Equal(205m * 200m * 300m / 1_000_000m, block.Parts[0].PaperMass.Grams);
        Assert.Equal(50m * 100m * 200m * 100m / 1_000_000m, block.Parts[1].PaperMass.Grams);
        Assert.Equal(5m + 0.8m, block.Thickness.Millimetres);
    }

    [Theory]
    [InlineData(Ink.None, 3, 3)]
    [InlineData(Ink.Black, 3, 2)]
    [InlineData(Ink.Black, 4, 2)]
    public void A_loose_leaf_carries_one_page_where_its_back_is_unprinted(Ink inside, int pages, int leaves)
    {
        var part = Block(Edition(Binding.Loose, Part(pages, inside: inside)), PlainStock()).Parts[0];
        Assert.Equal((leaves, leaves), (part.Count, part.Leaves));
    }

    [Fact]
    public void A_part_divided_in_two_weighs_and_measures_the_same() =>
        Gen.Select(JobGen.Among(Binding.Saddle, Binding.Side, Binding.Loose), Gen.Int[1, 20], Gen.Int[1, 20], Gen.Int[50, 400], Gen.Int[50, 500])
            .Sample((binding, first, second, grammage, micrometres) =>
            {
                var stock = PlainStock(grammage: grammage, micrometres: micrometres);
                var whole = Block(Edition(binding, Part(4 * (first + second))), stock);
                var divided = Block(Edition(binding, Part(4 * first), Part(4 * second, "more")), stock);
                Assert.Equal(whole.PaperMass, divided.PaperMass);
                Assert.Equal(whole.UntrimmedMass, divided.UntrimmedMass);
                Assert.Equal(whole.Thickness, divided.Thickness);
                Assert.Equal(whole.Creep, divided.Creep);
                Assert.Equal(whole.PiecesPerCopy, divided.PiecesPerCopy);
            });

    [Fact]
    public void The_mass_of_an_edition_is_the_sum_of_its_parts_and_trimming_only_lightens_it() =>
        JobGen.Any.Sample(job =>
        {
            var block = job.Prepared().Block;
            Assert.Equal(block.Parts.Sum(part => part.PaperMass.Grams), block.PaperMass.Grams);
            Assert.Equal(block.Parts.Sum(part => part.UntrimmedMass.Grams), block.UntrimmedMass.Grams);
            Assert.True(block.PaperMass <= block.UntrimmedMass);
        });
}
