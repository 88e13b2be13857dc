using System.Text;
using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.People;
using PressRun.Data.Presses;
using PressRun.Data.Running;
using PressRun.Engine.Costing;
using PressRun.Engine.Quoting;

namespace PressRun.Data.Quotes;

/// <summary>A link that was just made, with the secret that nobody can ask for again.</summary>
/// <param name="Link">The link.</param>
/// <param name="Secret">What stands in its address.</param>
public sealed record MadeLink(QuoteLink Link, string Secret);

/// <summary>An open link that ends with nobody's right, as it is not known who made it.</summary>
/// <param name="Id">Of the link.</param>
/// <param name="Quote">Number of the quote that it opens.</param>
/// <param name="Name">Whom it is for.</param>
/// <param name="MadeAt">When it was made.</param>
/// <param name="EndsAt">When it ends by itself.</param>
public sealed record OrphanLink(Guid Id, int Quote, string Name, DateTimeOffset MadeAt, DateTimeOffset EndsAt);

/// <summary>The quotes of one press, from the maker's side. What is frozen never changes; what happens to it is only added.</summary>
public sealed class QuoteStore
{
    private readonly PressDatabase database;

    internal QuoteStore(PressDatabase database) => this.database = database;

    /// <summary>Freezes a quote under the press's next number. Asked again with the same id, the first one is answered.</summary>
    /// <returns>Saved, Refused, or Gone where there is no such edition, or no such quote to replace.</returns>
    public Task<SaveResult<QuoteRecord>> FreezeAsync(PressId press, NewQuote quote, CancellationToken cancel = default) =>
        database.WriteAsync(press, db => FreezeAsync(db, quote, cancel), cancel);

    /// <summary>All quotes, the latest first.</summary>
    /// <param name="press">Whose.</param>
    /// <param name="editionId">Only those of one edition; null for all.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public Task<IReadOnlyList<QuoteSummary>> ListAsync(PressId press, Guid? editionId = null, CancellationToken cancel = default) =>
        database.ReadMomentAsync(press, db => ListAsync(db, editionId, cancel), cancel);

    /// <summary>Things that happened to the press's quotes and that the maker has not looked at.</summary>
    public Task<int> UnseenAsync(PressId press, CancellationToken cancel = default) =>
        database.ReadAsync(press, db => db.QuoteMarks.Where(mark => mark.Changes > mark.Seen).SumAsync(mark => mark.Changes - mark.Seen, cancel), cancel);

    /// <summary>How much has happened to a quote, by its key; null where there is none.</summary>
    public Task<int?> ChangesAsync(PressId press, Guid quoteId, CancellationToken cancel = default) =>
        database.ReadAsync(press, db => db.QuoteMarks.Where(mark => mark.QuoteId == quoteId).Select(mark => (int?)mark.Changes).SingleOrDefaultAsync(cancel), cancel);

    /// <summary>All about a quote by its number, or null.</summary>
    public Task<QuoteWhole?> FindAsync(PressId press, int number, CancellationToken cancel = default) =>
        database.ReadMomentAsync(
            press,
            async db => await db.Quotes.AsNoTracking().Include(row => row.Replaces).SingleOrDefaultAsync(row => row.Number == number, cancel) is { } row
                ? await WholeAsync(db, row, database.Now, cancel)
                : null,
            cancel);

    /// <summary>The open links of whom nobody knows who made them, by quote: they came with an archive, or were made where nobody signed in.</summary>
    public async Task<IReadOnlyList<OrphanLink>> OrphansAsync(PressId press, CancellationToken cancel = default) => await database.ReadAsync(
        press,
        db => Opening(db, database.Now).Where(link => link.MadeBy == null)
            .Join(db.Quotes, link => link.QuoteId, quote => quote.Id, (link, quote) => new { link, quote.Number })
            .OrderBy(both => both.Number).ThenBy(both => both.link.MadeAt).ThenBy(both => both.link.Id)
            .Select(both => new OrphanLink(both.link.Id, both.Number, both.link.Name, both.link.MadeAt, both.link.EndsAt)).ToListAsync(cancel),
        cancel,
        PressRole.Owner);

