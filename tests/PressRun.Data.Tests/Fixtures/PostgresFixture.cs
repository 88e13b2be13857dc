using System.Collections.Concurrent;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;
using PressRun.Data.PrivatePostgres;
using PressRun.Data.Running;
using PressRun.Data.Tests.Fixtures;

[assembly: AssemblyFixture(typeof(PostgresFixture))]

namespace PressRun.Data.Tests.Fixtures;

/// <summary>One private PostgreSQL for all tests, and in it a migrated database that new ones are copied from.</summary>
public sealed class PostgresFixture : IAsyncLifetime
{
    private const string Template = "template_pressrun";

    private readonly SemaphoreSlim copying = new(1);
    private readonly ConcurrentBag<string> free = [];
    private PrivateServer server = null!;
    private int databases;

    /// <summary>Folder for this run, short enough for a socket's path.</summary>
    public string Folder { get; } = ShortFolder.New("tests");

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        // Nothing here outlives the run, so the server need not wait for the disk.
        server = await PrivateServer.StartAsync(
            new PressRunOptions { DataFolder = Folder }, ["fsync=off", "max_connections=200"], TimeProvider.System, NullLogger.Instance, CancellationToken.None);
        await ExecuteAsync($"CREATE DATABASE {Template}");
        await using var database = new Database(NullLoggerFactory.Instance, TimeProvider.System);
        database.Open(ConnectionString(Template, pooling: false));
        await Migrating.BringUpAsync(database, TimeProvider.System, NullLogger.Instance, CancellationToken.None);
    }

    /// <summary>Connection string of a new database, migrated or empty.</summary>
    internal async Task<string> NewDatabaseAsync(bool migrated = true)
    {
        await copying.WaitAsync();
        try
        {
            var name = $"test_{++databases}";
            await ExecuteAsync(migrated ? $"CREATE DATABASE {name} TEMPLATE {Template}" : $"CREATE DATABASE {name}");
            if (migrated)
            {
                await using var database = new Database(NullLoggerFactory.Instance, TimeProvider.System);
                database.Open(ConnectionString(name, pooling: false));
                await RestoredCopy.LookAsync(database, WaitingMail.Leave, NullLogger.Instance, CancellationToken.None);
            }

            return ConnectionString(name, pooling: true);
        }
        finally
        {
            copying.Release();
        }
    }

    /// <summary>Connection string of a migrated database without rows; give it back with <see cref="GiveBackAsync"/>.</summary>
    internal async Task<string> BorrowDatabaseAsync() => free.TryTake(out var connection) ? connection : await NewDatabaseAsync();

    /// <summary>Empties a database for the next test, the ledger too, which refuses that to everybody else: much quicker than making another one, and by
    /// deleting than by truncating, which makes new files of every table and index.</summary>
    internal async Task GiveBackAsync(string connectionString)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(
            """
            SET session_replication_role = replica;
            DO $$
            DECLARE filled regclass;
            BEGIN
              FOR filled IN SELECT c.oid FROM pg_class c WHERE c.relkind = 'r' AND c.relnamespace = 'public'::regnamespace AND c.relname NOT IN ('__EFMigrationsHistory', 'database_homes') LOOP
                EXECUTE format('DELETE FROM %s', filled);
              END LOOP;
            END $$;
            RESET session_replication_role
            """,
            connection);
        await command.ExecuteNonQueryAsync();
        free.Add(connectionString);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        NpgsqlConnection.ClearAllPools();
        await server.DisposeAsync();
        copying.Dispose();
        Directory.Delete(Folder, recursive: true);
    }

    private string ConnectionString(string database, bool pooling) =>
        new NpgsqlConnectionStringBuilder(server.ConnectionString) { Database = database, Pooling = pooling, MaxPoolSize = 40 }.ConnectionString;

    private async Task ExecuteAsync(string sql)
    {
        await using var connection = new NpgsqlConnection(ConnectionString("postgres", pooling: false));
        await connection.OpenAsync();
        await using var command = connection.CreateCommand();
        command.CommandText = sql;
        await command.ExecuteNonQueryAsync();
    }
}
