using Microsoft.EntityFrameworkCore;
using PressRun.Data.Running;
using PressRun.Engine.Quoting;

namespace PressRun.Data.Quotes;

/// <summary>Adds to the course of one quote within a transaction, holding its mark, so that what two do at once is done one after the other.</summary>
internal sealed class QuoteCourseWriting(PressRunDbContext db, DateTimeOffset now)
{
    private static readonly QuoteEventKind[] ReadersDo = [QuoteEventKind.Agreed, QuoteEventKind.TurnedDown, QuoteEventKind.AskedFor, QuoteEventKind.Remarked];

    private QuoteMarkRow mark = null!;

    /// <summary>The quote's row.</summary>
    public QuoteRow Quote { get; private set; } = null!;

    /// <summary>Its links.</summary>
    public List<QuoteLinkRow> Links { get; private set; } = [];

    /// <summary>True where a later quote stands in its place.</summary>
    public bool Replaced { get; private set; }

    /// <summary>Where it stands at this moment.</summary>
    public QuoteState State => QuoteCourse.Of(Replaced, [.. Links.Select(link => link.ToReader(now, Quote.Until))], Quote.Until, db.Zone.DayOf(now));

    /// <summary>Takes hold of a quote; false where the press has none by this id.</summary>
    public async Task<bool> HoldAsync(Guid quoteId, CancellationToken cancel)
    {
        await db.Database.ExecuteSqlAsync($"SELECT 1 FROM quote_marks WHERE press_id = {db.Press.Value} AND quote_id = {quoteId} FOR UPDATE", cancel);
        if (await db.QuoteMarks.SingleOrDefaultAsync(row => row.QuoteId == quoteId, cancel) is not { } held)
        {
            return false;
        }

        mark = held;
        Quote = await db.Quotes.AsNoTracking().SingleAsync(row => row.Id == quoteId, cancel);
        Links = await db.QuoteLinks.Where(row => row.QuoteId == quoteId).OrderBy(row => row.MadeAt).ThenBy(row => row.Id).ToListAsync(cancel);
        Replaced = await db.Quotes.AnyAsync(row => row.ReplacesId == quoteId, cancel);
        return true;
    }

    /// <summary>Things that its reader did by a link within the last day; what the maker does with it, such as making it, is not counted.</summary>
    public Task<int> WithinADayAsync(Guid linkId, CancellationToken cancel) =>
        db.QuoteEvents.CountAsync(row => row.QuoteId == Quote.Id && row.LinkId == linkId && row.At > now.AddDays(-1) && ReadersDo.Contains(row.Kind), cancel);

    /// <summary>True where a reader did something by a link that whoever had seen so much of the course has not seen.</summary>
    public Task<bool> IsAnsweredSinceAsync(int seen, CancellationToken cancel) =>
        db.QuoteEvents.AnyAsync(row => row.QuoteId == Quote.Id && row.Sequence > seen && row.LinkId != null && ReadersDo.Contains(row.Kind), cancel);

    /// <summary>Adds what happened, with all else that the context holds, and lets open pages know of it once it is committed.</summary>
    /// <param name="happened">Its place and moment are given here.</param>
    /// <param name="seen">True where the maker did it and so knows of it.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public async Task<QuoteEventRow> AddAsync(QuoteEvent happened, bool seen, CancellationToken cancel)
    {
        var row = QuoteEventRow.Of(db.Press, Quote.Id, ++mark.Changes, happened with { At = now });
        db.QuoteEvents.Add(row);
        if (seen && mark.Seen == mark.Changes - 1)
        {
            mark.Seen = mark.Changes;
        }

        await db.SaveChangesAsync(cancel);
        await Announcing.QuotesChangedAsync(db, cancel);
        return row;
    }
}