    /// <summary>Marks everything up to a change as seen.</summary>
    public Task SeeAsync(PressId press, Guid quoteId, int changes, CancellationToken cancel = default) =>
        database.WriteAsync(
            press,
            async db =>
            {
                var marks = db.QuoteMarks.Where(mark => mark.QuoteId == quoteId && mark.Seen < changes && mark.Changes >= changes);
                if (await marks.ExecuteUpdateAsync(mark => mark.SetProperty(row => row.Seen, changes), cancel) is > 0 and var seen)
                {
                    await Announcing.QuotesChangedAsync(db, cancel);
                    return seen;
                }

                return 0;
            },
            cancel);

    /// <summary>Makes a link, which ends with its maker's right to change the press. Its secret is answered this once.</summary>
    /// <param name="press">Whose quote.</param>
    /// <param name="quoteId">Which.</param>
    /// <param name="link">What it is for.</param>
    /// <param name="by">Who makes it, where nobody signed in.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public Task<SaveResult<MadeLink>> LinkAsync(PressId press, Guid quoteId, NewLink link, string by, CancellationToken cancel = default) =>
        // Whoever is just being taken out leaves none behind: that comes before this, or ends it.
        CourseAsync<MadeLink>(press, quoteId, async (db, course) =>
        {
            if (QuoteRules.Check(link, Record(course.Quote), database.Now) is { Count: > 0 } problems)
            {
                return new SaveResult<MadeLink>.Refused(problems);
            }

            if (course.Replaced)
            {
                return Refused<MadeLink>("A later quote stands in the place of this one. Send that.");
            }

            var secret = Secret.New();
            var row = new QuoteLinkRow
            {
                PressId = press,
                Id = Guid.CreateVersion7(database.Now),
                QuoteId = quoteId,
                Name = link.Name.Trim(),
                SecretHash = Secret.Hash(secret),
                TryFrom = link.Rights.TryFrom,
                TryTo = link.Rights.TryTo,
                MayRemark = link.Rights.Remark,
                MayAgree = link.Rights.Agree,
                Part = link.Part,
                MadeAt = database.Now,
                MadeBy = (Visiting.Now as Visitor.Person)?.UserId,
                EndsAt = link.EndsAt,
            };
            db.QuoteLinks.Add(row);
            await course.AddAsync(new QuoteEvent(0, default, QuoteEventKind.LinkMade, row.Id, await PersonAsync(db, cancel) ?? by), seen: true, cancel);
            return new SaveResult<MadeLink>.Saved(new MadeLink(row.ToRecord(), secret));
        }, cancel, db => PeopleStore.HoldAsync(db, database.Guard, PressRole.Editor, cancel));

    /// <summary>Ends a link: its next request is answered that there is nothing any more. Ended again it is only answered.</summary>
    /// <param name="press">Whose quote.</param>
    /// <param name="quoteId">Which.</param>
    /// <param name="linkId">Which link of it.</param>
    /// <param name="by">Who ends it, where nobody signed in.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public Task<SaveResult<QuoteLink>> EndAsync(PressId press, Guid quoteId, Guid linkId, string by, CancellationToken cancel = default) =>
        CourseAsync<QuoteLink>(press, quoteId, async (db, course) =>
        {
            if (course.Links.Find(link => link.Id == linkId) is not { } row)
            {
                return new SaveResult<QuoteLink>.Gone();
            }

            if (row.EndedAt is null)
            {
                row.EndedAt = database.Now;
                row.EndedOn = db.Zone.DayOf(database.Now);
                await course.AddAsync(new QuoteEvent(0, default, QuoteEventKind.LinkEnded, row.Id, await PersonAsync(db, cancel) ?? by), seen: true, cancel);
            }

            return new SaveResult<QuoteLink>.Saved(row.ToRecord());
        }, cancel);

    /// <summary>Adds the maker's remark, which all readers see.</summary>
    public Task<SaveResult<QuoteEvent>> RemarkAsync(PressId press, Guid quoteId, string by, string words, CancellationToken cancel = default) =>
        CourseAsync<QuoteEvent>(press, quoteId, async (_, course) =>
        {
            var plain = words.ReplaceLineEndings("\n").Trim();
            return QuoteRules.RemarkProblem(plain) is { } problem
                ? Refused<QuoteEvent>(problem)
                : await AddAsync(course, new QuoteEvent(0, default, QuoteEventKind.Remarked, null, by, plain), cancel);
        }, cancel);

