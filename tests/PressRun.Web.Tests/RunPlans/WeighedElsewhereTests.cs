using Bunit;
using PressRun.Data.RunPlans;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Web.Papers;
using PressRun.Web.RunPlans;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.RunPlans;

public class WeighedElsewhereTests
{
    private static readonly JobSource Weighed = Source();

    [Fact]
    public void A_plan_on_other_papers_costs_what_the_comparison_says_of_them()
    {
        var view = APost.View(Weighed);
        var compared = PapersAnswer.Of(Weighed, PaperChoice.Read(view, null, null, "post")).Readings[100]!.Rows.Single(row => row.StockIds[1] == "g150" && row.StockIds[0] == "thick");
        var plan = On("g150");

        var estimate = PreparedJob.Prepare(plan.Build()).Value.Estimate(100).Value;

        Assert.Equal(compared.Copy.Mass, estimate.Copy.Mass);
        Assert.Equal(compared.Copy.Thickness, estimate.Copy.Thickness);
        Assert.Equal(compared.Freight, estimate.Freight);
        Assert.Equal(compared.Postage!.Price, estimate.Postage.Single(choice => choice.ServiceId is not null).Price);

        // By hand (ISO 536): 12 leaves of 140 × 200 mm are 23.52 g heavier at 150 g/m² than at 80, and 12 × 0.08 mm thicker.
        Assert.Equal(60m + 23.52m, estimate.Copy.Mass.Grams);
        Assert.Equal(2.5m + 0.96m, estimate.Copy.Thickness.Millimetres);
    }

    [Fact]
    public void Its_own_comparison_tells_the_papers_of_the_weighed_copy_as_the_scale_did()
    {
        var plan = On("g150");
        var rows = PapersAnswer.Of(plan, PaperChoice.Read(APost.View(plan), null, null, "post")).Readings[100]!.Rows;

        Assert.Equal(60m, rows.Single(row => row.StockIds[1] == "thin" && row.StockIds[0] == "thick").Copy.Mass.Grams);
    }

    [Fact]
    public async Task It_is_said_once_where_the_plans_papers_are_not_those_that_were_weighed()
    {
        await using var page = new BunitContext();

        Assert.StartsWith("A copy was weighed or gauged,", Note(page, On("g150")).Find("p").TextContent, StringComparison.Ordinal);
        Assert.Empty(Note(page, Weighed).Markup.Trim());
        Assert.Empty(Note(page, On("thin")).Markup.Trim());
        Assert.Empty(Note(page, On("g150") with { Edition = On("g150").Edition with { Weighed = null } }).Markup.Trim());
    }

    private static JobSource Source()
    {
        var source = APost.Source();
        return source with { Edition = source.Edition with { Weighed = new Weighed(Mass.FromGrams(60m), Length.FromMillimetres(2.5m)) } };
    }

    private static JobSource On(string stock) =>
        Weighed with { Plan = Weighed.Plan with { Stocks = new Dictionary<Guid, string> { [Weighed.Edition.Parts[1].Id] = stock } } };

    private static IRenderedComponent<WeighedElsewhere> Note(BunitContext page, JobSource source) =>
        page.Render<WeighedElsewhere>(parameters => parameters.Add(note => note.Source, source));
}
