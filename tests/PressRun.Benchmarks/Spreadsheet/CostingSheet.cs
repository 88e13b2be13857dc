using System.Globalization;
using System.Security;
using System.Text;
using PressRun.Engine.Costing;

namespace PressRun.Benchmarks.Spreadsheet;

/// <summary>The example job as someone would set it up in a spreadsheet: prices in one sheet, a row for every quantity in another.</summary>
internal sealed class CostingSheet
{
    private const string Open =
        """
        <?xml version="1.0" encoding="UTF-8"?>
        <office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0"
          xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2"
          office:version="1.2" office:mimetype="application/vnd.oasis.opendocument.spreadsheet"><office:body><office:spreadsheet>
        """;

    private const string Close = "</office:spreadsheet></office:body></office:document>";

    private readonly List<decimal> prices = [];
    private readonly List<(string Name, string Formula)> columns = [];

    public CostingSheet(PreparedJob prepared)
    {
        var (job, shop, order) = (prepared.Job, prepared.Job.Shop, prepared.Job.Shop.Order);
        var parts = prepared.Estimate(job.Quantity).Value.Parts;
        var survives = Price(job.Bench.Steps.Aggregate(1m - shop.Spoilage, (product, step) => product * (1m - step.Spoilage)));
        // Rounded before it is rounded up, so that binary fractions do not add a copy.
        var started = Column("started", $"ROUNDUP(ROUND([.A#]/{survives};9);0)");
        var sheets = parts.Select(part => Sheets(part, started)).ToList();
        var colour = Column("colour impressions", sheets[0]);
        var black = Column("black impressions", $"2*({sheets[1]}+{sheets[2]})");
        var goods = new List<string>
        {
            AllUnits("print, colour", shop.Print[0].Steps, colour),
            Column("print, black to the step", $"ROUND(MIN({black};{Price(shop.Print[1].Steps[1].From - 1)})*{Price(shop.Print[1].Steps[0].Each)};2)"),
            Column("print, black past the step", $"ROUND(MAX(0;{black}-{Price(shop.Print[1].Steps[1].From - 1)})*{Price(shop.Print[1].Steps[1].Each)};2)"),
        };
        goods.AddRange(shop.Paper.Select((paper, index) => Column($"paper {index}", $"ROUND({sheets[index]}*{Price(paper.Steps[0].Each)};2)")));
        goods.Add(Column("cutting", $"ROUND(MAX(({string.Join('+', sheets)})*{Price(shop.Finishing[0].Each)};{Price(shop.Finishing[0].Minimum)});2)"));
        goods.Add(Column("set-up", $"{Price(shop.SetUp.Order)}+{Price(shop.SetUp.Edition)}+{parts.Count}*{Price(shop.SetUp.Part)}"));
        var sum = Column("goods", string.Join('+', goods));
        var discount = Column("discount", $"IF({sum}>={Price(order.Discounts[0].From)};ROUND({sum}*{Price(order.Discounts[0].Rate)};2);0)");
        var topUp = Column("top-up", $"MAX(0;ROUND({Price(order.Minimum)}-({sum}-{discount});2))");
        var value = Column("value", $"{sum}-{discount}+{topUp}");
        var contents = Column("contents in grams", $"{started}*{Price(prepared.Block.UntrimmedMass.Grams)}");
        var freight = Column("freight in grams", $"{contents}+ROUNDUP({contents}/{Price(order.Carton!.Capacity.Grams)};0)*{Price(order.Carton.Tare.Grams)}");
        var delivery = Column("delivery", Delivery(order.Delivery!, value, freight));
        var tax = Column("tax", $"ROUND({value}*{Price(order.TaxRate)};2)");
        var labour = Column("labour", $"ROUND({Seconds(job, parts, started)}*{Price(job.Bench.HourlyRate)}/3600;2)");
        var staples = Column("staples", $"ROUND({started}*{Price(job.Bench.Consumables[0].PerCopy)};2)");
        var landed = Column("landed cost", $"{value}+{delivery}+{tax}+{labour}+{staples}+{Price(job.Edition.FixedCosts[0].Amount)}");
        Column("unit cost", $"{landed}/[.A#]");
        LandedCostColumn = columns.Count - 1;
    }

    /// <summary>Place of the landed cost in a row, from 0.</summary>
    public int LandedCostColumn { get; }

    public int Columns => columns.Count;

