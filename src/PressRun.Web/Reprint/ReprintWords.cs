using PressRun.Data.RunPlans;
using PressRun.Engine.Copies;
using PressRun.Engine.Reprint;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Reprint;

/// <summary>A reprint in words.</summary>
public static class ReprintWords
{
    /// <summary>By how much one's own number keeps less than the best at a pace: the difference of both as they are shown.</summary>
    public static string Short(PaceRow row, PressFormat format) =>
        !row.OwnIsPaidFor ? Say($"not paid for")
        : row.Own.Quantity == row.Best.Quantity ? Say($"the best")
        : row.IsNearlyBest ? Say($"nearly best")
        : format.Money(PressFormat.Apart(row.Own.ExpectedProfit, row.Best.ExpectedProfit, format.Currency.MinorDigits));

    /// <summary>Such as <c>6 months</c>.</summary>
    public static string Of(Horizon horizon, PressFormat format) => horizon.Unit == HorizonUnit.Weeks
        ? Say(horizon.Length, $"{format.Count(horizon.Length)} week", $"{format.Count(horizon.Length)} weeks")
        : Say(horizon.Length, $"{format.Count(horizon.Length)} month", $"{format.Count(horizon.Length)} months");

    /// <summary>A number of copies or of futures: <c>none</c>, <c>12</c>.</summary>
    public static string Count(int number, PressFormat format) => number == 0 ? Say("a number of copies or of futures", $"none") : format.Count(number);

    /// <summary>Such as <c>keep 342.10</c> or <c>lose 12.00</c>.</summary>
    public static string Keeps(decimal profit, PressFormat format) => profit < 0m ? Say($"lose {format.Money(-profit)}") : Say($"keep {format.Money(profit)}");

    /// <summary>Such as <c>in 15 of 50 such futures they sell out, in 2 money is lost</c>.</summary>
    public static string Odds(ReprintLook look, PressFormat format) =>
        Say($"in {Count(look.SoldOut, format)} of {format.Count(look.Futures.Count)} such futures they sell out, in {Count(look.Losses, format)} money is lost");

    /// <summary>Why the best number is no higher: what the next copies bring on average against what they cost.</summary>
    public static string WhyNoMore(NextCopies next, int futures, PressFormat format)
    {
        var (brings, costs) = (format.Money(Math.Abs(next.Brings)), format.Money(Math.Abs(next.Costs)));
        return next.More == 1 ? WhyNotOne(next, brings, costs, futures, format) : WhyNoStep(next, brings, costs, format);
    }

    private static string WhyNotOne(NextCopies next, string brings, string costs, int futures, PressFormat format) => (next.Brings, next.Costs) switch
    {
        ( < 0m, < 0m) => Say($"One more would cost {costs} less, and bring {brings} less on average."),
        ( < 0m, _) => Say($"One more would cost {costs}, and bring {brings} less on average."),
        _ when brings == costs => Say($"One more would bring no more on average than the {costs} it costs: it is asked for in {Count(next.Asked, format)} of the {futures}."),
        _ => Say($"One more would bring {brings} on average and cost {costs}: it is asked for in {Count(next.Asked, format)} of the {futures}."),
    };

    private static string WhyNoStep(NextCopies next, string brings, string costs, PressFormat format) => (next.Brings, next.Costs) switch
    {
        ( < 0m, < 0m) => Say($"The next step up, to {format.Count(next.To)}, would cost {costs} less, and bring {brings} less on average."),
        ( < 0m, _) => Say($"The next step up, to {format.Count(next.To)}, would cost {costs}, and bring {brings} less on average."),
        _ when brings == costs => Say($"The next step up, to {format.Count(next.To)}, would bring no more on average than the {costs} it costs."),
        _ => Say($"The next step up, to {format.Count(next.To)}, would bring {brings} on average and cost {costs}."),
    };

    /// <summary>Said where no higher number was looked at than the best: it may not be the best of all.</summary>
    /// <param name="salvage">What a copy left over is still worth.</param>
    /// <param name="format">How figures are written.</param>
    public static string LastLookedAt(decimal salvage, PressFormat format) => salvage > 0m
        ? Say($"That is the last number looked at: as a copy left over is still worth {format.Money(salvage)}, nothing holds the number back. Is it worth that?")
        : Say($"That is the last number looked at, or the most that the shop prints.");

