using System.Data.Common;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;
using Npgsql;
using PressRun.Data.Access;
using PressRun.Data.Archive;
using PressRun.Data.People;
using PressRun.Data.PrivatePostgres;

namespace PressRun.Data.Running;

/// <summary>
/// Brings up the database before anything else of the app starts, and takes it down after everything else has stopped: the private
/// PostgreSQL where no server is named, then migrations, then the sample press where it is wanted.
/// </summary>
internal sealed class DatabaseStart(
    IConfiguration configuration,
    IOptions<PressRunOptions> options,
    Database database,
    PressArchiveStore archives,
    PressGuard guard,
    TimeProvider time,
    ILogger<DatabaseStart> logger) : IHostedLifecycleService
{
    private PrivateServer? server;

    /// <inheritdoc/>
    public async Task StartingAsync(CancellationToken cancellationToken)
    {
        var mail = options.Value.MailThatWaits();
        database.Open(await ConnectionStringAsync(cancellationToken));
        await Migrating.BringUpAsync(database, time, logger, cancellationToken);
        await RestoredCopy.LookAsync(database, mail, logger, cancellationToken);
        using var program = Visiting.As(new Visitor.Program());
        if (options.Value.Sample)
        {
            await SeedAsync(cancellationToken);
        }

        if (guard.SignIn)
        {
            await using var db = database.CreateDbContext();
            await HostPresses.GiveAsync(db, time.GetUtcNow(), cancellationToken);
        }

        database.Ready = true;
    }

    /// <inheritdoc/>
    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StartedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StoppingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public async Task StoppedAsync(CancellationToken cancellationToken)
    {
        await database.DisposeAsync();
        if (server is not null)
        {
            await server.DisposeAsync();
        }
    }

    private async Task<string> ConnectionStringAsync(CancellationToken cancel)
    {
        if (configuration.GetConnectionString("PressRun") is not { Length: > 0 } named)
        {
            server = await PrivateServer.StartAsync(options.Value, [], time, logger, cancel);
            return server.ConnectionString;
        }

        try
        {
            var connection = new NpgsqlConnectionStringBuilder(named);
            if (options.Value.DatabasePassword.Length > 0)
            {
                connection.Password = options.Value.DatabasePassword;
            }

            return connection.ConnectionString;
        }
        catch (ArgumentException exception)
        {
            throw new StartRefusedException($"ConnectionStrings__PressRun cannot be read: {Misread(named)}. Write it as Host=127.0.0.1;Database=pressrun;Username=pressrun.", exception);
        }
    }

    // By the names of its parts alone: one of its values is the password.
    private static string Misread(string named)
    {
        try
        {
            var (parts, known) = (new DbConnectionStringBuilder { ConnectionString = named }, new NpgsqlConnectionStringBuilder());
            return parts.Keys.Cast<string>().FirstOrDefault(name => !known.ContainsKey(name)) is { } unknown
                ? $"Npgsql knows no part that is called {unknown}"
                : "a value is none that its name can have";
        }
        catch (ArgumentException)
        {
            return "it is not names and values with semicolons between them";
        }
    }

    private async Task SeedAsync(CancellationToken cancel)
    {
        var from = options.Value.SampleFrom.Length > 0 ? options.Value.SampleFrom : Path.Combine(AppContext.BaseDirectory, "seed-data");
        if (await archives.SeedAsync(from, cancel) is { Succeeded: false } refused)
        {
            throw new StartRefusedException(
                $"The sample press in {from} cannot be read, and nothing of it was stored:{Environment.NewLine}{string.Join(Environment.NewLine, refused.Problems)}");
        }
    }
}