    /// <summary>Writes the table; every formula has the value 0 beside it, so that a right value can only come from recalculation.</summary>
    public void Write(string path, int quantities)
    {
        var text = new StringBuilder(Open).Append("<table:table table:name=\"Ladder\">");
        for (var quantity = 1; quantity <= quantities; quantity++)
        {
            text.Append("<table:table-row>").Append(Value(quantity));
            foreach (var (_, formula) in columns)
            {
                var own = SecurityElement.Escape(formula.Replace("#", quantity.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal));
                text.Append(CultureInfo.InvariantCulture, $"<table:table-cell table:formula=\"of:={own}\" office:value-type=\"float\" office:value=\"0\"/>");
            }

            text.Append("</table:table-row>");
        }

        text.Append("</table:table><table:table table:name=\"Prices\">");
        foreach (var price in prices)
        {
            text.Append("<table:table-row>").Append(Value(price)).Append("</table:table-row>");
        }

        File.WriteAllText(path, text.Append("</table:table>").Append(Close).ToString());
    }

    /// <summary>Writes a table as large with numbers in place of formulas: what reading and writing alone take.</summary>
    public void WriteNumbers(string path, int quantities)
    {
        var text = new StringBuilder(Open).Append("<table:table table:name=\"Ladder\">");
        for (var quantity = 1; quantity <= quantities; quantity++)
        {
            text.Append("<table:table-row>");
            for (var column = 0; column <= columns.Count; column++)
            {
                text.Append(Value(quantity + (column / 100m)));
            }

            text.Append("</table:table-row>");
        }

        File.WriteAllText(path, text.Append("</table:table>").Append(Close).ToString());
    }

    public static void WriteEmpty(string path) => File.WriteAllText(path, Open + "<table:table table:name=\"Empty\"/>" + Close);

    private static string Value(decimal value) =>
        $"<table:table-cell office:value-type=\"float\" office:value=\"{value.ToString(CultureInfo.InvariantCulture)}\"/>";

    private string Price(decimal price)
    {
        prices.Add(price);
        return $"[$Prices.$A${prices.Count}]";
    }

    // Column A holds the quantity.
    private string Column(string name, string formula)
    {
        columns.Add((name, formula));
        var letters = columns.Count < 26 ? $"{(char)('A' + columns.Count)}" : $"A{(char)('A' + columns.Count - 26)}";
        return $"[.{letters}#]";
    }

    private string Sheets(PartEstimate part, string started)
    {
        var (pieces, onSheet) = (Price(part.PiecesPerCopy), Price(part.OnSheets!.PiecesPerSheet));
        return Column(
            part.Name,
            $"MIN({pieces}*ROUNDUP({started}/{onSheet};0);ROUNDUP({pieces}/{onSheet};0)*{started};INT({pieces}/{onSheet})*{started}+MOD({pieces};{onSheet})*ROUNDUP({started}/{onSheet};0))");
    }

    private string AllUnits(string name, IReadOnlyList<PriceStep> steps, string units) =>
        Column(name, $"ROUND({units}*IF({units}>={Price(steps[1].From)};{Price(steps[1].Each)};{Price(steps[0].Each)});2)");

    private string Delivery(Delivery delivery, string value, string freight)
    {
        var last = delivery.Steps[^1];
        var past = $"{Price(last.Price)}+ROUNDUP(({freight}-{Price(last.Most.Grams)})/1000;0)*{Price(delivery.PerFurtherKilogram!.Value)}";
        var steps = delivery.Steps.Reverse().Aggregate(past, (dearer, step) => $"IF({freight}<={Price(step.Most.Grams)};{Price(step.Price)};{dearer})");
        return $"ROUND(IF({value}>={Price(delivery.FreeFrom!.Value)};0;{steps});2)";
    }

    private string Seconds(Job job, IReadOnlyList<PartEstimate> parts, string started)
    {
        var (steps, pieces) = (job.Bench.Steps, parts.Sum(part => part.PiecesPerCopy));
        var perCopy = steps.Sum(step => step.SecondsPerCopy + (step.SecondsPerPiece * pieces));
        var cutting = steps.Single(step => step.SecondsPerCut > 0m);
        var perPile = cutting.SecondsPerCut * job.Edition.Trim.EdgeCount;
        return $"({Price(60m * steps.Sum(step => step.SetUpMinutes))}+{Price(perCopy)}*{started}+{Price(perPile)}*ROUNDUP({started}/{Price(cutting.CopiesPerPile)};0))";
    }
}
