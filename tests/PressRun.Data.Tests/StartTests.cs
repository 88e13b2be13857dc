using System.Net;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;
using PressRun.Data.Presses;
using PressRun.Data.PrivatePostgres;
using PressRun.Data.Running;
using PressRun.Data.Tests.Fixtures;

namespace PressRun.Data.Tests;

public sealed class StartTests(PostgresFixture postgres)
{
    private static readonly (string, string) Sample = ("PressRun__Sample", "true");

    [Fact]
    public async Task A_first_start_makes_a_database_with_the_sample_press_and_a_stop_leaves_no_server()
    {
        using var folder = new ServerFolder();
        await using var app = await AppProcess.StartAsync(folder.Setting, Sample);
        var server = folder.ServerProcess!.Value;

        Assert.Equal((200, "alive"), await app.GetAsync("/livez"));
        Assert.Equal((200, "ready"), await app.GetAsync("/readyz"));
        await using (var stores = Stores.On(folder.ConnectionString))
        {
            Assert.Single(await stores.Presses.ListAsync());
        }

        Assert.Equal(0, await app.StopAsync());
        Assert.False(ServerFolder.Runs(server));
        Assert.False(File.Exists(folder.PidFile));
    }

    [Fact]
    public async Task An_app_started_from_another_folder_serves_its_files_and_answers_to_its_own_names_only()
    {
        await using var app = await AppProcess.StartAsync(("ConnectionStrings__PressRun", await postgres.NewDatabaseAsync()), ("PathBase", "press/"), ("PressRun__Smaple", "true"), ("PressRun__MailPort", " "), ("TZ", "Europe/Wien"));

        Assert.Contains("PressRun__Smaple is no setting of PressRun, and nothing is done by it. The nearest that there is: PressRun__Sample", app.Output, StringComparison.Ordinal);
        Assert.Contains("TZ is Europe/Wien, which is no time zone that this machine knows", app.Output, StringComparison.Ordinal);
        Assert.Contains($"PressRun is at {app.Http.BaseAddress!.OriginalString}/press", app.Output, StringComparison.Ordinal);
        Assert.Equal(200, (await app.GetAsync("/press/shelf")).Status);
        Assert.Equal(200, (await app.GetAsync("/press/css/tokens.css")).Status);
        Assert.Equal(200, (await app.GetAsync("/press/_content/MudBlazor/MudBlazor.min.css")).Status);
        Assert.Equal(200, (await app.GetAsync("/press/_framework/blazor.web.js")).Status);
        Assert.Equal(400, (await app.GetAsync("/press/shelf", "books.example")).Status);
        // Whoever watches over it knows an address only.
        Assert.Equal((200, "ready"), await app.GetAsync("/press/readyz", "192.0.2.7"));
    }

    [Fact]
    public async Task What_was_acknowledged_before_the_app_was_killed_is_there_after_the_next_start()
    {
        using var folder = new ServerFolder();
        await using var first = await AppProcess.StartAsync(folder.Setting);
        var server = folder.ServerProcess!.Value;
        var acknowledged = new List<string>();
        var writing = WriteUntilRefusedAsync(folder.ConnectionString, acknowledged);
        await Eventually.HoldsAsync(() => Task.FromResult(acknowledged.Count > 20));

        await first.KillAsync();
        await writing;
        await Eventually.HoldsAsync(() => Task.FromResult(!ServerFolder.Runs(server)));
        await using var second = await AppProcess.StartAsync(folder.Setting);

        await using var stores = Stores.On(folder.ConnectionString);
        Assert.Empty(acknowledged.Except((await stores.Presses.ListAsync()).Select(press => press.Name)));
    }

