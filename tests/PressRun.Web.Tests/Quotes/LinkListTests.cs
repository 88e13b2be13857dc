using Bunit;
using PressRun.Data.Quotes;
using PressRun.Engine.Quoting;
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

    // Without a word the link would open until another day than stands there.
    [Theory]
    [InlineData("soon")]
    [InlineData("1 March 2026")]
    public async Task No_link_is_made_until_its_last_day_can_be_read(string typed)
    {
        await using var page = new BunitContext();
        var made = 0;
        var form = page.Render<LinkForm>(with => with.Add(link => link.View, AQuote.View()).Add(link => link.Today, new DateOnly(2026, 3, 2)).Add(link => link.Make, _ => Task.FromResult<string?>(++made == 0 ? "" : null)));

        await form.Find("input[aria-label='Last day of the link']").ChangeAsync(typed);
        await form.Find("form").SubmitAsync();
        Assert.Equal(0, made);
        Assert.Contains("Write a day", form.Find("p.cost[role=alert]").TextContent, StringComparison.Ordinal);

        await form.Find("input[aria-label='Last day of the link']").ChangeAsync("9 March 2026");
        await form.Find("form").SubmitAsync();
        Assert.Equal(1, made);
        Assert.Empty(form.FindAll("p.cost"));
    }

    [Fact]
    public async Task Whoever_may_only_read_is_offered_no_end_of_a_link_and_no_payment()
    {
        await using var page = new BunitContext();

        Assert.Empty(Render(page, null).FindAll("button"));
        Assert.Empty(page.Render<BillTable>(with => with.Add(bill => bill.View, AQuote.View()).Add(bill => bill.Today, ARun.Day)).FindAll("form, button, input"));
    }

    [Fact]
    public void A_link_that_ended_with_its_makers_right_says_so_and_keeps_an_answer()
    {
        var view = AQuote.View();
        var gone = AQuote.Link with { MakerGoneAt = AQuote.MadeAt.AddDays(1) };

        Assert.False(gone.IsOpen(AQuote.MadeAt));
        Assert.Equal("ended, because whoever made it may change nothing here any more", LinkWords.Stands(gone, view, AQuote.MadeAt));
        Assert.Equal("has agreed", LinkWords.Stands(gone with { Answer = QuoteAnswer.Agreed }, view, AQuote.MadeAt));
        Assert.Equal(
            "The link of Ada ended, because whoever made it may change nothing in this press any more.",
            QuoteWords.Of(new QuoteEvent(2, AQuote.MadeAt, QuoteEventKind.LinkEndedWithMaker, AQuote.Link.Id, "Eel Pie Editions"), view));
        Assert.Equal(
            "Ed (the press) made a link for Ada.", QuoteWords.Of(new QuoteEvent(1, AQuote.MadeAt, QuoteEventKind.LinkMade, AQuote.Link.Id, "Ed"), view));
    }

    [Fact]
    public async Task Links_of_one_name_are_told_apart_by_the_day_on_which_each_was_made_and_by_whom()
    {
        await using var page = new BunitContext();
        var later = AQuote.Link with { Id = Guid.NewGuid(), MadeAt = AQuote.MadeAt.AddDays(2) };
        var view = AQuote.View(events: [
            new QuoteEvent(1, AQuote.MadeAt, QuoteEventKind.LinkMade, AQuote.Link.Id, "Ed"), new QuoteEvent(2, later.MadeAt, QuoteEventKind.LinkMade, later.Id, "Olga")]);
        view = AQuote.Again(view, view.Whole with { Links = [AQuote.Link, later] });

        var links = page.Render<LinkList>(with => with.Add(list => list.View, view).Add(list => list.Now, AQuote.MadeAt)).FindAll("li .note").Select(note => note.TextContent).ToArray();

        Assert.EndsWith("made on 2 March 2026 by Ed", links[0].Trim(), StringComparison.Ordinal);
        Assert.EndsWith("made on 4 March 2026 by Olga", links[1].Trim(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_bill_adds_up_what_was_paid_and_is_open_and_says_what_was_paid_too_much()
    {
        await using var page = new BunitContext();
        var bill = AQuote.View().Bill;
        var paid = AQuote.View(events: [new QuoteEvent(1, AQuote.MadeAt, QuoteEventKind.Paid, null, "", Amount: bill[1].Amount + 2.5m, Part: 1, Day: ARun.Day)]);
        var rows = page.Render<BillTable>(with => with.Add(table => table.View, paid).Add(table => table.Today, ARun.Day)).FindAll("tbody tr, tfoot tr")
            .Select(row => row.QuerySelectorAll("td").Select(cell => cell.TextContent).ToArray()).ToList();

        Assert.Equal("2.50 too much", rows[1][2]);
        Assert.Equal([paid.Format.Money(paid.Quote.Landed), paid.Format.Money(bill[1].Amount + 2.5m), paid.Format.Money(bill[0].Amount - 2.5m)], rows[2]);
    }

    private static IRenderedComponent<LinkList> Render(BunitContext page, Func<QuoteLink, Task>? end) =>
        page.Render<LinkList>(with => with.Add(list => list.View, AQuote.View()).Add(list => list.Now, AQuote.MadeAt).Add(list => list.End, end));
}
