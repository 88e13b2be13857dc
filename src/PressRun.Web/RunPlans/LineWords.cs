using PressRun.Engine.Costing;
using PressRun.Web.Shared;

namespace PressRun.Web.RunPlans;

/// <summary>What the lines of a costing are called on screen.</summary>
public static class LineWords
{
    /// <summary>What a line is for.</summary>
    public static string Of(CostLine line, Func<string, string> stockName) => Of(line.Code, line.Code == CostCode.Paper ? stockName(line.Subject) : line.Subject);

    /// <summary>What a line is for.</summary>
    /// <param name="kind">What kind of line it is.</param>
    /// <param name="subject">Its ink as the costing calls it, the name of its paper, or its own name.</param>
    public static string Of(CostCode kind, string subject) => kind switch
    {
        CostCode.Book => Say($"Books"),
        CostCode.Print => Say($"Printing in {InkOf(subject)}"),
        CostCode.Paper => subject,
        CostCode.SetUpOrder => Say($"Set-up of the order"),
        CostCode.SetUpEdition => Say($"Set-up of the printing"),
        CostCode.SetUpPart => Say($"Set-up of the parts"),
        CostCode.Discount => Say($"Discount"),
        CostCode.Minimum => Say($"Up to the shop's minimum"),
        CostCode.Delivery => Say($"Delivery"),
        CostCode.Tax => Say($"Tax"),
        CostCode.BenchLabour => Say($"Your own hours"),
        _ => Capital(subject),
    };

    /// <summary>What its quantity counts; empty where it is one of something.</summary>
    public static string Unit(CostCode kind) => kind switch
    {
        CostCode.Book or CostCode.BenchConsumable => Say("what a line counts", $"copies"),
        CostCode.Print => Say($"impressions"),
        CostCode.Paper => Say($"sheets"),
        CostCode.SetUpPart => Say($"parts"),
        CostCode.BenchLabour => Say($"hours"),
        _ => "",
    };

    /// <summary>An ink by the word that the costing has for it.</summary>
    public static string InkOf(string subject) => Words.Of(InkSubject.In(subject));

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
