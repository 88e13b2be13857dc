using System.Diagnostics;
using System.Globalization;
using PressRun.Data.Running;

namespace PressRun.Data.PrivatePostgres;

/// <summary>The data of one major version with the programs and the user that belong to them.</summary>
internal sealed class Cluster(DataFolder folder, PostgresBinaries binaries, ServerUser user)
{
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    private string Data => folder.Data(binaries.Major);

    /// <summary>Makes the data where there are none, stops a server that a killed app left behind, and makes the socket's folder.</summary>
    public async Task PrepareAsync(string password, CancellationToken cancel)
    {
        if (!Directory.Exists(Data))
        {
            await CreateAsync(password, cancel);
        }

        await StopLeftoverAsync(cancel);
        Directory.CreateDirectory(folder.SocketFolder, OwnerOnly);
        user.Give(folder.SocketFolder);
        File.SetUnixFileMode(folder.SocketFolder, OwnerOnly);
    }

    /// <summary>The server's command: no network, and a socket that only its user (and root) may open.</summary>
    public ProcessStartInfo ServerCommand(int port, IReadOnlyList<string> settings)
    {
        string[] fixedSettings = ["listen_addresses=", "unix_socket_permissions=0700", "logging_collector=off", "log_destination=stderr"];
        return user.Command(
            binaries.Path("postgres"),
            [
                "-D", Data, "-k", folder.SocketFolder, "-p", port.ToString(CultureInfo.InvariantCulture),
                .. fixedSettings.Concat(settings).SelectMany(setting => new[] { "-c", setting }),
            ]);
    }

    // Made under another name and renamed when complete, so that a kill in between leaves nothing that looks like data.
    private async Task CreateAsync(string password, CancellationToken cancel)
    {
        var making = Data + ".new";
        var passwordFile = Data + ".password";
        if (Directory.Exists(making))
        {
            Directory.Delete(making, recursive: true);
        }

        Directory.CreateDirectory(making, OwnerOnly);
        File.SetUnixFileMode(making, OwnerOnly);
        user.Give(making);
        File.Delete(passwordFile);
        DataFolder.WriteSecret(passwordFile, password);
        try
        {
            user.Give(passwordFile);
            var locale = OperatingSystem.IsMacOS() ? "C" : "C.UTF-8";
            var (status, output) = await user.RunAsync(
                binaries.Path("initdb"),
                ["-D", making, "-U", "pressrun", "--pwfile=" + passwordFile, "-A", "scram-sha-256", "-E", "UTF8", "--locale=" + locale, "-k"],
                cancel);
            if (status != 0)
            {
                throw new StartRefusedException($"No database could be made in {making}. initdb says:{Environment.NewLine}{output}");
            }
        }
        finally
        {
            File.Delete(passwordFile);
        }

        Directory.Move(making, Data);
    }

    // The app's lock on the folder is held, so a server that still runs on the data is nobody's.
    private async Task StopLeftoverAsync(CancellationToken cancel)
    {
        if (!File.Exists(Path.Combine(Data, "postmaster.pid")))
        {
            return;
        }

        if ((await user.RunAsync(binaries.Path("pg_ctl"), ["status", "-D", Data], cancel)).Status == 0)
        {
            var (status, output) = await user.RunAsync(binaries.Path("pg_ctl"), ["stop", "-D", Data, "-m", "fast", "-w", "-t", "60"], cancel);
            if (status != 0 && (await user.RunAsync(binaries.Path("pg_ctl"), ["status", "-D", Data], cancel)).Status == 0)
            {
                throw new StartRefusedException($"A PostgreSQL that an earlier PressRun left in {Data} does not stop: {output}");
            }
        }
    }
}
