using System.Globalization;
using PressRun.Data.Presses;
using PressRun.Engine.Copies;
using PressRun.Engine.Measures;
using PressRun.Engine.Quoting;
using PressRun.Web.Payouts;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Tests.Payouts;

public sealed class PayoutTests
{
    private static readonly DateOnly Day = new(2026, 5, 1);

    [Fact]
    public async Task The_file_adds_up_by_rows_in_the_viewers_locale_and_defuses_formulas()
    {
        var format = new PressFormat(Currency.Find("EUR")!, UnitSystem.Metric, CultureInfo.GetCultureInfo("de-DE"));
        ChannelMovement[] lines = [new(new CopyMovement(Day, 1, MovementKind.Printed, 10, 20m), null), new(new CopyMovement(Day, 2, MovementKind.Sold, -5, 50.05m), null)];
        var statement = PayoutStatement.Of(
            lines, new Dictionary<string, Engine.Selling.ChannelCost>(), 10m, [new Claim.PerCopy("=Ada", 0.5m), new Claim.OfProfit("=Ada", 1m), new Claim.OfProfit("Bo", 1m)],
            [new PaidOut("=ada", Day, 3m), new PaidOut("Cy", Day, 1m)], Day, Day, format.Currency).Value;

        var file = await PayoutFiles.OfAsync(statement, format);

        // 50.05 less 10.00 for copies and 2.50 of royalties is 37.55; the first of two equal shares carries the coin left over.
        Assert.Contains("'=Ada;0,50 for each copy sold, 1 share of the profit;21,28;21,28;3,00;18,28", file, StringComparison.Ordinal);
        Assert.Contains("Bo;1 share of the profit;18,77;18,77;0,00;18,77", file, StringComparison.Ordinal);
        Assert.Contains("Cy;promised nothing any more;0,00;0,00;1,00;-1,00", file, StringComparison.Ordinal);
        Assert.Contains("kept by the press;;0,00;0,00;;", file, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_agreements_are_told_apart_person_by_person()
    {
        var format = new PressFormat(Currency.Find("EUR")!, UnitSystem.Metric, CultureInfo.GetCultureInfo("en-IE"));

        var found = ClaimWords.Differences(
            [new Claim.PerCopy("Ada", 0.5m), new Claim.OfProfit("Bo", 1m), new Claim.OfProfit("Cy", 1m)], [new Claim.PerCopy("Ada", 0.6m), new Claim.OfProfit("Cy", 1m), new Claim.OfProfit("Dee", 2m)], format);

        Assert.Equal(
            [("Ada", "0.50 for each copy sold", "0.60 for each copy sold"), ("Bo", "1 share of the profit", "nothing"), ("Dee", "nothing", "2 shares of the profit")], found);
    }

    [Theory]
    [InlineData("de-DE", "12,5", "0.125")]
    [InlineData("en-IE", "12.5 %", "0.125")]
    [InlineData("fr-FR", "0,1%", "0.001")]
    public void A_percentage_is_read_as_it_is_written_in_the_locale(string culture, string typed, string rate)
    {
        var row = ClaimRow.Of(["Ada", typed, nameof(ClaimKind.OfReceipts)]);

        var claim = Assert.IsType<Claim.OfReceipts>(row.Read(CultureInfo.GetCultureInfo(culture)));

        Assert.Equal(decimal.Parse(rate, CultureInfo.InvariantCulture), claim.Rate);
        var format = new PressFormat(Currency.Find("EUR")!, UnitSystem.Metric, CultureInfo.GetCultureInfo(culture));
        Assert.Equal(claim, ClaimRow.Of(claim, format).Read(format.Culture));
    }

    [Theory]
    [InlineData("no json")]
    [InlineData("{}")]
    [InlineData("[[\"a\"]]")]
    [InlineData("[null]")]
    [InlineData("[[\"a\",null,\"b\"]]")]
    [InlineData("[[\"a\",1,\"b\"]]")]
    [InlineData("[]")]
    [InlineData("[[\"much\"],[\"a\",\"1\",\"b\"]]")]
    [InlineData("[[null],[\"a\",\"1\",\"b\"]]")]
    [InlineData("[null,[\"a\",\"1\",\"b\"]]")]
    public void A_draft_that_is_no_list_of_rows_is_no_draft(string text)
    {
        Assert.True(text == "[]" || DraftRows.Read(text, 3) is null);
        Assert.Null(DraftRows.ReadOver(text, 3));
    }

    [Fact]
    public void Rows_come_back_from_a_draft_as_they_were_typed()
    {
        ClaimRow[] rows = [new() { Name = "A \"b\", c", Value = "x", Kind = ClaimKind.OfPrice }, new()];

        Assert.Equal(rows.Select(row => row.Texts), DraftRows.Read(DraftRows.Write(rows.Select(row => row.Texts)), ClaimRow.Fields)!.Select(row => ClaimRow.Of(row).Texts));
        var over = DraftRows.ReadOver(DraftRows.Write(rows.Select(row => row.Texts), 4_000_000_000), ClaimRow.Fields)!.Value;
        Assert.Equal(4_000_000_000, over.Over);
        Assert.Equal(rows.Select(row => row.Texts), over.Rows.Select(row => ClaimRow.Of(row).Texts));
    }
}
