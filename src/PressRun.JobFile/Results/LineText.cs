using PressRun.Engine.Costing;

namespace PressRun.JobFile.Results;

/// <summary>The code and the label of a cost line.</summary>
public static class LineText
{
    /// <summary>What stands before the name of a paper in its label.</summary>
    public const string BeforePaper = "paper, ";

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

    /// <summary>What kind of line a code is of, with the ink or the paper that it names; null where the contract has no such code.</summary>
    /// <param name="code">As <see cref="Code"/> gives it.</param>
    public static (CostCode Kind, string Subject)? Read(string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        var dot = code.IndexOf('.', StringComparison.Ordinal);
        var (first, subject) = dot < 0 ? (code, "") : (code[..dot], code[(dot + 1)..]);
        return (first, code) switch
        {
            ("print", _) => (CostCode.Print, subject),
            ("paper", _) => (CostCode.Paper, subject),
            (_, "book") => (CostCode.Book, ""),
            (_, "setup.order") => (CostCode.SetUpOrder, ""),
            (_, "setup.edition") => (CostCode.SetUpEdition, ""),
            (_, "setup.part") => (CostCode.SetUpPart, ""),
            (_, "finishing") => (CostCode.Finishing, ""),
            (_, "discount") => (CostCode.Discount, ""),
            (_, "minimum") => (CostCode.Minimum, ""),
            (_, "delivery") => (CostCode.Delivery, ""),
            (_, "tax") => (CostCode.Tax, ""),
            (_, "bench.labour") => (CostCode.BenchLabour, ""),
            (_, "bench.consumable") => (CostCode.BenchConsumable, ""),
            (_, "fixed") => (CostCode.Fixed, ""),
            _ => null,
        };
    }

    /// <summary>What the line is for, in words; papers by their names.</summary>
    public static string Label(CostLine line, Job job) => line.Code switch
    {
        CostCode.Book => "whole books",
        CostCode.Print => "printing, " + line.Subject,
        CostCode.Paper => BeforePaper + StockName(line.Subject, job),
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
