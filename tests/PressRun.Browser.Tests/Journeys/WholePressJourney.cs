using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

/// <summary>A whole press goes out as a file, comes back as a press of its own, and goes for good.</summary>
public sealed class WholePressJourney(Chromium chromium)
{
    [Fact]
    public async Task A_press_is_saved_taken_in_beside_itself_and_taken_out()
    {
        await using var app = await AppProcess.StartAsync(sample: true);
        await using var visit = await Visit.BeginAsync(chromium.Browser, app.Address);
        await visit.OpenAsync("start");
        var page = visit.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "Save, take in or take out a whole press" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("All of Pilchard Stairs");
        await visit.AnswersAsync();

        var download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new() { Name = "Save as one file" }).ClickAsync());
        Assert.Matches(@"^Pilchard Stairs \d{4}-\d\d-\d\d\.json$", download.SuggestedFilename);
        string saved = await File.ReadAllTextAsync(await download.PathAsync());

        var file = page.GetByLabel("Choose a press's file");
        await file.SetInputFilesAsync(new FilePayload { Name = "press.json", MimeType = "application/json", Buffer = "{}"u8.ToArray() });
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Nothing was taken in");

        var renamed = saved.Replace("\"name\": \"Pilchard Stairs\"", "\"name\": \"Second Stairs\"", StringComparison.Ordinal);
        Assert.NotEqual(saved, renamed);
        await file.SetInputFilesAsync(new FilePayload { Name = "press.json", MimeType = "application/json", Buffer = System.Text.Encoding.UTF8.GetBytes(renamed) });
        await page.WaitForURLAsync("**/shelf?taken-in=true");
        await visit.AnswersAsync();
        await Expect(page.Locator(".masthead .press")).ToContainTextAsync("Second Stairs");
        await Expect(page.Locator(".press-told")).ToContainTextAsync("Second Stairs is taken in");
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = "Eleven Knots for Nervous People", Exact = true }).First).ToBeVisibleAsync();

        await visit.OpenAsync("press");
        await visit.TypeAsync("Its name, as it stands above", "Pilchard Stairs");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take the press out for good" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert)).ToHaveTextAsync("The press is not called so. Write its name as it stands above.");
        await visit.TypeAsync("Its name, as it stands above", "Second Stairs");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take the press out for good" }).ClickAsync();
        await page.WaitForURLAsync("**/start?out=true");
        await visit.AnswersAsync();
        await Expect(page.Locator(".press-told")).ToContainTextAsync("The press is taken out");
        await Expect(page.Locator(".press-list li")).ToHaveTextAsync(["Pilchard Stairs Euro"]);
    }
}
