using PressRun.Engine.Costing;
using PressRun.Engine.Reprint;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Blocks;

/// <summary>The job file's <c>reprint</c>: what a reprint is decided from.</summary>
public static class ReprintBlock
{
    private const string Rule = "Write a reprint as an object with onHand, demand, from, to and step.";
    private const string DemandRule = "Write the demand as an object with a kind: table, poisson, negativeBinomial, history or opinion.";
    private const string ProbabilitiesRule = "Write the probabilities of 0, 1, 2, ... copies as a list of numbers that sum to 1.";
    private const string PeriodsRule = "Write the sales of past periods as a list of whole numbers.";

    private static readonly NumberRule Signed = new("Write an amount as a number or a decimal string, such as \"0.50\".", -1_000_000_000_000m, 1_000_000_000_000m);
    private static readonly NumberRule Mean = new("Write a mean from 0 to 1,000,000 copies.", 0m, Job.MostCopies);
    private static readonly NumberRule Shape = new("Write a shape, more than 0.", 0m, 1_000_000_000m, WithoutLeast: true);
    private static readonly NumberRule Prior = new("Write a number of 0 or more.", 0m, 1_000_000_000m);
    private static readonly NumberRule Above = new("Write a number above 0, at most 1,000,000.", 0m, 1_000_000m, WithoutLeast: true);
    private static readonly NumberRule Opinion = new("Write a number of copies from -1,000,000 to 1,000,000.", -1_000_000m, 1_000_000m);
    private static readonly NumberRule Probability = new("Write a probability from 0 to 1.", 0m, 1m);
    private static readonly NumberRule StepRule = new("Write a whole number of copies from 1 to 1,000,000 between quantities.", 1m, Job.MostCopies, IsWhole: true);

    private static readonly Words<DemandKind> Kinds = new(
        ("table", DemandKind.Table),
        ("poisson", DemandKind.Poisson),
        ("negativeBinomial", DemandKind.NegativeBinomial),
        ("history", DemandKind.History),
        ("opinion", DemandKind.Opinion));

    private enum DemandKind
    {
        Table,
        Poisson,
        NegativeBinomial,
        History,
        Opinion,
    }

    /// <summary>Reads the block of a job; null where there is none, or nothing to go by.</summary>
    public static ReprintRequest? ReadMember(JsonBlock job)
    {
        if (job.Block("reprint", Need.May, Rule) is not { } block)
        {
            return null;
        }

        var demand = ReadDemand(block);
        var request = new ReprintRequest(
            block.Count("onHand", JobRules.CopiesOrNone) ?? 0,
            demand ?? new PoissonDemand(0m, 0),
            block.Number("netPerCopy", Signed),
            block.Number("salvage", Signed) ?? 0m,
            block.Number("penalty", JobRules.Amount) ?? 0m,
            block.Number("holding", JobRules.Amount) ?? 0m,
            block.Number("cash", JobRules.Amount),
            block.Count("from", JobRules.CopiesOrNone) ?? 0,
            block.Count("to", JobRules.CopiesOrNone, Need.Must) ?? 0,
            block.Count("step", StepRule) ?? 1);
        block.Close();
        return request;
    }

    private static Demand? ReadDemand(JsonBlock reprint)
    {
        if (reprint.Block("demand", Need.Must, DemandRule) is not { } block)
        {
            return null;
        }

        var kind = block.Choice("kind", Kinds, Need.Must);
        var committed = block.Count("committed", JobRules.CopiesOrNone) ?? 0;
        Demand? demand = kind switch
        {
            DemandKind.Table => new TableDemand(ReadNumbers(block, "probabilities", ProbabilitiesRule, Probability), committed),
            DemandKind.Poisson => new PoissonDemand(Must("mean", Mean), committed),
            DemandKind.NegativeBinomial => new NegativeBinomialDemand(Must("mean", Mean), Must("shape", Shape), committed),
            DemandKind.History => new HistoryDemand(
                [.. ReadNumbers(block, "periods", PeriodsRule, JobRules.CopiesOrNone).Select(sold => (int)sold)],
                Must("horizonPeriods", Above),
                block.Number("uplift", Above) ?? 1m,
                block.Number("priorShape", Prior) ?? 0m,
                block.Number("priorRate", Prior) ?? 0m,
                committed),
            DemandKind.Opinion => new OpinionDemand(Must("low", Opinion), Must("likely", Opinion), Must("high", Opinion), committed),
            _ => null,
        };
        if (kind is not null)
        {
            block.Close();
        }

        return demand;

        decimal Must(string name, NumberRule rule) => block.Number(name, rule, Need.Must) ?? 0m;
    }

    private static List<decimal> ReadNumbers(JsonBlock block, string name, string listRule, NumberRule rule)
    {
        var numbers = new List<decimal>();
        foreach (var (element, path) in block.Items(name, Need.Must, listRule))
        {
            if (JsonBlock.NumberOf(element, rule) is { } number)
            {
                numbers.Add(number);
            }
            else
            {
                block.Problems.Add(path, element, rule.Sentence);
            }
        }

        return numbers;
    }
}
