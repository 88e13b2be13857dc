using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Web.Shared;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Shared;

public class WarningWordsTests
{
    private static readonly Estimate Estimate = APlan.Estimate(ARun.Job) with
    {
        Copy = new CopyEstimate(Mass.FromGrams(50m), Length.FromMillimetres(2m), Length.FromMillimetres(0.9652m)),
        Freight = new FreightEstimate(Mass.FromPounds(110m), 2, Mass.FromPounds(55m)),
    };

    [Fact]
    public void Creep_is_told_in_the_presss_own_units()
    {
        var warning = new Warning(WarningCode.CreepExceedsTrim, "in millimetres");
        Assert.Equal("The innermost leaves stand out by 0.038 in, and the fore-edge is not trimmed.", WarningWords.Of(warning, Estimate, default, Written.Imperial));
        Assert.Equal(
            "The innermost leaves stand out by 0.97 mm, and the fore-edge trim takes off only 0.5 mm.",
            WarningWords.Of(warning, Estimate, default(Trim) with { ForeEdge = Length.FromMillimetres(0.5m) }, Written.Metric));
    }

    [Fact]
    public void A_heavy_carton_is_told_in_the_presss_own_units()
    {
        var warning = new Warning(WarningCode.HeavyCarton, "in kilograms");
        Assert.StartsWith("A carton of 55 lb is heavier than 50.7 lb: ", WarningWords.Of(warning, Estimate, default, Written.Imperial), StringComparison.Ordinal);
        Assert.StartsWith("A carton of 24.9 kg is heavier than 23 kg: ", WarningWords.Of(warning, Estimate, default, Written.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void A_warning_without_a_measure_stands_as_the_engine_says_it() =>
        Assert.Equal("Weigh a copy.", WarningWords.Of(new Warning(WarningCode.NearPostageStep, "Weigh a copy."), Estimate, default, Written.Imperial));
}
