using PressRun.Engine.Postage;

namespace PressRun.Engine.Selling;

/// <summary>
/// What a channel takes of what was sold through it, so that receipts less this are what the channel leaves: at the channel's own price it is what
/// the costing's net per copy says (common practice). Neither figure is rounded.
/// </summary>
/// <param name="OfReceipts">Fraction of what came in: tax that is in it, and the payment fee on what the buyer paid.</param>
/// <param name="PerCopy">For each copy sent: its part of the fee, the mailer and the postage of an order, less what the buyer pays for postage. Below 0
/// where the buyer pays more than the post takes.</param>
public readonly record struct ChannelCost(decimal OfReceipts, decimal PerCopy)
{
    /// <summary>
    /// The cost of a channel. With price p, discount d, tax t, fee rate f, fixed fee a, postage charged s and k copies an order, what comes in for a
    /// copy is p (1 − d): the shop has kept its discount. Of it tax is t / (1 + t) where it is in the price, and the fee f / (1 − d) of the price, with tax
    /// on top where it is not in it. Each order costs a, the mailer, the postage and f s, and brings s without tax.
    /// </summary>
    /// <param name="channel">The channel; where its discount is the whole price nothing comes in, and nothing is taken of it.</param>
    /// <param name="post">Mailer and postage of an order, 0 or more.</param>
    public static ChannelCost Of(Channel channel, decimal post)
    {
        var (withoutTax, toBuyer) = channel.PriceIncludesTax ? (1m + channel.TaxRate, 1m) : (1m, 1m + channel.TaxRate);
        var fee = channel.TradeDiscount < 1m ? channel.FeeRate * toBuyer / (1m - channel.TradeDiscount) : 0m;
        var order = channel.FeeFixed + post + (channel.FeeRate * channel.PostageCharged * toBuyer) - (channel.PostageCharged / withoutTax);
        return new ChannelCost(1m - (1m / withoutTax) + fee, order / channel.CopiesPerOrder);
    }

    /// <summary>The cost of a channel with the mailer and the postage that a costing chose for it.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="mailers">The mailers of the job.</param>
    /// <param name="postage">What the estimate chose.</param>
    /// <returns>Null where copies are posted and what that takes is not known.</returns>
    public static ChannelCost? Of(Channel channel, IReadOnlyCollection<Mailer> mailers, IReadOnlyCollection<PostageChoice> postage)
    {
        if (channel.MailerId is not { } id)
        {
            return Of(channel, 0m);
        }

        var mailer = mailers.FirstOrDefault(candidate => candidate.Id == id);
        var stamp = channel.PostageRegion is null ? 0m : postage.FirstOrDefault(choice => choice.ChannelId == channel.Id)?.Price;
        return mailer is null || stamp is null ? null : Of(channel, mailer.Price + stamp.Value);
    }

    /// <summary>What the channel takes, not rounded.</summary>
    /// <param name="receipts">What came in, less what was paid back.</param>
    /// <param name="sent">Copies sent; those that came back were sent too.</param>
    public decimal On(decimal receipts, long sent) => (OfReceipts * receipts) + (PerCopy * sent);
}
