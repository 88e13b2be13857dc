using System.Collections.Concurrent;
using System.Diagnostics;

namespace PressRun.Browser.Tests.Running;

/// <summary>Data folders as a first start leaves them. Making one takes as long as all the rest of a start: each kind is made once, and every app gets a copy.</summary>
internal static class MadeFolders
{
    private static readonly ConcurrentDictionary<(bool Sample, bool SignIn), Lazy<Task<string>>> Made = new();

    static MadeFolders() => AppDomain.CurrentDomain.ProcessExit += (_, _) =>
    {
        foreach (var folder in Made.Values.Where(made => made.Value.IsCompletedSuccessfully).Select(made => made.Value.Result))
        {
            Directory.Delete(folder, recursive: true);
        }
    };

    /// <summary>Puts a copy where an app will look for its data.</summary>
    /// <param name="folder">Not there yet.</param>
    /// <param name="sample">With the sample press, or empty.</param>
    /// <param name="signIn">As <see cref="AppProcess.StartAsync(bool, bool, Dictionary{string, string})"/> takes it.</param>
    public static async Task CopyToAsync(string folder, bool sample, bool signIn)
    {
        var made = await Made.GetOrAdd((sample, signIn), kind => new(() => AppProcess.MakeFolderAsync(kind.Sample, kind.SignIn))).Value;
        // With its owners: the server's user is another one where tests run as root.
        using var copy = Process.Start("cp", ["-a", made, folder]);
        await copy.WaitForExitAsync(CancellationToken.None);
        Assert.Equal(0, copy.ExitCode);
    }
}
