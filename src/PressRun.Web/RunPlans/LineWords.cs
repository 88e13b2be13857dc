using PressRun.Engine.Costing;

namespace PressRun.Web.RunPlans;

/// <summary>What the lines of a costing are called on screen.</summary>
public static class LineWords
{
    /// <summary>What a line is for.</summary>
    public static string Of(CostLine line, Func<string, string> stockName) => line.Code switch
    {
        CostCode.Book => "Books",
        CostCode.Print => $"Printing in {line.Subject}",
        CostCode.Paper => stockName(line.Subject),
        CostCode.SetUpOrder => "Set-up of the order",
        CostCode.SetUpEdition => "Set-up of the edition",
        CostCode.SetUpPart => "Set-up of the parts",
        CostCode.Finishing => Capital(line.Subject),
        CostCode.Discount => "Discount",
        CostCode.Minimum => "Up to the shop's minimum",
        CostCode.Delivery => "Delivery",
        CostCode.Tax => "Tax",
        CostCode.BenchLabour => "Your own hours",
        CostCode.BenchConsumable => Capital(line.Subject),
        _ => Capital(line.Subject),
    };

    /// <summary>What its quantity counts; empty where it is one of something.</summary>
    public static string Unit(CostLine line) => line.Code switch
    {
        CostCode.Book or CostCode.BenchConsumable => "copies",
        CostCode.Print => "impressions",
        CostCode.Paper => "sheets",
        CostCode.SetUpPart => "parts",
        CostCode.BenchLabour => "hours",
        _ => "",
    };

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
