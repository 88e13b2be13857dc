using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.Presses;
using PressRun.Engine.Costing;

namespace PressRun.Data.Titles;

/// <summary>Titles of one press.</summary>
public sealed partial class TitleStore
{
    private const int MostTitle = 200;
    private const int MostAbout = 1000;

    private readonly PressDatabase database;

    internal TitleStore(PressDatabase database) => this.database = database;

    /// <summary>A title by its id, or null.</summary>
    public async Task<TitleRecord?> LoadAsync(PressId press, Guid id, CancellationToken cancel = default) =>
        (await database.ReadAsync(press, db => db.Titles.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancel), cancel))?.ToRecord();

    /// <summary>A title by its name in addresses, or null.</summary>
    public async Task<TitleRecord?> FindAsync(PressId press, string slug, CancellationToken cancel = default) =>
        (await database.ReadAsync(press, db => db.Titles.AsNoTracking().SingleOrDefaultAsync(row => row.Slug == slug, cancel), cancel))?.ToRecord();

    /// <summary>Adds a title; its slug is made of its words, with a number where another title has it.</summary>
    public Task<SaveResult<TitleRecord>> AddAsync(PressId press, NewTitle title, CancellationToken cancel = default) =>
        database.WriteAsync(press, db => AddAsync(db, title, null, cancel), cancel);

    /// <summary>Adds a title with its first edition, both or neither.</summary>
    /// <param name="press">Whose title.</param>
    /// <param name="title">The title.</param>
    /// <param name="edition">Its edition; ids are given here.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public Task<SaveResult<TitleRecord>> AddWithEditionAsync(PressId press, NewTitle title, EditionRecord edition, CancellationToken cancel = default) =>
        database.WriteAsync(press, db => AddAsync(db, title, edition, cancel), cancel);

    /// <summary>Saves a title's words and colour. Its slug stays, so that addresses do.</summary>
    public Task<SaveResult<TitleRecord>> SaveAsync(PressId press, TitleRecord title, CancellationToken cancel = default) =>
        database.WriteAsync<SaveResult<TitleRecord>>(
            press,
            async db =>
            {
                await LockAsync(db, title.Id, cancel);
                var row = await db.Titles.SingleOrDefaultAsync(candidate => candidate.Id == title.Id, cancel);
                if (row is null)
                {
                    return new SaveResult<TitleRecord>.Gone();
                }

                if (row.Version != title.Version)
                {
                    return new SaveResult<TitleRecord>.Conflict(row.ToRecord());
                }

                if (Problems(title) is { Count: > 0 } problems)
                {
                    return new SaveResult<TitleRecord>.Refused(problems);
                }

                row.Take(title);
                await db.SaveChangesAsync(cancel);
                return new SaveResult<TitleRecord>.Saved(row.ToRecord());
            },
            cancel);

    /// <summary>Takes a title with its editions and their plans out for good. One with a printing whose copies ledger has lines is in use.</summary>
    /// <param name="press">Whose title.</param>
    /// <param name="title">As it was read; saved in between, it stays.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public Task<DeleteResult> DeleteAsync(PressId press, TitleRecord title, CancellationToken cancel = default) =>
        database.WriteAsync<DeleteResult>(
            press,
            async db =>
            {
                // Whoever writes a line holds the copies first and the edition after them.
                await db.Database.ExecuteSqlAsync(
                    $"SELECT 1 FROM edition_copies WHERE press_id = {press.Value} AND edition_id IN (SELECT id FROM editions WHERE press_id = {press.Value} AND title_id = {title.Id}) ORDER BY edition_id FOR UPDATE", cancel);
                await LockAsync(db, title.Id, cancel);
                await db.Database.ExecuteSqlAsync(
                    $"SELECT 1 FROM editions WHERE press_id = {press.Value} AND title_id = {title.Id} ORDER BY printing FOR UPDATE", cancel);
                var row = await db.Titles.AsNoTracking().Include(found => found.Editions).SingleOrDefaultAsync(found => found.Id == title.Id, cancel);
                if (row is null)
                {
                    return new DeleteResult.Gone();
                }

                if (row.Version != title.Version)
                {
                    return new DeleteResult.Changed();
                }

                if (await EditionRules.UsesAsync(db, row.Editions.ToDictionary(edition => edition.Id, edition => edition.Printing), cancel) is { Count: > 0 } uses)
                {
                    return new DeleteResult.InUse(uses);
                }

                await db.Titles.Where(found => found.Id == title.Id).ExecuteDeleteAsync(cancel);
                return new DeleteResult.Deleted();
            },
            cancel,
            PressRole.Owner);

    private async Task<SaveResult<TitleRecord>> AddAsync(PressRunDbContext db, NewTitle title, EditionRecord? edition, CancellationToken cancel)
    {
        var record = new TitleRecord(Guid.CreateVersion7(), "", title.Title, title.By, title.Colour, title.About, false, 0);
        var problems = Problems(record);
        if (edition is not null)
        {
            problems.AddRange(await EditionRules.CheckAsync(db, edition, cancel));
        }

        if (problems.Count > 0)
        {
            return new SaveResult<TitleRecord>.Refused(problems);
        }

        await db.Database.ExecuteSqlAsync($"SELECT 1 FROM presses WHERE id = {db.Press.Value} FOR UPDATE", cancel);
        var row = new TitleRow { PressId = db.Press, Id = record.Id, Slug = await FreeSlugAsync(db, title.Title, cancel) };
        row.Take(record);
        db.Titles.Add(row);
        if (edition is not null)
        {
            EditionStore.AddRow(db, edition with { TitleId = row.Id }, database.Now);
        }

        await db.SaveChangesAsync(cancel);
        return new SaveResult<TitleRecord>.Saved(row.ToRecord());
    }

    private static async Task LockAsync(PressRunDbContext db, Guid id, CancellationToken cancel) =>
        await db.Database.ExecuteSqlAsync($"SELECT 1 FROM titles WHERE press_id = {db.Press.Value} AND id = {id} FOR UPDATE", cancel);

    internal static async Task<string> FreeSlugAsync(PressRunDbContext db, string title, CancellationToken cancel)
    {
        var wanted = SearchText.Slug(title);
        var taken = await db.Titles.Where(row => row.Slug.StartsWith(wanted)).Select(row => row.Slug).ToListAsync(cancel);
        return SearchText.FreeSlug(title, taken);
    }

    internal static List<Problem> Problems(TitleRecord title)
    {
        var problems = new List<Problem>();
        if (!PlainText.Shows(title.Title))
        {
            problems.Add(new Problem("$.title", title.Title, "A title needs words."));
        }

        CheckText(title.Title, "$.title", MostTitle);
        CheckText(title.By, "$.by", MostTitle);
        CheckText(title.About, "$.about", MostAbout);

        if (!HexColour().IsMatch(title.Colour))
        {
            problems.Add(new Problem("$.colour", title.Colour, "Write a colour as # and six hexadecimal digits."));
        }

        return problems;

        void CheckText(string text, string path, int most)
        {
            if (text.Length > most || !PlainText.IsStill(text))
            {
                problems.Add(new Problem(path, null, $"Write a text on one line, at most {most} characters."));
            }
        }
    }

    [GeneratedRegex(@"\A#[0-9a-fA-F]{6}\z")]
    private static partial Regex HexColour();
}
