using PressRun.Data.RunPlans;
using PressRun.Web.Papers;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Papers;

public sealed class CalledPlanTests
{
    [Fact]
    public void A_plan_made_of_one_that_was_made_so_does_not_pile_up_what_is_no_longer_so()
    {
        var shop = Named("").PriceList.Name;

        Assert.Equal($"{shop}, on Silk", CalledPlan.Of(Named(shop), "on Silk", []));
        Assert.Equal($"{shop}, half on Silk, half on Laid", CalledPlan.Of(Named($"{shop}, on Silk"), "half on Silk, half on Laid", []));
        Assert.Equal("Winter run, on Silk", CalledPlan.Of(Named("Winter run"), "on Silk", []));
    }

    [Fact]
    public void A_name_that_is_taken_is_numbered_and_none_is_longer_than_a_plans_may_be()
    {
        Assert.Equal("Winter run, on Silk (3)", CalledPlan.Of(Named("Winter run"), "on Silk", ["Winter run, on Silk", "Winter run, on Silk (2)"]));

        var first = CalledPlan.Of(Named("Winter run"), new string('s', 200), []);
        var second = CalledPlan.Of(Named("Winter run"), new string('s', 200), [first]);
        Assert.Equal((120, 120), (first.Length, second.Length));
        Assert.EndsWith("… (2)", second, StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_that_the_program_gave_follows_the_shop_and_one_that_was_typed_stays()
    {
        Assert.Equal("Tern Copyhouse", CalledPlan.AtShop("Blotter Online, another way", "Blotter Online", "Tern Copyhouse", ["Blotter Online"]));
        Assert.Equal("Tern Copyhouse", CalledPlan.AtShop("Blotter Online", "Blotter Online", "Tern Copyhouse", []));
        Assert.Equal("Tern Copyhouse, another way", CalledPlan.AtShop("Blotter Online, another way, another way", "Blotter Online", "Tern Copyhouse", ["Tern Copyhouse"]));
        Assert.Equal("Winter run", CalledPlan.AtShop("Winter run", "Blotter Online", "Tern Copyhouse", []));
        Assert.Equal("Blotter Online, thick cover", CalledPlan.AtShop("Blotter Online, thick cover", "Blotter Online", "Tern Copyhouse", []));
    }

    private static JobSource Named(string name) => APlan.Source(change: plan => plan with { Name = name });
}
