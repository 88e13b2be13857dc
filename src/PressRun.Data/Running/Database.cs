using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.Logging;
using Npgsql;

namespace PressRun.Data.Running;

/// <summary>The database that this process works on, once it is started. Others may ask for the factory before that, but not yet for a context.</summary>
internal sealed class Database(ILoggerFactory logging, TimeProvider time) : IDbContextFactory<PressRunDbContext>, IAsyncDisposable
{
    private NpgsqlDataSource? source;
    private DbContextOptions<PressRunDbContext>? options;

    /// <summary>Connections to it.</summary>
    /// <exception cref="InvalidOperationException">It is not started.</exception>
    public NpgsqlDataSource Source => source ?? throw NotStarted();

    /// <summary>Whether it is reached.</summary>
    public Reach Reach { get; } = new(time, logging.CreateLogger<Reach>());

    /// <summary>True once migrations are done.</summary>
    public bool Ready { get; set; }

    /// <summary>Opens the pool of connections.</summary>
    public void Open(string connectionString)
    {
        source = NpgsqlDataSource.Create(connectionString);
        var builder = new DbContextOptionsBuilder<PressRunDbContext>();
        builder.UsePressRun(source).UseLoggerFactory(logging).AddInterceptors(new NotWhileAway(Reach), new RoomWatch(Reach)).ConfigureWarnings(Told);
        options = builder.Options;
    }

    /// <inheritdoc/>
    public PressRunDbContext CreateDbContext() => new(options ?? throw NotStarted());

    /// <summary>Closes the pool.</summary>
    public async ValueTask DisposeAsync()
    {
        Ready = false;
        if (source is not null)
        {
            await source.DisposeAsync();
        }
    }

    // Whoever asked gets the exception and tells of it; told here as well, an absence would fill the log.
    private static void Told(WarningsConfigurationBuilder events) => events.Log(
        (RelationalEventId.ConnectionError, LogLevel.Debug),
        (RelationalEventId.CommandError, LogLevel.Debug),
        (RelationalEventId.TransactionError, LogLevel.Debug),
        (CoreEventId.QueryIterationFailed, LogLevel.Debug),
        (CoreEventId.SaveChangesFailed, LogLevel.Debug));

    private static InvalidOperationException NotStarted() => new("The database is not started.");
}
