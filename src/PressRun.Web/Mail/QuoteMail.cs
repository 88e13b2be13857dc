using MimeKit;
using MimeKit.Text;
using PressRun.Data.Mail;
using PressRun.Data.Quotes;
using PressRun.Web.Quotes;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Mail;

/// <summary>What a maker is told of a quote, as plain text in the server's own language: nobody has said theirs. No link to the quote stands in it,
/// only where PressRun is: nobody learns to press one in a mail that shows what it opens.</summary>
public static class QuoteMail
{
    // Signs that turn the direction of text (UAX #9): a mail has nothing to hold them in, so that one of a reader's could turn what is ours.
    private static bool Turns(char sign) => sign is >= '\u202A' and <= '\u202E' or >= '\u2066' and <= '\u2069';

    /// <summary>The mail.</summary>
    /// <param name="due">What is to be told.</param>
    /// <param name="from">Address that it comes from.</param>
    /// <param name="now">The moment it is sent.</param>
    /// <param name="home">Where PressRun is found; null where nobody said.</param>
    public static MimeMessage Of(DueMail due, string from, DateTimeOffset now, string? home = null)
    {
        // What the mail says of the quote stands in its figures: the job need not be read for it.
        var view = QuoteView.Of(due.Whole, new FrozenJob(null, null), Texts.Language);
        var sender = MailboxAddress.Parse(from);
        var mail = new MimeMessage
        {
            Subject = Plain(Say($"Quote {view.Format.Count(view.Quote.Number)}, {view.Facts.Title}: {InAWord(due.Event.Kind)}")),
            Date = now,
            MessageId = $"{due.Id:N}@{sender.Domain}",
            Body = new TextPart(TextFormat.Plain) { Text = Plain(Text(due, view, home)) },
        };
        mail.From.Add(new MailboxAddress(Plain($"{view.Facts.Press} (PressRun)"), sender.Address));
        mail.To.Add(MailboxAddress.Parse(due.Address));
        mail.Headers.Add("Auto-Submitted", "auto-generated");
        return mail;
    }

    private static string Text(DueMail due, QuoteView view, string? home)
    {
        var quoted = due.Event.Words.Length == 0 ? "" : $"\n> {due.Event.Words.Replace("\n", "\n> ", StringComparison.Ordinal)}\n";
        return $"{QuoteWords.Of(due.Event, view)}\n{quoted}\n{TheQuote(view)} {Say($"It is {QuoteWords.Of(due.Whole.State)}: {QuoteWords.Meaning(due.Whole.State)}.")}\n\n"
            + $"{(home is null ? Say($"Open PressRun to answer; this mailbox is not read.") : Say($"Open PressRun at {home} to answer; this mailbox is not read."))}\n";
    }

    private static string TheQuote(QuoteView view)
    {
        var (copies, money) = (Words.Copies(view.Quote.Quantity, view.Format.Count), view.Format.Money(view.Quote.Landed));
        return Say($"The quote: {copies} of {view.Facts.Title} for {money} {view.Facts.Currency}.");
    }

    private static string InAWord(QuoteEventKind kind) => kind switch
    {
        QuoteEventKind.Agreed => Say("an answer to a quote", $"agreed"),
        QuoteEventKind.TurnedDown => Say("an answer to a quote", $"turned down"),
        QuoteEventKind.AskedFor => Say("an answer to a quote", $"another quantity"),
        _ => Say("an answer to a quote", $"a remark"),
    };

    private static string Plain(string text) => string.Concat(text.Where(sign => !Turns(sign)));
}
