using System.Globalization;
using System.Text;
using PressRun.Engine.Costing;
using PressRun.Engine.Reprint;

namespace PressRun.Cli;

/// <summary>A reprint plan, laid out for reading.</summary>
internal static class ReprintTable
{
    public static void Write(StringBuilder text, Job job, ReprintPlan plan)
    {
        var (currency, odds) = (job.Currency, plan.Odds);
        text.AppendLine(plan.BestQuantity == 0
            ? $"Print none: that keeps {AnswerTable.PerCopy(plan.ExpectedProfit)} {currency.Code} on average from the copies on hand."
            : $"Print {AnswerTable.Whole(plan.BestQuantity)} for {currency.Format(plan.LandedCost)} {currency.Code}: that keeps {AnswerTable.PerCopy(plan.ExpectedProfit)} on average.");
        text.AppendLine($"Within the cash: {AnswerTable.Whole(plan.WithinCash.Quantity)}, leaving {AnswerTable.PerCopy(plan.WithinCash.ExpectedProfit)} on average.");
        text.AppendLine(CultureInfo.InvariantCulture, $"Asked for: {plan.ExpectedDemand:0.0} copies on average, {AnswerTable.Whole(odds.ForSale)} would be for sale.");
        text.AppendLine(CultureInfo.InvariantCulture, $"Sold out in {odds.SellingOut:P1} of cases, a loss in {odds.Loss:P1}.");
        text.AppendLine(CultureInfo.InvariantCulture, $"Left over: {odds.Leftover10} or fewer in 1 case of 10, {odds.Leftover50} in 5, {odds.Leftover90} in 9.");
        text.AppendLine("Fifty equally likely demands: " + string.Join(' ', plan.Dots)).AppendLine();
        var table = new TextTable(">copies", ">expected profit", ">landed cost");
        foreach (var point in plan.Curve)
        {
            table.Add(AnswerTable.Whole(point.Quantity), AnswerTable.PerCopy(point.ExpectedProfit), currency.Format(point.LandedCost));
        }

        table.Write(text);
    }
}