    /// <summary>Writes down what was paid of a part of the bill; an amount below zero takes back.</summary>
    /// <param name="press">Whose quote.</param>
    /// <param name="quoteId">Which.</param>
    /// <param name="part">Place of the part.</param>
    /// <param name="amount">In whole minor units; not 0.</param>
    /// <param name="day">When it was paid, not after today.</param>
    /// <param name="by">Who writes it down.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public Task<SaveResult<QuoteEvent>> PayAsync(PressId press, Guid quoteId, int part, decimal amount, DateOnly day, string by, CancellationToken cancel = default) =>
        CourseAsync<QuoteEvent>(press, quoteId, async (_, course) =>
        {
            var facts = QuoteShape.Read(course.Quote.Facts);
            if (part < 0 || part >= facts.Bill.Count)
            {
                return Refused<QuoteEvent>("Name one of the parts of this quote's bill.");
            }

            if (amount == 0m || Engine.Measures.Currency.Find(facts.Currency)!.Round(amount) != amount || Math.Abs(amount) > QuoteRules.MostPaid)
            {
                return Refused<QuoteEvent>("Write the amount that was paid, in the quote's currency; below zero takes back.");
            }

            return day > database.Today.AddDays(1)
                ? Refused<QuoteEvent>("Write the day on which it was paid: today or earlier.")
                : await AddAsync(course, new QuoteEvent(0, default, QuoteEventKind.Paid, null, by, "", Amount: amount, Part: part, Day: day), cancel);
        }, cancel);

    /// <summary>
    /// Ends the open links to the quotes of the context's press that somebody made and so knows the secrets of, in a transaction of the caller's. The course of each quote
    /// says so, and no name: they may be deleting their account. The press has not seen it, as it may want to make those links anew.
    /// </summary>
    internal static async Task EndOfAsync(PressRunDbContext db, Guid maker, DateTimeOffset now, CancellationToken cancel)
    {
        var quoteIds = await Opening(db, now).Where(link => link.MadeBy == maker).Select(link => link.QuoteId).Distinct().OrderBy(id => id).ToListAsync(cancel);
        var press = quoteIds.Count == 0 ? "" : await db.Presses.Where(row => row.Id == db.Press).Select(row => row.Name).SingleAsync(cancel);
        foreach (var quoteId in quoteIds)
        {
            var course = new QuoteCourseWriting(db, now);
            await course.HoldAsync(quoteId, cancel);
            foreach (var link in course.Links.Where(link => link.MadeBy == maker && link.IsOpen(now)))
            {
                link.MakerGoneAt = now;
                await course.AddAsync(new QuoteEvent(0, default, QuoteEventKind.LinkEndedWithMaker, link.Id, press), seen: false, cancel);
            }
        }
    }

    /// <summary>Numbers of the quotes to which somebody has made open links, one for each link, by who made it; those of whom nobody knows who made them stand in <see cref="OrphansAsync"/>.</summary>
    internal static async Task<ILookup<Guid, int>> OpenAsync(PressRunDbContext db, DateTimeOffset now, CancellationToken cancel) =>
        (await Opening(db, now).Where(link => link.MadeBy != null)
            .Join(db.Quotes, link => link.QuoteId, quote => quote.Id, (link, quote) => new { Maker = link.MadeBy!.Value, quote.Number })
            .OrderBy(made => made.Number).ToListAsync(cancel)).ToLookup(made => made.Maker, made => made.Number);

    /// <summary>The same of one person.</summary>
    internal static Task<List<int>> OpenOfAsync(PressRunDbContext db, Guid? maker, DateTimeOffset now, CancellationToken cancel) =>
        Opening(db, now).Where(link => link.MadeBy != null && link.MadeBy == maker)
            .Join(db.Quotes, link => link.QuoteId, quote => quote.Id, (_, quote) => quote.Number).Order().ToListAsync(cancel);

