using System.Globalization;
using PressRun.Browser.Tests.Pages;
using PressRun.Browser.Tests.Running;

namespace PressRun.Browser.Programs.Pictures;

/// <summary>Every page of the sample press, and of a press that has nothing yet, to be looked at by a person.</summary>
internal static class PagesToLookAt
{
    private static readonly int[] Widths = [390, 768, 1280, 1920];

    // Pages without a circuit, and where one has another look than its route's example shows: asked for something, of a printing with sales, or not there.
    private static readonly string[] Besides =
    [
        "", "people", "account", "shelf?ask=true", "papers/import", "sales/import", "titles/tarpaulin-weather/2", "titles/tarpaulin-weather/2/copies",
        "titles/tarpaulin-weather/2/payouts", "titles/fog-manners/3/reprint", "titles/wrong-tides/3/run", "titles/wrong-tides/3/tally", "titles/gulls-v-harbour-board/3/papers",
        "titles/gulls-v-harbour-board/3/post", "nowhere",
    ];

    private static IEnumerable<string> Routes => EveryPage.Routes().Select(row => row.Data);

    /// <summary>Takes them all, at each width in both themes.</summary>
    public static async Task TakeAsync(string folder)
    {
        await TakeAsync(Path.Combine(folder, "sample"), sample: true, async app =>
        {
            await using var stored = await Stored.OpenAsync(app);
            var book = await stored.BookAsync(EveryPage.Title, EveryPage.Printing);
            var plan = (await stored.ChosenPlanAsync(book.Edition.Id)).Plan;
            return Routes.Select(route => EveryPage.Address(route, book.Slug, plan)).Concat(Besides);
        });
        await TakeAsync(Path.Combine(folder, "empty"), sample: false, _ => Task.FromResult(Routes.Where(route => !route.Contains('{', StringComparison.Ordinal)).Select(route => route.TrimStart('/'))));
    }

    private static async Task TakeAsync(string folder, bool sample, Func<AppProcess, Task<IEnumerable<string>>> addresses)
    {
        await using var camera = await Camera.OpenAsync(sample);
        foreach (var path in (await addresses(camera.App)).Distinct(StringComparer.Ordinal))
        {
            foreach (var width in Widths)
            {
                foreach (var dark in new[] { false, true })
                {
                    var name = string.Create(CultureInfo.InvariantCulture, $"{Named(path)}-{width}-{(dark ? "dark" : "light")}.png");
                    await camera.TakeAsync(path, Path.Combine(folder, name), width, dark, whole: true);
                }
            }
        }
    }

    private static string Named(string path) => path.Length == 0 ? "shelf" : string.Concat(path.Select(sign => char.IsAsciiLetterOrDigit(sign) ? sign : '-'));
}
