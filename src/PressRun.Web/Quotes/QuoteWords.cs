using PressRun.Data.Quotes;
using PressRun.Engine.Quoting;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Quotes;

/// <summary>What quotes are called on screen.</summary>
public static class QuoteWords
{
    /// <summary>Where a quote stands, in a word.</summary>
    public static string Of(QuoteState state) => state switch
    {
        QuoteState.Held => "held",
        QuoteState.Out => "out",
        QuoteState.Agreed => "agreed",
        QuoteState.TurnedDown => "turned down",
        QuoteState.Replaced => "replaced",
        _ => "lapsed",
    };

    /// <summary>What the word means.</summary>
    public static string Meaning(QuoteState state) => state switch
    {
        QuoteState.Held => "nobody has a link to it",
        QuoteState.Out => "someone has a link to it",
        QuoteState.Agreed => "everyone who was asked has agreed",
        QuoteState.TurnedDown => "someone who was asked does not want it",
        QuoteState.Replaced => "a later quote stands in its place",
        _ => "its last day has passed",
    };

    /// <summary>What happened, as a sentence.</summary>
    /// <param name="happened">The event.</param>
    /// <param name="view">The quote it happened to.</param>
    public static string Of(QuoteEvent happened, QuoteView view)
    {
        var (by, format) = (By(happened, view), view.Format);
        return happened.Kind switch
        {
            QuoteEventKind.LinkMade => $"{by} made a link for {LinkName(happened, view)}.",
            QuoteEventKind.LinkEnded => $"{by} ended the link of {LinkName(happened, view)}.",
            QuoteEventKind.Agreed => $"{by} agreed to {format.Count(happened.Quantity!.Value)} copies for {format.Money(happened.Amount!.Value)}.",
            QuoteEventKind.TurnedDown => happened.Words.Length == 0 ? $"{by} does not want it." : $"{by} does not want it:",
            QuoteEventKind.AskedFor =>
                $"{by} asks for {Words.Many(format.Count(happened.Quantity!.Value), happened.Quantity.Value, "copy", "copies")} instead, shown at {format.Money(happened.Amount!.Value)}.",
            QuoteEventKind.Remarked => $"{by}:",
            QuoteEventKind.Paid when happened.Amount < 0m => $"{format.Money(-happened.Amount.Value)} went back to {Payer(happened, view)} on {format.Day(happened.Day!.Value)}.",
            QuoteEventKind.Paid => $"{Payer(happened, view)} paid {format.Money(happened.Amount!.Value)} on {format.Day(happened.Day!.Value)}.",
            _ => $"Quote {format.Count(happened.Quantity!.Value)} took its place.",
        };
    }

    /// <summary>What is signed, from after its "I": <c>agree to 150 copies for 305.83, of which my part is 101.94</c>.</summary>
    /// <param name="view">The quote.</param>
    /// <param name="part">Place of the signer's part of the bill; null where they carry none.</param>
    public static string Agreeing(QuoteView view, int? part) =>
        $"agree to {Copies(view)} for {view.Format.Money(view.Quote.Landed)}{(part is { } place ? $", of which my part is {view.Format.Money(view.Bill[place].Amount)}" : "")}";

    /// <summary>Such as <c>150 copies</c>.</summary>
    public static string Copies(QuoteView view) => Words.Many(view.Format.Count(view.Quote.Quantity), view.Quote.Quantity, "copy", "copies");

    /// <summary>Who did it: the press, or whoever has the link, by the name they gave and the name it was made for where the two differ. A name is free
    /// to type, so nobody speaks for the press or for another.</summary>
    public static string By(QuoteEvent happened, QuoteView view)
    {
        if (happened.Kind is QuoteEventKind.LinkMade or QuoteEventKind.LinkEnded || happened.LinkId is null)
        {
            return $"{Apart.Of(happened.By)} (the press)";
        }

        var madeFor = view.Whole.Links.FirstOrDefault(link => link.Id == happened.LinkId)?.Name ?? "";
        return string.Equals(madeFor, happened.By, StringComparison.OrdinalIgnoreCase) && !string.Equals(madeFor, view.Facts.Press, StringComparison.OrdinalIgnoreCase)
            ? Apart.Of(happened.By)
            : $"{Apart.Of(happened.By)} (by the link for {Apart.Of(madeFor)})";
    }

    /// <summary>Which dated tables a quote went by: the shop's, and how new its postage tables are.</summary>
    public static string ListsInForce(QuoteView view)
    {
        var (shop, postage) = (view.Facts.Lists[0], view.Facts.Lists.Skip(1).ToList());
        var prices = $"Prices of {Apart.Of(shop.Name)} from {view.Format.Day(shop.From)}";
        return postage.Count > 0 ? $"{prices}, postage tables up to {view.Format.Day(postage.Max(list => list.From))}." : prices + ".";
    }

    private static string LinkName(QuoteEvent happened, QuoteView view) =>
        Apart.Of(view.Whole.Links.FirstOrDefault(link => link.Id == happened.LinkId)?.Name ?? "");

    private static string Payer(QuoteEvent happened, QuoteView view) => Apart.Of(view.Facts.Bill[happened.Part!.Value].Name);
}
