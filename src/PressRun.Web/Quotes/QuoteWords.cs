using Microsoft.AspNetCore.Components;
using PressRun.Data.Quotes;
using PressRun.Engine.Costing;
using PressRun.Engine.Quoting;
using PressRun.JobFile.Results;
using PressRun.Web.RunPlans;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Quotes;

/// <summary>What quotes are called on screen.</summary>
public static class QuoteWords
{
    private const int UsualDecimals = 2;
    private const int MostDecimals = 5;

    /// <summary>What a frozen line is for, as its viewer reads it: by its kind and the names that were frozen, or in the words that were frozen where its kind is not known.</summary>
    public static string Of(FrozenLine line) => LineText.Read(line.Code) switch
    {
        null => SayWhole(line.Label),
        (CostCode.Print, var ink) => LineWords.Of(CostCode.Print, ink),
        (CostCode.Paper, _) => LineWords.Of(CostCode.Paper, line.Label.StartsWith(LineText.BeforePaper, StringComparison.Ordinal) ? line.Label[LineText.BeforePaper.Length..] : line.Label),
        // Whoever reads a quote has no hours of their own in it.
        (CostCode.BenchLabour, _) => Say($"Hours at the binding table"),
        ({ } kind, _) => LineWords.Of(kind, SayWhole(line.Label)),
    };

    /// <summary>How many a frozen line counts, with the decimals that it takes for so many at the price of each to be the amount: 0.36 hours at 14.00 are not 5.06, 0.3611 are.</summary>
    public static string HowMany(FrozenLine line, PressFormat format)
    {
        var decimals = Enumerable.Range(UsualDecimals, MostDecimals - UsualDecimals).FirstOrDefault(
            count => format.Currency.Round(decimal.Round(line.Quantity, count, MidpointRounding.AwayFromZero) * line.Each) == line.Amount, MostDecimals);
        return format.Number(line.Quantity, decimals);
    }

    /// <summary>What a frozen line counts; empty where it is one of something, or its kind is not known.</summary>
    public static string Unit(FrozenLine line) => LineText.Read(line.Code) is var (kind, _) ? LineWords.Unit(kind) : "";

    /// <summary>Where a quote stands, in a word.</summary>
    public static string Of(QuoteState state) => state switch
    {
        QuoteState.Held => Say("state of a quote", $"held"),
        QuoteState.Out => Say("state of a quote", $"out"),
        QuoteState.Agreed => Say("state of a quote", $"agreed"),
        QuoteState.TurnedDown => Say("state of a quote", $"turned down"),
        QuoteState.Replaced => Say("state of a quote", $"replaced"),
        _ => Say("state of a quote", $"lapsed"),
    };

    /// <summary>What the word means.</summary>
    public static string Meaning(QuoteState state) => state switch
    {
        QuoteState.Held => Say($"nobody has a link to it"),
        QuoteState.Out => Say($"someone has a link to it"),
        QuoteState.Agreed => Say($"everyone who was asked has agreed"),
        QuoteState.TurnedDown => Say($"someone who was asked does not want it"),
        QuoteState.Replaced => Say($"a later quote stands in its place"),
        _ => Say($"its last day has passed"),
    };

    /// <summary>What happened, as a sentence.</summary>
    /// <param name="happened">The event.</param>
    /// <param name="view">The quote it happened to.</param>
    public static string Of(QuoteEvent happened, QuoteView view)
    {
        var (by, format) = (By(happened, view), view.Format);
        return happened.Kind switch
        {
            QuoteEventKind.LinkMade => Say($"{by} made a link for {LinkName(happened, view)}."),
            QuoteEventKind.LinkEnded => Say($"{by} ended the link of {LinkName(happened, view)}."),
            QuoteEventKind.LinkEndedWithMaker => Say($"The link of {LinkName(happened, view)} ended, because whoever made it may change nothing in this press any more."),
            QuoteEventKind.Agreed when happened.Part is { } place && view.Bill.ElementAtOrDefault(place) is { } part =>
                Say($"{by} agreed to {Words.Copies(happened.Quantity!.Value, format.Count)} for {format.Sum(happened.Amount!.Value)}, of which {format.Sum(part.Amount)} is their part."),
            QuoteEventKind.Agreed => Say($"{by} agreed to {Words.Copies(happened.Quantity!.Value, format.Count)} for {format.Sum(happened.Amount!.Value)}."),
            QuoteEventKind.TurnedDown => happened.Words.Length == 0 ? Say($"{by} does not want it.") : Say($"{by} does not want it:"),
            QuoteEventKind.AskedFor =>
                Say($"{by} asks for {Words.Copies(happened.Quantity!.Value, format.Count)} instead, shown at {format.Money(happened.Amount!.Value)}."),
            QuoteEventKind.Remarked => $"{by}:",
            QuoteEventKind.Paid when happened.Amount < 0m => Say($"{format.Money(-happened.Amount.Value)} went back to {Payer(happened, view)} on {format.Day(happened.Day!.Value)}."),
            QuoteEventKind.Paid => Say($"{Payer(happened, view)} paid {format.Money(happened.Amount!.Value)} on {format.Day(happened.Day!.Value)}."),
            _ => Say($"Quote {format.Count(happened.Quantity!.Value)} took its place."),
        };
    }

