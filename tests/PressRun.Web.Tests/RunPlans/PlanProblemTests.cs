using PressRun.Data.RunPlans;
using PressRun.Engine.Costing;
using PressRun.Web.RunPlans;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.RunPlans;

public class PlanProblemTests
{
    private const string Edition = "titles/marsh-letters/2";

    [Fact]
    public void A_paper_that_the_list_does_not_price_is_named_and_leads_to_that_list()
    {
        var source = APlan.Source() with { PriceList = ARun.Shop with { Paper = [.. ARun.Shop.Paper.Where(price => price.StockId != "thin")] } };
        var problem = Assert.Single(PreparedJob.Prepare(source.Build()).Problems);
        var words = PlanProblem.Of(problem, source, Edition, Written.Metric);
        Assert.Equal("Inside: No sheet of the shop takes this part: on 297 × 420 mm there is no price for paper Thin cream.", words.Words);
        Assert.Equal($"shops/willow?list={source.Plan.PriceListId}", words.MendAt);
    }

    [Fact]
    public void A_page_count_that_cannot_be_folded_leads_to_the_book()
    {
        var problem = PlanProblem.Of(new Problem("$.edition.parts[1].pages", "30", "Take 28 or 32."), APlan.Source(), Edition, Written.Metric);
        Assert.Equal(("Inside: Take 28 or 32.", Edition), (problem.Words, problem.MendAt));
    }

    [Theory]
    [InlineData("$.shop.bookPrices", "shops/willow?list=")]
    [InlineData("$.stocks['thin']", "papers")]
    [InlineData("$.bench.steps[0].spoilage", "bench")]
    [InlineData("$.channels[0].mailer", "selling")]
    [InlineData("$.postage[0]", "post")]
    [InlineData("$.edition.trim.spine", Edition)]
    [InlineData("$.quantity", "shops/willow?list=")]
    public void Each_problem_leads_to_the_page_that_mends_it(string path, string page)
    {
        var source = APlan.Source();
        Assert.Equal(
            page.EndsWith('=') ? page + source.Plan.PriceListId : page,
            PlanProblem.Of(new Problem(path, null, "A rule."), source, Edition, Written.Metric).MendAt);
    }
}
