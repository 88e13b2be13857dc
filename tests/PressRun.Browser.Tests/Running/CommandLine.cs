using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;

namespace PressRun.Browser.Tests.Running;

/// <summary>The same questions asked at the command line.</summary>
internal static class CommandLine
{
    /// <summary>What it says to a job file, as JSON.</summary>
    public static async Task<string> EstimateAsync(byte[] job)
    {
        var file = Path.GetTempFileName();
        try
        {
            await File.WriteAllBytesAsync(file, job, TestContext.Current.CancellationToken);
            var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "pressrun.dll"), "estimate", file]) { RedirectStandardOutput = true };
            using var command = Process.Start(start)!;
            var said = await command.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
            await command.WaitForExitAsync(TestContext.Current.CancellationToken);
            Assert.Equal(0, command.ExitCode);
            return said;
        }
        finally
        {
            File.Delete(file);
        }
    }

    /// <summary>The landed cost of an answer.</summary>
    public static decimal LandedCost(string answer) =>
        decimal.Parse(JsonNode.Parse(answer)!["landedCost"]!.ToString(), CultureInfo.InvariantCulture);
}
