using System.Globalization;

namespace PressRun.Browser.Programs.Pictures;

/// <summary>Every page of the sample press, and of a press that has nothing yet, to be looked at by a person.</summary>
internal static class EveryPage
{
    private static readonly int[] Widths = [390, 768, 1280, 1920];

    private static readonly string[] Paths =
    [
        "", "shelf?ask=true", "start", "titles/new", "papers", "papers/import", "shops", "shops/new", "post", "selling", "bench", "sales/import", "fair", "quotes", "quotes/1", "people", "account",
        "titles/tarpaulin-weather/2", "titles/tarpaulin-weather/2/copies", "titles/tarpaulin-weather/2/payouts", "titles/fog-manners/3/reprint", "titles/wrong-tides/3/run",
        "titles/wrong-tides/3/run/bench", "titles/wrong-tides/3/run/imposition", "titles/wrong-tides/3/run/job", "titles/wrong-tides/3/run/quote", "titles/wrong-tides/3/tally",
        "titles/gulls-v-harbour-board/3/papers", "titles/gulls-v-harbour-board/3/post", "nowhere",
    ];

    private static readonly string[] OfNobody = ["", "start", "papers", "shops", "post", "selling", "bench", "quotes", "fair"];

    /// <summary>Takes them all, at each width in both themes.</summary>
    public static async Task TakeAsync(string folder)
    {
        await TakeAsync(Path.Combine(folder, "sample"), Paths, sample: true);
        await TakeAsync(Path.Combine(folder, "empty"), OfNobody, sample: false);
    }

    private static async Task TakeAsync(string folder, string[] paths, bool sample)
    {
        await using var camera = await Camera.OpenAsync(sample);
        foreach (var path in paths)
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