    /// <summary>What is asked for: how many copies for how much, and what each of them is.</summary>
    public static RenderFragment Asked(QuoteView view)
    {
        var (quantity, format) = (view.Quote.Quantity, view.Format);
        return Put(quantity,
            $"<strong>{format.Count(quantity)}</strong> copy for <strong>{format.Sum(view.Quote.Landed)}</strong>, {format.Money(view.Figures.UnitCost)} each.",
            $"<strong>{format.Count(quantity)}</strong> copies for <strong>{format.Sum(view.Quote.Landed)}</strong>, {format.Money(view.Figures.UnitCost)} each.");
    }

    /// <summary>What is signed on paper: <c>I agree to 150 copies for 305.83, of which my part is 101.94.</c></summary>
    /// <param name="view">The quote.</param>
    /// <param name="part">Place of the signer's part of the bill; null where they carry none.</param>
    public static string Agreeing(QuoteView view, int? part) => part is { } place
        ? Say($"I agree to {Copies(view)} for {view.Format.Sum(view.Quote.Landed)}, of which my part is {view.Format.Sum(view.Bill[place].Amount)}.")
        : Say($"I agree to {Copies(view)} for {view.Format.Sum(view.Quote.Landed)}, of which I pay nothing.");

    /// <summary>The last day on which whoever reads it by a link can agree to it: the quote's, or the link's where that ends before.</summary>
    public static DateOnly LastDay(QuoteView view, QuoteLink? reader) =>
        reader is not null && LinkWords.LastDay(reader, view.Format) is var day && day < view.Facts.Until ? day : view.Facts.Until;

    /// <summary>Who is asked and has not answered, and what they asked for instead where they did; empty where nobody is waited for.</summary>
    public static IReadOnlyList<string> WaitedFor(QuoteView view)
    {
        if (view.Whole.State is not (QuoteState.Out or QuoteState.Held))
        {
            return [];
        }

        var (format, until) = (view.Format, view.Format.Day(view.Facts.Until));
        var waiting = view.Whole.Links.Where(link => link is { EndedAt: null, Rights.Agree: true, Answer: QuoteAnswer.None })
            .Select(link => (Name: Apart.Of(link.Name), Asked: view.Whole.Events.LastOrDefault(happened => happened.Kind == QuoteEventKind.AskedFor && happened.LinkId == link.Id)?.Quantity)).ToList();
        var silent = waiting.Where(one => one.Asked is null).Select(one => one.Name).ToList();
        var asked = waiting.Where(one => one.Asked is not null).Select(one => Say($"{one.Name} asked for {Words.Copies(one.Asked!.Value, format.Count)} instead.")).ToList();
        return waiting.Count == 0 ? []
            : silent.Count == 0 ? [.. asked, Say($"As it stands it can be agreed to until {until}.")]
            : [
                .. asked,
                Say(silent.Count, $"{Words.Together(silent)} has not answered; it can be agreed to until {until}.", $"{Words.Together(silent)} have not answered; it can be agreed to until {until}."),
            ];
    }

    /// <summary>Such as <c>150 copies</c>.</summary>
    public static string Copies(QuoteView view) => Words.Copies(view.Quote.Quantity, view.Format.Count);

    /// <summary>Who did it: the press, or whoever has the link, by the name they gave and the name it was made for where the two differ. A name is free
    /// to type, so nobody speaks for the press or for another.</summary>
    public static string By(QuoteEvent happened, QuoteView view)
    {
        if (!happened.IsReaders)
        {
            return Say($"{Apart.Of(happened.By)} (the press)");
        }

        var madeFor = view.Whole.Links.FirstOrDefault(link => link.Id == happened.LinkId)?.Name ?? "";
        return SignersName.Same(madeFor, happened.By) && !string.Equals(madeFor, view.Facts.Press, StringComparison.OrdinalIgnoreCase)
            ? Apart.Of(happened.By)
            : Say($"{Apart.Of(happened.By)} (by the link for {Apart.Of(madeFor)})");
    }

    /// <summary>Which dated tables a quote went by: the shop's, and how new its postage tables are.</summary>
    public static string ListsInForce(QuoteView view)
    {
        var (shop, postage) = (view.Facts.Lists[0], view.Facts.Lists.Skip(1).ToList());
        return postage.Count > 0
            ? Say($"Prices of {Apart.Of(shop.Name)} from {view.Format.Day(shop.From)}, postage tables up to {view.Format.Day(postage.Max(list => list.From))}.")
            : Say($"Prices of {Apart.Of(shop.Name)} from {view.Format.Day(shop.From)}.");
    }

    private static string LinkName(QuoteEvent happened, QuoteView view) =>
        Apart.Of(view.Whole.Links.FirstOrDefault(link => link.Id == happened.LinkId)?.Name ?? "");

    private static string Payer(QuoteEvent happened, QuoteView view) => Apart.Of(view.Facts.Bill[happened.Part!.Value].Name);
}
