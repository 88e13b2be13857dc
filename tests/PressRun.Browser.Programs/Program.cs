using System.Globalization;
using PressRun.Browser.Programs;
using PressRun.Browser.Programs.Load;
using PressRun.Browser.Programs.Pictures;
using PressRun.Browser.Programs.Tallies;
using PressRun.Browser.Programs.Texts;

// "pictures": the pictures of the guide, into docs/pictures. "pictures all FOLDER": every page at four widths, light and dark, to be looked at.
// "texts": the files of the translations, brought to what the code says now.
// "tally": how long after a tap on one phone its number stands on another.
// "load [SESSIONS [SECONDS]]": so many people editing at once, each on a page of its own, without a browser.
switch (args)
{
    case ["pictures"]:
        await GuidePictures.TakeAsync(Path.Combine(Repository.Root, "docs", "pictures"));
        return 0;
    case ["pictures", "all", var folder]:
        await PagesToLookAt.TakeAsync(folder);
        return 0;
    case ["texts"]:
        TranslationFiles.Renew();
        return 0;
    case ["tally"]:
        await Glance.MeasureAsync();
        return 0;
    case ["load", .. var numbers] when numbers.Length <= 2 && numbers.All(number => int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var some) && some > 0):
        var asked = numbers.Select(number => int.Parse(number, CultureInfo.InvariantCulture)).ToArray();
        await Crowd.MeasureAsync(asked is [var sessions, ..] ? sessions : 100, TimeSpan.FromSeconds(asked is [_, var seconds] ? seconds : 60));
        return 0;
    default:
        await Console.Error.WriteLineAsync("pictures | pictures all FOLDER | texts | tally | load [SESSIONS [SECONDS]]");
        return 2;
}
