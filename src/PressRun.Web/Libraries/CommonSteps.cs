namespace PressRun.Web.Libraries;

/// <summary>Steps of a small press's table with the pace of somebody who does them by hand now and then, to start a bench with (common practice, from memory: hands and tools differ, so time your
/// own). Their names are those by which the sheet knows what is done; an hour costs nothing until a price for it is written.</summary>
public static class CommonSteps
{
    /// <summary>Keys of the columns that are filled.</summary>
    public static IReadOnlyList<string> Columns { get; } = ["name", "setupMinutes", "secondsPerCopy", "secondsPerPiece", "secondsPerCut", "copiesPerPile", "spoilage"];

    /// <summary>Name, minutes to set up, seconds for a copy, a piece and a cut, copies cut together, and what goes wrong in per cent.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> All { get; } =
    [
        ["collate", "5", "0", "3", "0", "1", "0"], ["jog", "0", "4", "0", "0", "1", "0"], ["fold", "2", "6", "1", "0", "1", "1"], ["staple", "5", "12", "0", "0", "1", "2"],
        ["press", "5", "3", "0", "0", "1", "0"], ["trim", "5", "0", "0", "20", "4", "1"], ["pack", "5", "5", "0", "0", "1", "0"],
    ];
}
