using CsCheck;
using PressRun.Engine.Selling;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Selling;

public sealed class ChannelCostTests
{
    // By hand: of 11.00 with 10 % tax in it 1.00 is tax; 3 % of 11.00 and 0.25 are the fee; the post of 2.00 is paid by the buyer with 2.20, tax in it.
    [Fact]
    public void Tax_fee_and_post_are_taken_of_what_came_in()
    {
        var channel = Channel(price: 11m) with { PriceIncludesTax = true, TaxRate = 0.1m, FeeRate = 0.03m, FeeFixed = 0.25m, PostageCharged = 2.20m };

        Assert.Equal(1m + 0.33m + 0.25m + (0.03m * 2.20m), Math.Round(ChannelCost.Of(channel, 2m).On(11m, 1), 10));
    }

    [Fact]
    public void At_its_own_price_a_channel_leaves_what_the_costing_says_it_leaves()
    {
        // The costing's net per copy stands for itself in the tests of the break-even; here it is the other way to the same figure.
        MailGen.Any.Sample(mail =>
        {
            var job = Plain() with { Mailers = mail.Mailers, Postage = mail.Services, Channels = mail.Channels };
            var estimate = job.Estimate();
            foreach (var (channel, net) in mail.Channels.Zip(estimate.Channels).Where(pair => pair.Second.NetPerCopy is not null && pair.First.TradeDiscount < 1m))
            {
                var receipts = channel.Price * (1m - channel.TradeDiscount) * channel.CopiesPerOrder;
                var left = receipts - ChannelCost.Of(channel, mail.Mailers, estimate.Postage)!.Value.On(receipts, channel.CopiesPerOrder);
                Assert.Equal(net.NetPerCopy!.Value * channel.CopiesPerOrder, left, 9);
            }
        });
    }

    [Fact]
    public void Where_nobody_knows_what_posting_takes_no_cost_is_said()
    {
        Assert.Null(ChannelCost.Of(Channel() with { MailerId = "gone" }, [], []));
    }

    [Fact]
    public void A_channel_that_keeps_the_whole_price_takes_nothing_of_nothing()
    {
        Assert.Equal(0m, ChannelCost.Of(Channel() with { TradeDiscount = 1m, FeeRate = 0.1m }, 0m).OfReceipts);
    }
}
