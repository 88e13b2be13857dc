using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Bench;
using PressRun.Engine.Bench;
using PressRun.Engine.Copies;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

/// <summary>On an app of its own: rates taken over change every plan of the press.</summary>
public sealed partial class ActualJourney(Chromium chromium)
{
    [Fact]
    public async Task Who_writes_down_an_invoice_and_hours_is_offered_the_rate_they_make_and_takes_it()
    {
        await using var app = await AppProcess.StartAsync(sample: true);
        await using var stored = await Stored.OpenAsync(app);
        await using var visit = await Visit.BeginAsync(chromium.Browser, app.Address, press: stored.Press.Id.ToString());
        var step = (await RatesAsync(stored)).Steps.First(step => step.SecondsPerCopy > 0m);

        // What the runs say before this one: it goes with the table's other figures.
        await visit.OpenAsync("bench");
        var learned = visit.Page.Locator("table.learned tbody tr", new() { Has = visit.Page.GetByRole(AriaRole.Rowheader, new() { Name = step.Name, Exact = true }) });
        var runs = Runs().Match(await learned.InnerTextAsync());
        var before = runs.Success ? int.Parse(runs.Groups["runs"].Value, CultureInfo.InvariantCulture) : 0;

        var book = await stored.BookAsync("Fog Manners", 3);
        await visit.OpenAsync(book.Path + "/copies");
        await visit.Field("What happened").SelectOptionAsync(new SelectOptionValue { Label = "printed" });
        await visit.EnterAsync("Copies", "60");
        await visit.TypeAsync("The shop's invoice, with delivery and tax", "150");
        await visit.TypeAsync("Staples, blades, thread", "1");
        await visit.TypeAsync("Art, proof, number", "0");
        await visit.TypeAsync("An hour at the table", "12");
        await visit.TypeAsync($"Minutes, {step.Name}", "300");
        await visit.TypeAsync($"Copies that went in, {step.Name}", "64");
        await visit.EnterAsync($"Went wrong, {step.Name}", "4");
        await Expect(visit.Page.Locator(".over-sheet > [role=status]")).ToContainTextAsync("Written down: 60 copies printed");
        var printing = (await stored.LedgerAsync(book.Edition.Id)).Single(line => line.Printing is { GoodCopies: 60 }).Printing!;
        Assert.Equal((5m, 60m), (printing.Hours, printing.Labour(2)));
        Assert.Equal(new StepActual(step.Name, 300m, 64, 4), Assert.Single(printing.Steps));

        await visit.OpenAsync("bench");
        await Expect(learned).ToContainTextAsync($"{before + 1} run");
        Assert.Equal(step, (await RatesAsync(stored)).Steps.Single(now => now.Name == step.Name));
        await learned.GetByRole(AriaRole.Button, new() { Name = "Use" }).ClickAsync();
        await Expect(learned).ToContainTextAsync("as your runs say");
        var taken = (await RatesAsync(stored)).Steps.Single(now => now.Name == step.Name);
        Assert.NotEqual(step, taken);
        await Expect(visit.Page.Locator(".undo button")).ToHaveTextAsync($"Undo the new rate of {step.Name}");
        await visit.Page.Locator(".undo button").ClickAsync();
        await Expect(learned.GetByRole(AriaRole.Button, new() { Name = "Use" })).ToBeVisibleAsync();
        Assert.Equal(step, (await RatesAsync(stored)).Steps.Single(now => now.Name == step.Name));
        visit.WasQuiet();
    }

    private static async Task<BenchRates> RatesAsync(Stored stored) => (await stored.Services.GetRequiredService<BenchStore>().LoadAsync(stored.Press.Id))!.Item;

    [GeneratedRegex(@"(?<runs>\d+) runs?\b")]
    private static partial Regex Runs();
}
