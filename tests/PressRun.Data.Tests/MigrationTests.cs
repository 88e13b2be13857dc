using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;
using PressRun.Data.Copies;
using PressRun.Data.Presses;
using PressRun.Data.Running;
using PressRun.Data.Tests.Fixtures;
using PressRun.Engine.Copies;

namespace PressRun.Data.Tests;

public sealed class MigrationTests(PostgresFixture postgres)
{
    [Fact]
    public async Task The_migrations_make_the_model_as_it_is()
    {
        await using var stores = await Stores.NewAsync(postgres);
        await using var db = stores.Context(default);

        Assert.False(db.Database.HasPendingModelChanges(), "The model has changed: add a migration.");
    }

    [Fact]
    public async Task Nodes_that_start_at_once_on_an_empty_database_all_come_up()
    {
        var connection = await postgres.NewDatabaseAsync(migrated: false);
        var nodes = Enumerable.Range(0, 4).Select(_ => Stores.On(connection)).ToList();

        await Task.WhenAll(nodes.Select(node => BringUpAsync(node)));

        Assert.Empty(await nodes[0].Presses.ListAsync());
        foreach (var node in nodes)
        {
            await node.DisposeAsync();
        }
    }

    [Fact]
    public async Task An_upgrade_from_every_earlier_migration_keeps_what_was_there()
    {
        await using var now = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(now);
        await WriteOpeningLinesAsync(now, small);
        var wanted = await now.Archives.ExportAsync(small.Id);
        await using var model = now.Context(default);

        foreach (var earlier in model.Database.GetMigrations())
        {
            await using var stores = Stores.On(await postgres.NewDatabaseAsync(migrated: false));
            await using (var db = stores.Context(default))
            {
                await db.GetService<IMigrator>().MigrateAsync(earlier);
                await CopyRowsAsync(model, db);
            }

            await BringUpAsync(stores);

            Assert.Equal(wanted, await stores.Archives.ExportAsync(small.Id));
        }
    }

    [Fact]
    public async Task A_database_of_a_newer_program_is_refused_untouched()
    {
        await using var stores = Stores.On(await postgres.NewDatabaseAsync());
        await using var db = stores.Context(PressId.New());
        await db.Database.ExecuteSqlAsync($"""INSERT INTO "__EFMigrationsHistory" VALUES ('29990101000000_Later', '99.0')""");
        await db.Database.ExecuteSqlAsync($"DROP TABLE drafts");

        var refusal = await Assert.ThrowsAsync<StartRefusedException>(() => BringUpAsync(stores));

        Assert.Contains("29990101000000_Later", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("newer", refusal.Message, StringComparison.Ordinal);
        Assert.Equal(2, (await db.Database.GetAppliedMigrationsAsync()).Count(name => name.EndsWith("First", StringComparison.Ordinal) || name.EndsWith("Later", StringComparison.Ordinal)));
    }

    // What an upgrade makes of a press that counted its copies before it kept a ledger.
    private static async Task WriteOpeningLinesAsync(Stores stores, SmallPress small)
    {
        const string Before = "Carried over from before the ledger.";
        foreach (var (kind, copies) in new[] { (MovementKind.Printed, 150), (MovementKind.Counted, 12) })
        {
            SmallPress.Saved(await stores.Ledger.WriteAsync(
                small.Id, new NewMovement(Guid.NewGuid(), small.Edition.Id, SmallPress.ListDate, kind, copies, Note: Before)));
        }
    }

    /// <summary>Copies every row into a database of an earlier model, column by column as far as that one has them; what came later gets its
    /// default from the migrations. Counts of tries are over within the hour and are not asked after.</summary>
    private static async Task CopyRowsAsync(DbContext from, DbContext to)
    {
        var source = (NpgsqlConnection)from.Database.GetDbConnection();
        var target = (NpgsqlConnection)to.Database.GetDbConnection();
        await from.Database.OpenConnectionAsync();
        await to.Database.OpenConnectionAsync();
        await RunAsync(target, "SET session_replication_role = replica");
        foreach (var table in await ListAsync(target, "SELECT tablename FROM pg_tables WHERE schemaname = 'public' AND tablename NOT IN ('__EFMigrationsHistory', 'attempts')"))
        {
            var columns = string.Join(", ", await ListAsync(
                target,
                $"SELECT quote_ident(column_name) FROM information_schema.columns WHERE table_schema = 'public' AND table_name = '{table}' AND is_generated = 'NEVER'"));
            var selected = columns.Replace("copies_on_hand", "(SELECT on_hand FROM edition_copies WHERE edition_id = editions.id) AS copies_on_hand", StringComparison.Ordinal);
            foreach (var row in await ListAsync(source, $"SELECT to_json(r)::text FROM (SELECT {selected} FROM {table}) r"))
            {
                await using var insert = new NpgsqlCommand($"INSERT INTO {table} ({columns}) SELECT {columns} FROM json_populate_record(NULL::{table}, $1::json)", target);
                insert.Parameters.Add(new NpgsqlParameter { Value = row });
                await insert.ExecuteNonQueryAsync();
            }
        }

        await RunAsync(target, "SET session_replication_role = DEFAULT");
    }

    private static async Task RunAsync(NpgsqlConnection connection, string sql)
    {
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync();
    }

    private static async Task<List<string>> ListAsync(NpgsqlConnection connection, string sql)
    {
        await using var command = new NpgsqlCommand(sql, connection);
        await using var reader = await command.ExecuteReaderAsync();
        var list = new List<string>();
        while (await reader.ReadAsync())
        {
            list.Add(reader.GetString(0));
        }

        return list;
    }

    private static Task BringUpAsync(Stores stores) =>
        Migrating.BringUpAsync(stores.Database, TimeProvider.System, NullLogger.Instance, CancellationToken.None);
}
