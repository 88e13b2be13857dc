using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;
using PressRun.Browser.Programs.Load;
using PressRun.Browser.Tests.Running;

namespace PressRun.Browser.Programs.Tallies;

/// <summary>Two phones on one tally: how long after a tap on one its number stands on the other.</summary>
internal static class Glance
{
    private const int Taps = 30;
    private const string Page = "titles/eleven-knots/3/tally";

    // So that no tap meets the other phone's question always at the same moment of its round.
    private const int LongestRest = 1200;

    /// <summary>Measures and prints.</summary>
    public static async Task MeasureAsync()
    {
        Console.WriteLine($"load of the machine {Machine.Load} at first");
        await using var chromium = new Chromium();
        await chromium.InitializeAsync();
        await using var app = await AppProcess.StartAsync(sample: true);
        await using var taps = await Phones.OpenAsync(chromium, app, Page);
        await taps.TypeAsync("Copies on the table", "500");
        await taps.TypeAsync("Good copies wanted", "400");
        await taps.Page.GetByRole(AriaRole.Button, new() { Name = "Begin the tally" }).ClickAsync();
        await taps.Page.Locator("[data-tally]").WaitForAsync();
        await using var looks = await Phones.OpenAsync(chromium, app, Page);
        await looks.Page.Locator("[data-tally]").WaitForAsync();

        var left = int.Parse(await taps.Page.Locator("[data-tally-left]").InnerTextAsync(), CultureInfo.InvariantCulture);
        var waited = new List<TimeSpan>();
        for (var tap = 0; tap < Taps; tap++)
        {
            await Task.Delay(tap * 197 % LongestRest);
            var seen = looks.Page.Locator("[data-tally-left]", new() { HasTextRegex = new($"^{--left}$") }).WaitForAsync();
            var began = Stopwatch.StartNew();
            await taps.Page.Locator("[data-tally-count=done][data-copies='1']").ClickAsync();
            await seen;
            waited.Add(began.Elapsed);
        }

        waited.Sort();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Taps} taps: median {waited[Taps / 2].TotalSeconds:0.00} s, slowest {waited[^1].TotalSeconds:0.00} s until the other phone shows it"));
        Console.WriteLine($"load of the machine {Machine.Load} at last");
    }
}
