using PressRun.Engine.Costing;
using PressRun.Web.Papers;
using PressRun.Web.RunPlans;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Papers;

public class PapersAnswerTests
{
    private static readonly PapersView View = APost.View();

    [Fact]
    public void Each_row_is_what_a_plan_on_these_papers_costs()
    {
        var answer = PapersAnswer.Of(View.Source, Choice([100, 200], (1, ["g70", "g150"])));

        Assert.Null(answer.Problem);
        foreach (var (quantity, reading) in answer.Readings)
        {
            // The plan's own paper is among them unasked.
            Assert.Equal(["g70", "g150", "thin"], reading!.Rows.Select(row => row.StockIds[1]));
            foreach (var row in reading.Rows)
            {
                var stocks = View.Source.Edition.Parts.Zip(row.StockIds).ToDictionary(pair => pair.First.Id, pair => pair.Second);
                var plan = PreparedJob.Prepare((View.Source with { Plan = View.Source.Plan with { Stocks = stocks } }).Build()).Value.Estimate(quantity).Value;
                Assert.Equal(plan.UnitCost, row.UnitCost);
                Assert.Equal(plan.Copy, row.Copy);
            }
        }
    }

    [Fact]
    public void More_than_a_page_can_say_are_not_compared()
    {
        string[] all = ["g70", "g95", "g110", "g130", "g150", "thick", "thin", "green"];

        Assert.Equal(512, PapersAnswer.Of(View.Source, Choice([100], (0, all), (1, all), (2, all))).Readings[100]!.Rows.Count);
        var refused = PapersAnswer.Of(View.Source, Choice([100, 101, 102, 103, 104, 105], (0, all), (1, all), (2, all)));
        Assert.Empty(refused.Readings);
        Assert.True(refused.TooMany);
    }

    [Fact]
    public void A_job_that_would_take_minutes_is_not_compared()
    {
        string[] all = ["g70", "g95", "g110", "g130", "g150", "thick", "thin", "green"];
        var slow = View.Source with { PriceList = View.Source.PriceList with { Print = HeavyRun.Slower.Print } };

        Assert.Equal(CostingEffort.TooLong, PapersAnswer.Of(slow, Choice([100], (0, all), (1, all), (2, all))).Problem);
        Assert.NotNull(PapersAnswer.Of(slow, Choice([100], (1, ["g70"]))).Readings[100]);
    }

    [Fact]
    public void Papers_without_a_price_are_told_once_for_each_reason()
    {
        var answer = PapersAnswer.Of(View.Source, Choice([100], (0, ["unpriced"]), (1, ["g70", "g95"])));

        Assert.Equal(3, answer.Readings[100]!.Rows.Count);
        Assert.Equal(3, Assert.Single(answer.Refused).Count);
    }

    [Fact]
    public void Halves_on_a_paper_that_the_shop_does_not_price_say_why()
    {
        Assert.True(PapersAnswer.Halves(View.Source, 1, "thin", "g95", 100).Succeeded);
        Assert.NotEmpty(PapersAnswer.Halves(View.Source, 1, "thin", "unpriced", 100).Problems);
    }

    private static PaperChoice Choice(IReadOnlyList<int> quantities, params (int Part, string[] Papers)[] tried) =>
        new(tried.ToDictionary(part => part.Part, part => (IReadOnlyList<string>)part.Papers), quantities, "post");
}
