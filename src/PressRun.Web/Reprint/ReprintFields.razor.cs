using System.Globalization;
using Microsoft.AspNetCore.Components;
using PressRun.Data.RunPlans;
using PressRun.Engine.Copies;
using PressRun.Engine.Costing;
using PressRun.Engine.Reprint;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Reprint;

public sealed partial class ReprintFields
{
    // What was typed of an opinion that is not whole yet.
    private readonly Dictionary<string, decimal> half = new(StringComparer.Ordinal);

    /// <summary>What is decided from.</summary>
    [Parameter, EditorRequired]
    public PlanReprint Settings { get; set; } = default!;

    /// <summary>The ledger of today.</summary>
    [Parameter, EditorRequired]
    public TitleLedger Ledger { get; set; } = default!;

    /// <summary>What a copy keeps, by the channels or as typed.</summary>
    [Parameter, EditorRequired]
    public decimal NetPerCopy { get; set; }

    /// <summary>How figures are written.</summary>
    [Parameter, EditorRequired]
    public PressFormat Format { get; set; } = default!;

    /// <summary>Where sales are written down.</summary>
    [Parameter, EditorRequired]
    public string CopiesAddress { get; set; } = "";

    /// <summary>Names the plan in the drafts.</summary>
    [Parameter, EditorRequired]
    public Guid PlanId { get; set; }

    /// <summary>Saves a change, with what it is in words; answers null, or a sentence that says what stands in the way.</summary>
    [Parameter, EditorRequired]
    public Func<Func<PlanReprint, PlanReprint>, string, Task<string?>> Change { get; set; } = default!;

    private static IReadOnlyList<(bool, string)> Bases => [(true, Say($"past sales")), (false, Say($"my opinion"))];

    private static IReadOnlyList<(HorizonUnit, string)> Units => [(HorizonUnit.Weeks, Say($"weeks")), (HorizonUnit.Months, Say($"months"))];

    private static IReadOnlyList<(string, string)> Opinions => [(Say($"At least"), "low"), (Say($"Most likely"), "likely"), (Say($"At most"), "high")];

    private bool ByHistory => Settings.Request.Demand is HistoryDemand;

    // The opinion, or the example that is gone by where there is none.
    private OpinionDemand? Asked => Settings.Opinion ?? Settings.Request.Demand as OpinionDemand;

    private bool LedgerMoved => Settings.SeenOn < Ledger.Today && Settings.Request.OnHand != Ledger.OnHand;

    private decimal Uplift => Settings.Event?.Uplift(Ledger.Today, Settings.Horizon.EndFrom(Ledger.Today)) ?? 1m;

    private string? EventNotice => Settings.Event is { Day: { } day, Times: not 1m } && Uplift == 1m
        ? Say($"{Format.Day(day)} does not lie in the time looked at, so it does not count.")
        : null;

    private string Moved => Say(Settings.Request.OnHand,
        $"The ledger has moved since this was decided on {Format.Day(Settings.SeenOn)}: then {Format.Count(Settings.Request.OnHand)} was on hand, now {Format.Count(Ledger.OnHand)}.",
        $"The ledger has moved since this was decided on {Format.Day(Settings.SeenOn)}: then {Format.Count(Settings.Request.OnHand)} were on hand, now {Format.Count(Ledger.OnHand)}.");

    private RenderFragment Sold(SalesHistory history)
    {
        var (from, to, sold, days, weekly) = (Format.Day(history.From), Format.Day(history.To), Format.Count(history.Sold), Words.Days(history.DaysWithCopies, Format.Count), Format.Number(history.SoldPerWeek, 1));
        return Put(history.Sold,
            $"From {from} to {to}, {sold} copy was sold of all printings, in {days} with copies to sell: <strong>{weekly}</strong> a week.",
            $"From {from} to {to}, {sold} copies were sold of all printings, in {days} with copies to sell: <strong>{weekly}</strong> a week.");
    }

    private string Key(string field) => $"plan/{PlanId}/reprint-{field}";

    private static decimal Of(OpinionDemand opinion, string field) => field switch
    {
        "low" => opinion.Low,
        "likely" => opinion.Likely,
        _ => opinion.High,
    };

    private Task<string?> AgainAsync() => Change(now => now, Say($"the ledger of today"));

    private Task<string?> SaveBasisAsync(bool history) => history
        ? Change(now => now with { Request = now.Request with { Demand = Ledger.History!.Demand(1, 1m, TitleLedger.PriorShape, 0m, now.Request.Demand.Committed) } }, Say($"past sales"))
        : Change(now => now with { Request = now.Request with { Demand = new OpinionDemand(0m, 0m, 1m, now.Request.Demand.Committed) } }, Say($"my opinion"));

