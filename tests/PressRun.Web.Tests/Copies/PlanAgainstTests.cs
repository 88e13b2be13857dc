using Bunit;
using PressRun.Engine.Copies;
using PressRun.Web.Copies;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Copies;

public class PlanAgainstTests
{
    private static readonly PrintingActual Actual = new(48, 120m, 0m, 2m, 12m, 10m, [new("stitch", 60m, 50, 2)]) { Invoice = [new(InvoicePart.Delivery, 15m)] };

    [Fact]
    public async Task A_printing_is_held_against_its_plan_in_words_and_line_by_line()
    {
        var plan = ALedger.View().Plan!;
        var said = await SaidAsync(plan, Actual);

        Assert.Contains($"cost {Written.Metric.Sum(Actual.LandedCost(2)).Replace('\u00a0', ' ')}, ", said, StringComparison.Ordinal);
        Assert.Contains($"planned {Written.Metric.Money(plan.Estimate.UnitCost)}.", said, StringComparison.Ordinal);
        Assert.Contains("fewer came out good", said, StringComparison.Ordinal);
        Assert.Contains("The rest of the invoice", said, StringComparison.Ordinal);
        Assert.Contains("2 of 50 went wrong", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_plan_or_without_figures_it_says_so()
    {
        Assert.Contains("no plan that can be worked out", await SaidAsync(null, Actual), StringComparison.Ordinal);
        Assert.Contains("was not written down; they stand at 96.00, 2.00 each.", await SaidAsync(ALedger.View().Plan, null), StringComparison.Ordinal);
    }

    [Fact]
    public void A_difference_too_small_to_show_is_as_planned()
    {
        Assert.Equal("as planned", ActualWords.Difference(10m, 10.004m, Written.Metric.Money, 2));
        Assert.Equal("4.20 more", ActualWords.Difference(10m, 14.2m, Written.Metric.Money, 2));
        Assert.Equal("1.00 less", ActualWords.Difference(10m, 9m, Written.Metric.Money, 2));
        // 3.52 and 3.69 stand beside it.
        Assert.Equal("0.17 more", ActualWords.Difference(3.5246m, 3.6855m, Written.Metric.Money, 2));
    }

    [Fact]
    public void The_parts_of_the_invoice_are_written_down_where_they_were_typed()
    {
        var entry = new LedgerEntry(ALedger.View(), Written.Metric);
        entry.Type(LedgerEntry.Copies, "48");
        entry.Type(PrintingEntry.Shop, "120");
        entry.Type(PrintingEntry.Invoice(InvoicePart.Delivery), "15");

        Assert.Equal([new InvoiceLine(InvoicePart.Delivery, 15m)], entry.Read()!.Printing!.Invoice);
    }

    private static async Task<string> SaidAsync(PrintingPlan? plan, PrintingActual? actual)
    {
        await using var page = new BunitContext();
        var line = ALedger.Line(0, MovementKind.Printed, 48, 96m) with { Printing = actual };
        var text = page.Render<PlanAgainst>(parameters => parameters
            .Add(part => part.Line, line).Add(part => part.Plan, plan).Add(part => part.Format, Written.Metric)).Find(".plan-against").TextContent;
        return string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Replace(" ;", ";", StringComparison.Ordinal).Replace(" .", ".", StringComparison.Ordinal);
    }
}
