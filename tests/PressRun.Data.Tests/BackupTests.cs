using System.Diagnostics;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;
using PressRun.Data.PrivatePostgres;
using PressRun.Data.Quotes;
using PressRun.Data.Running;
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

    [Fact]
    public async Task Mail_that_waited_in_a_backup_is_not_sent_from_what_is_restored_until_the_host_says_so()
    {
        var (original, file) = await WithWaitingMailAsync();
        var elsewhere = await postgres.NewDatabaseAsync(migrated: false);
        await RunAsync("pg_restore", elsewhere, "--no-owner", "--exit-on-error", "--dbname=" + Name(elsewhere), file);
        await using var copy = Stores.On(elsewhere);

        Assert.Null(await copy.Outbox.TakeAsync());
        await StartAsync(copy, WaitingMail.Leave);
        await StartAsync(copy, WaitingMail.Leave);
        Assert.Null(await copy.Outbox.TakeAsync());
        await StartAsync(copy, WaitingMail.Send);
        Assert.NotNull(await copy.Outbox.TakeAsync());

        // Where it comes from it goes as ever.
        await using var stores = Stores.On(original);
        await StartAsync(stores, WaitingMail.Leave);
        Assert.NotNull(await stores.Outbox.TakeAsync());
    }

    [Fact]
    public async Task Neither_is_it_sent_where_the_backup_is_put_back_in_the_place_that_it_came_from_even_while_the_app_runs()
    {
        var (original, file) = await WithWaitingMailAsync();
        await using var stores = Stores.On(original);
        await stores.Outbox.DoneAsync((await stores.Outbox.TakeAsync())!);
        NpgsqlConnection.ClearAllPools();

        await RunAsync("pg_restore", original, "--clean", "--if-exists", "--no-owner", "--exit-on-error", "--dbname=" + Name(original), file);

        await using var after = Stores.On(original);
        Assert.Null(await after.Outbox.TakeAsync());
        await StartAsync(after, WaitingMail.Drop);
        await StartAsync(after, WaitingMail.Send);
        Assert.Null(await after.Outbox.TakeAsync());
    }

    private static Task StartAsync(Stores stores, WaitingMail wanted) => RestoredCopy.LookAsync(stores.Database, wanted, NullLogger.Instance, CancellationToken.None);

    private static string Name(string connectionString) => new NpgsqlConnectionStringBuilder(connectionString).Database!;

    private async Task<(string Original, string File)> WithWaitingMailAsync()
    {
        var original = await postgres.NewDatabaseAsync();
        await using var stores = Stores.On(original);
        var (_, _, look) = await SmallQuote.SharedAsync(stores, await SmallPress.CreateAsync(stores));
        SmallPress.Saved(await stores.Shared.ReplyAsync(look, new Reply.Remark("Ada", "Is it thick?")));
        var file = Path.Combine(postgres.Folder, Name(original) + ".dump");
        await RunAsync("pg_dump", original, "--format=custom", "--file=" + file);
        return (original, file);
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
