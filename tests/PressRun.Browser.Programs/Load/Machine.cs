using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;

namespace PressRun.Browser.Programs.Load;

/// <summary>How busy a machine with Linux is, whoever keeps it so.</summary>
internal static class Machine
{
    // In the kernel's table a hundredth of a second is one, whatever the processor.
    private const double PerSecond = 100;
    private const int FirstIdle = 3;
    private const int Counted = 8;

    /// <summary>Processes that ran or waited for a processor, averaged over the last minute.</summary>
    public static string Load => File.ReadAllText("/proc/loadavg").Split(' ')[0];

    /// <summary>What all processors have worked since the start, for all processes.</summary>
    public static TimeSpan Worked
    {
        get
        {
            // user nice system idle iowait irq softirq steal: idle and waiting for a disk are no work.
            var times = File.ReadLines("/proc/stat").First().Split(' ', StringSplitOptions.RemoveEmptyEntries).Skip(1).Take(Counted).Select(time => double.Parse(time, CultureInfo.InvariantCulture)).ToArray();
            return TimeSpan.FromSeconds((times.Sum() - times[FirstIdle] - times[FirstIdle + 1]) / PerSecond);
        }
    }

    /// <summary>What a private database has worked, by those of its processes that live now.</summary>
    /// <param name="folder">The app's data folder.</param>
    public static TimeSpan WorkedByDatabase(string folder)
    {
        var parent = File.ReadLines(Directory.EnumerateFiles(folder, "postmaster.pid", SearchOption.AllDirectories).Single()).First();
        var worked = TimeSpan.Zero;
        foreach (var process in Process.GetProcesses())
        {
            using (process)
            {
                try
                {
                    var own = process.Id.ToString(CultureInfo.InvariantCulture);
                    worked += own == parent || ParentOf(own) == parent ? process.TotalProcessorTime : TimeSpan.Zero;
                }
                catch (Exception ended) when (ended is IOException or InvalidOperationException or Win32Exception)
                {
                    // Gone in between.
                }
            }
        }

        return worked;
    }

    // The name of a process stands in parentheses, may hold anything, and is followed by its state and its parent.
    private static string ParentOf(string process) => File.ReadAllText($"/proc/{process}/stat").Split(") ")[^1].Split(' ')[1];
}
