using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Presses;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Web.Shared.Wording;
using PressRun.Web.Start;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class StartJourney(Chromium chromium, SampleApp sample)
{
    private static readonly DateOnly AnyDay = new(2026, 1, 1);

    [Fact]
    public async Task Who_opens_an_empty_server_gets_a_first_number_that_follows_the_typing_and_then_a_press_with_that_book()
    {
        await using var app = await AppProcess.StartAsync(sample: false);
        await using var visit = await Visit.BeginAsync(chromium.Browser, app.Address);
        await visit.OpenAsync("");
        var page = visit.Page;
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("What will it cost?");
        var first = FirstNumber.For(PaperRegion.Iso);
        var euro = Format("EUR", UnitSystem.Metric, "en-IE");
        await SaysAsync(page, first, euro);

        await visit.TypeAsync("Pages inside the cover", "36");
        await SaysAsync(page, first with { InsidePages = 36 }, euro);
        await visit.EnterAsync("Copies", "80");
        await SaysAsync(page, first with { InsidePages = 36, Quantity = 80 }, euro);

        await visit.EnterAsync("Copies", "abc");
        var sentence = page.Locator(".start-sentence");
        await Expect(page.GetByRole(AriaRole.Alert)).ToHaveTextAsync("Write a whole number of copies from 1 to 1,000,000.");
        await Expect(sentence).ToContainTextAsync("copies cannot be worked out like this.");
        await Expect(sentence.GetByRole(AriaRole.Alert)).ToHaveCountAsync(0);
        // Key by key it stays the field that is being typed in, whichever sentence stands around it.
        await visit.Field("Copies").SelectTextAsync();
        foreach (var key in new[] { "x", "Backspace", "8", "0" })
        {
            await page.Keyboard.PressAsync(key);
            await Expect(sentence).ToContainTextAsync(key is "8" or "0" ? "copies cost" : "copies cannot be worked out like this.");
        }

        await page.Keyboard.PressAsync("Enter");
        await SaysAsync(page, first with { InsidePages = 36, Quantity = 80 }, euro);
        await Expect(page.GetByRole(AriaRole.Alert)).ToHaveCountAsync(0);

        await visit.EnterAsync("The press is called", "Lantern Row");
        await visit.EnterAsync("The book is called", "Notes on Rain");
        await visit.Field("It counts in").SelectOptionAsync(new SelectOptionValue { Label = $"CHF, {CurrencyNames.Of("CHF")}" });
        await Expect(page.Locator(".start-sentence")).ToContainTextAsync("CHF");
        await page.GetByRole(AriaRole.Button, new() { Name = "Set up my press" }).ClickAsync();
        await page.WaitForURLAsync("**/shelf");
        await visit.AnswersAsync();
        await Expect(page.Locator(".masthead .press")).ToContainTextAsync("Lantern Row");
        await page.GetByRole(AriaRole.Link, new() { Name = "Notes on Rain", Exact = true }).First.ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Notes on Rain");
        await Expect(visit.Field("Pages of inside")).ToHaveValueAsync("36");
        var reckoned = Reckon(first with { InsidePages = 36, Quantity = 80 }, euro.Currency);
        await Expect(Comes.To(page, "The run costs, planned")).ToContainTextAsync(euro.Money(reckoned.Totals.LandedCost));

        await using var stored = await Stored.OpenAsync(app);
        Assert.Equal(("Lantern Row", "CHF", UnitSystem.Metric), (stored.Press.Name, stored.Press.Currency, stored.Press.Units));
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_press_that_counts_in_dollars_and_measures_in_inches_reads_inches_and_ounces()
    {
        await using var visit = await Visit.BeginAsync(chromium.Browser, sample.Address, locale: "en-US");
        await visit.OpenAsync("start");
        var page = visit.Page;
        var first = FirstNumber.For(PaperRegion.Us);
        var dollars = Format("USD", UnitSystem.Imperial, "en-US");
        await SaysAsync(page, first, dollars);

        await visit.EnterAsync("The press is called", "Windrow Zines");
        await visit.EnterAsync("The book is called", "Fence Weather");
        await page.GetByRole(AriaRole.Button, new() { Name = "Set up my press" }).ClickAsync();
        await page.WaitForURLAsync("**/shelf");
        await visit.AnswersAsync();
        await Expect(page.Locator(".masthead .press")).ToContainTextAsync(CurrencyNames.Of("USD"));
        await page.GetByRole(AriaRole.Link, new() { Name = "Fence Weather", Exact = true }).First.ClickAsync();
        await Expect(visit.Field("Page width")).ToHaveValueAsync("5½");
        await Expect(visit.Field("Page height")).ToHaveValueAsync("8½");
        var copy = Reckon(first, dollars.Currency).Copy;
        Assert.Equal(("oz", "in"), (dollars.Mass(copy.Mass).Unit, dollars.Thickness(copy.Thickness).Unit));
        await Expect(Comes.To(page, "A copy weighs")).ToContainTextAsync(new Regex(Comes.Loose(dollars.Mass(copy.Mass).ToString())));
        await Expect(Comes.To(page, "It is thick")).ToContainTextAsync(new Regex(Comes.Loose(dollars.Thickness(copy.Thickness).ToString())));
        visit.WasQuiet();
    }

    private static async Task SaysAsync(IPage page, FirstNumber number, PressFormat format)
    {
        var estimate = Reckon(number, format.Currency);
        var sentence = page.Locator(".start-sentence");
        await Expect(sentence).ToContainTextAsync(
            $"copies cost {format.Sum(estimate.Totals.LandedCost)}, that is {format.Money(estimate.UnitCost)} each");
        await Expect(sentence).ToContainTextAsync(
            new Regex(Comes.Loose($"A copy weighs {format.Mass(estimate.Copy.Mass)} and is {format.Thickness(estimate.Copy.Thickness)} thick")));
    }

    private static PressFormat Format(string currency, UnitSystem units, string locale) =>
        new(Currency.Find(currency)!, units, CultureInfo.GetCultureInfo(locale));

    internal static Estimate Reckon(FirstNumber number, Currency currency)
    {
        var prepared = PreparedJob.Prepare(number.Job(currency, AnyDay));
        Assert.True(prepared.Succeeded);
        return prepared.Value.Estimate(number.Quantity).Value;
    }
}
