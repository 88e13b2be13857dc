using Microsoft.EntityFrameworkCore;
using PressRun.Data.Mail;
using PressRun.Data.Presses;
using PressRun.Engine.Costing;
using PressRun.Engine.Quoting;

namespace PressRun.Data.Quotes;

/// <summary>What a link opens, as far as one look-up tells.</summary>
/// <param name="Press">Whose quote.</param>
/// <param name="QuoteId">Which.</param>
/// <param name="LinkId">By which link.</param>
/// <param name="IsOpen">False where it has ended: it is known, and opens nothing.</param>
/// <param name="Changes">Grows with everything that alters what the page shows.</param>
public sealed record SharedLook(PressId Press, Guid QuoteId, Guid LinkId, bool IsOpen, int Changes);

/// <summary>What a reader says of a quote.</summary>
public abstract record Reply
{
    private Reply()
    {
    }

    /// <summary>Agrees to exactly what was shown.</summary>
    /// <param name="Name">Typed into the sentence.</param>
    /// <param name="Quantity">The quantity that was shown.</param>
    /// <param name="Fingerprint">Of the quote that was shown.</param>
    public sealed record Agree(string Name, int Quantity, byte[] Fingerprint) : Reply;

    /// <summary>Does not want it.</summary>
    /// <param name="Name">Who says so.</param>
    /// <param name="Words">Why; may be empty.</param>
    public sealed record TurnDown(string Name, string Words) : Reply;

    /// <summary>Asks for another quantity.</summary>
    /// <param name="Name">Who asks.</param>
    /// <param name="Quantity">Copies.</param>
    /// <param name="Landed">What they were shown to cost.</param>
    public sealed record AskFor(string Name, int Quantity, decimal Landed) : Reply;

    /// <summary>Writes something.</summary>
    /// <param name="Name">Who.</param>
    /// <param name="Words">What.</param>
    public sealed record Remark(string Name, string Words) : Reply;
}

/// <summary>Quotes from their readers' side: all that a link's secret opens, and nothing else. Reading writes nothing.</summary>
public sealed class SharedQuoteStore
{
    // By the index of secrets, and by the key of marks: the one thing that every request for a share page asks.
    private const string FindLink =
        """
        SELECT link.press_id, link.quote_id, link.id, link.ends_at, link.ended_at, link.maker_gone_at, mark.changes
        FROM quote_links AS link JOIN quote_marks AS mark ON mark.press_id = link.press_id AND mark.quote_id = link.quote_id
        WHERE link.secret_hash = $1
        """;

    private readonly PressDatabase database;
    private readonly MailWriting mail;

    internal SharedQuoteStore(PressDatabase database, MailWriting mail) => (this.database, this.mail) = (database, mail);

    /// <summary>Looks a link up by the hash of its secret; null where there never was one.</summary>
    public Task<SharedLook?> LookAsync(byte[] secretHash, CancellationToken cancel = default) => database.AskServerAsync(
        FindLink,
        secretHash,
        row => new SharedLook(
            new PressId(row.GetGuid(0)), row.GetGuid(1), row.GetGuid(2), row.IsDBNull(4) && row.IsDBNull(5) && database.Now < row.GetFieldValue<DateTimeOffset>(3), row.GetInt32(6)),
        cancel);

    /// <summary>All about the quote behind an open link, with the link itself; null where it has ended.</summary>
    public async Task<(QuoteWhole Whole, QuoteLink Link)?> LoadAsync(SharedLook look, CancellationToken cancel = default) =>
        await database.ReadByLinkAsync(
            look.Press,
            async db =>
            {
                var row = await db.Quotes.AsNoTracking().Include(quote => quote.Replaces).SingleAsync(quote => quote.Id == look.QuoteId, cancel);
                var whole = await QuoteStore.WholeAsync(db, row, database.Now, cancel);
                return (whole, whole.Links.Single(link => link.Id == look.LinkId));
            },
            cancel) is var (whole, link) && link.IsOpen(database.Now)
            ? (whole, link)
            : null;

