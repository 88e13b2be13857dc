using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;
using PressRun.Data.PrivatePostgres;
using PressRun.Data.Running;
using PressRun.Data.Tests.Fixtures;

namespace PressRun.Data.Tests;

public sealed class PrivateServerTests
{
    [Fact]
    public async Task It_listens_on_no_network_and_wants_the_password()
    {
        using var folder = new ServerFolder();
        await using var server = await StartAsync(folder);

        Assert.Equal("", await AskAsync(server.ConnectionString, "SHOW listen_addresses"));
        Assert.Equal("on", await AskAsync(server.ConnectionString, "SHOW data_checksums"));
        Assert.Equal("on", await AskAsync(server.ConnectionString, "SHOW fsync"));
        var without = new NpgsqlConnectionStringBuilder(server.ConnectionString) { Password = "guessed", Pooling = false }.ConnectionString;
        var refused = await Assert.ThrowsAsync<PostgresException>(() => AskAsync(without, "SELECT 1"));
        Assert.Equal(PostgresErrorCodes.InvalidPassword, refused.SqlState);
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(folder.Path, "database-password")));
    }

    [Fact]
    public async Task A_folder_whose_making_was_cut_short_is_made_again()
    {
        using var folder = new ServerFolder();
        var major = PostgresBinaries.Find("", null).Major;
        Directory.CreateDirectory(Path.Combine(folder.Path, $"postgres-{major}.new", "base"));

        await using var server = await StartAsync(folder);

        Assert.Equal("1", await AskAsync(server.ConnectionString, "SELECT '1'"));
    }

    [Fact]
    public async Task A_folder_with_a_long_path_has_its_socket_elsewhere()
    {
        using var folder = new ServerFolder();
        var deep = Path.Combine(folder.Path, new string('d', 90));
        await using var server = await PrivateServer.StartAsync(
            new PressRunOptions { DataFolder = deep }, [], TimeProvider.System, NullLogger.Instance, CancellationToken.None);

        Assert.StartsWith("/tmp/pressrun-", new NpgsqlConnectionStringBuilder(server.ConnectionString).Host, StringComparison.Ordinal);
        Assert.Equal("1", await AskAsync(server.ConnectionString, "SELECT '1'"));
        NpgsqlConnection.ClearPool(new NpgsqlConnection(server.ConnectionString));
    }

    [Fact]
    public async Task A_server_that_cannot_start_says_so_in_its_own_words()
    {
        using var folder = new ServerFolder();

        var refusal = await Assert.ThrowsAsync<StartRefusedException>(() => PrivateServer.StartAsync(
            new PressRunOptions { DataFolder = folder.Path }, ["shared_buffers=none"], TimeProvider.System, NullLogger.Instance, CancellationToken.None));

        Assert.Contains("does not start", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("shared_buffers", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_server_that_was_left_running_is_stopped_before_the_next_one_starts()
    {
        using var folder = new ServerFolder();
        await (await StartAsync(folder)).DisposeAsync();
        var binaries = PostgresBinaries.Find("", null);
        var user = ServerUser.Find();
        using var left = System.Diagnostics.Process.Start(user.Command(
            binaries.Path("postgres"), "-D", folder.Data, "-k", Path.Combine(folder.Path, "socket"), "-c", "listen_addresses="))!;
        while (!File.Exists(folder.PidFile) || !(await File.ReadAllTextAsync(folder.PidFile)).Contains("ready", StringComparison.Ordinal))
        {
            await Task.Delay(50);
        }

        await using var server = await StartAsync(folder);

        await left.WaitForExitAsync();
        Assert.Equal("1", await AskAsync(server.ConnectionString, "SELECT '1'"));
    }

    private static Task<PrivateServer> StartAsync(ServerFolder folder) => PrivateServer.StartAsync(
        new PressRunOptions { DataFolder = folder.Path }, [], TimeProvider.System, NullLogger.Instance, CancellationToken.None);

    private static async Task<string> AskAsync(string connectionString, string sql)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection);
        return (string)(await command.ExecuteScalarAsync())!;
    }
}
