using PressRun.Data.Quotes;
using PressRun.Engine.Quoting;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Quotes;

/// <summary>What is said of a link to the maker.</summary>
public static class LinkWords
{
    /// <summary>What it lets its reader do.</summary>
    public static string Rights(QuoteLink link, QuoteView view)
    {
        var (rights, format) = (link.Rights, view.Format);
        List<string> may = [Say($"reads")];
        if (rights is { TryFrom: { } from, TryTo: { } to })
        {
            may.Add(Say($"tries {format.Count(from)} to {format.Count(to)} copies"));
        }

        if (rights.Remark)
        {
            may.Add(Say($"writes remarks"));
        }

        if (rights.Agree)
        {
            may.Add(link.Part is { } part ? Say($"is asked to agree and carries {format.Money(view.Bill[part].Amount)}") : Say($"is asked to agree"));
        }

        return string.Join(", ", may);
    }

    /// <summary>What ends with it, and what does not.</summary>
    public static string Ending(QuoteLink link, QuoteView view, DateTimeOffset now)
    {
        var name = Apart.Of(link.Name);
        if (!link.IsOpen(now))
        {
            return Say($"{name} is not waited for any more. The link has ended already, and never opens again.");
        }

        var ends = link is { Rights.Agree: true, Answer: QuoteAnswer.None }
            ? Say($"{name} can't open the quote by it any more and is not waited for any more; what was said by it stays. An ended link never opens again.")
            : Say($"{name} can't open the quote by it any more; what was said by it stays. An ended link never opens again.");
        return view.Whole.ReplacedBy is null ? $"{ends} {Say($"You can make them another link, with an address of its own.")}" : ends;
    }

    /// <summary>When it was made and by whom: it tells links of one name apart.</summary>
    public static string Made(QuoteLink link, QuoteView view)
    {
        var day = view.Format.Day(view.Format.DayOf(link.MadeAt));
        return view.Whole.Events.FirstOrDefault(happened => happened.Kind == QuoteEventKind.LinkMade && happened.LinkId == link.Id) is { } made
            ? Say($"made on {day} by {Apart.Of(made.By)}")
            : Say($"made on {day}");
    }

    /// <summary>Where it stands.</summary>
    public static string Stands(QuoteLink link, QuoteView view, DateTimeOffset now) => link switch
    {
        { Answer: QuoteAnswer.Agreed } => Say("what became of a link", $"has agreed"),
        { Answer: QuoteAnswer.TurnedDown } => Say("what became of a link", $"has turned it down"),
        { EndedAt: not null } => Say("what became of a link", $"ended"),
        { MakerGoneAt: not null } => Say($"ended, because whoever made it may change nothing here any more"),
        _ when IsOverAndAsked(link, now) => Say($"ended by itself after {view.Format.Day(LastDay(link, view.Format))} without an answer"),
        _ when !link.IsOpen(now) => Say($"ended by itself after {view.Format.Day(LastDay(link, view.Format))}"),
        _ => Say($"opens until {view.Format.Day(LastDay(link, view.Format))}"),
    };

    /// <summary>True where a link stopped without having been ended on purpose before whoever was asked by it had answered: they are waited for until the maker ends it.</summary>
    public static bool IsOverAndAsked(QuoteLink link, DateTimeOffset now) => link is { EndedAt: null, Rights.Agree: true, Answer: QuoteAnswer.None } && !link.IsOpen(now);

    /// <summary>The last day on which it opens. A link ends with the day before the moment at which it stops.</summary>
    public static DateOnly LastDay(QuoteLink link, PressFormat format) => format.DayOf(link.EndsAt.AddTicks(-1));
}
