using System.Diagnostics;

namespace PressRun.Benchmarks.Spreadsheet;

/// <summary>A general-purpose office suite without a window, in a profile of its own.</summary>
internal sealed class HeadlessOffice(string folder)
{
    private static readonly string[] Names = ["soffice", "libreoffice"];

    /// <summary>Values separated by commas, as stored and not as shown, of the first sheet.</summary>
    private const string Csv = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false";

    public static string? Executable { get; } = (Environment.GetEnvironmentVariable("PATH") ?? string.Empty)
        .Split(Path.PathSeparator)
        .SelectMany(path => Names.Select(name => Path.Combine(path, name)))
        .FirstOrDefault(File.Exists);

    /// <summary>Opens a document, recalculates every formula, and writes it as text.</summary>
    /// <returns>The written file and how long the whole took.</returns>
    public (string Written, TimeSpan Took) Convert(string document)
    {
        var profile = Path.Combine(folder, "profile");
        Prepare(profile);
        var start = new ProcessStartInfo(Executable!)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            ArgumentList = { $"-env:UserInstallation={new Uri(profile)}", "--headless", "--convert-to", Csv, "--outdir", profile, document },
        };
        var watch = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        var took = watch.Elapsed;
        var written = Path.Combine(profile, Path.ChangeExtension(Path.GetFileName(document), "csv"));
        return File.Exists(written) ? (written, took) : throw new InvalidOperationException("The spreadsheet wrote nothing: " + process.StandardError.ReadToEnd());
    }

    // 0 asks for a hard recalculation of every formula on load, whatever values stand in the file.
    private static void Prepare(string profile)
    {
        var user = Directory.CreateDirectory(Path.Combine(profile, "user")).FullName;
        var settings = Path.Combine(user, "registrymodifications.xcu");
        if (!File.Exists(settings))
        {
            File.WriteAllText(settings, """
                <?xml version="1.0" encoding="UTF-8"?>
                <oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
                <item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="ODFRecalcMode" oor:op="fuse"><value>0</value></prop></item>
                </oor:items>
                """);
        }
    }
}
