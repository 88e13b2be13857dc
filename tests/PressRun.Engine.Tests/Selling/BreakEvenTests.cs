using CsCheck;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Selling;

public sealed class BreakEvenTests
{
    [Theory]
    [InlineData(75, 45, 48000, 0, 1600)] // BE-01. Warren, Accounting, exercise.
    [InlineData(95, 45, 48000, 0, 960)] // BE-02. The same.
    [InlineData(13, 8, 20000, 0, 4000)] // BE-07. Block and Hirt, Foundations of Financial Management, exercise.
    [InlineData(13, 8, 20000, 15000, 7000)] // BE-08. The same with a profit wanted; computed.
    [InlineData(27, 15, 27000, 0, 2250)] // BE-10. Block and Hirt, exercise.
    [InlineData(400, 250, 20000, 0, 134)] // BE-13. OpenStax, Principles of Managerial Accounting, 7.2: 133.33, computed.
    public void As_many_copies_as_the_textbook_says_pay_for_the_fixed_cost(int price, int variable, int cost, int profit, int copies)
    {
        // What varies with a copy is entered as what posting one costs; the cost of the run is fixed.
        var job = Fixed(cost + profit) with { Mailers = [Board(variable)], Channels = [Channel(price: price) with { MailerId = "board" }] };
        Assert.Equal(copies, job.Estimate().BreakEven.Copies);
    }

    [Fact]
    public void A_thousand_of_fixed_cost_over_600_copies_is_1_67_each()
    {
        // BE-18. Boise State University, accounting text, 5.4.
        Assert.Equal(1.67m, (Fixed(1000) with { Quantity = 600 }).Estimate().UnitCost, 2);
    }

    [Fact]
    public void The_break_even_price_solves_the_identity()
    {
        // BE-20. 850 of fixed cost over 200 copies and 2.10 a copy; algebra, computed.
        var job = Fixed(850) with { Quantity = 200, Mailers = [Board(2.1m)], Channels = [Channel() with { MailerId = "board" }] };
        Assert.Equal(6.35m, Price(job));
    }

    [Fact]
    public void A_price_that_does_not_come_out_even_is_rounded_up()
    {
        // POS-37. DMM P013, archive of 2003-08-10, rounding up: 3.3701 is 3.38.
        Assert.Equal(3.38m, Price(Fixed(33_701) with { Quantity = 10_000 }));
        Assert.Equal(3.37m, Price(Fixed(33_700) with { Quantity = 10_000 }));
    }

    [Fact]
    public void Free_copies_are_paid_for_by_the_others()
    {
        Assert.Equal(12.50m, Price(Fixed(1000) with { FreeCopies = 20 }));
        Assert.Null(Price(Fixed(1000) with { FreeCopies = 100 }));
        Assert.False((Fixed(1000) with { FreeCopies = 20, Channels = [Channel(price: 12.49m)] }).Estimate().BreakEven.WithinRun);
        Assert.True((Fixed(1000) with { FreeCopies = 20, Channels = [Channel(price: 12.50m)] }).Estimate().BreakEven.WithinRun);
    }

    [Fact]
    public void Net_per_copy_follows_discount_tax_fees_mailer_and_postage()
    {
        var post = Channel("post", 12m) with
        {
            PriceIncludesTax = true,
            TaxRate = 0.20m,
            TradeDiscount = 0.40m,
            FeeRate = 0.03m,
            FeeFixed = 0.30m,
            CopiesPerOrder = 2,
            MailerId = "board",
            PostageRegion = "home",
            PostageCharged = 3m,
        };
        var job = Plain() with { Mailers = [Board(0.35m)], Postage = [Service(1.60m)], Channels = [post, post with { Id = "before", PriceIncludesTax = false }] };
        // With tax: (2 × 10 × 0.6 + 2.50 − 0.03 × 27 − 0.30 − 0.35 − 1.60) / 2. Without: (2 × 12 × 0.6 + 3 − 0.03 × 27 × 1.2 − 2.25) / 2.
        Assert.Equal([5.72m, 7.089m], job.Estimate().Channels.Select(channel => channel.NetPerCopy!.Value));
    }

