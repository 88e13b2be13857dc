using Npgsql;

namespace PressRun.Data.Running;

/// <summary>The database that this process works on, once it is started.</summary>
internal sealed class Database : IAsyncDisposable
{
    private NpgsqlDataSource? source;

    /// <summary>Connections to it.</summary>
    /// <exception cref="InvalidOperationException">It is not started (any more).</exception>
    public NpgsqlDataSource Source => source ?? throw new InvalidOperationException("The database is not started.");

    /// <summary>True once migrations are done.</summary>
    public bool Ready { get; set; }

    /// <summary>Opens the pool of connections.</summary>
    public void Open(string connectionString) => source = NpgsqlDataSource.Create(connectionString);

    /// <summary>Closes the pool.</summary>
    public async ValueTask DisposeAsync()
    {
        Ready = false;
        if (source is not null)
        {
            await source.DisposeAsync();
        }
    }
}
