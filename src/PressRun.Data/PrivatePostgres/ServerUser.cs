using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using PressRun.Data.Running;

namespace PressRun.Data.PrivatePostgres;

/// <summary>
/// Who runs the private PostgreSQL. It refuses to run as root; there, it runs as <c>postgres</c> or else <c>nobody</c>. On Linux it also
/// asks the kernel for SIGINT when the thread that started it is gone, so that a killed app leaves no server behind.
/// </summary>
internal sealed partial class ServerUser
{
    private const string Setpriv = "/usr/bin/setpriv";

    private readonly string? name;
    private readonly string[] prefix;

    private ServerUser(string? name, uint userId, uint groupId, string[] prefix)
    {
        this.name = name;
        this.prefix = prefix;
        (UserId, GroupId) = (userId, groupId);
    }

    private uint UserId { get; }

    private uint GroupId { get; }

    /// <summary>The user for this process.</summary>
    /// <exception cref="StartRefusedException">This is root's process, and no other user can be found or taken on.</exception>
    public static ServerUser Find()
    {
        var canSetPrivileges = OperatingSystem.IsLinux() && File.Exists(Setpriv);
        if (!Environment.IsPrivilegedProcess)
        {
            return new ServerUser(null, 0, 0, canSetPrivileges ? [Setpriv, "--pdeathsig", "INT", "--"] : []);
        }

        if (!canSetPrivileges)
        {
            throw new StartRefusedException(
                $"PostgreSQL does not run as root, and {Setpriv} is not there to run it as another user. Start PressRun as an ordinary user, install util-linux, "
                + "or name a server in ConnectionStrings__PressRun.");
        }

        var users = File.ReadLines("/etc/passwd").Select(line => line.Split(':')).Where(fields => fields.Length > 3).ToList();
        var user = users.Find(fields => fields[0] == "postgres") ?? users.Find(fields => fields[0] == "nobody")
            ?? throw new StartRefusedException("PostgreSQL does not run as root, and there is neither a user postgres nor nobody. Start PressRun as an ordinary user.");
        return new ServerUser(
            user[0],
            uint.Parse(user[2], CultureInfo.InvariantCulture),
            uint.Parse(user[3], CultureInfo.InvariantCulture),
            [Setpriv, $"--reuid={user[2]}", $"--regid={user[3]}", "--init-groups", "--pdeathsig", "INT", "--"]);
    }

    /// <summary>A command as this user runs it.</summary>
    public ProcessStartInfo Command(string program, params IReadOnlyList<string> arguments)
    {
        string[] words = [.. prefix, program, .. arguments];
        var start = new ProcessStartInfo(words[0], words[1..])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = "/",
        };

        // The host's own settings for psql and others are not meant for this server.
        foreach (var variable in start.Environment.Keys.Where(key => key.StartsWith("PG", StringComparison.Ordinal)).ToList())
        {
            start.Environment.Remove(variable);
        }

        return start;
    }

    /// <summary>Runs a command to its end; a cancelled one is ended with all that it started.</summary>
    /// <returns>Its exit status and all that it wrote.</returns>
    public async Task<(int Status, string Output)> RunAsync(string program, IReadOnlyList<string> arguments, CancellationToken cancel)
    {
        using var process = Process.Start(Command(program, arguments)) ?? throw new StartRefusedException($"{program} did not start.");
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEndAsync(cancel);
        var errors = process.StandardError.ReadToEndAsync(cancel);
        try
        {
            await process.WaitForExitAsync(cancel);
        }
        catch (OperationCanceledException)
        {
            // Nothing goes on behind the back of a program that was told to stop.
            process.Kill(entireProcessTree: true);
            await process.WaitForExitAsync(CancellationToken.None);
            throw;
        }

        return (process.ExitCode, (await output + await errors).Trim());
    }

    /// <summary>Makes sure that this user can reach a file or folder.</summary>
    /// <exception cref="StartRefusedException">It cannot; the sentence names both.</exception>
    public async Task RequireReachAsync(string path, string hint, CancellationToken cancel)
    {
        if (name is not null && (await RunAsync("/usr/bin/test", ["-x", path], cancel)).Status != 0)
        {
            throw new StartRefusedException($"PressRun runs as root, so its PostgreSQL runs as the user {name}, who cannot reach {path}. {hint}");
        }
    }

    /// <summary>Gives a file or folder to this user.</summary>
    public void Give(string path)
    {
        if (name is not null && ChangeOwner(path, UserId, GroupId) != 0)
        {
            throw new StartRefusedException($"{path} could not be given to the user {name} (error {Marshal.GetLastPInvokeError()}).");
        }
    }

    [LibraryImport("libc", EntryPoint = "chown", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int ChangeOwner(string path, uint user, uint group);
}
