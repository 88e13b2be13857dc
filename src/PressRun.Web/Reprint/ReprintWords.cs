using PressRun.Data.RunPlans;
using PressRun.Engine.Copies;
using PressRun.Engine.Reprint;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Reprint;

/// <summary>A reprint in words.</summary>
public static class ReprintWords
{
    /// <summary>Such as <c>6 months</c>.</summary>
    public static string Of(Horizon horizon, PressFormat format) => horizon.Unit == HorizonUnit.Weeks
        ? Words.Many(format.Count(horizon.Length), horizon.Length, "week", "weeks")
        : Words.Many(format.Count(horizon.Length), horizon.Length, "month", "months");

    /// <summary>Such as <c>keep 342.10</c> or <c>lose 12.00</c>.</summary>
    public static string Keeps(decimal profit, PressFormat format) => profit < 0m ? $"lose {format.Money(-profit)}" : $"keep {format.Money(profit)}";

    /// <summary>Such as <c>in 15 of 50 such futures they sell out, in 2 money is lost</c>.</summary>
    public static string Odds(ReprintLook look) =>
        $"in {(look.SoldOut == 0 ? "none" : look.SoldOut)} of {look.Futures.Count} such futures they sell out, in {(look.Losses == 0 ? "none" : look.Losses)} money is lost";

    /// <summary>Why the best number is no higher: what the next copies bring on average against what they cost.</summary>
    public static string WhyNoMore(NextCopies next, int futures, PressFormat format)
    {
        var (brings, costs) = (format.Money(Math.Abs(next.Brings)), format.Money(Math.Abs(next.Costs)));
        var (copies, asked) = next.More == 1
            ? ("One more", $": it is asked for in {(next.Asked == 0 ? "none" : format.Count(next.Asked))} of the {futures}")
            : ($"The next step up, to {format.Count(next.To)},", "");
        return (next.Brings, next.Costs) switch
        {
            ( < 0m, < 0m) => $"{copies} would cost {costs} less, and bring {brings} less on average.",
            ( < 0m, _) => $"{copies} would cost {costs}, and bring {brings} less on average.",
            _ when brings == costs => $"{copies} would bring no more on average than the {costs} it costs{asked}.",
            _ => $"{copies} would bring {brings} on average and cost {costs}{asked}.",
        };
    }

    /// <summary>Said where no higher number was looked at than the best: it may not be the best of all.</summary>
    /// <param name="salvage">What a copy left over is still worth.</param>
    /// <param name="format">How figures are written.</param>
    public static string LastLookedAt(decimal salvage, PressFormat format) => salvage > 0m
        ? $"That is the last number looked at: as a copy left over is still worth {format.Money(salvage)}, nothing holds the number back. Is it worth that?"
        : "That is the last number looked at, or the most that the shop prints.";

    /// <summary>Where the copies for sale come from, such as <c>110 printed, 4 given away</c>; null where that says nothing new.</summary>
    public static string? ForSale(ReprintLook look, PressFormat format) => look is { OnHand: 0, GivenAway: 0 } or { Point.Quantity: 0 }
        ? null
        : string.Join(", ", new[]
        {
            look.OnHand > 0 ? $"{format.Count(look.OnHand)} on hand" : null,
            $"{format.Count(look.Point.Quantity)} printed",
            look.GivenAway > 0 ? $"{format.Count(look.GivenAway)} given away" : null,
        }.OfType<string>());

    /// <summary>What is left over, such as <c>12 copies</c>, with cartons where the shop has some.</summary>
    public static string Left(Leftover left, PressFormat format) => left.Cartons is { } cartons && left.Copies > 0
        ? $"{format.Count(left.Copies)} ({Words.Many(format.Count(cartons), cartons, "box", "boxes")})"
        : format.Count(left.Copies);

    /// <summary>Such as <c>half the pace</c>.</summary>
    public static string Pace(decimal pace, PressFormat format) => pace switch
    {
        0.5m => "half as quickly",
        0.75m => "three quarters as quickly",
        1m => "as now",
        1.25m => "a quarter more quickly",
        1.5m => "half as quickly again",
        2m => "twice as quickly",
        _ => $"{format.Number(pace, 2)} times as quickly",
    };

    /// <summary>The days left out of a history, in words.</summary>
    public static string StockOuts(SalesHistory history, PressFormat format)
    {
        var days = history.StockOuts.Sum(gap => gap.Days);
        var gaps = history.StockOuts.Select(gap => gap.Days == 1 ? format.Day(gap.From) : $"{format.Day(gap.From)} to {format.Day(gap.To)}");
        return $"{Words.Many(format.Count(days), days, "day", "days")} without copies {(days == 1 ? "is" : "are")} left out ({string.Join("; ", gaps)}): nobody could buy then, which does not say that nobody asked.";
    }

    /// <summary>All that a reprint is decided from, in one line: for two versions of it.</summary>
    public static string Of(PlanReprint? reprint, PressFormat format)
    {
        if (reprint is null)
        {
            return "nothing yet";
        }

        var request = reprint.Request;
        var opinion = reprint.Opinion is { } asked ? $"{format.Count(asked.Low)}, {format.Count(asked.Likely)}, {format.Count(asked.High)}" : "none";
        return $"{(request.Demand is HistoryDemand ? "past sales" : "opinion")} over {Of(reprint.Horizon, format)}, read {format.Day(reprint.SeenOn)}; opinion {opinion}; "
            + $"event {(reprint.Event is { } ahead ? $"{format.Number(ahead.Times, 2)} times on {Words.Many(format.Count(ahead.Days), ahead.Days, "day", "days")}{(ahead.Day is { } day ? $" from {format.Day(day)}" : "")}" : "none")}; promised {format.Count(request.Demand.Committed)}; "
            + $"net {(request.NetPerCopy is { } net ? format.Price(net) : "by channels")}; left over {format.Price(request.Salvage)}; short {format.Price(request.Penalty)}; keeping {format.Price(request.Holding)}; "
            + $"cash {(request.Cash is { } cash ? format.Money(cash) : "no limit")}";
    }
}
