using System.Globalization;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Archive;
using PressRun.Data.Presses;
using PressRun.Data.Titles;

namespace PressRun.Browser.Programs.Load;

/// <summary>
/// Many people who each change the quantity of a run of their own, all at once, in real pages of a real browser beside the server: from the change in the field until the
/// page's marker says the new quantity. The browser takes its share of the same processors, so that the figures are upper bounds of the server's.
/// </summary>
internal static class Crowd
{
    private const int Pause = 3000;

    /// <summary>Measures and prints.</summary>
    /// <param name="sessions">People.</param>
    /// <param name="during">How long they edit.</param>
    public static async Task MeasureAsync(int sessions, TimeSpan during)
    {
        await using var app = await AppProcess.StartAsync(sample: true);
        var runs = await RunsAsync(app, sessions);
        await using var chromium = new Chromium();
        await chromium.InitializeAsync();
        await using (await OpenAsync(chromium, app, runs[0]))
        {
            // Once, so that what is made once for all is not counted as a session's.
        }

        var alone = await Heap.LeftAsync(app.ProcessId);
        var people = new List<Visit>();
        foreach (var run in runs)
        {
            people.Add(await OpenAsync(chromium, app, run));
        }

        var together = await Heap.LeftAsync(app.ProcessId);
        var before = app.ProcessorTime;
        var times = (await Task.WhenAll(people.Select((person, index) => person.Page.EvaluateAsync<double[]>(
            Editing, new object[] { during.TotalMilliseconds, Pause, index })))).SelectMany(took => took).Order().ToList();
        var used = app.ProcessorTime - before;
        var worked = await Heap.LeftAsync(app.ProcessId);
        Say("sessions", people.Count, "");
        Say("edits", times.Count, $"in {during.TotalSeconds:0} s");
        Say("edit to screen, median", At(times, 0.5), "ms");
        Say("edit to screen, p95", At(times, 0.95), "ms");
        Say("edit to screen, slowest", times[^1], "ms");
        Say("processor time of the server an edit", used.TotalMilliseconds / times.Count, "ms");
        Say("heap of the server without sessions", alone / 1e6, "MB");
        Say("retained a session, just opened", (together - alone) / 1e6 / people.Count, "MB");
        Say("retained a session, after its edits", (worked - alone) / 1e6 / people.Count, "MB");
        foreach (var person in people)
        {
            await person.DisposeAsync();
        }
    }

    // Types another quantity and waits until the marker stands there and the page is drawn; then thinks for a while, everybody for another one.
    private const string Editing =
        """
        async ([during, pause, seed]) => {
            const took = [], until = performance.now() + during, field = document.querySelector('.in-sentence input'), marker = document.querySelector('svg.wide .marker');
            const wait = ms => new Promise(done => setTimeout(done, ms));
            let random = seed + 1;
            const next = () => (random = random * 16807 % 2147483647) / 2147483647;
            await wait(next() * pause);
            while (performance.now() < until) {
                const wanted = String(50 + Math.floor(next() * 250));
                if (marker.getAttribute('aria-valuenow') !== wanted) {
                    const began = performance.now();
                    const stands = new Promise(done => {
                        const watch = new MutationObserver(() => { if (marker.getAttribute('aria-valuenow') === wanted) { watch.disconnect(); done(); } });
                        watch.observe(marker, { attributes: true });
                    });
                    field.value = wanted;
                    field.dispatchEvent(new Event('input', { bubbles: true }));
                    field.dispatchEvent(new Event('change', { bubbles: true }));
                    await stands;
                    took.push(performance.now() - began);
                }
                await wait(pause / 2 + next() * pause);
            }
            return took;
        }
        """;

    // As many presses as it takes for each person to have a run that nobody else changes.
    private static async Task<IReadOnlyList<(PressRecord Press, string Path)>> RunsAsync(AppProcess app, int wanted)
    {
        await using var stored = await Stored.OpenAsync(app);
        var archive = await stored.Services.GetRequiredService<PressArchiveStore>().ExportAsync(stored.Press.Id);
        var runs = new List<(PressRecord, string)>(await OfPressAsync(stored, stored.Press));
        while (runs.Count < wanted)
        {
            var copy = await stored.Services.GetRequiredService<PressArchiveStore>().ImportAsync(archive);
            runs.AddRange(await OfPressAsync(stored, copy.Value));
        }

        return runs.GetRange(0, wanted);
    }

    private static async Task<IEnumerable<(PressRecord Press, string Path)>> OfPressAsync(Stored stored, PressRecord press)
    {
        var shelf = await stored.Services.GetRequiredService<ShelfQuery>().ShowAsync(press.Id, new ShelfFilter(Take: 200));
        return from title in shelf.Titles
               from edition in title.Editions
               where edition is { CopiesPrinted: null, Plan: not null }
               select (press, string.Create(CultureInfo.InvariantCulture, $"titles/{title.Slug}/{edition.Printing}/run"));
    }

    private static async Task<Visit> OpenAsync(Chromium chromium, AppProcess app, (PressRecord Press, string Path) run)
    {
        var visit = await Visit.BeginAsync(chromium.Browser, app.Address, press: run.Press.Id.ToString());
        await visit.OpenAsync(run.Path);
        await visit.Page.Locator("svg.wide .marker").WaitForAsync();
        return visit;
    }

    private static double At(List<double> sorted, double share) => sorted[(int)Math.Ceiling(share * sorted.Count) - 1];

    private static void Say(string what, double figure, string unit) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what,-40} {figure,10:0.##} {unit}"));
}