    /// <summary>
    /// Adds what a reader says. Agreeing is for exactly what is frozen: another quantity or fingerprint is refused. The same answer of the same
    /// name given again is answered and not added; another answer after it is refused. A quantity that was asked for by the same link is not asked for again.
    /// </summary>
    /// <returns>Saved, Refused, or Gone where the link has ended.</returns>
    public Task<SaveResult<QuoteEvent>> ReplyAsync(SharedLook look, Reply reply, CancellationToken cancel = default) =>
        database.WriteByLinkAsync<SaveResult<QuoteEvent>>(
            look.Press,
            async db =>
            {
                var course = new QuoteCourseWriting(db, database.Now);
                if (!await course.HoldAsync(look.QuoteId, cancel) || course.Links.Find(link => link.Id == look.LinkId) is not { } link
                    || !link.IsOpen(database.Now))
                {
                    return new SaveResult<QuoteEvent>.Gone();
                }

                if (ReplyRules.OtherThanShown(reply, course.Quote) is { } other)
                {
                    return new SaveResult<QuoteEvent>.Refused([new Problem("$", null, other)]);
                }

                if (await SaidBeforeAsync(db, link, reply, cancel) is { } before)
                {
                    // Two may have one link and answer at once: the first one counts, and the other is told whose that was.
                    return before.By == ReplyRules.EventOf(reply, link, course.Quote).By
                        ? new SaveResult<QuoteEvent>.Saved(before.ToRecord())
                        : new SaveResult<QuoteEvent>.Refused([new Problem("$", null, ReplyRules.Answered(before))]);
                }

                if (ReplyRules.Problem(reply, link, course) is { } problem)
                {
                    return new SaveResult<QuoteEvent>.Refused([new Problem("$", null, problem)]);
                }

                if (reply is Reply.AskFor ask && await AskedBeforeAsync(db, link, ask.Quantity, cancel) is { } asked)
                {
                    return new SaveResult<QuoteEvent>.Saved(asked.ToRecord());
                }

                if (await course.WithinADayAsync(link.Id, cancel) >= QuoteRules.MostADay)
                {
                    return new SaveResult<QuoteEvent>.Refused([new Problem("$", null, "That is enough for one day by this link. Come back tomorrow, or write to the press.")]);
                }

                link.Answer = reply switch { Reply.Agree => QuoteAnswer.Agreed, Reply.TurnDown => QuoteAnswer.TurnedDown, _ => link.Answer };
                var row = await course.AddAsync(ReplyRules.EventOf(reply, link, course.Quote), seen: false, cancel);
                await mail.AddAsync(db, row, cancel);
                await db.SaveChangesAsync(cancel);
                return new SaveResult<QuoteEvent>.Saved(row.ToRecord());
            },
            cancel);

    // The press knows of it: a later quote would stand in the place of this one, and then nothing is asked of this one any more.
    private static Task<QuoteEventRow?> AskedBeforeAsync(PressRunDbContext db, QuoteLinkRow link, int quantity, CancellationToken cancel) =>
        db.QuoteEvents.AsNoTracking().Where(row => row.QuoteId == link.QuoteId && row.LinkId == link.Id && row.Kind == QuoteEventKind.AskedFor && row.Quantity == quantity).FirstOrDefaultAsync(cancel);

    // A button pressed twice, or a page sent again: an answer is given once.
    private static async Task<QuoteEventRow?> SaidBeforeAsync(PressRunDbContext db, QuoteLinkRow link, Reply reply, CancellationToken cancel)
    {
        QuoteEventKind? kind = reply switch
        {
            Reply.Agree when link.Answer == QuoteAnswer.Agreed => QuoteEventKind.Agreed,
            Reply.TurnDown when link.Answer == QuoteAnswer.TurnedDown => QuoteEventKind.TurnedDown,
            _ => null,
        };
        return kind is null
            ? null
            : await db.QuoteEvents.AsNoTracking().Where(row => row.QuoteId == link.QuoteId && row.LinkId == link.Id && row.Kind == kind).FirstAsync(cancel);
    }
}
