using System.Diagnostics;
using Npgsql;
using PressRun.Data.PrivatePostgres;
using PressRun.Data.Tests.Fixtures;

namespace PressRun.Data.Tests;

/// <summary>The commands of docs/operating.md, on the sample press.</summary>
public sealed class BackupTests(PostgresFixture postgres)
{
    [Fact]
    public async Task A_backup_restored_after_everything_was_lost_has_the_same_rows_in_every_table()
    {
        var original = await postgres.NewDatabaseAsync();
        await using var stores = Stores.On(original);
        var press = (await stores.Archives.ImportAsync(Repository.SamplePress)).Value;
        var restored = await postgres.NewDatabaseAsync(migrated: false);
        var file = Path.Combine(postgres.Folder, "pressrun.dump");

        await RunAsync("pg_dump", original, "--format=custom", "--file=" + file);
        var before = await ChecksumsAsync(original);
        var exported = await stores.Archives.ExportAsync(press.Id);
        await RunAsync("pg_restore", restored, "--no-owner", "--exit-on-error", "--dbname=" + new NpgsqlConnectionStringBuilder(restored).Database, file);

        Assert.True(before.Count > 10);
        Assert.Equal(before, await ChecksumsAsync(restored));
        await using var after = Stores.On(restored);
        Assert.Equal(exported, await after.Archives.ExportAsync(press.Id));
    }

    private static async Task<SortedDictionary<string, string>> ChecksumsAsync(string connectionString)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync();
        var sums = new SortedDictionary<string, string>(StringComparer.Ordinal);
        await using var tables = new NpgsqlCommand("SELECT quote_ident(tablename) FROM pg_tables WHERE schemaname = 'public'", connection);
        await using (var reader = await tables.ExecuteReaderAsync())
        {
            while (await reader.ReadAsync())
            {
                sums.Add(reader.GetString(0), "");
            }
        }

        foreach (var table in sums.Keys.ToList())
        {
            await using var sum = new NpgsqlCommand($"SELECT count(*) || ' ' || coalesce(md5(string_agg(r::text, '|' ORDER BY r::text)), '') FROM {table} r", connection);
            sums[table] = (string)(await sum.ExecuteScalarAsync())!;
        }

        return sums;
    }

    private static async Task RunAsync(string program, string connectionString, params string[] arguments)
    {
        var connection = new NpgsqlConnectionStringBuilder(connectionString);
        var start = new ProcessStartInfo(PostgresBinaries.Find("", null, AppContext.BaseDirectory).Path(program), arguments) { RedirectStandardError = true };
        start.Environment["PGHOST"] = connection.Host;
        start.Environment["PGUSER"] = connection.Username;
        start.Environment["PGPASSWORD"] = connection.Password;
        start.Environment["PGDATABASE"] = connection.Database;
        using var process = Process.Start(start)!;
        var errors = await process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0, $"{program}: {errors}");
    }
}
