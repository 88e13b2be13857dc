using Bunit;
using PressRun.Engine.Editions;
using PressRun.Web.Shared;

namespace PressRun.Web.Tests.RunPlans;

public class NobodyBindsTests
{
    [Theory]
    [InlineData(Binding.Saddle, "Nobody folds or staples this yet: its cost is missing.")]
    [InlineData(Binding.Side, "Nobody staples this yet: its cost is missing.")]
    [InlineData(Binding.Perfect, "Nobody glues this yet: its cost is missing.")]
    public async Task A_book_that_nobody_binds_leads_to_the_bench_and_to_the_shop(Binding binding, string words)
    {
        await using var page = new BunitContext();
        var note = page.Render<NobodyBinds>(parameters => parameters.Add(part => part.Binding, binding).Add(part => part.ShopId, "willow"));
        Assert.Contains(words, note.Markup, StringComparison.Ordinal);
        Assert.Equal(["bench", "shops/willow"], note.FindAll("a").Select(link => link.GetAttribute("href")));
    }
}
