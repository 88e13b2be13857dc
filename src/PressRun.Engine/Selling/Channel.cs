namespace PressRun.Engine.Selling;

/// <summary>A way of selling copies.</summary>
/// <param name="Id">Its id in the job.</param>
/// <param name="Name">What the maker calls it.</param>
/// <param name="Price">Price of a copy to the buyer.</param>
/// <param name="PriceIncludesTax">True where the price (and the postage charged) includes tax.</param>
/// <param name="TaxRate">Fraction, such as 0.06.</param>
/// <param name="TradeDiscount">Fraction off the price without tax, 0 to 1.</param>
/// <param name="FeeRate">Payment fee as a fraction of all that the buyer pays.</param>
/// <param name="FeeFixed">Payment fee per order.</param>
/// <param name="CopiesPerOrder">Copies of one order, at least 1.</param>
/// <param name="MailerId">What they are posted in; null where they are handed over.</param>
/// <param name="PostageRegion">Where they are posted to; null where postage costs nothing.</param>
/// <param name="PostageCharged">What the buyer pays for postage, per order.</param>
/// <param name="Mix">Its weight among all copies sold.</param>
public sealed record Channel(
    string Id,
    string Name,
    decimal Price,
    bool PriceIncludesTax,
    decimal TaxRate,
    decimal TradeDiscount,
    decimal FeeRate,
    decimal FeeFixed,
    int CopiesPerOrder,
    string? MailerId,
    string? PostageRegion,
    decimal PostageCharged,
    decimal Mix);
