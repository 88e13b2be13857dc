using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging;

namespace PressRun.Data.Running;

/// <summary>
/// Keeps mail back that waited in a database when a backup of it was made: it has gone out since, or is nobody's business at a copy that somebody tries out.
/// A restored database is known by its place: the server, the database and the table of mails have numbers that a backup does not carry along.
/// </summary>
internal static partial class RestoredCopy
{
    /// <summary>The place of the database that is asked, as a value in SQL. Which server it is any user may ask (PostgreSQL's documentation, system information functions).</summary>
    public const string Mark =
        "(SELECT concat_ws(' ', system_identifier, (SELECT oid FROM pg_database WHERE datname = current_database()), 'mails'::regclass::oid) FROM pg_control_system())";

    private const int OnlyRow = 1;

    /// <summary>Looks whether the database was moved since the last start, and does with its mail what the host wants.</summary>
    /// <param name="contexts">The database.</param>
    /// <param name="wanted">What the host wants done with mail that waits.</param>
    /// <param name="logger">Told what is kept back.</param>
    /// <param name="cancel">Gives up.</param>
    public static async Task LookAsync(IDbContextFactory<PressRunDbContext> contexts, WaitingMail wanted, ILogger logger, CancellationToken cancel)
    {
        await using var db = await contexts.CreateDbContextAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        // Nodes that start together take turns.
        await db.Database.ExecuteSqlRawAsync("LOCK TABLE database_homes IN EXCLUSIVE MODE", cancel);
        var mark = (await db.Database.SqlQueryRaw<string>($"SELECT {Mark} AS \"Value\"").ToListAsync(cancel))[0];
        var mails = db.Mails.IgnoreQueryFilters();
        var home = await db.Homes.SingleOrDefaultAsync(cancel) ?? db.Homes.Add(new HomeRow { Id = OnlyRow }).Entity;
        if (home.Mark != mark)
        {
            home.Mark = mark;
            wanted = wanted == WaitingMail.Leave ? WaitingMail.Hold : wanted;
        }

        await (wanted switch
        {
            WaitingMail.Hold => mails.ExecuteUpdateAsync(mail => mail.SetProperty(row => row.Held, true), cancel),
            WaitingMail.Send => mails.ExecuteUpdateAsync(mail => mail.SetProperty(row => row.Held, false), cancel),
            WaitingMail.Drop => mails.ExecuteDeleteAsync(cancel),
            _ => Task.CompletedTask,
        });
        await db.SaveChangesAsync(cancel);
        var held = await mails.CountAsync(mail => mail.Held, cancel);
        await transaction.CommitAsync(cancel);
        if (held > 0)
        {
            LogHeld(logger, held);
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "Mail that waited in this database is kept back ({Count}), as it was restored or moved. A start with PressRun__WaitingMail=send sends them, one with drop takes them out.")]
    private static partial void LogHeld(ILogger logger, int count);
}
