using Bunit;
using PressRun.Data.Import.Notes;
using PressRun.Data.Import.Shapes;
using PressRun.Engine.Costing;
using PressRun.Web.Libraries;
using PressRun.Web.Libraries.Files;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Libraries;

public class NotesPartTests
{
    private static readonly Shop Empty = PriceListTable.Empty("An invented shop", new DateOnly(2026, 1, 1));

    private static readonly NoteLine[] Lines =
    [
        new(1, "An invented shop, all by hand"), new(2, "Valid from 1.3.2026"), new(9, "Prices without 20 % tax"), new(10, "Delivery 6.90, free from 150.00"),
    ];

    [Fact]
    public async Task Each_term_is_a_sentence_beside_a_tick_with_the_words_it_was_read_from_and_none_is_ticked()
    {
        await using var page = new BunitContext();
        var part = Rendered(page, Choice(Lines), Empty);

        Assert.Equal(3, part.FindAll("input[type=checkbox]").Count);
        Assert.DoesNotContain(part.FindAll("input[type=checkbox]"), tick => tick.HasAttribute("checked"));
        var labels = part.FindAll("label").Select(label => label.TextContent.Trim()).ToList();
        Assert.StartsWith("20\u00A0% tax comes on top of the prices – take this", labels[0], StringComparison.Ordinal);
        Assert.StartsWith("The same tax comes on top of delivery too, as at most shops – take this", labels[1], StringComparison.Ordinal);
        Assert.StartsWith("Delivery costs 6.90, whatever the order weighs, free from goods of 150.00 – take this", labels[2], StringComparison.Ordinal);
        Assert.EndsWith("row 10, “Delivery 6.90, free from 150.00”", labels[2], StringComparison.Ordinal);
        Assert.Contains("row 1, “An invented shop, all by hand”", part.Find(".import-passed").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_ticked_is_taken_and_nothing_else()
    {
        await using var page = new BunitContext();
        var choice = Choice(Lines);
        var part = Rendered(page, choice, Empty);
        Assert.Empty(choice.Taken(Empty));

        await part.FindAll("input[type=checkbox]")[0].ChangeAsync(true);
        await part.FindAll("input[type=checkbox]")[2].ChangeAsync(true);
        await part.FindAll("input[type=checkbox]")[2].ChangeAsync(false);

        var list = NotedTerm.Into(Empty, choice.Taken(Empty));
        Assert.Equal((0.2m, null, Empty.ValidFrom), (list.Order.TaxRate, list.Order.Delivery, list.ValidFrom));

        // Read again, as a change of the mapping has it: the tick stays.
        choice.Look(new FileNotes(Lines, int.MaxValue), LibraryManners.Of(ALedger.Press));
        Assert.IsType<NotedTax>(Assert.Single(choice.Taken(Empty)));
    }

    [Fact]
    public async Task What_the_list_says_otherwise_is_told_and_what_it_cannot_hold_has_no_tick()
    {
        await using var page = new BunitContext();
        var taxed = Empty with { Order = Empty.Order with { TaxRate = 0.19m } };

        Assert.Contains("take this, in place of 19", Rendered(page, Choice(Lines), taxed).Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("in place of", Rendered(page, Choice(Lines), Empty with { Order = Empty.Order with { TaxOnDelivery = true } }).Markup, StringComparison.Ordinal);
        var inside = Rendered(page, Choice(new NoteLine(1, "All prices incl. 20 % VAT"), new NoteLine(2, "Free delivery from 150.00")), Empty);
        Assert.Empty(inside.FindAll("input"));
        Assert.Contains("Leave the list's tax empty", inside.Markup, StringComparison.Ordinal);
        Assert.Contains("no price of delivery yet", inside.Markup, StringComparison.Ordinal);
    }

    private static TermChoice Choice(params NoteLine[] lines)
    {
        var choice = new TermChoice();
        choice.Look(new FileNotes(lines, int.MaxValue), LibraryManners.Of(ALedger.Press));
        return choice;
    }

    private static IRenderedComponent<NotesPart> Rendered(BunitContext page, TermChoice choice, Shop list) =>
        page.Render<NotesPart>(set => set.Add(part => part.Noted, choice).Add(part => part.List, list).Add(part => part.Press, ALedger.Press));
}
