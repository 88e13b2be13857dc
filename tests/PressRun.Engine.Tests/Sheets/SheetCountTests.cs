using CsCheck;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Tests.Sheets;

public sealed class SheetCountTests
{
    private static readonly Gen<(int Pieces, int OnSheet, int Copies)> Runs =
        Gen.Select(Gen.Int[1, 14], Gen.Int[1, 12], Gen.Int[1, 120], (pieces, onSheet, copies) => (pieces, onSheet, copies));

    [Fact]
    public void Sheets_dealt_out_one_by_one_hold_every_piece_and_are_as_many_as_the_formula_says() =>
        Gen.Select(Runs, Gen.Enum<Layout>()).Sample((run, layout) =>
        {
            var (pieces, onSheet, copies) = run;
            var (sheets, taken) = SheetCount.Of(layout, pieces, onSheet, copies);
            var dealt = Deal(taken, pieces, onSheet, copies);
            Assert.Equal(dealt.Count, sheets);
            Assert.All(dealt, sheet => Assert.True(sheet.Length <= onSheet));
            Assert.All(Enumerable.Range(0, pieces), piece => Assert.True(dealt.Sum(sheet => sheet.Count(slot => slot == piece)) >= copies));
        });

    [Fact]
    public void The_best_layout_takes_the_fewest_sheets_and_of_equals_the_first_in_order() => Runs.Sample(run =>
    {
        var (pieces, onSheet, copies) = run;
        Layout[] order = [Layout.StepAndRepeat, Layout.CutAndStack, Layout.Combined];
        var fewest = order.MinBy(layout => SheetCount.Of(layout, pieces, onSheet, copies).Sheets);
        Assert.Equal((SheetCount.Of(fewest, pieces, onSheet, copies).Sheets, fewest), SheetCount.Of(Layout.Best, pieces, onSheet, copies));
    });

    [Fact]
    public void No_layout_takes_fewer_sheets_than_the_pieces_fill() => Runs.Sample(run =>
    {
        var (pieces, onSheet, copies) = run;
        var filled = (((long)pieces * copies) + onSheet - 1) / onSheet;
        Assert.All(Enum.GetValues<Layout>(), layout => Assert.True(SheetCount.Of(layout, pieces, onSheet, copies).Sheets >= filled));
    });

    [Fact]
    public void Large_runs_of_thick_books_do_not_overflow() =>
        Assert.Equal((5_000_000_000_000L, Layout.StepAndRepeat), SheetCount.Of(Layout.Best, 5000, 1, 1_000_000_000));

    // Each sheet as the numbers of the pieces on it.
    private static List<int[]> Deal(Layout layout, int pieces, int onSheet, int copies)
    {
        var dealt = new List<int[]>();
        var different = layout switch
        {
            Layout.StepAndRepeat => 0,
            Layout.CutAndStack => pieces,
            _ => pieces - (pieces % onSheet),
        };
        for (var copy = 0; copy < copies; copy++)
        {
            dealt.AddRange(Enumerable.Range(0, different).Chunk(onSheet));
        }

        for (var piece = different; piece < pieces; piece++)
        {
            for (var cut = 0; cut < copies; cut += onSheet)
            {
                dealt.Add([.. Enumerable.Repeat(piece, onSheet)]);
            }
        }

        return dealt;
    }
}
