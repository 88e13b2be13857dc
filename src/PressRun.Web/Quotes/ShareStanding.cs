using PressRun.Data.Quotes;
using PressRun.Engine.Quoting;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Quotes;

/// <summary>What its reader is told of where a quote stands. What was answered by their link comes first, whatever became of the quote since.</summary>
public static class ShareStanding
{
    /// <summary>The sentences, in their order.</summary>
    public static IEnumerable<string> Sentences(QuoteView view, QuoteLink link)
    {
        var (state, press) = (view.Whole.State, Apart.Of(view.Facts.Press));
        if (state is QuoteState.Out or QuoteState.Held && view.Quote.Replaces is { } earlier)
        {
            yield return Say($"It takes the place of quote {view.Format.Count(earlier)}; what was answered to that one does not count for this one.");
        }

        if (Answer(view, link) is { } answered)
        {
            yield return answered;
        }

        var more = (state, link.Answer) switch
        {
            (QuoteState.Replaced, QuoteAnswer.Agreed) => Say($"A later quote stands in its place, which your yes does not count for; ask {press} for its link."),
            (QuoteState.Replaced, _) => Say($"A later quote stands in its place; ask {press} for its link."),
            (QuoteState.Lapsed, _) => Say($"Its last day has passed; ask {press} for a new one."),
            (QuoteState.Agreed, _) => Say($"Everyone who was asked has agreed."),
            (QuoteState.TurnedDown, QuoteAnswer.TurnedDown) => null,
            (QuoteState.TurnedDown, _) => Say($"Someone else who was asked has turned it down."),
            (_, QuoteAnswer.Agreed) => Say($"Others have not answered yet."),
            _ => null,
        };
        if (more is not null)
        {
            yield return more;
        }
    }

    /// <summary>Until when what stands at the head of the page holds for whoever reads it by a link.</summary>
    public static string Head(QuoteView view, QuoteLink link) => view.Whole.State switch
    {
        QuoteState.Lapsed => Say($"lapsed on {view.Format.Day(view.Facts.Until)}"),
        QuoteState.Replaced or QuoteState.Agreed or QuoteState.TurnedDown => QuoteWords.Of(view.Whole.State),
        _ when link is { Rights.Agree: true, Answer: QuoteAnswer.None } => Say($"can be agreed to until {view.Format.Day(QuoteWords.LastDay(view, link))}"),
        _ => Say($"opens until {view.Format.Day(LinkWords.LastDay(link, view.Format))}"),
    };

    // Two may have one link: whose answer it was is said where they are not called as the link is.
    private static string? Answer(QuoteView view, QuoteLink link)
    {
        var answer = view.Whole.Events.LastOrDefault(happened => happened.LinkId == link.Id && happened.Kind is QuoteEventKind.Agreed or QuoteEventKind.TurnedDown);
        if (answer is null)
        {
            return null;
        }

        var day = view.Format.Day(view.Format.DayOf(answer.At));
        var isOther = !string.Equals(answer.By, link.Name, StringComparison.OrdinalIgnoreCase);
        return (answer.Kind, isOther) switch
        {
            (QuoteEventKind.Agreed, false) => Say($"You agreed to it on {day}."),
            (QuoteEventKind.Agreed, true) => Say($"{Apart.Of(answer.By)} agreed to it by this link on {day}."),
            (_, false) => Say($"You turned it down on {day}."),
            _ => Say($"{Apart.Of(answer.By)} turned it down by this link on {day}."),
        };
    }
}
