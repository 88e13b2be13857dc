using System.Globalization;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Paper;

/// <summary>Which part of the world a paper size is at home in.</summary>
public enum PaperRegion
{
    /// <summary>ISO 216 and ISO 217.</summary>
    Iso,

    /// <summary>North American trade sizes.</summary>
    Us,
}

/// <summary>A size that has a name.</summary>
/// <param name="Name">Such as <c>A5</c> or <c>Letter</c>.</param>
/// <param name="Size">Upright: the shorter side is the width.</param>
/// <param name="Region">Where it is usual.</param>
public sealed record NamedSize(string Name, Size Size, PaperRegion Region);

/// <summary>Sizes of pages and sheets that have names.</summary>
public static class StandardSizes
{
    /// <summary>ISO 216 A series, A0 to A10 (A0 is 841 × 1189 mm).</summary>
    public static IReadOnlyList<NamedSize> A { get; } = Halved("A", 841, 1189, 10);

    /// <summary>ISO 216 B series, B0 to B10 (B0 is 1000 × 1414 mm).</summary>
    public static IReadOnlyList<NamedSize> B { get; } = Halved("B", 1000, 1414, 10);

    /// <summary>ISO 217 untrimmed RA series, RA0 to RA4 (RA0 is 860 × 1220 mm).</summary>
    public static IReadOnlyList<NamedSize> UntrimmedRa { get; } = Halved("RA", 860, 1220, 4);

    /// <summary>ISO 217 untrimmed SRA series for bleed work, SRA0 to SRA4 (SRA0 is 900 × 1280 mm).</summary>
    public static IReadOnlyList<NamedSize> UntrimmedSra { get; } = Halved("SRA", 900, 1280, 4);

    /// <summary>North American trade sizes (common practice; the first five are in ANSI/ASME Y14.1 or everyday use).</summary>
    public static IReadOnlyList<NamedSize> Us { get; } =
    [
        Inches("Letter", 8.5m, 11m),
        Inches("Legal", 8.5m, 14m),
        Inches("Tabloid", 11m, 17m),
        Inches("Half letter", 5.5m, 8.5m),
        Inches("Quarter letter", 4.25m, 5.5m),
        Inches("12 × 18", 12m, 18m),
        Inches("13 × 19", 13m, 19m),
    ];

    /// <summary>Every named size.</summary>
    public static IReadOnlyList<NamedSize> All { get; } = [.. A, .. B, .. UntrimmedRa, .. UntrimmedSra, .. Us];

    private static readonly IReadOnlyList<NamedSize> IsoPages = [A[4], B[5], A[5], B[6], A[6], A[7]];

    private static readonly IReadOnlyList<NamedSize> UsPages = [Us[0], Us[3], Us[4]];

    private static readonly IReadOnlyList<NamedSize> IsoSheets = [A[3], UntrimmedSra[3], A[4]];

    private static readonly IReadOnlyList<NamedSize> UsSheets = [Us[2], Us[5], Us[0]];

    /// <summary>The size of a name, whatever its case; null where there is none.</summary>
    /// <param name="name">Such as <c>A5</c> or <c>letter</c>.</param>
    public static NamedSize? Find(string name) => All.FirstOrDefault(size => string.Equals(size.Name, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>Sizes that books and zines are made in: the region's own, then the other's, each largest first (common practice).</summary>
    /// <param name="region">The region whose sizes stand first.</param>
    public static IReadOnlyList<NamedSize> Pages(PaperRegion region) => OwnFirst(region, IsoPages, UsPages);

    /// <summary>Sheets that shops print on: the region's own, then the other's, each the most usual first (common practice).</summary>
    /// <param name="region">The region whose sizes stand first.</param>
    public static IReadOnlyList<NamedSize> Sheets(PaperRegion region) => OwnFirst(region, IsoSheets, UsSheets);

    private static IReadOnlyList<NamedSize> OwnFirst(PaperRegion region, IReadOnlyList<NamedSize> iso, IReadOnlyList<NamedSize> us) =>
        region == PaperRegion.Us ? [.. us, .. iso] : [.. iso, .. us];

    // ISO 216, 4.1: each size is the one before it halved across its longer side, and halves of a millimetre are dropped.
    private static List<NamedSize> Halved(string series, int width, int height, int last)
    {
        var sizes = new List<NamedSize>();
        for (var n = 0; n <= last; n++)
        {
            var name = series + n.ToString(CultureInfo.InvariantCulture);
            sizes.Add(new NamedSize(name, new Size(Length.FromMillimetres(width), Length.FromMillimetres(height)), PaperRegion.Iso));
            (width, height) = (height / 2, width);
        }

        return sizes;
    }

    private static NamedSize Inches(string name, decimal width, decimal height) =>
        new(name, new Size(Length.FromInches(width), Length.FromInches(height)), PaperRegion.Us);
}