    [Fact]
    public void A_discount_and_fees_that_leave_nothing_of_a_price_have_no_price_that_breaks_even()
    {
        Assert.Null(Price(Fixed(10) with { Channels = [Channel() with { TradeDiscount = 1m }] }));
        Assert.Null(Price(Fixed(10) with { Channels = [Channel() with { TradeDiscount = 0.5m, FeeRate = 0.5m }] }));
        Assert.NotNull(Price(Fixed(10) with { Channels = [Channel() with { TradeDiscount = 0.5m, FeeRate = 0.49m }] }));
    }

    [Fact]
    public void Where_the_postage_charged_pays_for_all_the_price_is_nothing_and_never_below() =>
        Assert.Equal(0m, Price(Fixed(10) with { Channels = [Channel() with { PostageCharged = 5m }] }));

    [Fact]
    public void The_mix_weighs_the_channels_and_is_divided_by_its_sum()
    {
        var job = Fixed(100) with { Channels = [Channel("a", 10m) with { Mix = 3m }, Channel("b", 5m) with { Mix = 1m }, Channel("c", 99m) with { Mix = 0m }] };
        Assert.Equal((12L, 8.75m), (job.Estimate().BreakEven.Copies!.Value, job.Estimate().BreakEven.NetPerCopy!.Value)); // 100 / 8.75 = 11.4.
    }

    [Fact]
    public void Without_a_mix_or_a_net_no_number_of_copies_pays()
    {
        Assert.Equal(new BreakEven(null, false, null), Fixed(100).Estimate().BreakEven with { });
        Assert.Equal(new BreakEven(null, false, null), (Fixed(100) with { Channels = [Channel() with { Mix = 0m }] }).Estimate().BreakEven);
        Assert.Equal(new BreakEven(null, false, 0m), (Fixed(100) with { Channels = [Channel(price: 0m)] }).Estimate().BreakEven);
    }

    [Fact]
    public void Copies_that_come_out_even_after_a_repeating_decimal_are_not_one_too_many()
    {
        // 1 / 1.06 a copy does not end; 53 of run cost need 56.18 / 1 copies exactly.
        var job = Fixed(50) with { Channels = [Channel(price: 1.06m) with { PriceIncludesTax = true, TaxRate = 0.06m }, Channel("other", 1.03m) with { PriceIncludesTax = true, TaxRate = 0.03m }] };
        Assert.Equal(50, job.Estimate().BreakEven.Copies);
        var thirds = Fixed(100) with { Channels = [Channel(price: 1m) with { CopiesPerOrder = 3, FeeFixed = 1m }] };
        Assert.Equal(150, thirds.Estimate().BreakEven.Copies);
    }

    [Fact]
    public void At_the_break_even_price_every_copy_pays_its_cost_and_a_minor_unit_less_does_not() => JobGen.Any.Sample(job =>
    {
        if (job.Prepared().Estimate(job.Quantity) is not { Succeeded: true } outcome)
        {
            return;
        }

        var forSale = job.Quantity - job.FreeCopies;
        for (var index = 0; index < job.Channels.Count; index++)
        {
            if (outcome.Value.Channels[index].BreakEvenPrice is not { } price)
            {
                continue;
            }

            // A digit in the last place is what divisions may cost the net.
            var cost = outcome.Value.Totals.LandedCost / forSale;
            Assert.True(NetAt(job, index, price) >= cost - 1e-20m);
            Assert.True(price == 0m || NetAt(job, index, price - 0.01m) < cost);
        }
    });

    private static decimal NetAt(Job job, int index, decimal price)
    {
        var channels = job.Channels.ToArray();
        channels[index] = channels[index] with { Price = price };
        return (job with { Channels = channels }).Estimate().Channels[index].NetPerCopy!.Value;
    }

    private static decimal? Price(Job job) => (job.Channels.Count > 0 ? job : job with { Channels = [Channel()] }).Estimate().Channels[0].BreakEvenPrice;

    private static Mailer Board(decimal price) => new("board", "Board", Mm(250), Mm(150), default, G(10), price);

    private static PostageService Service(decimal price) =>
        new("letter", "Letter", "home", Date, null, null, null, null, null, null, [new MassStep(G(1000), price)]);

    // A run of a hundred that costs so much and nothing more.
    private static Job Fixed(decimal cost) => Plain()
        .With(shop => shop with { Print = [Black(0m)], Paper = [PaperAt(0m)] })
        .WithEdition(edition => edition with { FixedCosts = [new FixedCost("run", cost)] });
}
