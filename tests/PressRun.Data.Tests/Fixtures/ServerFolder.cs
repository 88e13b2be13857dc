using System.Globalization;
using System.Runtime.InteropServices;
using Npgsql;

namespace PressRun.Data.Tests.Fixtures;

/// <summary>A data folder of a private PostgreSQL, looked at from outside.</summary>
internal sealed partial class ServerFolder : IDisposable
{
    private const int Kill = 9;

    public string Path { get; } = ShortFolder.New("folder");

    public (string Name, string Value) Setting => ("PressRun__DataFolder", Path);

    /// <summary>How to reach its database while it runs.</summary>
    public string ConnectionString => new NpgsqlConnectionStringBuilder
    {
        Host = System.IO.Path.Combine(Path, "socket"),
        Username = "pressrun",
        Password = File.ReadAllText(System.IO.Path.Combine(Path, "database-password")),
        Database = "pressrun",
        Pooling = false,
    }.ConnectionString;

    public string PidFile => System.IO.Path.Combine(Data, "postmaster.pid");

    /// <summary>The server's process; null where its pid file is not there.</summary>
    public int? ServerProcess => File.Exists(PidFile) ? int.Parse(File.ReadLines(PidFile).First(), CultureInfo.InvariantCulture) : null;

    /// <summary>The folder of the data themselves.</summary>
    public string Data => Directory.GetDirectories(Path, "postgres-*").Single();

    public static bool Runs(int process) => Directory.Exists(FormattableString.Invariant($"/proc/{process}"));

    /// <summary>Kills the server without a warning.</summary>
    public void KillServer()
    {
        if (ServerProcess is { } process)
        {
            _ = Signal(process, Kill);
        }
    }

    public void Dispose()
    {
        if (Directory.Exists(Path))
        {
            Directory.Delete(Path, recursive: true);
        }
    }

    /// <summary>Sets which permissions new files of this process do without, and tells which they were.</summary>
    [LibraryImport("libc", EntryPoint = "umask")]
    public static partial int SetUmask(int withheld);

    [LibraryImport("libc", EntryPoint = "kill")]
    private static partial int Signal(int process, int signal);
}
