using PressRun.Engine.Paper;

namespace PressRun.Web.Libraries;

/// <summary>Mailers that every maker meets, to start a library with: outer sizes, what each adds to the thickness and weighs empty (common practice, from memory: weigh and gauge your own).
/// They cost nothing until a price is written.</summary>
public static class CommonMailers
{
    /// <summary>Keys of the columns that are filled.</summary>
    public static IReadOnlyList<string> Columns { get; } = ["name", "length", "width", "thickness", "mass"];

    // ISO 269 envelopes C6, C5 and C4 are 162 × 114, 229 × 162 and 324 × 229 mm.
    private static string[][] Iso =>
    [
        [Say($"Envelope C6, for A6"), "162 mm", "114 mm", "0.5 mm", "5 g"], [Say($"Envelope C5, for A5"), "229 mm", "162 mm", "0.5 mm", "8 g"],
        [Say($"Envelope C4, for A4"), "324 mm", "229 mm", "0.5 mm", "16 g"], [Say($"Board-backed envelope C5"), "229 mm", "162 mm", "1 mm", "25 g"],
        [Say($"Board-backed envelope C4"), "324 mm", "229 mm", "1 mm", "50 g"], [Say($"Padded envelope for A5"), "265 mm", "180 mm", "6 mm", "18 g"],
        [Say($"Book wrap for A5"), "230 mm", "165 mm", "4 mm", "65 g"],
    ];

    private static string[][] Us =>
    [
        [Say($"Envelope A6, for quarter letter"), "6.5 in", "4.75 in", "0.02 in", "0.2 oz"], [Say($"Booklet envelope 6 × 9"), "9 in", "6 in", "0.02 in", "0.4 oz"],
        [Say($"Catalog envelope 9 × 12"), "12 in", "9 in", "0.02 in", "0.7 oz"], [Say($"Rigid mailer 7 × 9"), "9 in", "7 in", "0.06 in", "1.6 oz"],
        [Say($"Rigid mailer 9.75 × 12.25"), "12.25 in", "9.75 in", "0.06 in", "2.7 oz"], [Say($"Padded mailer 6 × 10"), "10 in", "6 in", "0.25 in", "0.7 oz"],
    ];

    /// <summary>Name, longer side, other side, added thickness and mass of each, for a region.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Of(PaperRegion region) => region == PaperRegion.Us ? Us : Iso;
}
