using PressRun.Engine.Costing;
using PressRun.Engine.Postage;

namespace PressRun.Engine.Selling;

/// <summary>A channel with its postage chosen, so that net and break-even price follow from a unit cost.</summary>
internal sealed class PreparedChannel
{
    // What would have to cost more is not sold: a discount or fee so near to all of the price leaves nothing.
    private const decimal HighestPrice = 1_000_000_000_000_000m;

    private readonly decimal mailerPrice;

    private PreparedChannel(Channel channel, Mailer? mailer, PostageChoice? postage)
    {
        Channel = channel;
        Mailer = mailer;
        Postage = postage;
        mailerPrice = mailer?.Price ?? 0m;
    }

    public Channel Channel { get; }

    public Mailer? Mailer { get; }

    /// <summary>Null where the channel does not post.</summary>
    public PostageChoice? Postage { get; }

    /// <summary>True where copies would have to be posted and no service takes them.</summary>
    public bool CannotPost => Postage is { Price: null };

    /// <summary>
    /// Net per copy: [k·p_x·(1 − d) + s_x − f·(what the buyer pays) − a − mailer − postage(k)] / k, with p_x and s_x without tax. Null where no
    /// service takes the post.
    /// </summary>
    public decimal? NetPerCopy
    {
        get
        {
            if (CannotPost)
            {
                return null;
            }

            var (withoutTax, toBuyer) = Channel.PriceIncludesTax ? (1m + Channel.TaxRate, 1m) : (1m, 1m + Channel.TaxRate);
            var copies = Channel.CopiesPerOrder;
            var takings = ((copies * Channel.Price * (1m - Channel.TradeDiscount)) + Channel.PostageCharged) / withoutTax;
            var paid = ((copies * Channel.Price) + Channel.PostageCharged) * toBuyer;
            return (takings - (Channel.FeeRate * paid) - Costs) / copies;
        }
    }

    private decimal Costs => Channel.FeeFixed + mailerPrice + (Postage?.Price ?? 0m);

    public static PreparedChannel Of(Channel channel, JobTables tables, CopyEstimate copy)
    {
        var mailer = channel.MailerId is { } id ? tables.Mailers[id] : null;
        var postage = mailer is not null && channel.PostageRegion is { } region
            ? PostageTable.Choose(tables.ServicesTo(region), channel.Id, mailer, copy, channel.CopiesPerOrder)
            : null;
        return new PreparedChannel(channel, mailer, postage);
    }

    /// <summary>
    /// The lowest price of the minor unit at which the net of a copy covers its share of the landed cost: the equation of
    /// <see cref="NetPerCopy"/> solved for the price. Numerator and denominator are multiplied out by copies for sale and 1 + t, so that both
    /// are finite decimals and the rounding up is exact.
    /// </summary>
    /// <param name="landedCost">Of the run.</param>
    /// <param name="copiesForSale">Good copies less free ones.</param>
    /// <param name="minorUnit">Of the currency.</param>
    /// <returns>The price, or null where none breaks even or the copies cannot be posted.</returns>
    public decimal? BreakEvenPrice(decimal landedCost, int copiesForSale, decimal minorUnit)
    {
        var withTax = 1m + Channel.TaxRate;
        var perOrder = 1m - Channel.TradeDiscount - (Channel.FeeRate * withTax);
        if (copiesForSale <= 0 || perOrder <= 0m || CannotPost)
        {
            return null;
        }

        var (copies, charged) = (Channel.CopiesPerOrder, Channel.PostageCharged);
        var feeOnPostage = Channel.FeeRate * charged * (Channel.PriceIncludesTax ? 1m : withTax);
        var needed = (copies * landedCost) + (copiesForSale * (Costs + feeOnPostage));
        var numerator = Channel.PriceIncludesTax
            ? (needed * withTax) - (copiesForSale * charged)
            : needed - (copiesForSale * charged);
        if (numerator <= 0m)
        {
            return 0m;
        }

        var denominator = copiesForSale * copies * perOrder;
        if (denominator < numerator / HighestPrice)
        {
            return null;
        }

        var price = decimal.Ceiling(numerator / denominator / minorUnit) * minorUnit;
        var oneLower = price - minorUnit;
        return oneLower * denominator >= numerator ? oneLower : price;
    }
}
