using CsCheck;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Sheets;

public sealed class MixedLayoutTests
{
    [Fact]
    public void Five_pieces_of_two_by_three_lie_on_five_by_six_and_a_pinwheel_is_not_cut()
    {
        // Two upright columns would give four; straight cuts that mix orientations give five (30 squares of area hold five of six).
        Assert.Equal(4, Count(5, 6, 2, 3, mixed: false));
        Assert.Equal(5, Count(5, 6, 2, 3));
        // Four lie around a hole on 5 × 5, but no straight cut goes through them: a cutter gets three.
        Assert.Equal(3, Count(5, 5, 2, 3));
    }

    [Fact]
    public void An_independent_search_over_every_cut_finds_the_same_number() =>
        Gen.Select(Gen.Int[1, 26], Gen.Int[1, 26], Gen.Int[1, 9], Gen.Int[1, 9]).Sample((w, h, a, b) =>
            Assert.Equal(BruteForce(w, h, a, b, []), Count(w, h, a, b)));

    [Fact]
    public void With_a_gutter_the_search_sees_pieces_and_sheet_enlarged_by_it() =>
        Gen.Select(Gen.Int[5, 24], Gen.Int[5, 24], Gen.Int[2, 8], Gen.Int[2, 8], Gen.Int[1, 3]).Sample((w, h, a, b, gutter) =>
            Assert.Equal(BruteForce(w + gutter, h + gutter, a + gutter, b + gutter, []), Count(w, h, a, b, gutter)));

    [Fact]
    public void A_mixed_layout_is_never_below_the_grid_nor_above_what_the_area_holds() =>
        Gen.Select(Gen.Int[400, 4000], Gen.Int[400, 4000], Gen.Int[150, 1200], Gen.Int[150, 1200]).Sample((w, h, a, b) =>
        {
            var mixed = Count(w / 4m, h / 4m, a / 4m, b / 4m);
            Assert.InRange(mixed, Count(w / 4m, h / 4m, a / 4m, b / 4m, mixed: false), w * h / (a * b));
        });

    [Fact]
    public void Pieces_too_small_for_an_exact_search_are_refused_and_not_guessed()
    {
        var sheet = new Sheet("sheet", Mm(10_000), Mm(9_999), Length.Zero, Length.Zero, true, GrainRule.Any);
        Assert.Null(PiecesOnSheet.Count(sheet, MmSize(1.01m, 1.37m), false));
    }

    private static int Count(decimal w, decimal h, decimal a, decimal b, decimal gutter = 0, bool mixed = true)
    {
        var sheet = new Sheet("sheet", Mm(w), Mm(h), Length.Zero, Mm(gutter), mixed, GrainRule.Any);
        return PiecesOnSheet.Count(sheet, MmSize(a, b), false)!.Value;
    }

    // Every whole-millimetre cut of every rectangle, no bound, no pattern: slow and plain.
    private static int BruteForce(int w, int h, int a, int b, Dictionary<(int, int), int> known)
    {
        if (known.TryGetValue((w, h), out var found))
        {
            return found;
        }

        var best = (w >= a && h >= b) || (w >= b && h >= a) ? 1 : 0;
        for (var x = 1; x < w; x++)
        {
            best = Math.Max(best, BruteForce(x, h, a, b, known) + BruteForce(w - x, h, a, b, known));
        }

        for (var y = 1; y < h; y++)
        {
            best = Math.Max(best, BruteForce(w, y, a, b, known) + BruteForce(w, h - y, a, b, known));
        }

        return known[(w, h)] = best;
    }
}
