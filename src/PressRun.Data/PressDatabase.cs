using System.Data;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using PressRun.Data.Access;
using PressRun.Data.Presses;
using PressRun.Data.Running;

namespace PressRun.Data;

/// <summary>Runs one operation of one press on a context of its own, after its guard has let the visitor pass, and once more where the database
/// was away for a moment.</summary>
internal sealed class PressDatabase(Database database, TimeProvider time, PressGuard guard)
{
    private static readonly TimeSpan[] Pauses = [.. new[] { 100, 300, 1000, 2000, 3000, 4000 }.Select(milliseconds => TimeSpan.FromMilliseconds(milliseconds))];

    /// <summary>The moment that rows are stamped with, no finer than the database keeps it: a record is the same before and after it is stored.</summary>
    public DateTimeOffset Now
    {
        get
        {
            var now = time.GetUtcNow();
            return now.AddTicks(-(now.Ticks % TimeSpan.TicksPerMicrosecond));
        }
    }

    /// <summary>The day that it is where the server stands.</summary>
    public DateOnly Today => time.Today();

    /// <summary>Who may do what.</summary>
    public PressGuard Guard => guard;

    /// <summary>Reads rows of <paramref name="press"/>.</summary>
    /// <exception cref="AccessRefusedException">The visitor may not.</exception>
    public Task<T> ReadAsync<T>(PressId press, Func<PressRunDbContext, Task<T>> read, CancellationToken cancel, PressRole needs = PressRole.Reader) =>
        ReadAsync(press, db => guard.DemandAsync(db, needs, cancel), read, cancel);

    /// <summary>Reads rows of <paramref name="press"/> with several queries that all see the same moment.</summary>
    /// <exception cref="AccessRefusedException">The visitor may not.</exception>
    public Task<T> ReadMomentAsync<T>(PressId press, Func<PressRunDbContext, Task<T>> read, CancellationToken cancel, PressRole needs = PressRole.Reader) =>
        ReadAsync(press, InOneMoment(read, cancel), cancel, needs);

    /// <summary>Reads rows of <paramref name="press"/> for whoever holds a link into it, all at the same moment. The caller has looked the link's
    /// secret up, and shows what the link opens and nothing else.</summary>
    public Task<T> ReadByLinkAsync<T>(PressId press, Func<PressRunDbContext, Task<T>> read, CancellationToken cancel) =>
        ReadAsync(press, _ => Task.CompletedTask, InOneMoment(read, cancel), cancel);

    /// <summary>Reads rows that belong to no press: people, sign-ins, the list of presses. Whoever calls sees to it that only the right ones are
    /// shown.</summary>
    public Task<T> ReadServerAsync<T>(Func<PressRunDbContext, Task<T>> read, CancellationToken cancel) => ReadAsync(default, _ => Task.CompletedTask, read, cancel);

    /// <summary>Asks for one row that belongs to no press, like <see cref="ReadServerAsync"/>, by a statement of its own and without a context: for what is asked
    /// more often than anything else.</summary>
    /// <param name="statement">The statement, with <c>$1</c> for what is sought.</param>
    /// <param name="sought">What is sought by.</param>
    /// <param name="read">Reads the row.</param>
    /// <param name="cancel">Gives up waiting.</param>
    /// <returns>Null where there is no such row.</returns>
    public Task<T?> AskServerAsync<T>(string statement, byte[] sought, Func<NpgsqlDataReader, T> read, CancellationToken cancel)
        where T : class => AgainAsync(
        async () =>
        {
            await using var command = database.Source.CreateCommand(statement);
            command.Parameters.Add(new NpgsqlParameter<byte[]> { TypedValue = sought });
            await using var reader = await command.ExecuteReaderAsync(CommandBehavior.SingleRow, cancel);
            return await reader.ReadAsync(cancel) ? read(reader) : null;
        },
        () => true,
        cancel);

