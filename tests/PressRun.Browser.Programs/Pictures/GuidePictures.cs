namespace PressRun.Browser.Programs.Pictures;

/// <summary>The pictures of the maker's guide.</summary>
internal static class GuidePictures
{
    private const int Laptop = 1280;
    private const int Phone = 390;

    private static readonly (string Name, string Path, int Width)[] Wanted =
    [
        ("shelf", "", Laptop),
        ("edition", "titles/eleven-knots/3", Laptop),
        ("run", "titles/wrong-tides/3/run", Laptop),
        ("papers", "titles/gulls-v-harbour-board/3/papers", Laptop),
        ("post", "titles/gulls-v-harbour-board/3/post", Laptop),
        ("reprint", "titles/fog-manners/3/reprint", Laptop),
        ("copies", "titles/tarpaulin-weather/2/copies", Laptop),
        ("fair", "fair", Phone),
        ("quote", "quotes/1", Laptop),
        ("bench", "titles/eleven-knots/3/run/bench", Laptop),
        ("bench-phone", "titles/eleven-knots/3/run/bench", Phone),
        ("imposition", "titles/eleven-knots/3/run/imposition", Laptop),
    ];

    /// <summary>Takes them all.</summary>
    public static async Task TakeAsync(string folder)
    {
        await using var camera = await Camera.OpenAsync();
        foreach (var (name, path, width) in Wanted)
        {
            await camera.TakeAsync(path, Path.Combine(folder, name + ".png"), width);
        }
    }
}
