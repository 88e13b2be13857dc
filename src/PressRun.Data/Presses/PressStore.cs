using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;

namespace PressRun.Data.Presses;

/// <summary>The presses on this server.</summary>
public sealed class PressStore
{
    /// <summary>Longest name of a press, in characters.</summary>
    public const int MostName = 120;

    private readonly PressDatabase database;

    internal PressStore(PressDatabase database) => this.database = database;

    /// <summary>The presses that the visitor may see, by name.</summary>
    public async Task<IReadOnlyList<PressRecord>> ListAsync(CancellationToken cancel = default) =>
        await database.ReadServerAsync(
            async db => (await database.Guard.Visible(db).AsNoTracking().OrderBy(press => press.Name).ThenBy(press => press.Id).ToListAsync(cancel))
                .ConvertAll(press => press.ToRecord()),
            cancel);

    /// <summary>What the visitor may do in a press; null for nothing.</summary>
    public async Task<PressRole?> RoleAsync(PressId press, CancellationToken cancel = default) =>
        await database.ReadServerAsync(
            db =>
            {
                db.Press = press;
                return database.Guard.RoleAsync(db, cancel);
            },
            cancel);

    /// <summary>True where the visitor may make a press.</summary>
    public Task<bool> MayMakeAsync(CancellationToken cancel = default) => database.ReadServerAsync(db => database.Guard.MayMakeAsync(db, cancel), cancel);

    /// <summary>A press, or null where there is none.</summary>
    public async Task<PressRecord?> LoadAsync(PressId press, CancellationToken cancel = default) =>
        (await database.ReadAsync(press, db => db.Presses.AsNoTracking().SingleOrDefaultAsync(row => row.Id == press, cancel), cancel))?.ToRecord();

    /// <summary>A new press with empty libraries and a bench that does nothing.</summary>
    public async Task<SaveResult<PressRecord>> CreateAsync(NewPress press, CancellationToken cancel = default)
    {
        if (Problems(press.Name, press.Currency) is { Count: > 0 } problems)
        {
            return new SaveResult<PressRecord>.Refused(problems);
        }

        var id = PressId.New();
        return await database.WriteNewAsync<SaveResult<PressRecord>>(
            id,
            async db =>
            {
                var row = new PressRow
                {
                    Id = id,
                    Name = press.Name.Trim(),
                    Currency = press.Currency,
                    Units = press.Units,
                    PaperRegion = press.PaperRegion,
                    CreatedAt = database.Now,
                };
                db.Presses.Add(row);
                db.Benches.Add(new BenchRow { PressId = id });
                await db.SaveChangesAsync(cancel);
                return new SaveResult<PressRecord>.Saved(row.ToRecord());
            },
            cancel);
    }

    /// <summary>Saves a press's settings. Its currency says what its amounts are in; changing it converts nothing.</summary>
    public async Task<SaveResult<PressRecord>> SaveAsync(PressRecord press, CancellationToken cancel = default)
    {
        if (Problems(press.Name, press.Currency) is { Count: > 0 } problems)
        {
            return new SaveResult<PressRecord>.Refused(problems);
        }

        return await database.WriteAsync<SaveResult<PressRecord>>(
            press.Id,
            async db =>
            {
                await db.Database.ExecuteSqlAsync($"SELECT 1 FROM presses WHERE id = {press.Id.Value} FOR UPDATE", cancel);
                var row = await db.Presses.SingleOrDefaultAsync(candidate => candidate.Id == press.Id, cancel);
                if (row is null)
                {
                    return new SaveResult<PressRecord>.Gone();
                }

                if (row.Version != press.Version)
                {
                    return new SaveResult<PressRecord>.Conflict(row.ToRecord());
                }

                (row.Name, row.Currency, row.Units) = (press.Name.Trim(), press.Currency, press.Units);
                (row.PaperRegion, row.ReclaimsTax) = (press.PaperRegion, press.ReclaimsTax);
                await db.SaveChangesAsync(cancel);
                return new SaveResult<PressRecord>.Saved(row.ToRecord());
            },
            cancel,
            PressRole.Owner);
    }

    internal static List<Problem> Problems(string name, string currency)
    {
        var problems = new List<Problem>();
        if (!PlainText.Shows(name))
        {
            problems.Add(new Problem("$.name", null, "A press needs a name."));
        }
        else if (name.Trim().Length > MostName || !PlainText.IsStill(name.Trim()))
        {
            problems.Add(new Problem("$.name", null, $"Write the press's name on one line, at most {MostName} characters."));
        }

        if (Currency.Find(currency) is null)
        {
            problems.Add(new Problem("$.currency", currency, "Use a code of ISO 4217 in capitals, such as EUR or USD."));
        }

        return problems;
    }
}
