namespace PressRun.Web.Quotes;

/// <summary>The totals of a quote as rows that add up to its landed cost.</summary>
public static class QuoteTotals
{
    /// <summary>What the row of a tax that is reclaimed is called.</summary>
    public static string TaxBackWords => Say($"less the tax that comes back");

    /// <summary>What is taken off again because the press gets it back, below zero; null where nothing is.</summary>
    public static decimal? TaxBack(QuoteView view) => view.Job?.ReclaimTax == true && view.Figures.Tax > 0m ? -view.Figures.Tax : null;

    /// <summary>The rows, none of them zero.</summary>
    public static IEnumerable<(string Words, decimal Amount)> Of(QuoteView view)
    {
        var figures = view.Figures;
        (string, decimal)[] rows =
        [
            (Say($"The print shop"), figures.ShopTotal),
            (TaxBackWords, TaxBack(view) ?? 0m),
            (Say($"Hours at the binding table"), figures.BenchLabour),
            (Say($"Staples, blades and the like"), figures.Consumables),
            (Say($"Costs of the printing, whatever its size"), figures.FixedCosts),
        ];
        return rows.Where(row => row.Item2 != 0m);
    }
}
