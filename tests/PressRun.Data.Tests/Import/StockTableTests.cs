using System.Globalization;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;

namespace PressRun.Data.Tests.Import;

public sealed class StockTableTests
{
    private static readonly CellManners Metric = new(CultureInfo.GetCultureInfo("en"), UnitSystem.Metric);

    [Fact]
    public void A_paper_is_read_from_what_a_person_types()
    {
        var read = new StockShape().Read([["", "Quay offset", "80 lb text", "", "1,3", "unc", ""]], Metric);

        var stock = Assert.Single(read.Things).Thing.Item;
        Assert.Equal(new Stock("", "Quay offset", PaperWeight.FromBasisWeight(80m, PaperCategory.Text), null, 1.3m, Finish.Uncoated), stock);
        Assert.Empty(read.Problems);
    }

    [Fact]
    public void A_number_without_a_unit_is_in_the_press_s_own()
    {
        var read = new StockShape().Read([["", "Quay offset", "120", "148", "", "", ""]], Metric);

        var stock = Assert.Single(read.Things).Thing.Item;
        Assert.Equal((PaperWeight.FromGrammage(120m), Length.FromMicrometres(148m)), (stock.Weight, stock.StatedCaliper!.Value));
    }

    [Fact]
    public void Each_wrong_cell_says_what_would_be_right()
    {
        var read = new StockShape().Read([["", "", "heavy", "-3", "", "", ""], ["", "Card", "300", "", "", "", ""]], Metric);

        Assert.Empty(read.Things);
        Assert.Equal([(0, 1), (0, 2), (0, 3), (1, 3)], read.Problems.Select(problem => (problem.Row, problem.Column)));
        Assert.Equal("Write a caliper, a bulk or a finish, so that the paper's thickness is known.", read.Problems[^1].Rule);
        Assert.All(read.Problems, problem => Assert.EndsWith(".", problem.Rule, StringComparison.Ordinal));
    }

    [Fact]
    public void A_name_that_stands_twice_is_told_at_the_second()
    {
        var read = new StockShape().Read([["", "Card", "300", "", "", "coated", ""], ["", "card ", "200", "", "", "coated", ""]], Metric);

        Assert.Equal((1, 1), (Assert.Single(read.Problems).Row, read.Problems[0].Column));
    }

    [Theory]
    [InlineData("1,200 mm")]
    [InlineData("1.200")]
    public void A_mark_that_could_group_or_part_is_not_guessed_in_a_measure(string typed)
    {
        var culture = typed.Contains(',', StringComparison.Ordinal) ? "en" : "de";

        var read = new LengthCell(JobFile.JobRules.Side).Read(typed, new CellManners(CultureInfo.GetCultureInfo(culture), UnitSystem.Metric));

        Assert.NotNull(read.Rule);
    }
}
