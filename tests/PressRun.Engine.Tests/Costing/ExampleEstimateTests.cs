using PressRun.Engine.Costing;
using PressRun.Engine.Tests.Support;

namespace PressRun.Engine.Tests.Costing;

/// <summary>The example job worked by hand, line by line.</summary>
public sealed class ExampleEstimateTests
{
    private static readonly Estimate Estimate = ExampleJob.Create().Estimate();

    [Fact]
    public void A_hundred_and_fifty_good_copies_take_157_started() => Assert.Equal(157, Estimate.CopiesToStart); // 150 / (0.97 × 0.99) = 156.2...

    [Fact]
    public void Two_pieces_lie_on_a_sheet_and_seven_pieces_a_copy_take_three_and_a_half() =>
        Assert.Equal([79L, 550L, 79L], Estimate.Parts.Select(part => part.OnSheets!.Sheets)); // ceil(157 / 2); 3 × 157 + 79.

    [Fact]
    public void Lines_stand_in_order_and_come_to_what_a_hand_reckons()
    {
        (CostCode, string, decimal, decimal)[] expected =
        [
            (CostCode.Print, "colour", 79m, 31.60m),
            (CostCode.Print, "black", 999m, 89.91m), // The first 999 of 2 × 550 + 2 × 79 = 1258 impressions.
            (CostCode.Print, "black", 259m, 15.54m),
            (CostCode.Paper, "silk-cover", 79m, 17.38m),
            (CostCode.Paper, "cream-text", 550m, 38.50m),
            (CostCode.Paper, "blue-text", 79m, 6.32m),
            (CostCode.SetUpOrder, "", 1m, 5m),
            (CostCode.SetUpPart, "", 3m, 4.50m),
            (CostCode.Finishing, "cutting to size", 708m, 7.08m),
            (CostCode.Delivery, "", 1m, 14m), // 9.25 kg of cut pieces and a carton.
            (CostCode.Tax, "", 1m, 12.95m), // 6 % of 215.83.
            (CostCode.BenchLabour, "", 2.9611m, 44.42m), // 10660 s at 15.00 an hour.
            (CostCode.BenchConsumable, "staples", 157m, 0.63m),
            (CostCode.Fixed, "proof copy", 1m, 18m),
        ];
        Assert.Equal(expected, Estimate.Lines.Select(line => (line.Code, line.Subject, line.Quantity, line.Amount)));
    }

    [Fact]
    public void Totals_follow_from_the_lines()
    {
        var totals = Estimate.Totals;
        Assert.Equal((215.83m, 242.78m, 305.83m, 261.41m), (totals.Goods, totals.ShopTotal, totals.LandedCost, totals.CashOut));
        Assert.Equal(2.0389m, Estimate.UnitCost, 4);
    }

    [Fact]
    public void A_copy_s_share_is_of_the_good_ones_and_overs_are_the_rest() => // 157 started, 708 sheets of all parts.
        Assert.Equal((7L, 708L, 261.41m / 150m, Estimate.Totals.BenchHours * 60m / 150m), (Estimate.Overs, Estimate.SheetsInAll, Estimate.CashPerCopy, Estimate.BenchMinutesPerCopy));

    [Fact]
    public void Forty_copies_sold_pay_for_the_run() => Assert.Equal((40L, true), (Estimate.BreakEven.Copies!.Value, Estimate.BreakEven.WithinRun));

    [Fact]
    public void The_copy_goes_as_a_large_letter_because_a_letter_is_too_small()
    {
        var postage = Assert.Single(Estimate.Postage);
        Assert.Equal(("large-letter", 1.60m), (postage.ServiceId, postage.Price!.Value));
        Assert.Equal([14m, 12.8m], postage.Refused.Select(refused => refused.By));
        Assert.Empty(Estimate.Warnings);
    }
}
