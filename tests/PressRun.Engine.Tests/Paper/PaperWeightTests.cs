using CsCheck;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;

namespace PressRun.Engine.Tests.Paper;

public sealed class PaperWeightTests
{
    [Theory]
    [InlineData(28, PaperCategory.Bond, 105.3, 0.05)] // PAP-01. Sylvamo basis-weight calculator, shop.sylvamo.com.
    [InlineData(20, PaperCategory.Bond, 75.2, 0.05)] // PAP-02. Paper weights and conversion tables, mcgpaper.com.
    [InlineData(90, PaperCategory.Text, 133.2, 0.1)] // PAP-04. Xerox Paper Guide (Nuvera), p. A-2.
    [InlineData(100, PaperCategory.Cover, 270.4, 0.1)] // PAP-05. The same page.
    [InlineData(50, PaperCategory.Text, 74, 0.5)] // PAP-06. Times Printers, paper-size guide, section 4.
    [InlineData(16, PaperCategory.Bond, 60.2, 0.05)] // PAP-09. Paper weights and conversion tables, mcgpaper.com.
    [InlineData(60, PaperCategory.Text, 89, 0.5)] // PAP-11. Customary table value, from memory.
    [InlineData(80, PaperCategory.Text, 118, 0.5)] // PAP-13. Customary table value, from memory.
    [InlineData(100, PaperCategory.Text, 148, 0.5)] // PAP-14. discuss.pixls.us, thread 10182.
    [InlineData(65, PaperCategory.Cover, 176, 0.5)] // PAP-15. Customary table value, from memory.
    [InlineData(100, PaperCategory.Tag, 163, 0.5)] // PAP-17. Xerox Paper Guide (Nuvera), p. A-2, multiplier of tag.
    [InlineData(110, PaperCategory.Index, 199, 0.5)] // Customary table value, from memory.
    [InlineData(100, PaperCategory.Bristol, 219, 0.5)] // Customary table value, from memory.
    public void A_basis_weight_has_the_grammage_of_the_published_tables(int pounds, PaperCategory category, double grammage, double tolerance) =>
        Assert.Equal(grammage, (double)PaperWeight.FromBasisWeight(pounds, category).GramsPerSquareMetre, tolerance);

    [Theory]
    [InlineData(PaperCategory.Bond, 374)]
    [InlineData(PaperCategory.Text, 950)]
    [InlineData(PaperCategory.Cover, 520)]
    [InlineData(PaperCategory.Index, 777.75)]
    [InlineData(PaperCategory.Tag, 864)]
    [InlineData(PaperCategory.Bristol, 641.25)]
    public void A_pound_on_a_square_inch_of_basic_size_is_the_trades_constant(PaperCategory category, double squareInches)
    {
        // PAP-19. 453.59237 / (500 × 0.00064516), computed from the exact pound and inch.
        Assert.Equal(1406.139, (double)PaperWeight.FromBasisWeight(1m, category).GramsPerSquareMetre * squareInches, 0.001);
    }

    [Fact]
    public void A_grammage_is_itself_and_the_default_is_zero()
    {
        Assert.Equal(120m, PaperWeight.FromGrammage(120m).GramsPerSquareMetre);
        Assert.Null(PaperWeight.FromGrammage(120m).Category);
        Assert.Equal(0m, default(PaperWeight).GramsPerSquareMetre);
    }

    [Fact]
    public void Five_hundred_sheets_of_the_basic_size_weigh_the_stated_pounds() =>
        Gen.Select(Gen.Int[1, 300], Gen.Enum<PaperCategory>()).Sample((pounds, category) =>
        {
            var weight = PaperWeight.FromBasisWeight(pounds, category);
            var (width, height) = PaperWeight.BasicSize(category);
            var ream = 500m * PressRun.Engine.Editions.Grams.Of(new PressRun.Engine.Editions.Size(width, height), weight);
            Assert.Equal(pounds, (double)ream.Pounds, 1e-12);
            Assert.Equal((pounds, category), (weight.Stated, weight.Category!.Value));
        });

    [Fact]
    public void A_category_that_does_not_exist_is_an_error_of_the_program() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PaperWeight.BasicSize((PaperCategory)99));
}
