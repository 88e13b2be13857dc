using CsCheck;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Sheets;

public sealed class PiecesOnSheetTests
{
    private static readonly Sheet Letter = Of(InSize(8.5m, 11));

    [Fact]
    public void A_piece_of_next_to_nothing_is_counted_and_not_overflown() =>
        Assert.Equal(
            900_000_000,
            PiecesOnSheet.Count(
                new Sheet("s", Length.FromMillimetres(320m), Length.FromMillimetres(450m), Length.Zero, Length.Zero, false, GrainRule.Any),
                new Engine.Editions.Size(Length.FromMillimetres(1e-27m), Length.FromMillimetres(1e-27m)),
                false));

    [Fact]
    public void A_page_of_a_quarter_letter_makes_two_folded_pieces_of_a_letter_sheet()
    {
        // Common practice: 4.25 × 5.5 in untrimmed gives eight pages a letter sheet, two folded pieces, one cut across the middle.
        var edition = Edition(Binding.Saddle, Part(8)) with { Page = InSize(4.25m, 5.5m) };
        var part = Block(edition, PlainStock()).Parts[0];
        Assert.Equal(2, PiecesOnSheet.Count(Letter, part.Piece, false));
        Assert.Equal(8, PiecesOnSheet.Count(Letter, part.Piece, false) * (part.Part.Pages / part.Count));
    }

    [Fact]
    public void Two_spreads_with_an_eighth_of_bleed_lie_on_twelve_by_eighteen()
    {
        // SIZ-11. Spread of 11 × 8.5 in with an eighth of an inch all round on 12 × 18 in, no margin or gutter; computed.
        var eighth = In(0.125m);
        var edition = Edition(Binding.Saddle, Part(4)) with
        {
            Page = InSize(5.5m, 8.5m),
            Trim = new Trim(eighth, eighth, eighth, Length.Zero),
            Bleed = true,
        };
        var piece = Block(edition, PlainStock()).Parts[0].Piece;
        Assert.Equal(InSize(11.25m, 8.75m), piece);
        Assert.Equal(2, PiecesOnSheet.Count(Of(InSize(12, 18)), piece, true));
    }

    [Fact]
    public void A_side_counts_as_long_enough_when_it_lacks_a_micrometre_and_not_when_it_lacks_two()
    {
        Assert.Equal(2, PiecesOnSheet.Count(Of(MmSize(199.999m, 100)), MmSize(100, 100), false));
        Assert.Equal(1, PiecesOnSheet.Count(Of(MmSize(199.998m, 100)), MmSize(100, 100), false));
    }

    [Fact]
    public void The_tolerance_is_added_once_to_a_side_and_not_to_every_piece() =>
        Assert.Equal(9, PiecesOnSheet.Count(Of(MmSize(99.99m, 10)), MmSize(10, 10), false));

    [Fact]
    public void The_margin_binds_only_where_the_edition_bleeds()
    {
        var sheet = Of(MmSize(200, 100)) with { Margin = Mm(1) };
        Assert.Equal(2, PiecesOnSheet.Count(sheet, MmSize(100, 100), false));
        Assert.Equal(0, PiecesOnSheet.Count(sheet, MmSize(100, 100), true));
    }

    [Fact]
    public void The_gutter_lies_between_neighbours_only()
    {
        var sheet = Of(MmSize(320, 100)) with { Gutter = Mm(10) };
        Assert.Equal(3, PiecesOnSheet.Count(sheet, MmSize(100, 100), false));
        Assert.Equal(2, PiecesOnSheet.Count(sheet with { Width = Mm(319.99m) }, MmSize(100, 100), false));
    }

    [Fact]
    public void Grain_parallel_to_the_spine_keeps_the_piece_upright_even_where_mixing_is_allowed()
    {
        var sheet = Of(MmSize(300, 200)) with { MixedLayout = true };
        Assert.Equal(3, PiecesOnSheet.Count(sheet, MmSize(200, 100), false));
        Assert.Equal(2, PiecesOnSheet.Count(sheet with { Grain = GrainRule.ParallelToSpine }, MmSize(200, 100), false));
    }

    [Fact]
    public void A_margin_wider_than_the_sheet_leaves_no_piece() =>
        Assert.Equal(0, PiecesOnSheet.Count(Of(MmSize(100, 100)) with { Margin = Mm(60) }, MmSize(10, 10), true));

    [Fact]
    public void What_a_piece_is_too_large_by_is_told_in_the_orientation_that_lacks_least()
    {
        Assert.Equal(MmSize(0, 10), PiecesOnSheet.Excess(Of(MmSize(300, 200)), MmSize(210, 300), false));
        Assert.Equal(
            MmSize(0, 100), PiecesOnSheet.Excess(Of(MmSize(300, 200)) with { Grain = GrainRule.ParallelToSpine }, MmSize(210, 300), false));
        Assert.Equal(MmSize(5, 7), PiecesOnSheet.Excess(Of(MmSize(100, 100)) with { Margin = Mm(2) }, MmSize(101, 103), true));
    }

    [Fact]
    public void A_grid_counted_piece_by_piece_gives_the_same_number() =>
        Gen.Select(Gen.Int[20, 400], Gen.Int[20, 400], Gen.Int[5, 100], Gen.Int[5, 100], Gen.Int[0, 8], Gen.Int[0, 10]).Sample((w, h, a, b, gutter, margin) =>
        {
            var sheet = Of(MmSize(w, h)) with { Gutter = Mm(gutter), Margin = Mm(margin) };
            var naive = Math.Max(
                Along(w - (2 * margin), a, gutter) * Along(h - (2 * margin), b, gutter),
                Along(w - (2 * margin), b, gutter) * Along(h - (2 * margin), a, gutter));
            Assert.Equal(naive, PiecesOnSheet.Count(sheet, MmSize(a, b), true));
        });

    private static int Along(int usable, int piece, int gutter)
    {
        var count = 0;
        for (var end = piece; end <= usable; end += gutter + piece)
        {
            count++;
        }

        return count;
    }

    private static Sheet Of(Engine.Editions.Size size) => new("sheet", size.Width, size.Height, Length.Zero, Length.Zero, false, GrainRule.Any);
}
