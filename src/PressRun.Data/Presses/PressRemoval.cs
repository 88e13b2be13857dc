using Microsoft.EntityFrameworkCore;
using Npgsql;
using PressRun.Data.Access;
using PressRun.Data.People;

namespace PressRun.Data.Presses;

/// <summary>What became of taking a press out.</summary>
public enum PressTakenOut
{
    /// <summary>It is gone with everything in it.</summary>
    Done,

    /// <summary>It is not called so, and stays.</summary>
    CalledOtherwise,

    /// <summary>Others write just now, such as a press that is taken in: it stays, and can be taken out a little later.</summary>
    Busy,
}

/// <summary>Deletes whole presses, for whoever runs the server and for their owners.</summary>
public sealed class PressRemoval
{
    // What is only added to, such as the ledger, is kept from being deleted by triggers. They are off in this transaction only: others wait.
    private const string GuardsOff =
        """
        ALTER TABLE copy_movements DISABLE TRIGGER copy_movements_stay;
        ALTER TABLE quotes DISABLE TRIGGER quotes_stay;
        ALTER TABLE quote_events DISABLE TRIGGER quote_events_stay;
        ALTER TABLE edition_payments DISABLE TRIGGER edition_payments_stay;
        ALTER TABLE tally_entries DISABLE TRIGGER tally_entries_stay;
        """;

    private const string GuardsOn =
        """
        ALTER TABLE copy_movements ENABLE TRIGGER copy_movements_stay;
        ALTER TABLE quotes ENABLE TRIGGER quotes_stay;
        ALTER TABLE quote_events ENABLE TRIGGER quote_events_stay;
        ALTER TABLE edition_payments ENABLE TRIGGER edition_payments_stay;
        ALTER TABLE tally_entries ENABLE TRIGGER tally_entries_stay;
        """;

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
    /// <exception cref="AccessRefusedException">The visitor is no owner of it.</exception>
    public Task<PressTakenOut> DeleteOwnAsync(PressId press, string name, CancellationToken cancel = default) => database.WriteAsync(
        press,
        async db =>
        {
            // Whoever owns it when its turn has come owns it until it is gone.
            await PeopleStore.HoldAsync(db, database.Guard, PressRole.Owner, cancel);
            if (await db.Presses.Where(row => row.Id == press).Select(row => row.Name).SingleOrDefaultAsync(cancel) is not { } called || called != name.Trim())
            {
                return PressTakenOut.CalledOtherwise;
            }

            try
            {
                // While it waits for those who write, nobody else begins to.
                await db.Database.ExecuteSqlRawAsync("SET LOCAL lock_timeout = '2s'", cancel);
                await DeleteAsync(db, cancel);
                return PressTakenOut.Done;
            }
            catch (PostgresException exception) when (exception.SqlState == PostgresErrorCodes.LockNotAvailable)
            {
                // The transaction has failed with it, and comes to nothing whatever ends it.
                return PressTakenOut.Busy;
            }
        },
        cancel,
        PressRole.Owner);

    private static async Task DeleteAsync(PressRunDbContext db, CancellationToken cancel)
    {
        await db.Database.ExecuteSqlRawAsync(GuardsOff, cancel);

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
        await db.Database.ExecuteSqlRawAsync(GuardsOn, cancel);
    }
}
