using Bunit;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Web.RunPlans;
using PressRun.Web.Shared;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.RunPlans;

public class RunSentenceTests
{
    [Fact]
    public async Task Every_key_stroke_in_the_number_is_told()
    {
        var told = new List<string>();
        await using var page = Page();
        var sentence = Render(page, unread: false, told.Add);
        await sentence.Find("input").InputAsync(new() { Value = "12" });
        await sentence.Find("input").InputAsync(new() { Value = "120" });
        Assert.Equal(["12", "120"], told);
        Assert.Equal("100", sentence.Find("input").GetAttribute("value"));
    }

    [Fact]
    public async Task While_the_number_cannot_be_read_the_figures_are_marked_as_those_of_the_quantity_they_belong_to()
    {
        await using var page = Page();
        Assert.Equal("Until the number can be read, these are the figures of 100 copies.", Render(page, unread: true, _ => { }).Find("[role=status]").TextContent);
        Assert.Empty(Render(page, unread: false, _ => { }).FindAll("[role=status]"));
    }

    private static BunitContext Page()
    {
        var page = new BunitContext();
        page.Services.AddSingleton<IServerDrafts>(new KeptNowhere());
        page.Services.AddScoped<Drafts>();
        page.JSInterop.Mode = JSRuntimeMode.Loose;
        return page;
    }

    private static IRenderedComponent<RunSentence> Render(BunitContext page, bool unread, Action<string> typing)
    {
        var (costing, answer) = APlan.Worked(APlan.Source());
        return page.Render<RunSentence>(parameters => parameters
            .Add(part => part.Answer, answer).Add(part => part.Format, Written.Metric).Add(part => part.Shown, 100).Add(part => part.Unread, unread)
            .Add(part => part.PaidFor, BreakEvenWords.Of(answer.Estimate, costing.Worked!.Prepared.Job, "", Written.Metric))
            .Add(part => part.SaveQuantity, _ => Task.FromResult<string?>(null)).Add(part => part.Typing, typing));
    }
}
