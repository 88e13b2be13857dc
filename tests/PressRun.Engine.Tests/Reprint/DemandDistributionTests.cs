using CsCheck;
using MathNet.Numerics.Distributions;
using PressRun.Engine.Reprint;

namespace PressRun.Engine.Tests.Reprint;

public class DemandDistributionTests
{
    [Theory]
    [InlineData(2, 3, 0.8571, 5e-5)] // POI-01: cumulative Poisson table, any statistics handbook
    [InlineData(5, 5, 0.616, 5e-5)] // POI-02: the same
    [InlineData(3, 2, 0.4232, 5e-5)] // POI-03: the same
    [InlineData(1, 1, 0.73576, 5e-6)] // POI-06: UCLA, math.ucla.edu/~tom/distributions/poisson.html
    public void Poisson_agrees_with_published_tables(int mean, int copies, double expected, double tolerance) =>
        Assert.Equal(expected, Of(new PoissonDemand(mean, 0)).AtMost(copies), tolerance);

    [Fact]
    public void Poisson_sales_from_a_shelf_of_four_agree_with_a_worked_answer()
    {
        // NV-22 and NV-23: answer.ya.guru/questions/3710721.
        var demand = Of(new PoissonDemand(3m, 0));
        Assert.Equal(2.680642, demand.ExpectedSales(4), 2e-5);
        Assert.Equal(6, demand.Quantile(0.95));
    }

    [Fact]
    public void Poisson_and_negative_binomial_agree_with_a_numerical_library()
    {
        Gen.Select(Gen.Int[1, 40_000], Gen.Int[1, 4000], Gen.Double[0.001, 0.999]).Sample((meanParts, shapeParts, at) =>
        {
            var (mean, shape) = (meanParts / 20m, shapeParts / 20m);
            var narrow = Of(new PoissonDemand(mean, 0));
            var copies = narrow.Quantile(at);
            Assert.Equal(Poisson.PMF((double)mean, copies), narrow.Probability(copies), 1e-9);
            var wide = Of(new NegativeBinomialDemand(mean, shape, 0));
            copies = wide.Quantile(at);
            Assert.Equal(NegativeBinomial.PMF((double)shape, (double)(shape / (shape + mean)), copies), wide.Probability(copies), 1e-9);
        }, iter: 300, seed: "0000KmHiCeG7");
    }

    [Fact]
    public void History_is_the_negative_binomial_of_the_conjugate_update()
    {
        // Gelman and others, Bayesian Data Analysis, section 2.6: shape 0.5 + 40, mean 1.25 · 6 · 40.5 / 4.
        var history = Of(new HistoryDemand([9, 14, 6, 11], 6m, 1.25m, 0.5m, 0m, 0));
        var same = Of(new NegativeBinomialDemand(75.9375m, 40.5m, 0));
        Assert.Equal(75.9375, history.Mean, 1e-8);
        for (var copies = 0; copies < 200; copies++)
        {
            Assert.Equal(same.Probability(copies), history.Probability(copies), 1e-15);
        }
    }

    [Fact]
    public void An_opinion_puts_half_a_copy_around_each_whole_one_and_what_is_below_none_on_none()
    {
        // By hand: the triangle on [0, 4] with its peak at 2 has F(x) = x²/8 up to 2 and 1 − (4 − x)²/8 from there.
        var demand = Of(new OpinionDemand(0m, 2m, 4m, 0));
        double[] expected = [0.25 / 8, 2.0 / 8, 1 - (2.25 / 8) - (2.25 / 8), 2.0 / 8, 0.25 / 8];
        for (var copies = 0; copies < expected.Length; copies++)
        {
            Assert.Equal(expected[copies], demand.Probability(copies), 1e-12);
        }

        var belowNone = Of(new OpinionDemand(-4m, -2m, 4m, 0));
        Assert.Equal(1 - (3.5 * 3.5 / 48), belowNone.Probability(0), 1e-12);
    }

    [Fact]
    public void Copies_promised_shift_the_whole_distribution()
    {
        var free = Of(new PoissonDemand(7m, 0));
        var promised = Of(new PoissonDemand(7m, 25));
        Assert.Equal(free.Mean + 25, promised.Mean, 1e-9);
        Assert.Equal(free.Quantile(0.7) + 25, promised.Quantile(0.7));
        Assert.Equal(0d, promised.AtMost(24));
    }

    [Fact]
    public void Probabilities_sum_to_one_whatever_the_demand()
    {
        Gen.OneOf<Demand>(
            Gen.Int[0, 50_000].Select(mean => (Demand)new PoissonDemand(mean / 10m, 3)),
            Gen.Select(Gen.Int[0, 50_000], Gen.Int[1, 300]).Select((mean, shape) => (Demand)new NegativeBinomialDemand(mean / 10m, shape / 10m, 0)),
            Gen.Select(Gen.Int[-20, 40], Gen.Int[0, 60], Gen.Int[1, 60]).Select((low, up, further) => (Demand)new OpinionDemand(low, low + up, low + up + further, 1)))
            .Sample(demand =>
            {
                var distribution = Of(demand);
                Assert.Equal(1d, Enumerable.Range(0, distribution.Largest + 1).Sum(copies => distribution.Probability(copies)), 1e-9);
                Assert.Equal(50, distribution.Dots().Count);
                Assert.Equal(distribution.Dots().Order(), distribution.Dots());
            }, iter: 300, seed: "0000KmHiCeG7");
    }

    [Theory]
    [MemberData(nameof(Refused))]
    public void What_cannot_be_a_demand_is_refused_with_its_path(Demand demand, string path)
    {
        var outcome = DemandDistribution.Of(demand);
        Assert.False(outcome.Succeeded);
        Assert.Contains(outcome.Problems, problem => problem.Path == path);
    }

    public static TheoryData<Demand, string> Refused => new()
    {
        { new TableDemand([0.5m, 0.4m], 0), "$.reprint.demand.probabilities" },
        { new TableDemand([1.5m, -0.5m], 0), "$.reprint.demand.probabilities[0]" },
        { new PoissonDemand(-1m, 0), "$.reprint.demand.mean" },
        { new NegativeBinomialDemand(5m, 0m, 0), "$.reprint.demand.shape" },
        { new HistoryDemand([0, 0], 3m, 1m, 0m, 0m, 0), "$.reprint.demand.periods" },
        { new HistoryDemand([], 3m, 1m, 1m, 0m, 0), "$.reprint.demand.periods" },
        { new HistoryDemand([3], 0m, 1m, 0m, 0m, 0), "$.reprint.demand.horizonPeriods" },
        { new OpinionDemand(5m, 4m, 9m, 0), "$.reprint.demand.likely" },
        { new OpinionDemand(5m, 5m, 5m, 0), "$.reprint.demand.high" },
        { new PoissonDemand(5m, -1), "$.reprint.demand.committed" },
    };

    internal static DemandDistribution Of(Demand demand) => DemandDistribution.Of(demand).Value;
}
