using System.Security.Cryptography;
using PressRun.Data.Quotes;

namespace PressRun.Data.Archive;

/// <summary>Turns the quotes of an archive into rows.</summary>
/// <param name="db">The new press's.</param>
/// <param name="editions">Ids that its printings were given.</param>
/// <param name="now">The moment of the import.</param>
/// <param name="closedLinks">Hashes of links, as small hexadecimal digits, that open nothing in the new press: one opens a quote on this server already, or nobody vouches for the archive.</param>
internal sealed class QuoteImport(
    PressRunDbContext db, IReadOnlyDictionary<(string Title, int Printing), Guid> editions, DateTimeOffset now, IReadOnlySet<string> closedLinks)
{
    private readonly Dictionary<int, Guid> ids = [];

    /// <summary>Adds all rows; saving is the caller's.</summary>
    public void Add(IReadOnlyList<ArchivedQuote> quotes)
    {
        foreach (var quote in quotes)
        {
            ids.Add(quote.Number, Guid.CreateVersion7(now));
            Add(quote, ids[quote.Number]);
        }
    }

    private void Add(ArchivedQuote quote, Guid id)
    {
        db.Quotes.Add(new QuoteRow
        {
            PressId = db.Press,
            Id = id,
            Number = quote.Number,
            EditionId = editions[(quote.TitleId, quote.Printing)],
            MadeAt = quote.MadeAt,
            By = quote.By,
            Until = QuoteShape.Read(quote.Facts).Until,
            Quantity = quote.Quantity,
            Landed = quote.Landed,
            Facts = quote.Facts,
            Job = quote.Job,
            Result = quote.Result,
            Fingerprint = QuoteShape.Fingerprint(quote.Facts, quote.Job, quote.Result),
            ReplacesId = quote.Replaces is { } number ? ids[number] : null,
        });
        db.QuoteMarks.Add(new QuoteMarkRow { PressId = db.Press, QuoteId = id, Changes = quote.Events.Count, Seen = Math.Min(quote.Seen, quote.Events.Count) });
        var links = quote.Links.Select(_ => Guid.CreateVersion7(now)).ToList();
        foreach (var (place, archived) in quote.Links.Index())
        {
            db.QuoteLinks.Add(Row(archived, id, links[place]));
        }

        foreach (var (place, archived) in quote.Events.Index())
        {
            Guid? link = archived.Link is { } named ? links[named] : null;
            db.QuoteEvents.Add(QuoteEventRow.Of(db.Press, id, place + 1, archived.Event with { LinkId = link }));
        }
    }

    private QuoteLinkRow Row(ArchivedLink archived, Guid quoteId, Guid id)
    {
        var link = archived.Link;
        var isClosed = closedLinks.Contains(Convert.ToHexStringLower(archived.SecretHash));
        return new QuoteLinkRow
        {
            PressId = db.Press,
            Id = id,
            QuoteId = quoteId,
            Name = link.Name,
            SecretHash = isClosed ? RandomNumberGenerator.GetBytes(SHA256.HashSizeInBytes) : archived.SecretHash,
            TryFrom = link.Rights.TryFrom,
            TryTo = link.Rights.TryTo,
            MayRemark = link.Rights.Remark,
            MayAgree = link.Rights.Agree,
            Part = link.Part,
            MadeAt = link.MadeAt,

            // It opens the quote that stands here and not this one; nobody has said that its reader is not asked any more.
            EndsAt = isClosed && now < link.EndsAt ? now : link.EndsAt,
            EndedAt = link.EndedAt,
            EndedOn = link.EndedOn,
            MakerGoneAt = link.MakerGoneAt,
            Answer = link.Answer,
        };
    }
}