    /// <summary>Writes rows of <paramref name="press"/>, all or none. Work that failed before it was committed is done again from its start;
    /// a commit whose answer was lost is not, because it may have been carried out.</summary>
    /// <exception cref="AccessRefusedException">The visitor may not.</exception>
    public Task<T> WriteAsync<T>(PressId press, Func<PressRunDbContext, Task<T>> write, CancellationToken cancel, PressRole needs = PressRole.Editor) =>
        WriteAsync(press, db => guard.DemandAsync(db, needs, cancel), write, cancel);

    /// <summary>Writes rows of <paramref name="press"/> for whoever holds a link into it, like <see cref="ReadByLinkAsync"/>.</summary>
    public Task<T> WriteByLinkAsync<T>(PressId press, Func<PressRunDbContext, Task<T>> write, CancellationToken cancel) =>
        WriteAsync(press, _ => Task.CompletedTask, write, cancel);

    /// <summary>Writes rows that belong to no press, like <see cref="ReadServerAsync"/>.</summary>
    public Task<T> WriteServerAsync<T>(Func<PressRunDbContext, Task<T>> write, CancellationToken cancel) => WriteAsync(default, _ => Task.CompletedTask, write, cancel);

    /// <summary>Writes the rows of a new press, which becomes its maker's.</summary>
    /// <exception cref="AccessRefusedException">The visitor may not make presses.</exception>
    public Task<T> WriteNewAsync<T>(PressId press, Func<PressRunDbContext, Task<T>> write, CancellationToken cancel) => WriteAsync(
        press,
        db => guard.DemandMayMakeAsync(db, cancel),
        async db =>
        {
            var made = await write(db);
            await guard.GiveToMakerAsync(db, cancel);
            return made;
        },
        cancel);

    private static Func<PressRunDbContext, Task<T>> InOneMoment<T>(Func<PressRunDbContext, Task<T>> read, CancellationToken cancel) => async context =>
    {
        await using var moment = await context.Database.BeginTransactionAsync(IsolationLevel.RepeatableRead, cancel);
        return await read(context);
    };

    private Task<T> ReadAsync<T>(PressId press, Func<PressRunDbContext, Task> demand, Func<PressRunDbContext, Task<T>> read, CancellationToken cancel) =>
        AgainAsync(
            async () =>
            {
                await using var context = Open(press);
                await demand(context);
                return await read(context);
            },
            () => true,
            cancel);

    private async Task<T> WriteAsync<T>(PressId press, Func<PressRunDbContext, Task> demand, Func<PressRunDbContext, Task<T>> write, CancellationToken cancel)
    {
        var committing = false;
        return await AgainAsync(
            async () =>
            {
                await using var context = Open(press);
                await using var transaction = await context.Database.BeginTransactionAsync(cancel);
                await demand(context);
                var result = await write(context);
                committing = true;
                await transaction.CommitAsync(CancellationToken.None);
                return result;
            },
            () => !committing,
            cancel);
    }

    private PressRunDbContext Open(PressId press)
    {
        var context = database.CreateDbContext();
        context.Press = press;
        context.Zone = time.LocalTimeZone;
        return context;
    }

    private async Task<T> AgainAsync<T>(Func<Task<T>> work, Func<bool> mayRepeat, CancellationToken cancel)
    {
        for (var attempt = 0; ; attempt++)
        {
            if (database.Reach.IsAway)
            {
                throw new DatabaseAwayException();
            }

            try
            {
                return await work();
            }
            catch (Exception exception) when (attempt < Pauses.Length && mayRepeat() && !database.Reach.IsAway && IsPassing(exception))
            {
                await Task.Delay(Pauses[attempt], time, cancel);
            }
        }
    }

    // A server that is starting, stopping or restarting, a lost connection, or two transactions that met.
    private static bool IsPassing(Exception? exception) => exception switch
    {
        null => false,
        PostgresException { SqlState: PostgresErrorCodes.AdminShutdown or PostgresErrorCodes.CrashShutdown } => true,
        NpgsqlException { IsTransient: true } => true,
        _ => IsPassing(exception.InnerException),
    };
}
