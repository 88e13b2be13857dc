using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.Presses;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;

namespace PressRun.Data.Archive;

/// <summary>Whole presses in and out, as documents of the form <c>pressrun/press/1</c>.</summary>
public sealed class PressArchiveStore
{
    // Any number will do, as long as nothing else in the database locks by it.
    private const long SeedLock = 5_080_001;

    private readonly PressDatabase database;

    internal PressArchiveStore(PressDatabase database) => this.database = database;

    /// <summary>Makes a new press of an archive's bytes: all of it, or nothing and every problem. Links to its quotes open as they did.</summary>
    public async Task<Outcome<PressRecord>> ImportAsync(ReadOnlyMemory<byte> utf8, CancellationToken cancel = default) =>
        await ImportAsync(ArchiveFiles.Read(utf8), cancel);

    /// <summary>The same for anybody's archive: links to its quotes open nothing. Whoever knows a link's secret could else write a quote of their own for it, and wait until the press
    /// that made it is brought in anew.</summary>
    public async Task<Outcome<PressRecord>> TakeInAsync(ReadOnlyMemory<byte> utf8, CancellationToken cancel = default) =>
        await ImportAsync(ArchiveFiles.Read(utf8), cancel, linksOpen: false);

    /// <summary>Makes a new press of an archive file, or of a folder that holds an archive's sections: all of it, or nothing and every problem.</summary>
    public async Task<Outcome<PressRecord>> ImportAsync(string path, CancellationToken cancel = default) =>
        await ImportAsync(await ArchiveFiles.ReadAsync(path, cancel), cancel);

    /// <summary>Makes a new press with its first book, papers and shop: all of it, or nothing and every problem.</summary>
    public async Task<Outcome<PressRecord>> SetUpAsync(NewPress press, FirstBook book, CancellationToken cancel = default)
    {
        List<Problem> problems = [.. PressStore.Problems(press.Name, press.Currency), .. TitleStore.Problems(book.Title)];
        return problems.Count == 0
            ? await database.WriteNewAsync(PressId.New(), db => AddAsync(db, book.Of(press), cancel), cancel)
            : Outcome<PressRecord>.Refused(problems);
    }

    /// <summary>A press as an archive's bytes, of one moment; null where there is none. Only for its owners: all that it holds goes along.</summary>
    /// <exception cref="AccessRefusedException">The visitor is no owner of it.</exception>
    public Task<byte[]?> ExportAsync(PressId press, CancellationToken cancel = default) => database.ReadMomentAsync(
        press,
        async db => await ArchiveExport.LoadAsync(db, cancel) is { } archive ? ArchiveWriter.Write(archive) : null,
        cancel,
        PressRole.Owner);

    /// <summary>Puts an archive into a database without presses; nodes that start at once do it once.</summary>
    /// <returns>The new press, null where the database has one already, or the problems.</returns>
    internal async Task<Outcome<PressRecord>?> SeedAsync(string path, CancellationToken cancel)
    {
        if (await database.ReadServerAsync(db => db.Presses.AnyAsync(cancel), cancel))
        {
            return null;
        }

        var read = await ArchiveFiles.ReadAsync(path, cancel);
        if (!read.Succeeded)
        {
            return Outcome<PressRecord>.Refused(read.Problems);
        }

        return await database.WriteNewAsync(
            PressId.New(),
            async db =>
            {
                await db.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({SeedLock})", cancel);
                return await db.Presses.AnyAsync(cancel) ? null : await AddAsync(db, read.Value, cancel);
            },
            cancel);
    }

    private async Task<Outcome<PressRecord>> ImportAsync(Outcome<PressArchive> read, CancellationToken cancel, bool linksOpen = true)
    {
        var problems = read.Succeeded ? MomentsToCome.In(read.Value, database.Now) : read.Problems;
        return problems.Count == 0
            ? await database.WriteNewAsync(PressId.New(), db => AddAsync(db, read.Value, cancel, linksOpen), cancel)
            : Outcome<PressRecord>.Refused(problems);
    }

    // A press that is taken in a second time: a link opens one quote, and stays with the first.
    private static async Task<HashSet<string>> ClosedLinksAsync(PressRunDbContext db, PressArchive archive, bool linksOpen, CancellationToken cancel)
    {
        var hashes = archive.Quotes.SelectMany(quote => quote.Links).Select(link => link.SecretHash).ToList();
        return !linksOpen || hashes.Count == 0
            ? [.. hashes.Select(Convert.ToHexStringLower)]
            : (await db.QuoteLinks.IgnoreQueryFilters().Where(link => hashes.Contains(link.SecretHash)).Select(link => link.SecretHash).ToListAsync(cancel))
                .Select(Convert.ToHexStringLower).ToHashSet(StringComparer.Ordinal);
    }

    private async Task<Outcome<PressRecord>> AddAsync(PressRunDbContext db, PressArchive archive, CancellationToken cancel, bool linksOpen = true)
    {
        var press = new ArchiveImport(db, archive, database.Now, await ClosedLinksAsync(db, archive, linksOpen, cancel)).Add();
        await db.SaveChangesAsync(cancel);
        return Outcome<PressRecord>.Of(press.ToRecord());
    }
}
