using System.Globalization;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Archive;
using PressRun.Data.Presses;
using PressRun.Data.Titles;

namespace PressRun.Browser.Programs.Load;

/// <summary>Runs to be edited, so many that nobody shares one.</summary>
internal static class Runs
{
    /// <summary>The planned runs of the sample press, and of as many copies of it as it takes.</summary>
    public static async Task<IReadOnlyList<(string Press, string Path)>> OfAsync(AppProcess app, int wanted)
    {
        await using var stored = await Stored.OpenAsync(app);
        var archive = await stored.Services.GetRequiredService<PressArchiveStore>().ExportAsync(stored.Press.Id);
        var runs = new List<(string, string)>(await OfPressAsync(stored, stored.Press));
        while (runs.Count < wanted)
        {
            var copy = await stored.Services.GetRequiredService<PressArchiveStore>().ImportAsync(archive);
            runs.AddRange(await OfPressAsync(stored, copy.Value));
        }

        return runs.GetRange(0, wanted);
    }

    private static async Task<IEnumerable<(string Press, string Path)>> OfPressAsync(Stored stored, PressRecord press)
    {
        var shelf = await stored.Services.GetRequiredService<ShelfQuery>().ShowAsync(press.Id, new ShelfFilter(Take: 200));
        return from title in shelf.Titles
               from edition in title.Editions
               where edition is { CopiesPrinted: null, Plan: not null }
               select (press.Id.ToString(), string.Create(CultureInfo.InvariantCulture, $"titles/{title.Slug}/{edition.Printing}/run"));
    }
}
