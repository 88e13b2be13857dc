using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Data.Running;

namespace PressRun.Data.Mail;

/// <summary>A mail that is to be sent.</summary>
/// <param name="Press">Whose quote it is about.</param>
/// <param name="Id">Stays the same over all tries, so that whoever gets it twice can tell.</param>
/// <param name="Address">To whom.</param>
/// <param name="Tries">How often it was tried, with this time; 1 or more.</param>
/// <param name="Whole">The quote.</param>
/// <param name="Event">What happened to it.</param>
public sealed record DueMail(PressId Press, Guid Id, string Address, int Tries, QuoteWhole Whole, QuoteEvent Event);

/// <summary>
/// Who is to be told of what by mail. A row is written in the transaction of what happened; whoever sends takes it for a while, and takes it out
/// when the server has it. A node that dies between the two leaves it to be sent once more: mail that is lost would be worse than mail that comes twice.
/// </summary>
public sealed class MailOutbox
{
    /// <summary>Tries before it is given up, over about two days.</summary>
    public const int MostTries = 14;

    private static readonly TimeSpan Taken = TimeSpan.FromMinutes(10);
    private static readonly TimeSpan LongestPause = TimeSpan.FromHours(6);

    // What came from a backup while this program runs is not sent either: such a database was at home elsewhere.
    private const string Due =
        $"SELECT * FROM mails WHERE due_at <= {{0}} AND NOT held AND EXISTS (SELECT 1 FROM database_homes WHERE mark = {RestoredCopy.Mark}) ORDER BY due_at, id LIMIT 1 FOR UPDATE SKIP LOCKED";

    private readonly PressDatabase database;

    internal MailOutbox(PressDatabase database) => this.database = database;

    /// <summary>Takes the mail that has waited longest; null where none is due. Another node does not take it meanwhile.</summary>
    public Task<DueMail?> TakeAsync(CancellationToken cancel = default) => database.WriteServerAsync(
        async db =>
        {
            var now = database.Now;
            if (await FirstAsync(db, now, cancel) is not { } row)
            {
                return null;
            }

            var (due, tries) = (now + Taken, row.Tries + 1);
            await Own(db, row.PressId, row.Id).ExecuteUpdateAsync(mail => mail.SetProperty(found => found.DueAt, due).SetProperty(found => found.Tries, tries), cancel);
            var quote = await db.Quotes.AsNoTracking().Include(found => found.Replaces).SingleAsync(found => found.Id == row.QuoteId, cancel);
            var whole = await QuoteStore.WholeAsync(db, quote, now, cancel);
            return new DueMail(row.PressId, row.Id, row.Address, tries, whole, whole.Events.Single(happened => happened.Sequence == row.Sequence));
        },
        cancel);

    /// <summary>The server has it, or will never take it: nobody tries it again.</summary>
    public Task DoneAsync(DueMail mail, CancellationToken cancel = default) =>
        database.WriteServerAsync(db => Own(db, mail.Press, mail.Id).ExecuteDeleteAsync(cancel), cancel);

    /// <summary>It is tried again later: a minute after the first try, and twice as long after each further one, at most six hours.</summary>
    /// <returns>False where it was tried often enough, and is given up.</returns>
    public async Task<bool> LaterAsync(DueMail mail, CancellationToken cancel = default)
    {
        if (mail.Tries >= MostTries)
        {
            await DoneAsync(mail, cancel);
            return false;
        }

        var pause = TimeSpan.FromMinutes(Math.Pow(2, mail.Tries - 1));
        var due = database.Now + (pause < LongestPause ? pause : LongestPause);
        await database.WriteServerAsync(db => Own(db, mail.Press, mail.Id).ExecuteUpdateAsync(found => found.SetProperty(row => row.DueAt, due), cancel), cancel);
        return true;
    }

    // Whoever was taken out while it waited, may change nothing any more or wants none by now is told nothing.
    private async Task<MailRow?> FirstAsync(PressRunDbContext db, DateTimeOffset now, CancellationToken cancel)
    {
        while (await db.Mails.FromSqlRaw(Due, now).IgnoreQueryFilters().AsNoTracking().SingleOrDefaultAsync(cancel) is { } row)
        {
            db.Press = row.PressId;
            if (!database.Guard.SignIn || await MailWriting.Told(db).AnyAsync(address => address == row.Address, cancel))
            {
                return row;
            }

            await Own(db, row.PressId, row.Id).ExecuteDeleteAsync(cancel);
        }

        return null;
    }

    private static IQueryable<MailRow> Own(PressRunDbContext db, PressId press, Guid id) => db.Mails.IgnoreQueryFilters().Where(row => row.PressId == press && row.Id == id);
}

/// <summary>Whom the outbox tells of what readers do.</summary>
/// <param name="guard">Whether people sign in.</param>
/// <param name="isOn">False where no mail is sent: then nothing is written.</param>
/// <param name="to">Who is told where nobody signs in; empty for nobody.</param>
internal sealed class MailWriting(PressGuard guard, bool isOn, string to)
{
    /// <summary>The addresses of everybody who may change the press and wants mail.</summary>
    public static IQueryable<string> Told(PressRunDbContext db) => db.Memberships.Where(member => member.Role != PressRole.Reader && !member.WithoutMail)
        .Join(db.Users, member => member.UserId, user => user.Id, (_, user) => user.Email!);

    /// <summary>Adds a mail to everybody who may change the press and wants it; saving is the caller's.</summary>
    public async Task AddAsync(PressRunDbContext db, QuoteEventRow happened, CancellationToken cancel)
    {
        if (!isOn)
        {
            return;
        }

        var addresses = guard.SignIn ? await Told(db).ToListAsync(cancel)
            : to.Length == 0 ? [] : [to];
        db.Mails.AddRange(addresses.Select(address => new MailRow
        {
            PressId = db.Press, Id = Guid.CreateVersion7(happened.At), QuoteId = happened.QuoteId, Sequence = happened.Sequence, Address = address, DueAt = happened.At,
        }));
    }
}
