using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.People;
using PressRun.Data.Running;

namespace PressRun.Data.Presses;

/// <summary>Deletes whole presses, for whoever runs the server and for their owners.</summary>
public sealed class PressRemoval
{
    private readonly PressDatabase database;

    internal PressRemoval(PressDatabase database) => this.database = database;

    /// <summary>The presses of a name, or the one of an id.</summary>
    public Task<List<(PressId Id, string Name, int Titles)>> FindAsync(string nameOrId, CancellationToken cancel = default)
    {
        var id = new PressId(Guid.TryParse(nameOrId, out var read) ? read : Guid.Empty);
        return database.ReadServerAsync(
            async db => (await db.Presses.Where(press => press.Name == nameOrId || press.Id == id).OrderBy(press => press.CreatedAt)
                    .Select(press => new { press.Id, press.Name, Titles = db.Titles.IgnoreQueryFilters().Count(title => title.PressId == press.Id) }).ToListAsync(cancel))
                .ConvertAll(press => (press.Id, press.Name, press.Titles)),
            cancel);
    }

    /// <summary>Deletes a press with everything in it, for whoever runs the server; accounts of its people stay.</summary>
    public Task DeleteAsync(PressId press, CancellationToken cancel = default) => database.WriteServerAsync(
        async db =>
        {
            db.Press = press;
            await DeleteAsync(db, cancel);
            return true;
        },
        cancel);

    /// <summary>Deletes a press with everything in it for one of its owners; accounts of its people stay.</summary>
    /// <param name="press">The press.</param>
    /// <param name="name">Its name as the owner writes it down, so that nothing goes by a slip of the hand.</param>
    /// <param name="cancel">Gives up waiting.</param>
    /// <returns>False where it is not called so, and stays.</returns>
    /// <exception cref="AccessRefusedException">The visitor is no owner of it.</exception>
    public Task<bool> DeleteOwnAsync(PressId press, string name, CancellationToken cancel = default) => database.WriteAsync(
        press,
        async db =>
        {
            // Whoever owns it when its turn has come owns it until it is gone.
            await PeopleStore.HoldAsync(db, database.Guard, PressRole.Owner, cancel);
            if (await db.Presses.Where(row => row.Id == press).Select(row => row.Name).SingleOrDefaultAsync(cancel) is not { } called || called != name.Trim())
            {
                return false;
            }

            await DeleteAsync(db, cancel);
            return true;
        },
        cancel,
        PressRole.Owner);

    private static async Task DeleteAsync(PressRunDbContext db, CancellationToken cancel)
    {
        // What is only added to, such as the ledger, is kept from being deleted by triggers, which let rows of this press go until the transaction ends.
        await db.Database.ExecuteSqlAsync($"SELECT set_config('pressrun.removing', {db.Press.ToString()}, true)", cancel);
        foreach (var member in await db.Memberships.Select(row => row.UserId).ToListAsync(cancel))
        {
            await Announcing.RightsChangedAsync(db, member, cancel);
        }

        // What holds something else goes before it; the rest goes with the press.
        await db.TallyEntries.ExecuteDeleteAsync(cancel);
        await db.Tallies.ExecuteDeleteAsync(cancel);
        await db.EditionPayments.ExecuteDeleteAsync(cancel);
        await db.Mails.ExecuteDeleteAsync(cancel);
        await db.QuoteMarks.ExecuteDeleteAsync(cancel);
        await db.QuoteEvents.ExecuteDeleteAsync(cancel);
        await db.QuoteLinks.ExecuteDeleteAsync(cancel);
        await db.Quotes.ExecuteDeleteAsync(cancel);
        await db.CopyMovements.ExecuteDeleteAsync(cancel);
        await db.PlanStocks.ExecuteDeleteAsync(cancel);
        await db.RunPlans.ExecuteDeleteAsync(cancel);
        await db.Parts.ExecuteDeleteAsync(cancel);
        await db.Channels.ExecuteDeleteAsync(cancel);
        await db.Presses.Where(row => row.Id == db.Press).ExecuteDeleteAsync(cancel);
    }
}
