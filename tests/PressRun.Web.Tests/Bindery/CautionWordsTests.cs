using System.Globalization;
using PressRun.Data.Presses;
using PressRun.Engine.Bench;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Web.Bindery;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Tests.Bindery;

public sealed class CautionWordsTests
{
    private static readonly PressFormat Format = new(Currency.Find("USD")!, UnitSystem.Metric, CultureInfo.GetCultureInfo("en-US"));

    private static readonly PartPieces Cover = new(
        new Part("cover", 4, "card", Ink.Colour, Ink.None), new Stock("card", "Card", PaperWeight.FromGrammage(250m), null, null, Finish.Coated), 1, 2, default, Mass.Zero);

    [Theory]
    [InlineData(BenchCautionCode.AgainstGrain, "250 g/m², is folded across the grain")]
    [InlineData(BenchCautionCode.AgainstGrainScored, "although the shop sees to its fold")]
    [InlineData(BenchCautionCode.CreepBeyondTrim, "stand out by 2.5 mm, more than the 2 mm")]
    [InlineData(BenchCautionCode.StapleTooShort, "through 2.5 mm of paper, and a leg of 6 mm holds 2 mm")]
    [InlineData(BenchCautionCode.FoldUnscored, "250 g/m², is heavier than 170 g/m²: score")]
    public void Each_says_what_it_found_and_what_may_be(BenchCautionCode code, string says) =>
        Assert.Contains(says, CautionWords.Of(new BenchCaution(code, Cover, Length.FromMillimetres(2.5m), Length.FromMillimetres(2m)), BenchLimits.Usual, Format), StringComparison.Ordinal);

    [Fact]
    public void A_staple_that_is_too_short_names_the_leg_that_would_do() =>
        Assert.Contains(
            $"take legs of {Format.Thickness(Length.FromMillimetres(4.5m) + BenchLimits.Usual.Clinch)} or more",
            CautionWords.Of(new BenchCaution(BenchCautionCode.StapleTooShort, null, Length.FromMillimetres(4.5m), Length.FromMillimetres(3m)), BenchLimits.Usual, Format),
            StringComparison.Ordinal);

    [Fact]
    public void Creep_of_an_untrimmed_book_is_told_without_a_limit_of_nothing() =>
        Assert.EndsWith("the fore-edge is not trimmed.", CautionWords.Of(new BenchCaution(BenchCautionCode.CreepBeyondTrim, null, Length.FromMillimetres(2m), default), BenchLimits.Usual, Format), StringComparison.Ordinal);
}
