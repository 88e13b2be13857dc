using PressRun.Engine.Paper;

namespace PressRun.Web.Libraries;

/// <summary>Papers that every maker meets (common practice), to start a library with. They are without a maker's name: a measured caliper and the
/// name on the packet make them one's own.</summary>
public static class CommonPapers
{
    /// <summary>Keys of the columns that are filled.</summary>
    public static IReadOnlyList<string> Columns { get; } = ["name", "weight", "finish"];

    private static readonly string[][] Iso =
    [
        ["Uncoated 80", "80 gsm", "uncoated"], ["Uncoated 100", "100 gsm", "uncoated"], ["Uncoated 120", "120 gsm", "uncoated"], ["Uncoated 160", "160 gsm", "uncoated"],
        ["Uncoated card 240", "240 gsm", "uncoated"], ["Silk 115", "115 gsm", "coated"], ["Silk 150", "150 gsm", "coated"], ["Silk card 250", "250 gsm", "coated"],
        ["Gloss card 300", "300 gsm", "coated"],
    ];

    private static readonly string[][] Us =
    [
        ["Copy bond 20", "20 lb bond", "uncoated"], ["Opaque text 60", "60 lb text", "uncoated"], ["Opaque text 70", "70 lb text", "uncoated"],
        ["Silk text 80", "80 lb text", "coated"], ["Gloss text 100", "100 lb text", "coated"], ["Opaque cover 65", "65 lb cover", "uncoated"],
        ["Silk cover 80", "80 lb cover", "coated"], ["Gloss cover 100", "100 lb cover", "coated"], ["Index 110", "110 lb index", "uncoated"],
    ];

    /// <summary>Name, weight and finish of each, for a region.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Of(PaperRegion region) => region == PaperRegion.Us ? Us : Iso;
}