    internal static QuoteRecord Record(QuoteRow row) => new(
        row.Id, row.Number, row.EditionId, QuoteShape.Read(row.Facts), Encoding.UTF8.GetBytes(row.Job), Encoding.UTF8.GetBytes(row.Result),
        row.Quantity, row.Landed, row.MadeAt, row.By, row.Replaces?.Number, row.Fingerprint);

    internal static async Task<QuoteWhole> WholeAsync(PressRunDbContext db, QuoteRow row, DateTimeOffset now, CancellationToken cancel)
    {
        var links = await db.QuoteLinks.AsNoTracking().Where(link => link.QuoteId == row.Id).OrderBy(link => link.MadeAt).ThenBy(link => link.Id).ToListAsync(cancel);
        var events = await db.QuoteEvents.AsNoTracking().Where(happened => happened.QuoteId == row.Id).OrderBy(happened => happened.Sequence).ToListAsync(cancel);
        var later = await db.Quotes.Where(other => other.ReplacesId == row.Id).Select(other => (int?)other.Number).SingleOrDefaultAsync(cancel);
        var state = QuoteCourse.Of(later is not null, [.. links.Select(link => link.ToReader(now, row.Until))], row.Until, db.Zone.DayOf(now));
        var changes = await db.QuoteMarks.Where(mark => mark.QuoteId == row.Id).Select(mark => mark.Changes).SingleAsync(cancel);
        return new QuoteWhole(Record(row), state, later, links.ConvertAll(link => link.ToRecord()), events.ConvertAll(happened => happened.ToRecord()), changes);
    }

    private async Task<SaveResult<QuoteRecord>> FreezeAsync(PressRunDbContext db, NewQuote quote, CancellationToken cancel)
    {
        if (QuoteRules.Check(quote) is { Count: > 0 } problems)
        {
            return new SaveResult<QuoteRecord>.Refused(problems);
        }

        // Whoever counts the next number holds the press.
        await db.Database.ExecuteSqlAsync($"SELECT 1 FROM presses WHERE id = {db.Press.Value} FOR UPDATE", cancel);
        if (await db.Quotes.AsNoTracking().Include(row => row.Replaces).SingleOrDefaultAsync(row => row.Id == quote.Id, cancel) is { } before)
        {
            return new SaveResult<QuoteRecord>.Saved(Record(before));
        }

        // An edition that is quoted stays, so nobody takes it out from here on.
        await db.Database.ExecuteSqlAsync($"SELECT 1 FROM editions WHERE press_id = {db.Press.Value} AND id = {quote.EditionId} FOR SHARE", cancel);
        if (!await db.Editions.AnyAsync(row => row.Id == quote.EditionId, cancel))
        {
            return new SaveResult<QuoteRecord>.Gone();
        }

        var row = Row(db.Press, quote, 1 + (await db.Quotes.MaxAsync(other => (int?)other.Number, cancel) ?? 0), database.Now);
        if (quote.Replaces is { } replaced)
        {
            var course = new QuoteCourseWriting(db, database.Now);
            if (!await course.HoldAsync(replaced, cancel))
            {
                return new SaveResult<QuoteRecord>.Gone();
            }

            if (course.Replaced)
            {
                return new SaveResult<QuoteRecord>.Refused([new Problem("$.replaces", null, "This quote has been replaced already. Replace the latest one.")]);
            }

            // Replacing takes an answer's worth: whoever gave one is not passed over unread.
            if (quote.Seen is { } seen && await course.IsAnsweredSinceAsync(seen, cancel))
            {
                return new SaveResult<QuoteRecord>.Refused([new Problem("$.replaces", null, "The quote that this one is to replace was answered meanwhile. Read that first, then freeze once more if it is to be replaced all the same.")]);
            }

            row.Replaces = await db.Quotes.SingleAsync(other => other.Id == replaced, cancel);
            await course.AddAsync(new QuoteEvent(0, default, QuoteEventKind.Replaced, null, quote.By, Quantity: row.Number), seen: true, cancel);
        }

        db.Quotes.Add(row);
        db.QuoteMarks.Add(new QuoteMarkRow { PressId = db.Press, QuoteId = row.Id });
        await db.SaveChangesAsync(cancel);
        return new SaveResult<QuoteRecord>.Saved(Record(row));
    }

