using System.Data;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using PressRun.Data.Presses;

namespace PressRun.Data;

/// <summary>Runs one operation of one press on a context of its own, and once more where the database was away for a moment.</summary>
internal sealed class PressDatabase(IDbContextFactory<PressRunDbContext> contexts, TimeProvider time)
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

    /// <summary>Reads rows of <paramref name="press"/>.</summary>
    public Task<T> ReadAsync<T>(PressId press, Func<PressRunDbContext, Task<T>> read, CancellationToken cancel) =>
        AgainAsync(
            async () =>
            {
                await using var context = await OpenAsync(press, cancel);
                return await read(context);
            },
            () => true,
            cancel);

    /// <summary>Reads rows of <paramref name="press"/> with several queries that all see the same moment.</summary>
    public Task<T> ReadMomentAsync<T>(PressId press, Func<PressRunDbContext, Task<T>> read, CancellationToken cancel) => ReadAsync(
        press,
        async context =>
        {
            await using var moment = await context.Database.BeginTransactionAsync(IsolationLevel.RepeatableRead, cancel);
            return await read(context);
        },
        cancel);

    /// <summary>Writes rows of <paramref name="press"/>, all or none. Work that failed before it was committed is done again from its start;
    /// a commit whose answer was lost is not, because it may have been carried out.</summary>
    public async Task<T> WriteAsync<T>(PressId press, Func<PressRunDbContext, Task<T>> write, CancellationToken cancel)
    {
        var committing = false;
        return await AgainAsync(
            async () =>
            {
                await using var context = await OpenAsync(press, cancel);
                await using var transaction = await context.Database.BeginTransactionAsync(cancel);
                var result = await write(context);
                committing = true;
                await transaction.CommitAsync(CancellationToken.None);
                return result;
            },
            () => !committing,
            cancel);
    }

    private async Task<PressRunDbContext> OpenAsync(PressId press, CancellationToken cancel)
    {
        var context = await contexts.CreateDbContextAsync(cancel);
        context.Press = press;
        return context;
    }

    private async Task<T> AgainAsync<T>(Func<Task<T>> work, Func<bool> mayRepeat, CancellationToken cancel)
    {
        for (var attempt = 0; ; attempt++)
        {
            try
            {
                return await work();
            }
            catch (Exception exception) when (attempt < Pauses.Length && mayRepeat() && IsPassing(exception))
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
