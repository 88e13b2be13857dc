using System.Globalization;
using PressRun.Engine.Paper;

namespace PressRun.Web.Libraries;

/// <summary>Papers that every maker meets (common practice), to start a library with. They are without a maker's name: a measured caliper and the
/// name on the packet make them one's own.</summary>
public static class CommonPapers
{
    private const string Coated = "coated";
    private const string Uncoated = "uncoated";

    /// <summary>Keys of the columns that are filled.</summary>
    public static IReadOnlyList<string> Columns { get; } = ["name", "weight", "finish"];

    private static string[][] Iso =>
    [
        [Say($"Uncoated 80 g/m²"), "80 gsm", Uncoated], [Say($"Uncoated 100 g/m²"), "100 gsm", Uncoated], [Say($"Uncoated 120 g/m²"), "120 gsm", Uncoated], [Say($"Uncoated 160 g/m²"), "160 gsm", Uncoated],
        [Say($"Uncoated card 240 g/m²"), "240 gsm", Uncoated], [Say($"Silk 115 g/m²"), "115 gsm", Coated], [Say($"Silk 150 g/m²"), "150 gsm", Coated], [Say($"Silk card 250 g/m²"), "250 gsm", Coated],
        [Say($"Gloss card 300 g/m²"), "300 gsm", Coated],
    ];

    private static string[][] Us =>
    [
        [Say($"Copy bond 20 lb"), Pounds(20, "bond"), Uncoated], [Say($"Opaque text 60 lb"), Pounds(60, "text"), Uncoated], [Say($"Opaque text 70 lb"), Pounds(70, "text"), Uncoated],
        [Say($"Silk text 80 lb"), Pounds(80, "text"), Coated], [Say($"Gloss text 100 lb"), Pounds(100, "text"), Coated], [Say($"Opaque cover 65 lb"), Pounds(65, "cover"), Uncoated],
        [Say($"Silk cover 80 lb"), Pounds(80, "cover"), Coated], [Say($"Gloss cover 100 lb"), Pounds(100, "cover"), Coated], [Say($"Index 110 lb"), Pounds(110, "index"), Uncoated],
    ];

    /// <summary>Name, weight and finish of each, for a region.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Of(PaperRegion region) => region == PaperRegion.Us ? Us : Iso;

    // As a cell of the table reads it, in whatever language the page is.
    private static string Pounds(int pounds, string category) => string.Create(CultureInfo.InvariantCulture, $"{pounds} lb {category}");
}
