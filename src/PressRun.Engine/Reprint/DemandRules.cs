using PressRun.Engine.Costing;

namespace PressRun.Engine.Reprint;

/// <summary>What a demand must be.</summary>
internal static class DemandRules
{
    private const string Path = "$.reprint.demand";
    private const decimal SumTolerance = 1e-9m;

    public static List<Problem> Check(Demand demand)
    {
        var problems = new List<Problem>();
        Require(demand.Committed is >= 0 and <= Job.MostCopies, ".committed", demand.Committed, $"Copies promised are 0 to {Job.MostCopies}.");
        switch (demand)
        {
            case TableDemand table:
                CheckTable(table);
                break;
            case PoissonDemand poisson:
                Mean(poisson.Mean);
                break;
            case NegativeBinomialDemand wide:
                Mean(wide.Mean);
                Require(wide.Shape > 0m, ".shape", wide.Shape, "The shape is more than 0.");
                break;
            case HistoryDemand history:
                CheckHistory(history);
                break;
            case OpinionDemand opinion:
                Require(opinion.Low <= opinion.Likely, ".likely", opinion.Likely, "The likely number is not below the low one.");
                Require(opinion.Likely <= opinion.High, ".high", opinion.High, "The high number is not below the likely one.");
                Require(opinion.Low < opinion.High, ".high", opinion.High, "The high number is above the low one.");
                Require(opinion.High <= Job.MostCopies, ".high", opinion.High, $"At most {Job.MostCopies} copies.");
                break;
        }

        return problems;

        void Mean(decimal mean) => Require(mean is >= 0m and <= Job.MostCopies, ".mean", mean, $"The mean is 0 to {Job.MostCopies} copies.");

        void Require(bool holds, string member, decimal value, string rule)
        {
            if (!holds)
            {
                problems.Add(new Problem(Path + member, Text.Exact(value), rule));
            }
        }

        void CheckTable(TableDemand table)
        {
            for (var copies = 0; copies < table.Probabilities.Count; copies++)
            {
                Require(table.Probabilities[copies] is >= 0m and <= 1m, $".probabilities[{copies}]", table.Probabilities[copies], "A probability is 0 to 1.");
            }

            if (problems.Count == 0)
            {
                var sum = table.Probabilities.Sum();
                Require(Math.Abs(sum - 1m) <= SumTolerance, ".probabilities", sum, "Probabilities sum to 1.");
            }
        }

        void CheckHistory(HistoryDemand history)
        {
            Require(history.HorizonPeriods > 0m, ".horizonPeriods", history.HorizonPeriods, "The horizon is longer than 0 periods.");
            Require(history.Uplift > 0m, ".uplift", history.Uplift, "The uplift is more than 0; 1 changes nothing.");
            Require(history.PriorShape >= 0m, ".priorShape", history.PriorShape, "The prior's shape is not negative.");
            Require(history.PriorRate >= 0m, ".priorRate", history.PriorRate, "The prior's rate is not negative.");
            for (var period = 0; period < history.Periods.Count; period++)
            {
                Require(history.Periods[period] is >= 0 and <= Job.MostCopies, $".periods[{period}]", history.Periods[period], $"Sales of a period are 0 to {Job.MostCopies}.");
            }

            if (problems.Count > 0)
            {
                return;
            }

            var shape = history.PriorShape + history.Periods.Sum(sold => (long)sold);
            var seen = history.PriorRate + history.Periods.Count;
            Require(shape > 0m, ".periods", 0m, "Without a sale and without a prior there is nothing to say; give an opinion of low, likely and high instead.");
            Require(seen > 0m, ".periods", 0m, "Without a period and without a prior there is nothing to say; give an opinion of low, likely and high instead.");
            if (problems.Count == 0)
            {
                var mean = history.Uplift * history.HorizonPeriods * shape / seen;
                Require(mean <= Job.MostCopies, ".horizonPeriods", history.HorizonPeriods, $"That expects {Text.Of(mean)} copies, more than {Job.MostCopies}.");
            }
        }
    }
}
