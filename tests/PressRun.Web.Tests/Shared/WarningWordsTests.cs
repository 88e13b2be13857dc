using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;
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

    [Theory]
    [InlineData(WarningCode.CaliperEstimated)]
    [InlineData(WarningCode.MailerTooSmall)]
    [InlineData(WarningCode.NoPostage)]
    [InlineData(WarningCode.NearPostageStep)]
    [InlineData(WarningCode.NoBreakEvenPrice)]
    public void Whom_a_warning_concerns_is_named_whatever_the_language(WarningCode code)
    {
        var said = WarningWords.Of(new Warning(code, "in the engine's words") { About = ["Stall", "By post"] }, Estimate, default, Written.Metric);
        Assert.Contains("Stall, By post", said, StringComparison.Ordinal);
        Assert.DoesNotContain("engine", said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_run_that_its_copies_do_not_pay_for_says_by_which_copy_it_would_be() =>
        Assert.Equal(
            "The run is paid for by copy 1,250, more than it has for sale.",
            WarningWords.Of(new Warning(WarningCode.BreakEvenBeyondRun, "in the engine's words"), Estimate with { BreakEven = new BreakEven(1250, false, 1m) }, default, Written.Metric));

    [Fact]
    public void How_near_to_a_step_of_the_postage_a_piece_is_warned_of_is_the_engines_own_figure() => Assert.StartsWith(
        $"Paper varies, and the piece is within {Written.German.Percent(PostageChoice.PaperVaries)} of its postage step's limit; ",
        WarningWords.Of(new Warning(WarningCode.NearPostageStep, string.Empty), Estimate, default, Written.German),
        StringComparison.Ordinal);

    [Fact]
    public void Every_warning_has_words() =>
        Assert.All(Enum.GetValues<WarningCode>(), code => Assert.NotEmpty(
            WarningWords.Of(new Warning(code, string.Empty), Estimate with { BreakEven = new BreakEven(1250, false, 1m) }, default, Written.Metric)));
}
