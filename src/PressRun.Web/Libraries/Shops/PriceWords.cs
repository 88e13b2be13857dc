using PressRun.Data.Import.PriceLists;
using PressRun.Data.Import.Shapes;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.JobFile;
using PressRun.Web.Shared;

namespace PressRun.Web.Libraries.Shops;

/// <summary>What the prices of a list are called, as the viewer reads it.</summary>
/// <param name="stockName">What a paper is called, by its id.</param>
public sealed class PriceWords(Func<string, string> stockName) : IPriceWords
{
    /// <inheritdoc/>
    public string Order => Say($"an order");

    /// <inheritdoc/>
    public string Edition => Say($"a printing");

    /// <inheritdoc/>
    public string Part => Say($"a part");

    /// <inheritdoc/>
    public string AtLeast => Say($"at least");

    /// <inheritdoc/>
    public string Delivery => Say($"delivery");

    /// <inheritdoc/>
    public string FurtherKilogram => Say($"each further kg");

    /// <inheritdoc/>
    public string Print(PrintPrice price) => Say($"{Words.Of(price.Ink)} on {price.SheetId}");

    /// <inheritdoc/>
    public string Paper(PaperPrice price) => Say($"{stockName(price.StockId)} on {price.SheetId}");

    /// <inheritdoc/>
    public string Book(BookPrice price)
    {
        var binding = SayWhole(JobWords.Bindings.Of(price.Binding));
        return price.StockIds is { } ids
            ? Say($"{binding}, {price.PagesFrom} to {price.PagesTo} pages on {string.Join(" + ", ids.Select(stockName))}")
            : Say($"{binding}, {price.PagesFrom} to {price.PagesTo} pages");
    }

    /// <inheritdoc/>
    public string From(long from) => Say($"from {from}");

    /// <inheritdoc/>
    public string PageFrom(long from) => Say($"from {from}, a page");

    /// <inheritdoc/>
    public string UpTo(Mass most) => most == DeliveryShape.Whatever ? Say($"whatever it weighs") : Say($"up to {MeasureText.Exact(most)}");
}