    [Fact]
    public async Task The_app_goes_on_after_its_server_was_killed()
    {
        using var folder = new ServerFolder();
        await using var app = await AppProcess.StartAsync(folder.Setting);
        var server = folder.ServerProcess!.Value;

        folder.KillServer();

        await Eventually.HoldsAsync(() => Task.FromResult(folder.ServerProcess is { } process && process != server && ServerFolder.Runs(process)));
        await Eventually.HoldsAsync(async () => await app.GetAsync("/readyz") == (200, "ready"));
    }

    [Fact]
    public async Task A_pid_file_left_by_a_machine_that_lost_its_power_does_not_stop_a_start()
    {
        using var folder = new ServerFolder();
        await using (var first = await AppProcess.StartAsync(folder.Setting))
        {
            await first.StopAsync();
        }

        // No process has this number: Linux gives out at most 4,194,304.
        await File.WriteAllTextAsync(folder.PidFile, $"4999999\n{folder.Data}\n1700000000\n5432\n{folder.Path}/socket\n\n0 0\nready   \n");

        await using var second = await AppProcess.StartAsync(folder.Setting);
        Assert.Equal((200, "ready"), await second.GetAsync("/readyz"));
    }

    [Fact]
    public async Task A_second_app_on_the_same_folder_is_refused_and_does_not_disturb_the_first()
    {
        using var folder = new ServerFolder();
        await using var first = await AppProcess.StartAsync(folder.Setting);

        await AssertRefusedAsync($"Another PressRun uses the data folder {folder.Path}.", folder.Setting);

        Assert.Equal((200, "ready"), await first.GetAsync("/readyz"));
    }

    [Fact]
    public async Task Data_of_a_newer_PostgreSQL_are_refused_untouched()
    {
        using var folder = new ServerFolder();
        Directory.CreateDirectory(Path.Combine(folder.Path, "postgres-99"));
        await File.WriteAllTextAsync(Path.Combine(folder.Path, "postgres-99", "PG_VERSION"), "99\n");

        await AssertRefusedAsync("The data folder was written by PostgreSQL 99", folder.Setting);

        Assert.Equal(["PG_VERSION"], Directory.GetFileSystemEntries(folder.Data).Select(Path.GetFileName));
    }

    [Fact]
    public async Task Data_without_their_password_are_refused_untouched()
    {
        using var folder = new ServerFolder();
        await using (var first = await AppProcess.StartAsync(folder.Setting))
        {
            await first.StopAsync();
        }

        File.Delete(Path.Combine(folder.Path, "database-password"));

        await AssertRefusedAsync("database-password is missing", folder.Setting);
        Assert.False(File.Exists(Path.Combine(folder.Path, "database-password")));
    }

    [Fact]
    public async Task A_missing_PostgreSQL_is_told_by_where_it_was_looked_for()
    {
        using var folder = new ServerFolder();

        await AssertRefusedAsync("PressRun__PostgresBin names /nowhere", folder.Setting, ("PressRun__PostgresBin", "/nowhere"));
    }

    [Fact]
    public Task An_address_that_other_machines_reach_is_refused_while_there_is_no_sign_in() =>
        AssertRefusedAsync("can be reached from other machines", ("ASPNETCORE_URLS", "http://0.0.0.0:5999"));

    [Fact]
    public Task Neither_does_the_servers_own_section_of_the_configuration_open_such_an_address() =>
        AssertRefusedAsync("can be reached from other machines", ("Kestrel__Endpoints__any__Url", "http://0.0.0.0:5999"));

    [Fact]
    public async Task A_server_is_named_by_a_connection_string_and_its_password_may_stand_in_a_file()
    {
        var connection = new NpgsqlConnectionStringBuilder(await postgres.NewDatabaseAsync(migrated: false));
        var secret = Path.Combine(postgres.Folder, "secret-" + connection.Database);
        await File.WriteAllTextAsync(secret, connection.Password + "\n");
        connection.Password = null;

        await using var app = await AppProcess.StartAsync(
            ("ConnectionStrings__PressRun", connection.ConnectionString), ("PressRun__DatabasePassword_FILE", secret));

        Assert.Equal((200, "ready"), await app.GetAsync("/readyz"));
    }

