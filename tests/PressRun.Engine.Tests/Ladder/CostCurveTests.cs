using CsCheck;
using PressRun.Engine.Ladder;

namespace PressRun.Engine.Tests.Ladder;

public sealed class CostCurveTests
{
    private static readonly Gen<CostCurve> Curves =
        Gen.Select(Gen.Int[1, 500], Gen.Int[0, 12].Array[1, 60], (from, costs) => new CostCurve(from, [.. costs.Select(cost => (decimal)cost)]));

    [Fact]
    public void A_curve_knows_its_ends_and_its_costs()
    {
        var curve = new CostCurve(5, [10m, 11m, 12m]);
        Assert.Equal((7, 11m), (curve.To, curve.At(6)));
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.At(4));
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.At(8));
    }

    [Fact]
    public void The_next_that_costs_no_more_is_what_a_double_loop_finds() => Curves.Sample(curve =>
    {
        var expected = Enumerable.Range(curve.From, curve.Costs.Count).Select(quantity =>
            Enumerable.Range(quantity + 1, curve.To - quantity).FirstOrDefault(more => curve.At(more) <= curve.At(quantity)));
        Assert.Equal(expected, curve.NextNotDearer());
    });

    [Fact]
    public void Dear_bands_are_the_runs_of_quantities_that_no_one_should_print() => Curves.Sample(curve =>
    {
        var dear = Enumerable.Range(curve.From, curve.Costs.Count)
            .Where(quantity => Enumerable.Range(quantity + 1, curve.To - quantity).Any(more => curve.At(more) <= curve.At(quantity)));
        var bands = curve.DearBands();
        Assert.Equal(dear, bands.SelectMany(band => Enumerable.Range(band.From, band.To - band.From + 1)));
        Assert.All(bands, band =>
        {
            Assert.Equal(band.To + 1, band.Better);
            Assert.All(Enumerable.Range(band.From, band.To - band.From + 1), quantity => Assert.True(curve.At(band.Better) <= curve.At(quantity)));
            // Nothing larger that costs no more than some of the band is cheaper than the quantity right after it.
            Assert.All(Enumerable.Range(band.Better, curve.To - band.Better + 1), more => Assert.True(more == band.Better || curve.At(more) > curve.At(band.Better)));
        });
        Assert.All(bands.Zip(bands.Skip(1)), pair => Assert.True(pair.First.To + 1 < pair.Second.From));
    });

    [Fact]
    public void Equal_costs_in_a_row_are_one_band_that_ends_at_the_last_of_them() =>
        Assert.Equal([new DearBand(1, 3, 4)], new CostCurve(1, [5m, 5m, 5m, 5m, 6m]).DearBands());
}
