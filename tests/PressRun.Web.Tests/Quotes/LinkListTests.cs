using Bunit;
using PressRun.Data.Quotes;
using PressRun.Web.Quotes;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Quotes;

public sealed class LinkListTests
{
    [Fact]
    public async Task A_link_is_ended_by_a_second_press_that_says_what_ends_and_not_by_the_first()
    {
        await using var page = new BunitContext();
        var ended = new List<Guid>();
        var list = Render(page, link =>
        {
            ended.Add(link.Id);
            return Task.CompletedTask;
        });

        list.Find("button").Click();

        Assert.Empty(ended);
        Assert.Contains("An ended link never opens again.", list.Find("[role=group]").TextContent, StringComparison.Ordinal);
        Assert.Contains("is not waited for any more", list.Find("[role=group]").TextContent, StringComparison.Ordinal);
        page.JSInterop.VerifyFocusAsyncInvoke();
        list.Find("button.plain").Click();
        Assert.Empty(list.FindAll("[role=group]"));
        list.Find("button").Click();
        list.Find("[role=group] button.button").Click();
        Assert.Equal([AQuote.Link.Id], ended);
        Assert.Empty(list.FindAll("[role=group]"));
    }

    [Fact]
    public async Task Whoever_may_only_read_is_offered_no_end_of_a_link_and_no_payment()
    {
        await using var page = new BunitContext();

        Assert.Empty(Render(page, null).FindAll("button"));
        Assert.Empty(page.Render<BillTable>(with => with.Add(bill => bill.View, AQuote.View()).Add(bill => bill.Today, ARun.Day)).FindAll("form, button, input"));
    }

    private static IRenderedComponent<LinkList> Render(BunitContext page, Func<QuoteLink, Task>? end) =>
        page.Render<LinkList>(with => with.Add(list => list.View, AQuote.View()).Add(list => list.Now, AQuote.MadeAt).Add(list => list.End, end));
}
