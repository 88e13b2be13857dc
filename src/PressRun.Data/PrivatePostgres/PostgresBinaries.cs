using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.RegularExpressions;
using PressRun.Data.Running;

namespace PressRun.Data.PrivatePostgres;

/// <summary>An installed PostgreSQL.</summary>
/// <param name="Folder">Where <c>postgres</c>, <c>initdb</c> and <c>pg_ctl</c> lie.</param>
/// <param name="Major">Its major version; data folders of one are not read by another.</param>
internal sealed partial record PostgresBinaries(string Folder, int Major)
{
    private static readonly string[] Needed = ["postgres", "initdb", "pg_ctl"];

    private static readonly string[] UsualFolders =
    [
        "/usr/lib/postgresql/*/bin", "/usr/pgsql-*/bin", "/usr/local/pgsql/bin", "/opt/homebrew/opt/postgresql@*/bin",
        "/usr/local/opt/postgresql@*/bin", "/Applications/Postgres.app/Contents/Versions/*/bin", "/usr/local/bin", "/usr/bin",
    ];

    /// <summary>The full path of one of the programs.</summary>
    public string Path(string program) => System.IO.Path.Combine(Folder, program);

    /// <summary>Finds the PostgreSQL to use: the configured one, else an installed one, else one that came as an npm package.</summary>
    /// <param name="configured">Folder from the configuration; empty where none is named.</param>
    /// <param name="major">Major version that the data need; null where there are none yet, and the newest is taken.</param>
    /// <param name="nodeFolders">Folders in and above which <c>node_modules</c> may lie.</param>
    /// <exception cref="StartRefusedException">There is none, or none of that version.</exception>
    public static PostgresBinaries Find(string configured, int? major, params IReadOnlyList<string> nodeFolders)
    {
        var found = configured.Length > 0
            ? [Read(configured) ?? throw new StartRefusedException($"PressRun__PostgresBin names {configured}, but postgres, initdb and pg_ctl are not all there.")]
            : Installed().Concat(EmbeddedPackage.Folders(nodeFolders)).Select(Read).OfType<PostgresBinaries>().ToList();
        if (found.Count == 0)
        {
            throw new StartRefusedException(
                "No PostgreSQL was found. Install it (Debian and Ubuntu: apt-get install postgresql), name its programs' folder in PressRun__PostgresBin, "
                + "or name a server in ConnectionStrings__PressRun.");
        }

        return major is null ? found[0] : found.Find(candidate => candidate.Major == major) ?? throw OfAnotherVersion(major.Value, found[0]);
    }

    private static StartRefusedException OfAnotherVersion(int data, PostgresBinaries newest) => new(
        data > newest.Major
            ? $"The data folder was written by PostgreSQL {data}, but only {newest.Major} is installed. Nothing was changed. Install PostgreSQL {data}, or name its folder in PressRun__PostgresBin."
            : $"The data folder was written by PostgreSQL {data}, but only {newest.Major} is installed, which cannot read it. Nothing was changed. "
              + $"Install PostgreSQL {data} beside it; docs/operating.md says how to move the data on.");

    private static IEnumerable<string> Installed() => UsualFolders.SelectMany(pattern =>
    {
        var star = pattern.IndexOf('*', StringComparison.Ordinal);
        if (star < 0)
        {
            return [pattern];
        }

        var parent = System.IO.Path.GetDirectoryName(pattern[..star])!;
        var prefix = pattern[(parent.Length + 1)..star];
        return Directory.Exists(parent)
            ? Directory.GetDirectories(parent, prefix + "*").OrderByDescending(Number).Select(folder => System.IO.Path.Combine(folder, "bin"))
            : Enumerable.Empty<string>();
    });

    private static int Number(string folder) =>
        int.TryParse(Digits().Match(System.IO.Path.GetFileName(folder)).Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0;

    private static PostgresBinaries? Read(string folder)
    {
        if (!Needed.All(program => File.Exists(System.IO.Path.Combine(folder, program))))
        {
            return null;
        }

        using var process = Process.Start(new ProcessStartInfo(System.IO.Path.Combine(folder, "postgres"), "--version") { RedirectStandardOutput = true });
        var version = process?.StandardOutput.ReadToEnd() ?? "";
        process?.WaitForExit();
        return Digits().Match(version) is { Success: true } digits
            ? new PostgresBinaries(folder, int.Parse(digits.Value, CultureInfo.InvariantCulture))
            : null;
    }

    [GeneratedRegex("[0-9]+")]
    private static partial Regex Digits();
}
