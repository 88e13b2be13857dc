using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging;
using Npgsql;

namespace PressRun.Data.Running;

/// <summary>The database that this process works on, once it is started. Others may ask for the factory before that, but not yet for a context.</summary>
internal sealed class Database(ILoggerFactory logging) : IDbContextFactory<PressRunDbContext>, IAsyncDisposable
{
    private NpgsqlDataSource? source;
    private DbContextOptions<PressRunDbContext>? options;

    /// <summary>Connections to it.</summary>
    /// <exception cref="InvalidOperationException">It is not started.</exception>
    public NpgsqlDataSource Source => source ?? throw NotStarted();

    /// <summary>True once migrations are done.</summary>
    public bool Ready { get; set; }

    /// <summary>Opens the pool of connections.</summary>
    public void Open(string connectionString)
    {
        source = NpgsqlDataSource.Create(connectionString);
        var builder = new DbContextOptionsBuilder<PressRunDbContext>();
        builder.UsePressRun(source).UseLoggerFactory(logging);
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

    private static InvalidOperationException NotStarted() => new("The database is not started.");
}
