using System.Diagnostics;
using System.Globalization;

namespace PressRun.Benchmarks;

/// <summary>Times what asks a database, a number of times after a first one that is said by itself: it has to work out what is remembered from then on.</summary>
internal static class Timing
{
    /// <summary>Asks everything in turn, once and then so many rounds.</summary>
    public static async Task SayAsync<T>(string what, IReadOnlyList<T> asked, int rounds, Func<T, Task> ask)
    {
        var first = await TimeAsync(asked, 1, ask);
        var times = await TimeAsync(asked, rounds, ask);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{what}: fastest {times[0]:0.0} ms, median {Share(times, 0.5):0.0} ms, p95 {Share(times, 0.95):0.0} ms, slowest {times[^1]:0.0} ms; the first time median {Share(first, 0.5):0.0} ms"));
    }

    /// <summary>Asks once and says how long that took.</summary>
    public static async Task SayOnceAsync(string what, Func<Task> ask)
    {
        var times = await TimeAsync([0], 1, _ => ask());
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {times[0]:0} ms"));
    }

    private static async Task<List<double>> TimeAsync<T>(IReadOnlyList<T> asked, int rounds, Func<T, Task> ask)
    {
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
        return times;
    }

    private static double Share(List<double> sorted, double share) => sorted[(int)(sorted.Count * share)];
}
