using System.Diagnostics;
using System.Globalization;

namespace PressRun.Benchmarks;

/// <summary>Times what asks a database, a number of times after a first one that is not counted, and says how long it took.</summary>
internal static class Timing
{
    /// <summary>Asks everything in turn, so many rounds.</summary>
    public static async Task SayAsync<T>(string what, IReadOnlyList<T> asked, int rounds, Func<T, Task> ask)
    {
        await ask(asked[0]);
        var times = new List<double>();
        for (var round = 0; round < rounds; round++)
        {
            foreach (var one in asked)
            {
                var began = Stopwatch.GetTimestamp();
                await ask(one);
                times.Add(Stopwatch.GetElapsedTime(began).TotalMilliseconds);
            }
        }

        times.Sort();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{what}: fastest {times[0]:0.0} ms, median {times[times.Count / 2]:0.0} ms, p95 {times[times.Count * 95 / 100]:0.0} ms, slowest {times[^1]:0.0} ms"));
    }
}