    /// <summary>Where the copies for sale come from, such as <c>110 printed, 4 given away</c>; null where that says nothing new.</summary>
    public static string? ForSale(ReprintLook look, PressFormat format) => look is { OnHand: 0, GivenAway: 0 } or { Point.Quantity: 0 }
        ? null
        : string.Join(", ", new[]
        {
            look.OnHand > 0 ? Say($"{format.Count(look.OnHand)} on hand") : null,
            Say($"{format.Count(look.Point.Quantity)} printed"),
            look.GivenAway > 0 ? Say($"{format.Count(look.GivenAway)} given away") : null,
        }.OfType<string>());

    /// <summary>What is left over, such as <c>12 copies</c>, with cartons where the shop has some.</summary>
    public static string Left(Leftover left, PressFormat format) => left.Cartons is { } cartons && left.Copies > 0
        ? Say(cartons, $"{format.Count(left.Copies)} ({format.Count(cartons)} box)", $"{format.Count(left.Copies)} ({format.Count(cartons)} boxes)")
        : format.Count(left.Copies);

    /// <summary>Such as <c>half the pace</c>.</summary>
    public static string Pace(decimal pace, PressFormat format) => pace switch
    {
        0.5m => Say($"half as quickly"),
        0.75m => Say($"three quarters as quickly"),
        1m => Say($"as now"),
        1.25m => Say($"a quarter more quickly"),
        1.5m => Say($"half as quickly again"),
        2m => Say($"twice as quickly"),
        _ => Say($"{format.Number(pace, 2)} times as quickly"),
    };

    /// <summary>The days left out of a history, in words.</summary>
    public static string WithoutCopies(SalesHistory history, PressFormat format)
    {
        var days = history.TimesWithoutCopies.Sum(gap => gap.Days);
        var gaps = string.Join("; ", history.TimesWithoutCopies.Select(gap => gap.Days == 1 ? format.Day(gap.From) : Say($"{format.Day(gap.From)} to {format.Day(gap.To)}")));
        return Say(days,
            $"{format.Count(days)} day without copies is left out ({gaps}): nobody could buy then, which does not say that nobody asked.",
            $"{format.Count(days)} days without copies are left out ({gaps}): nobody could buy then, which does not say that nobody asked.");
    }

    /// <summary>All that a reprint is decided from, in one line: for two versions of it.</summary>
    public static string Of(PlanReprint? reprint, PressFormat format)
    {
        if (reprint is null)
        {
            return Say($"nothing yet");
        }

        var request = reprint.Request;
        return string.Join("; ",
            request.Demand is HistoryDemand
                ? Say($"past sales over {Of(reprint.Horizon, format)}, read {format.Day(reprint.SeenOn)}")
                : Say($"opinion over {Of(reprint.Horizon, format)}, read {format.Day(reprint.SeenOn)}"),
            reprint.Opinion is { } asked ? Say($"opinion {format.Count(asked.Low)}, {format.Count(asked.Likely)}, {format.Count(asked.High)}") : Say($"opinion none"),
            Of(reprint.Event, format),
            Say($"promised {format.Count(request.Demand.Committed)}"),
            request.NetPerCopy is { } net ? Say($"net {format.Price(net)}") : Say($"net by the ways of selling"),
            Say($"left over {format.Price(request.Salvage)}"),
            Say($"short {format.Price(request.Penalty)}"),
            Say($"keeping {format.Price(request.Holding)}"),
            request.Cash is { } cash ? Say($"cash {format.Money(cash)}") : Say($"cash no limit"));
    }

    private static string Of(EventAhead? ahead, PressFormat format) => ahead switch
    {
        null => Say($"event none"),
        { Day: { } day } => Say($"event {format.Number(ahead.Times, 2)} times on {Words.Days(ahead.Days, format.Count)} from {format.Day(day)}"),
        _ => Say($"event {format.Number(ahead.Times, 2)} times on {Words.Days(ahead.Days, format.Count)}"),
    };
}
