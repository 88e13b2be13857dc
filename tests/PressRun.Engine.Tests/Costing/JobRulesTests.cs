using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Costing;

public sealed class JobRulesTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    [InlineData(1_000_001)]
    public void A_run_of_none_or_of_more_than_a_million_is_refused(int quantity)
    {
        Assert.Equal("$.quantity", Assert.Single((Plain() with { Quantity = quantity }).Problems()).Path);
        Assert.Equal("$.quantity", Assert.Single(Plain().Prepared().Estimate(quantity).Problems).Path);
        Assert.NotNull(Plain().Prepared().LandedCost(quantity, out _));
    }

    [Fact]
    public void A_run_of_a_million_is_costed() => Assert.Equal(250_000m, Plain().Prepared().LandedCost(1_000_000));

    [Fact]
    public void A_price_list_that_is_not_yet_in_force_is_refused() =>
        Assert.Equal("$.shop.validFrom", Assert.Single(Plain().With(shop => shop with { ValidFrom = Date.AddDays(1) }).Problems()).Path);

    [Fact]
    public void A_stock_without_caliper_bulk_and_finish_is_refused_even_where_no_part_uses_it()
    {
        var unknown = new Stock("odd", "Odd lot", PaperWeight.FromGrammage(90m), null, null, null);
        Assert.Equal("$.stocks['odd']", Assert.Single((Plain() with { Stocks = [PlainStock(), unknown] }).Problems()).Path);
    }

    [Fact]
    public void A_part_on_a_stock_that_is_not_listed_and_a_channel_with_such_a_mailer_are_refused_together()
    {
        var job = Plain().WithEdition(edition => edition with { Parts = [Part(4), Part(4, "plate", "none")] }) with { Channels = [Channel() with { MailerId = "none" }] };
        Assert.Equal(["$.edition.parts[1].stock", "$.channels[0].mailer"], job.Problems().Select(problem => problem.Path));
    }

    [Fact]
    public void A_page_without_a_side_is_refused() =>
        Assert.Equal(["$.edition.page.width", "$.edition.page.height"], Plain().WithEdition(edition => edition with { Page = MmSize(0, -1) }).Problems().Select(problem => problem.Path));

    [Fact]
    public void A_problem_reads_as_path_value_and_rule()
    {
        Assert.Equal("$.quantity is 0: A run has 1 to 1000000 good copies.", Assert.Single((Plain() with { Quantity = 0 }).Problems()).ToString());
        Assert.Equal("$.x: Something.", new Problem("$.x", null, "Something.").ToString());
    }

    [Fact]
    public void Asking_a_refused_outcome_for_its_answer_is_an_error_of_the_program() =>
        Assert.Throws<InvalidOperationException>(() => Plain().Prepared().Estimate(0).Value);
}
