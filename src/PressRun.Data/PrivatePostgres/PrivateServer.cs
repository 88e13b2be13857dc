using Microsoft.Extensions.Logging;
using Npgsql;
using PressRun.Data.Running;

namespace PressRun.Data.PrivatePostgres;

/// <summary>A PostgreSQL of the app's own, for hosts that have none: on a socket only, in a data folder, started and stopped with the app.</summary>
internal sealed partial class PrivateServer : IAsyncDisposable
{
    private const string User = "pressrun";
    private const int Port = 5432;
    private const int FailuresAtStart = 3;
    private static readonly TimeSpan LongestStart = TimeSpan.FromMinutes(2);

    private readonly DataFolder folder;
    private readonly PostgresProcess process;
    private readonly TimeProvider time;

    private PrivateServer(DataFolder folder, PostgresProcess process, string connectionString, TimeProvider time)
    {
        this.folder = folder;
        this.process = process;
        this.time = time;
        ConnectionString = connectionString;
    }

    /// <summary>How to reach the app's database on it.</summary>
    public string ConnectionString { get; }

    /// <summary>Starts it and waits until the app's database is there.</summary>
    /// <param name="options">Data folder and programs.</param>
    /// <param name="settings">Further server settings, as <c>name=value</c>.</param>
    /// <param name="time">The clock.</param>
    /// <param name="logger">Told what the server writes.</param>
    /// <param name="cancel">Gives up.</param>
    /// <exception cref="StartRefusedException">It cannot start; the sentence says why.</exception>
    public static async Task<PrivateServer> StartAsync(
        PressRunOptions options, IReadOnlyList<string> settings, TimeProvider time, ILogger logger, CancellationToken cancel)
    {
        if (OperatingSystem.IsWindows())
        {
            throw new StartRefusedException("On Windows PressRun starts no PostgreSQL of its own. Name a server in ConnectionStrings__PressRun; docs/operating.md says how to get one.");
        }

        var folder = await DataFolder.OpenAsync(options.DataFolder.Length > 0 ? options.DataFolder : DataFolder.Usual(), cancel);
        if (folder.IsWide)
        {
            LogWide(logger, folder.Path);
        }

        try
        {
            var binaries = PostgresBinaries.Find(options.PostgresBin, folder.DataMajor(), folder.Path, AppContext.BaseDirectory, Environment.CurrentDirectory);
            var user = ServerUser.Find();
            await user.RequireReachAsync(folder.Path, "Name a folder outside root's home in PressRun__DataFolder.", cancel);
            await user.RequireReachAsync(binaries.Path("postgres"), "Name programs outside root's home in PressRun__PostgresBin.", cancel);
            var password = folder.Password();
            var cluster = new Cluster(folder, binaries, user);
            await cluster.PrepareAsync(password, cancel);
            return await RunAsync(folder, cluster, settings, password, time, logger, cancel);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            folder.Dispose();
            throw DataFolder.CannotBeUsed(folder.Path, exception);
        }
        catch
        {
            folder.Dispose();
            throw;
        }
    }

    /// <summary>Stops it; everything is written down when this returns.</summary>
    public async ValueTask DisposeAsync()
    {
        await Task.Run(process.Dispose);
        folder.Dispose();
    }

    private static async Task<PrivateServer> RunAsync(
        DataFolder folder, Cluster cluster, IReadOnlyList<string> settings, string password, TimeProvider time, ILogger logger, CancellationToken cancel)
    {
        var connection = new NpgsqlConnectionStringBuilder
        {
            Host = folder.SocketFolder,
            Port = Port,
            Username = User,
            Password = password,
            Database = User,
            MaxPoolSize = 80,
            IncludeErrorDetail = false,
        };
        var process = new PostgresProcess(() => cluster.ServerCommand(Port, settings), logger);
        var server = new PrivateServer(folder, process, connection.ConnectionString, time);
        process.Start();
        try
        {
            await server.WaitAsync(connection, cancel);
            return server;
        }
        catch
        {
            await Task.Run(process.Dispose, CancellationToken.None);
            throw;
        }
    }

    private async Task WaitAsync(NpgsqlConnectionStringBuilder connection, CancellationToken cancel)
    {
        var first = new NpgsqlConnectionStringBuilder(connection.ConnectionString) { Database = "postgres", Pooling = false };
        var began = time.GetTimestamp();
        while (true)
        {
            try
            {
                await using var opened = new NpgsqlConnection(first.ConnectionString);
                await opened.OpenAsync(cancel);
                process.Answers();
                await CreateDatabaseAsync(opened, cancel);
                return;
            }
            catch (PostgresException exception) when (exception.SqlState != PostgresErrorCodes.CannotConnectNow)
            {
                throw new StartRefusedException($"The private PostgreSQL in {folder.Path} refuses: {exception.MessageText}", exception);
            }
            catch (NpgsqlException exception)
            {
                if (process.Failures >= FailuresAtStart || time.GetElapsedTime(began) > LongestStart)
                {
                    throw new StartRefusedException(
                        $"The private PostgreSQL in {folder.Path} does not start. It says:{Environment.NewLine}{process.LastLines}", exception);
                }
            }

            await Task.Delay(TimeSpan.FromMilliseconds(50), time, cancel);
        }
    }

    private static async Task CreateDatabaseAsync(NpgsqlConnection connection, CancellationToken cancel)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = "SELECT EXISTS (SELECT 1 FROM pg_database WHERE datname = $1)";
        command.Parameters.Add(new NpgsqlParameter { Value = User });
        if (await command.ExecuteScalarAsync(cancel) is not true)
        {
            command.Parameters.Clear();
            command.CommandText = $"CREATE DATABASE {User}";
            await command.ExecuteNonQueryAsync(cancel);
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "Other users of this machine may look into the data folder {Folder}. If it is for PressRun alone, close it: chmod go-rw {Folder}")]
    private static partial void LogWide(ILogger logger, string folder);
}
