using System.Globalization;
using System.Reflection;
using PressRun.Browser.Tests.Running;

namespace PressRun.Browser.Programs.Load;

/// <summary>
/// Many people who each change the quantity of a run of their own, all at once: from the change in the field until what draws the new quantity has come. They are clients
/// without a browser on the same machine; how much of it they take is said, and how much everything else takes.
/// </summary>
internal static class Crowd
{
    private const int Pause = 3000;
    private const int LeastCopies = 50;
    private const int MostCopies = 300;

    // What is compiled and kept once for all is neither a session's nor an edit's.
    private const int FirstOnes = 3;
    private static readonly TimeSpan Warming = TimeSpan.FromSeconds(20);

    // The tests let the app say more than a host would.
    private static readonly Dictionary<string, string> Quiet = new()
    {
        ["Logging__LogLevel__microsoft.aspnetcore.hosting.diagnostics"] = "Warning",
        ["Logging__Console__FormatterOptions__IncludeScopes"] = "false",
    };

    /// <summary>Measures and prints.</summary>
    /// <param name="sessions">People.</param>
    /// <param name="during">How long they edit.</param>
    public static async Task MeasureAsync(int sessions, TimeSpan during)
    {
        Console.WriteLine($"{typeof(Crowd).Assembly.GetCustomAttribute<AssemblyConfigurationAttribute>()?.Configuration} build, load of the machine {Machine.Load} at first");
        await using var app = await AppProcess.StartAsync(sample: true, settings: Quiet);
        var runs = await Runs.OfAsync(app, sessions);
        foreach (var (press, path) in runs.Take(FirstOnes))
        {
            await using var first = await PageClient.OpenAsync(app.Address, press, path);
            await first.EditAsync(MostCopies);
        }

        var alone = await Heap.LeftAsync(app.ProcessId);
        var people = new List<PageClient>();
        foreach (var (press, path) in runs)
        {
            people.Add(await PageClient.OpenAsync(app.Address, press, path));
        }

        var opened = await Heap.LeftAsync(app.ProcessId);
        await EditAsync(people, Warming);
        var used = Used.Now(app);
        var waited = await EditAsync(people, during);
        used = Used.Now(app) - used;
        var worked = await Heap.LeftAsync(app.ProcessId);
        Say("sessions", people.Count, "");
        Say("edits", waited.Count, $"in {during.TotalSeconds:0} s");
        SayTimes("edit to screen", [.. waited.Select(edit => edit.Shown)]);
        SayTimes("edit to stored", [.. waited.Select(edit => edit.Stored)]);
        SayUse("server", used.Server, during, waited.Count);
        SayUse("clients", used.Clients, during, waited.Count);
        SayUse("database", used.Database, during, waited.Count);
        SayUse("all else on the machine", used.Machine - used.Server - used.Clients - used.Database, during, waited.Count);
        Say("heap of the server without sessions", alone / 1e6, "MB");
        Say("retained a session, just opened", (opened - alone) / 1e6 / people.Count, "MB");
        Say("retained a session, after its edits", (worked - alone) / 1e6 / people.Count, "MB");
        Console.WriteLine($"load of the machine {Machine.Load} at last");
        foreach (var person in people)
        {
            await person.DisposeAsync();
        }
    }

    private static async Task<IReadOnlyList<Waited>> EditAsync(List<PageClient> people, TimeSpan during)
    {
        using var time = new CancellationTokenSource(during);
        return [.. (await Task.WhenAll(people.Select((person, index) => EditAsync(person, new Random(index), time.Token)))).SelectMany(edits => edits)];
    }

    // Types another quantity, waits until it stands there, then thinks for a while, everybody for another one.
    private static async Task<List<Waited>> EditAsync(PageClient person, Random random, CancellationToken time)
    {
        var edits = new List<Waited>();
        await ThinkAsync(random.Next(Pause), time);
        while (!time.IsCancellationRequested)
        {
            if (await person.EditAsync(random.Next(LeastCopies, MostCopies)) is { } edit)
            {
                edits.Add(edit);
            }

            await ThinkAsync((Pause / 2) + random.Next(Pause), time);
        }

        return edits;
    }

    private static async Task ThinkAsync(int pause, CancellationToken time)
    {
        try
        {
            await Task.Delay(pause, time);
        }
        catch (OperationCanceledException)
        {
            // It is over; what was begun has been waited for.
        }
    }

    private static void SayTimes(string what, List<double> times)
    {
        times.Sort();
        Say($"{what}, median", At(times, 0.5), "ms");
        Say($"{what}, p95", At(times, 0.95), "ms");
        Say($"{what}, p99", At(times, 0.99), "ms");
        Say($"{what}, slowest", times[^1], "ms");
    }

    private static void SayUse(string who, TimeSpan used, TimeSpan during, int edits) =>
        Say($"processor, {who}", used.TotalMilliseconds / edits, $"ms an edit, {used / during:0.00} processors");

    private static double At(List<double> sorted, double share) => sorted[(int)Math.Ceiling(share * sorted.Count) - 1];

    private static void Say(string what, double figure, string unit) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what,-40} {figure,10:0.##} {unit}"));

    private readonly record struct Used(TimeSpan Server, TimeSpan Clients, TimeSpan Database, TimeSpan Machine)
    {
        public static Used Now(AppProcess app) => new(app.ProcessorTime, Environment.CpuUsage.TotalTime, Load.Machine.WorkedByDatabase(app.Folder), Load.Machine.Worked);

        public static Used operator -(Used left, Used right) =>
            new(left.Server - right.Server, left.Clients - right.Clients, left.Database - right.Database, left.Machine - right.Machine);
    }
}