    private Task<string?> SaveHorizonAsync(string typed) => Typed.Count(typed, Format.Culture) is { } length && length is >= 1 and <= Horizon.Most
        ? Change(now => now with { Horizon = now.Horizon with { Length = length } }, Say($"horizon"))
        : Said(Say($"Write a whole number from 1 to {Horizon.Most}."));

    private Task<string?> SavePromisedAsync(string typed) => Typed.Count(typed, Format.Culture) is { } copies && copies <= Job.MostCopies
        ? Change(now => now with { Request = now.Request with { Demand = now.Request.Demand with { Committed = copies } } }, Say($"copies promised"))
        : Said(Say($"Write a whole number of copies, 0 where none are promised."));

    private Task<string?> SaveTimesAsync(string typed)
    {
        if (Typed.Number(typed, Format.Culture) is not { } times || times is <= 0m or > 100m)
        {
            return Said(Say($"Write a number above 0, such as 8 for a fair that sells eight times what another day does; 1 where nothing is ahead."));
        }

        return Change(now => now with { Event = times == 1m ? null : (now.Event ?? new EventAhead(null, times)) with { Times = times } }, Say($"event"));
    }

    private Task<string?> SaveDaysAsync(string typed) => Typed.Count(typed, Format.Culture) is { } days && days is >= 1 and <= EventAhead.MostDays
        ? Change(now => now with { Event = now.Event! with { Days = days } }, Say($"days of the event"))
        : Said(Say($"Write a whole number of days from 1 to {EventAhead.MostDays}."));

    private Task<string?> SaveDayAsync(string typed)
    {
        if (typed.Length == 0)
        {
            return Change(now => now with { Event = now.Event! with { Day = null } }, Say($"day of the event"));
        }

        return DateOnly.TryParse(typed, CultureInfo.InvariantCulture, out var day) || DateOnly.TryParse(typed, Format.Culture, out day)
            ? Change(now => now with { Event = now.Event! with { Day = day } }, Say($"day of the event"))
            : Said(Say($"Write a day such as 2026-12-12, or leave it empty."));
    }

    private async Task<string?> SaveOpinionAsync(string typed, string field)
    {
        if (Typed.Number(typed, Format.Culture) is not { } copies || copies is < 0m or > Job.MostCopies)
        {
            return Say($"Write a number of copies from 0 to {Format.Count(Job.MostCopies)}.");
        }

        half[field] = copies;
        if ((Part("low"), Part("likely"), Part("high")) is not ({ } low, { } likely, { } high))
        {
            return Say($"Kept until the other numbers are there: at least, most likely, at most.");
        }

        if (low > likely || likely > high || low == high)
        {
            return Say($"At least, most likely and at most rise: {Format.Number(low, 2)}, {Format.Number(likely, 2)}, {Format.Number(high, 2)} do not.");
        }

        var refused = await Change(
            now => now with
            {
                Opinion = new OpinionDemand(low, likely, high, 0),
                Request = now.Request with { Demand = now.Request.Demand is HistoryDemand ? now.Request.Demand : new OpinionDemand(low, likely, high, now.Request.Demand.Committed) },
            },
            Say($"opinion"));
        if (refused is null)
        {
            half.Clear();
        }

        return refused;
    }

    private Task<string?> ForgetOpinionAsync()
    {
        half.Clear();
        return Change(now => now with { Opinion = null }, Say($"opinion"));
    }

    private decimal? Part(string field) => half.TryGetValue(field, out var typed) ? typed : Asked is { } asked ? Of(asked, field) : null;

    private Task<string?> SaveMoneyAsync(string typed, string what, bool mayLack, bool mayBeNegative, Func<ReprintRequest, decimal?, ReprintRequest> put)
    {
        if (typed.Length == 0 && mayLack)
        {
            return Change(now => now with { Request = put(now.Request, null) }, what);
        }

        return Typed.Number(typed, Format.Culture) is { } amount && (mayBeNegative || amount >= 0m) && Math.Abs(amount) <= 1_000_000_000m
            ? Change(now => now with { Request = put(now.Request, amount) }, what)
            : Said(mayLack ? Say($"Write an amount, such as 5.20, or leave it empty.") : Say($"Write an amount, such as 0.50."));
    }

    private static Task<string?> Said(string sentence) => Task.FromResult<string?>(sentence);
}