    private static QuoteRow Row(PressId press, NewQuote quote, int number, DateTimeOffset now)
    {
        var (facts, job, result) = (QuoteShape.Text(quote.Facts), Encoding.UTF8.GetString(quote.Job), Encoding.UTF8.GetString(quote.Result));
        return new QuoteRow
        {
            PressId = press,
            Id = quote.Id,
            Number = number,
            EditionId = quote.EditionId,
            MadeAt = now,
            By = quote.By.Trim(),
            Until = quote.Facts.Until,
            Quantity = quote.Quantity,
            Landed = quote.Landed,
            Facts = facts,
            Job = job,
            Result = result,
            Fingerprint = QuoteShape.Fingerprint(facts, job, result),
            ReplacesId = quote.Replaces,
        };
    }

    private async Task<IReadOnlyList<QuoteSummary>> ListAsync(PressRunDbContext db, Guid? editionId, CancellationToken cancel)
    {
        var now = database.Now;
        var today = db.Zone.DayOf(now);
        var rows = await db.Quotes.AsNoTracking().Where(row => editionId == null || row.EditionId == editionId).OrderByDescending(row => row.Number)
            .Join(db.QuoteMarks, row => row.Id, mark => mark.QuoteId, (row, mark) => new
            {
                row.Id, row.Number, row.EditionId, row.Facts, row.Quantity, row.Landed, row.Until, Unseen = mark.Changes - mark.Seen,
            })
            .OrderByDescending(row => row.Number)
            .ToListAsync(cancel);
        var quoteIds = rows.ConvertAll(row => row.Id);
        var links = (await db.QuoteLinks.AsNoTracking().Where(link => quoteIds.Contains(link.QuoteId)).ToListAsync(cancel)).ToLookup(link => link.QuoteId);
        var replaced = (await db.Quotes.Where(row => row.ReplacesId != null).Select(row => row.ReplacesId!.Value).ToListAsync(cancel)).ToHashSet();
        return rows.ConvertAll(row =>
        {
            var facts = QuoteShape.Read(row.Facts);
            List<QuoteReader> readers = [.. links[row.Id].Select(link => link.ToReader(now, row.Until))];
            var agreed = readers.Count(reader => reader.Answer == QuoteAnswer.Agreed);
            return new QuoteSummary(
                row.Id, row.Number, row.EditionId, facts.Title, facts.Printing, row.Quantity, row.Landed,
                QuoteCourse.Of(replaced.Contains(row.Id), readers, row.Until, today), row.Until, agreed,
                agreed + readers.Count(reader => reader.IsWaitedFor), row.Unseen);
        });
    }

    private static IQueryable<QuoteLinkRow> Opening(PressRunDbContext db, DateTimeOffset now) =>
        db.QuoteLinks.Where(link => link.EndedAt == null && link.MakerGoneAt == null && link.EndsAt > now);

    // A link is somebody's doing, of whoever knows its secret; all else is said for the press.
    private static async Task<string?> PersonAsync(PressRunDbContext db, CancellationToken cancel) =>
        Visiting.Now is Visitor.Person person ? await db.Users.Where(user => user.Id == person.UserId).Select(user => user.Name).SingleOrDefaultAsync(cancel) : null;

    private static async Task<SaveResult<QuoteEvent>> AddAsync(QuoteCourseWriting course, QuoteEvent happened, CancellationToken cancel) =>
        new SaveResult<QuoteEvent>.Saved((await course.AddAsync(happened, seen: true, cancel)).ToRecord());

    private Task<SaveResult<T>> CourseAsync<T>(
        PressId press, Guid quoteId, Func<PressRunDbContext, QuoteCourseWriting, Task<SaveResult<T>>> write, CancellationToken cancel, Func<PressRunDbContext, Task>? first = null)
        where T : class =>
        database.WriteAsync<SaveResult<T>>(
            press,
            async db =>
            {
                await (first?.Invoke(db) ?? Task.CompletedTask);
                var course = new QuoteCourseWriting(db, database.Now);
                return await course.HoldAsync(quoteId, cancel) ? await write(db, course) : new SaveResult<T>.Gone();
            },
            cancel);

    private static SaveResult<T> Refused<T>(string rule)
        where T : class =>
        new SaveResult<T>.Refused([new Problem("$", null, rule)]);
}
