using PressRun.Engine.Costing;

namespace PressRun.JobFile.Results;

/// <summary>The code and the label of a cost line.</summary>
public static class LineText
{
    /// <summary>The line's code in the contract, such as <c>print.colour</c> or <c>setup.order</c>.</summary>
    public static string Code(CostLine line) => line.Code switch
    {
        CostCode.Book => "book",
        CostCode.Print => "print." + line.Subject,
        CostCode.Paper => "paper." + line.Subject,
        CostCode.SetUpOrder => "setup.order",
        CostCode.SetUpEdition => "setup.edition",
        CostCode.SetUpPart => "setup.part",
        CostCode.Finishing => "finishing",
        CostCode.Discount => "discount",
        CostCode.Minimum => "minimum",
        CostCode.Delivery => "delivery",
        CostCode.Tax => "tax",
        CostCode.BenchLabour => "bench.labour",
        CostCode.BenchConsumable => "bench.consumable",
        CostCode.Fixed => "fixed",
        _ => throw new ArgumentOutOfRangeException(nameof(line), line.Code, "The contract has no code for this line."),
    };

    /// <summary>What the line is for, in words; papers by their names.</summary>
    public static string Label(CostLine line, Job job) => line.Code switch
    {
        CostCode.Book => "whole books",
        CostCode.Print => "printing, " + line.Subject,
        CostCode.Paper => "paper, " + StockName(line.Subject, job),
        CostCode.SetUpOrder => "set-up of the order",
        CostCode.SetUpEdition => "set-up of the edition",
        CostCode.SetUpPart => "set-up of the parts",
        CostCode.Finishing => Named(line.Subject, "finishing"),
        CostCode.Discount => "discount",
        CostCode.Minimum => "up to the minimum order",
        CostCode.Delivery => "delivery",
        CostCode.Tax => "tax",
        CostCode.BenchLabour => "bench work, hours",
        CostCode.BenchConsumable => Named(line.Subject, "used up at the bench"),
        CostCode.Fixed => Named(line.Subject, "cost of the edition"),
        _ => throw new ArgumentOutOfRangeException(nameof(line), line.Code, "The contract has no code for this line."),
    };

    private static string StockName(string id, Job job) => Named(job.Stocks.FirstOrDefault(stock => stock.Id == id)?.Name ?? string.Empty, id);

    private static string Named(string name, string otherwise) => string.IsNullOrWhiteSpace(name) ? otherwise : name;
}