    [Fact]
    public async Task An_app_whose_server_is_away_lives_and_is_not_ready_until_it_is_back()
    {
        using var folder = new ServerFolder();
        var options = new PressRunOptions { DataFolder = folder.Path };
        var server = await PrivateServer.StartAsync(options, [], TimeProvider.System, NullLogger.Instance, CancellationToken.None);
        await using var app = await AppProcess.StartAsync(("ConnectionStrings__PressRun", server.ConnectionString));

        await server.DisposeAsync();
        Assert.Equal((503, "the database does not answer"), await app.GetAsync("/readyz"));
        Assert.Equal((200, "alive"), await app.GetAsync("/livez"));

        await using var again = await PrivateServer.StartAsync(options, [], TimeProvider.System, NullLogger.Instance, CancellationToken.None);
        await Eventually.HoldsAsync(async () => await app.GetAsync("/readyz") == (200, "ready"));
    }

    [Fact]
    public async Task While_the_database_is_away_every_answer_says_so_calmly_and_the_log_once_and_all_heals_by_itself()
    {
        using var folder = new ServerFolder();
        var options = new PressRunOptions { DataFolder = folder.Path };
        var server = await PrivateServer.StartAsync(options, [], TimeProvider.System, NullLogger.Instance, CancellationToken.None);
        await using var app = await AppProcess.StartAsync(("ConnectionStrings__PressRun", server.ConnectionString), Sample);
        Assert.Equal(200, (await app.GetAsync("/shelf")).Status);

        await server.DisposeAsync();
        using (var first = await app.Http.GetAsync("/shelf"))
        {
            Assert.Equal(HttpStatusCode.ServiceUnavailable, first.StatusCode);
            Assert.NotNull(first.Headers.RetryAfter);
            Assert.True(first.Headers.CacheControl is { NoStore: true });
            Assert.Contains("script-src 'self'", first.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
            Assert.Contains("One moment, please", await first.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }

        await Eventually.HoldsAsync(() => Task.FromResult(app.Output.Contains("The database does not answer", StringComparison.Ordinal)));
        Assert.Equal(503, (await app.GetAsync("/papers")).Status);
        Assert.Equal(200, (await app.GetAsync("/css/tokens.css")).Status);
        using (var link = await app.Http.GetAsync("/q/" + new string('a', 32)))
        {
            Assert.Equal(HttpStatusCode.ServiceUnavailable, link.StatusCode);
            Assert.Contains("noindex", link.Headers.GetValues("X-Robots-Tag").Single(), StringComparison.Ordinal);
        }

        await using var again = await PrivateServer.StartAsync(options, [], TimeProvider.System, NullLogger.Instance, CancellationToken.None);
        await Eventually.HoldsAsync(async () => (await app.GetAsync("/shelf")).Status == 200);
        await Eventually.HoldsAsync(() => Task.FromResult(app.Output.Contains("The database answers again", StringComparison.Ordinal)));
        var loud = app.Output.Split('\n').Where(line => line.Contains(" warn ", StringComparison.Ordinal) || line.Contains(" error ", StringComparison.Ordinal) || line.StartsWith(' ')).ToList();
        Assert.True(loud.Count == 2, string.Join('\n', loud));
    }

    [Fact]
    public async Task A_program_is_told_by_a_problem_document_that_the_database_is_away()
    {
        using var folder = new ServerFolder();
        var server = await PrivateServer.StartAsync(new PressRunOptions { DataFolder = folder.Path }, [], TimeProvider.System, NullLogger.Instance, CancellationToken.None);
        await using var app = await AppProcess.StartAsync(("ConnectionStrings__PressRun", server.ConnectionString), ("PressRun__SignIn", "on"));
        await Eventually.HoldsAsync(() => Task.FromResult(app.Output.Contains("first-owner", StringComparison.Ordinal)));

        await server.DisposeAsync();
        using var asking = new HttpRequestMessage(HttpMethod.Get, "/api/v1/printings");
        asking.Headers.Authorization = new("Bearer", "pressrun_any");
        using var answer = await app.Http.SendAsync(asking);

        Assert.Equal((HttpStatusCode.ServiceUnavailable, "application/problem+json"), (answer.StatusCode, answer.Content.Headers.ContentType!.MediaType));
        Assert.NotNull(answer.Headers.RetryAfter);
        Assert.Contains("urn:pressrun:problem:database-away", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_password_is_told_at_once()
    {
        var connection = new NpgsqlConnectionStringBuilder(await postgres.NewDatabaseAsync()) { Password = "wrong" };

        await AssertRefusedAsync("The database cannot be used: password authentication failed", ("ConnectionStrings__PressRun", connection.ConnectionString));
    }

    [Fact]
    public async Task A_secret_in_a_file_that_is_not_there_is_told_by_name() =>
        await AssertRefusedAsync("PressRun__DatabasePassword_FILE names /nowhere", ("PressRun__DatabasePassword_FILE", "/nowhere"));

    [Theory]
    [InlineData("Hots=db;Password=Zitronenbaum", "ConnectionStrings__PressRun cannot be read: Npgsql knows no part that is called hots. Write it as")]
    [InlineData("Host=db;Port=Zitronenbaum", "ConnectionStrings__PressRun cannot be read: a value is none that its name can have. Write it as")]
    [InlineData("Zitronenbaum", "ConnectionStrings__PressRun cannot be read: it is not names and values with semicolons between them. Write it as")]
    public async Task A_connection_that_cannot_be_read_is_told_without_its_values(string connection, string sentence) =>
        Assert.DoesNotContain("Zitronenbaum", await AssertRefusedAsync(sentence, ("ConnectionStrings__PressRun", connection)), StringComparison.Ordinal);

    [Fact]
    public Task A_setting_that_cannot_be_read_is_refused_in_a_sentence() => AssertRefusedAsync("PressRun__Sample is maybe; write true or false.", ("PressRun__Sample", "maybe"));

    [Fact]
    public async Task A_database_of_a_newer_program_is_refused()
    {
        var connection = await postgres.NewDatabaseAsync();
        await using (var opened = new NpgsqlConnection(connection))
        {
            await opened.OpenAsync();
            await using var command = new NpgsqlCommand("""INSERT INTO "__EFMigrationsHistory" VALUES ('29990101000000_Later', '99.0')""", opened);
            await command.ExecuteNonQueryAsync();
        }

        await AssertRefusedAsync("The database was last used by a newer PressRun", ("ConnectionStrings__PressRun", connection));
    }

    private static async Task<string> AssertRefusedAsync(string sentence, params (string Name, string Value)[] settings)
    {
        await using var app = AppProcess.Launch(settings);

        Assert.Equal(1, await app.EndAsync());
        Assert.Contains(sentence, app.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", app.Output, StringComparison.Ordinal);
        return app.Output;
    }

    private static async Task WriteUntilRefusedAsync(string connectionString, List<string> acknowledged)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync();
        for (var number = 0; ; number++)
        {
            var name = $"Press {number}";
            try
            {
                await using var command = new NpgsqlCommand(
                    "INSERT INTO presses (id, name, currency, units, paper_region, reclaims_tax, created_at) VALUES ($1, $2, 'EUR', 'Metric', 'Iso', false, now())",
                    connection);
                command.Parameters.Add(new NpgsqlParameter { Value = PressId.New().Value });
                command.Parameters.Add(new NpgsqlParameter { Value = name });
                await command.ExecuteNonQueryAsync();
                acknowledged.Add(name);
            }
            catch (NpgsqlException)
            {
                return;
            }
        }
    }
}
