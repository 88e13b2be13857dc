using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using PressRun.Data.Running;

namespace PressRun.Data.PrivatePostgres;

/// <summary>The folder of a private PostgreSQL: one folder of data per major version, the password, the socket, and a lock that one app
/// holds while it lives.</summary>
internal sealed class DataFolder : IDisposable
{
    private const string Prefix = "postgres-";

    // The kernel's limit is 107 bytes for the whole path; PostgreSQL adds /.s.PGSQL.5432 and, while it starts, .lock.
    private const int LongestSocketFolder = 85;

    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    private readonly FileStream held;

    private DataFolder(string path, FileStream held)
    {
        Path = path;
        this.held = held;
        var beside = System.IO.Path.Combine(path, "socket");
        SocketFolder = Encoding.UTF8.GetByteCount(beside) <= LongestSocketFolder
            ? beside
            : System.IO.Path.Combine("/tmp", "pressrun-" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(path)))[..16]);
    }

    /// <summary>The folder itself.</summary>
    public string Path { get; }

    /// <summary>Where the server's socket lies.</summary>
    public string SocketFolder { get; }

    /// <summary>True where other users of this machine may look into the folder; what is secret in it is closed to them by itself.</summary>
    public bool IsWide => !OperatingSystem.IsWindows() && (File.GetUnixFileMode(Path) & ~Usually) != UnixFileMode.None;

    private static UnixFileMode Usually => Environment.IsPrivilegedProcess ? OwnerOnly | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute : OwnerOnly;

    private string PasswordFile => System.IO.Path.Combine(Path, "database-password");

    /// <summary>The folder used where the host names none: in the user's data folder, or in /var/lib for root, whose own is closed.</summary>
    /// <exception cref="StartRefusedException">The user has no data folder.</exception>
    public static string Usual()
    {
        if (Environment.IsPrivilegedProcess)
        {
            return "/var/lib/pressrun";
        }

        var folder = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify);
        return folder.Length > 0
            ? System.IO.Path.Combine(folder, "PressRun")
            : throw new StartRefusedException("This user has no home and so no data folder. Name one in PressRun__DataFolder.");
    }

    /// <summary>Opens a data folder, made where it is missing, and holds it.</summary>
    /// <exception cref="StartRefusedException">Another app holds it, or it cannot be made.</exception>
    public static async Task<DataFolder> OpenAsync(string path, CancellationToken cancel)
    {
        path = System.IO.Path.GetFullPath(path);
        try
        {
            Make(path);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw new StartRefusedException($"The data folder {path} cannot be made: {exception.Message} Name another in PressRun__DataFolder.", exception);
        }

        // An app that was just stopped may hold the folder for a moment longer.
        for (var attempt = 0; ; attempt++)
        {
            try
            {
                return new DataFolder(path, new FileStream(System.IO.Path.Combine(path, "in-use"), OwnersFile(FileMode.OpenOrCreate, FileAccess.ReadWrite)));
            }
            catch (UnauthorizedAccessException exception)
            {
                throw new StartRefusedException($"The data folder {path} belongs to another user: {exception.Message} Name another in PressRun__DataFolder.", exception);
            }
            catch (IOException exception) when (!IsHeld(exception))
            {
                throw CannotBeUsed(path, exception);
            }
            catch (IOException exception) when (attempt == 50)
            {
                throw new StartRefusedException($"Another PressRun uses the data folder {path}. Stop it, or name another folder in PressRun__DataFolder.", exception);
            }
            catch (IOException)
            {
                await Task.Delay(100, cancel);
            }
        }
    }

    /// <summary>Why a start ends that could not read or write in its folder: a full disk, or one that takes no writing.</summary>
    public static StartRefusedException CannotBeUsed(string path, Exception exception) => new(
        $"The data folder {path} cannot be used: {exception.Message.TrimEnd('.')}. Give it room and let this user write there, or name another in PressRun__DataFolder.", exception);

    // The system's word for a file that somebody else has locked: 11 on Linux, 35 on macOS.
    private static bool IsHeld(IOException exception) => exception.HResult is 11 or 35;

    // Whatever the umask is: nobody else reads a new folder. Root's server runs as another user, who must come through; what is secret in
    // the folder is closed by itself. A folder that was there already is as its owner made it, for other things too perhaps: it is left so, and told of.
    private static void Make(string path)
    {
        if (Directory.Exists(path))
        {
            return;
        }

        Directory.CreateDirectory(path);
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(path, Usually);
        }
    }

    /// <summary>The newest major version whose data lie here; null where there are none.</summary>
    public int? DataMajor()
    {
        var majors = Directory.GetDirectories(Path, Prefix + "*")
            .Where(folder => File.Exists(System.IO.Path.Combine(folder, "PG_VERSION")))
            .Select(folder => int.TryParse(System.IO.Path.GetFileName(folder)[Prefix.Length..], NumberStyles.None, CultureInfo.InvariantCulture, out var major) ? major : 0)
            .Where(major => major > 0).ToList();
        return majors.Count == 0 ? null : majors.Max();
    }

    /// <summary>Where the data of a major version lie.</summary>
    public string Data(int major) => System.IO.Path.Combine(Path, Prefix + major.ToString(CultureInfo.InvariantCulture));

    /// <summary>The password of the database's user, made at first use.</summary>
    /// <exception cref="StartRefusedException">It is gone although there are data.</exception>
    public string Password()
    {
        if (File.Exists(PasswordFile) && File.ReadAllText(PasswordFile).Trim() is { Length: > 0 } known)
        {
            return known;
        }

        if (DataMajor() is not null)
        {
            throw new StartRefusedException($"{PasswordFile} is missing, and the data cannot be opened without it. Nothing was changed. Put it back from a backup; docs/operating.md says how to set a new one.");
        }

        // On a full disk an empty one may have been left behind.
        File.Delete(PasswordFile);
        var password = RandomNumberGenerator.GetHexString(48, lowercase: true);
        WriteSecret(PasswordFile, password);
        return password;
    }

    /// <summary>Writes a new file that nobody but its owner can read at any moment.</summary>
    public static void WriteSecret(string path, string secret)
    {
        using var writer = new StreamWriter(path, OwnersFile(FileMode.CreateNew, FileAccess.Write));
        writer.Write(secret);
    }

    private static FileStreamOptions OwnersFile(FileMode mode, FileAccess access) =>
        new() { Mode = mode, Access = access, Share = FileShare.None, UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite };

    /// <inheritdoc/>
    public void Dispose() => held.Dispose();
}
