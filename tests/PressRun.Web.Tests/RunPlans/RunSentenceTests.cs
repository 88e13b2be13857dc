using Bunit;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Data.RunPlans;
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

    [Fact]
    public async Task A_number_that_was_read_and_cannot_be_worked_out_says_why_and_where_that_is_mended()
    {
        await using var page = Page();
        var told = Render(page, unread: false, _ => { }, refused: new PlanProblem("The freight weighs 29 kg.", "shops/willow?list=1", "Open the price list")).Find("[role=status]");

        Assert.StartsWith("That number cannot be worked out: The freight weighs 29 kg. These are the figures of 100 copies.", told.TextContent, StringComparison.Ordinal);
        Assert.Equal("shops/willow?list=1", told.QuerySelector("a")!.GetAttribute("href"));
    }

    [Fact]
    public async Task Of_two_halves_it_says_how_many_copies_are_on_which_paper_and_what_each_weighs()
    {
        await using var page = Page();
        var source = APlan.Source(151);
        var said = Render(page, unread: false, _ => { }, source with { Plan = source.Plan with { SecondHalf = new PlanHalf(source.Edition.Parts[1].Id, "green") } }).Find(".sentence").TextContent;

        // By hand (ISO 536): 12 leaves of 140 × 200 mm are 3.36 g heavier at 90 g/m² than at 80.
        Assert.Contains("76 of them have the inside on thin, weigh", said, StringComparison.Ordinal);
        Assert.Contains("75 have it on green, weigh", said, StringComparison.Ordinal);
        Assert.DoesNotContain("A copy weighs", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_wrong_with_the_number_stands_beneath_the_sentence_and_names_the_field_it_is_about()
    {
        await using var page = Page();
        var sentence = Render(page, unread: false, _ => { }, problem: "Write a whole number of copies.");
        await sentence.Find("input").ChangeAsync(new() { Value = "abc" });

        var says = sentence.Find("[role=alert]");
        Assert.Equal("Write a whole number of copies.", says.TextContent.Trim());
        Assert.Null(says.Closest(".sentence"));
        Assert.Equal(("true", says.Id), (sentence.Find("input").GetAttribute("aria-invalid"), sentence.Find("input").GetAttribute("aria-describedby")));
    }

    private static BunitContext Page()
    {
        var page = new BunitContext();
        page.Services.AddSingleton<IServerDrafts>(new KeptNowhere());
        page.Services.AddScoped<Drafts>();
        page.JSInterop.Mode = JSRuntimeMode.Loose;
        return page;
    }

    private static IRenderedComponent<RunSentence> Render(BunitContext page, bool unread, Action<string> typing, JobSource? source = null, string? problem = null, PlanProblem? refused = null)
    {
        var (costing, answer) = APlan.Worked(source ?? APlan.Source());
        return page.Render<RunSentence>(parameters => parameters
            .Add(part => part.Answer, answer).Add(part => part.Format, Written.Metric).Add(part => part.Shown, 100).Add(part => part.Unread, unread).Add(part => part.Refused, refused)
            .Add(part => part.Job, costing.Worked!.Prepared.Job).Add(part => part.PaidFor, BreakEvenWords.Of(answer.Estimate, costing.Worked!.Prepared.Job, "", Written.Metric))
            .Add(part => part.SaveQuantity, _ => Task.FromResult(problem)).Add(part => part.Typing, typing));
    }
}
