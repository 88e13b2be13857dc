using Microsoft.EntityFrameworkCore;
using PressRun.Data.Presses;
using PressRun.Engine.Costing;

namespace PressRun.Data.Fixes;

/// <summary>The list of what is to be mended at the next printing, kept with the printing in which it was noticed.</summary>
public sealed class FixNoteStore
{
    /// <summary>Most characters of a note.</summary>
    public const int MostText = 500;

    private readonly PressDatabase database;

    internal FixNoteStore(PressDatabase database) => this.database = database;

    /// <summary>The notes of all printings of a title, in the order in which they were noticed.</summary>
    public async Task<IReadOnlyList<FixNote>> OfTitleAsync(PressId press, Guid titleId, CancellationToken cancel = default) =>
        (await database.ReadAsync(
            press,
            db => db.FixNotes.AsNoTracking().Include(note => note.Edition).Where(note => note.Edition.TitleId == titleId)
                .OrderBy(note => note.Edition.Printing).ThenBy(note => note.Id).ToListAsync(cancel),
            cancel)).ConvertAll(row => row.ToRecord());

    /// <summary>Writes a note down. Sent again with its id it is answered and not written again.</summary>
    /// <returns>Saved, Gone where there is no such printing, or Refused.</returns>
    public Task<SaveResult<FixNote>> AddAsync(PressId press, FixNote note, CancellationToken cancel = default) =>
        database.WriteAsync<SaveResult<FixNote>>(
            press,
            async db =>
            {
                // The printing must not be taken out before its note is there, and one note that is sent twice at once must wait for itself.
                await db.Database.ExecuteSqlAsync($"SELECT 1 FROM editions WHERE press_id = {press.Value} AND id = {note.EditionId} FOR NO KEY UPDATE", cancel);
                if (await db.Editions.SingleOrDefaultAsync(edition => edition.Id == note.EditionId, cancel) is not { } edition)
                {
                    return new SaveResult<FixNote>.Gone();
                }

                if (Problems(note, edition.Printing) is { Count: > 0 } problems)
                {
                    return new SaveResult<FixNote>.Refused(problems);
                }

                var row = await db.FixNotes.Include(there => there.Edition).SingleOrDefaultAsync(there => there.Id == note.Id, cancel);
                if (row is null)
                {
                    row = new FixNoteRow { PressId = press, Id = note.Id, Edition = edition, NoticedOn = database.Today };
                    row.Take(note);
                    db.FixNotes.Add(row);
                    await db.SaveChangesAsync(cancel);
                }

                return new SaveResult<FixNote>.Saved(row.ToRecord());
            },
            cancel);

    /// <summary>Saves what a note says, and where it is mended or carried on.</summary>
    public Task<SaveResult<FixNote>> SaveAsync(PressId press, FixNote note, CancellationToken cancel = default) =>
        database.WriteAsync<SaveResult<FixNote>>(
            press,
            async db =>
            {
                await db.Database.ExecuteSqlAsync($"SELECT 1 FROM fix_notes WHERE press_id = {press.Value} AND id = {note.Id} FOR UPDATE", cancel);
                var row = await db.FixNotes.Include(there => there.Edition).SingleOrDefaultAsync(there => there.Id == note.Id, cancel);
                if (row is null)
                {
                    return new SaveResult<FixNote>.Gone();
                }

                if (row.Version != note.Version)
                {
                    return new SaveResult<FixNote>.Conflict(row.ToRecord());
                }

                if (Problems(note, row.Edition.Printing) is { Count: > 0 } problems)
                {
                    return new SaveResult<FixNote>.Refused(problems);
                }

                row.Take(note);
                await db.SaveChangesAsync(cancel);
                return new SaveResult<FixNote>.Saved(row.ToRecord());
            },
            cancel);

    /// <summary>Takes a note out for good, as it was read: what somebody settled since stays.</summary>
    public Task<DeleteResult> DeleteAsync(PressId press, FixNote note, CancellationToken cancel = default) =>
        database.WriteAsync<DeleteResult>(
            press,
            async db => await db.FixNotes.Where(row => row.Id == note.Id && row.Version == note.Version).ExecuteDeleteAsync(cancel) > 0 ? new DeleteResult.Deleted()
                : await db.FixNotes.AnyAsync(row => row.Id == note.Id, cancel) ? new DeleteResult.Changed()
                : new DeleteResult.Gone(),
            cancel);

    /// <summary>Lets notes wait again that were mended in a printing, or carried past it, which is now taken out.</summary>
    internal static async Task LetGoAsync(PressRunDbContext db, Guid titleId, int printing, CancellationToken cancel)
    {
        var notes = db.FixNotes.Where(note => note.Edition.TitleId == titleId);
        await notes.Where(note => note.MendedIn == printing).ExecuteUpdateAsync(note => note.SetProperty(row => row.MendedIn, (int?)null), cancel);
        await notes.Where(note => note.CarriedPast == printing).ExecuteUpdateAsync(note => note.SetProperty(row => row.CarriedPast, printing - 1), cancel);
    }

    /// <summary>What is wrong with a note of a printing; empty where nothing is.</summary>
    internal static List<Problem> Problems(FixNote note, int printing)
    {
        var problems = new List<Problem>();
        Require(note.Id != Guid.Empty, "id", "A note has an id of its own.");
        Require(
            note.Text.Trim() is { Length: > 0 and <= MostText } text && PlainText.IsName(text), "text", $"Write what is to be mended on one line, at most {MostText} characters.");
        Require(note.Page is null or (>= 1 and <= Job.MostPages), "page", $"Write the number of the page, from 1 to {Job.MostPages}, or leave it empty.");
        Require(note.MendedIn is null || note.MendedIn > printing, "mendedIn", "It is mended in a later printing than the one in which it was noticed.");
        Require(note.CarriedPast == 0 || note.CarriedPast > printing, "carriedPast", "It is carried past a later printing than the one in which it was noticed.");
        return problems;

        void Require(bool holds, string member, string rule)
        {
            if (!holds)
            {
                problems.Add(new Problem($"$.{member}", null, rule));
            }
        }
    }
}
