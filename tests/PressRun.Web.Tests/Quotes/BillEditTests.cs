using System.Globalization;
using AngleSharp.Html.Dom;
using Bunit;
using PressRun.Engine.Quoting;
using PressRun.Web.Quotes;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Quotes;

public sealed class BillEditTests
{
    [Fact]
    public async Task A_part_is_chosen_to_be_one_amount_and_to_be_a_share_again()
    {
        await using var page = new BunitContext();
        var rows = new List<BillRow> { new() { Name = "Eel Pie Editions" }, new() { Name = "Ada", Carries = "2" } };
        var bill = page.Render<BillEdit>(with => with
            .Add(edit => edit.Rows, rows).Add(edit => edit.Total, 100m).Add(edit => edit.Format, AQuote.View().Format).Add(edit => edit.Press, "Eel Pie Editions").Add(edit => edit.DraftKey, "quote-bill/1"));

        Choice(bill).Change("true");
        Assert.Equal("as one amount", Chosen(bill));
        Assert.Equal(new BillPart.Fixed("Ada", 2m), BillRow.Read(rows, AQuote.View().Format.Culture).Parts![1]);
        Assert.Equal(["98.00", "2.00", "100.00"], Amounts(bill));

        Choice(bill).Change("false");
        Assert.Equal("shares of the rest", Chosen(bill));
        Assert.Equal(["33.33", "66.67", "100.00"], Amounts(bill));
    }

    [Fact]
    public async Task What_stands_in_the_way_of_a_bill_is_said_in_the_viewer_s_language()
    {
        CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("de");
        await using var page = new BunitContext();
        var bill = page.Render<BillEdit>(with => with
            .Add(edit => edit.Rows, [new BillRow { Name = "Ada", Carries = "102", IsFixed = true }]).Add(edit => edit.Total, 100m).Add(edit => edit.Format, AQuote.View().Format));

        Assert.Equal("Die festen Beträge sind zusammen 2 höher als die Rechnung. Senke einen davon.", bill.Find("[role=status]").TextContent);
    }

    private static IHtmlSelectElement Choice(IRenderedComponent<BillEdit> bill) => (IHtmlSelectElement)bill.FindAll("select")[1];

    private static string Chosen(IRenderedComponent<BillEdit> bill) => Choice(bill).Options.Single(option => option.Value == Choice(bill).GetAttribute("value")).Text;

    private static IEnumerable<string> Amounts(IRenderedComponent<BillEdit> bill) => bill.FindAll("tbody td:nth-child(4), tfoot td.num").Select(cell => cell.TextContent);
}
