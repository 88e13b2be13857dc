using PressRun.Engine.Bench;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;
using PressRun.Web.Papers;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Posting;

/// <summary>What the post's figures are called on screen.</summary>
public static class PostWords
{
    /// <summary>A broken limit: <c>43 g too heavy</c>.</summary>
    public static string Of(RefusedService refused, PressFormat format)
    {
        var by = refused.Limit switch
        {
            PostageLimit.Mass => format.Mass(Mass.FromGrams(refused.By)),
            PostageLimit.Thickness => format.Thickness(Length.FromMillimetres(refused.By)),
            _ => format.Length(Length.FromMillimetres(refused.By)),
        };
        return (refused.Limit, refused.TooLittle) switch
        {
            (PostageLimit.Length, false) => Say($"{by} too long"),
            (PostageLimit.Length, true) => Say($"{by} too short"),
            (PostageLimit.Width, false) => Say($"{by} too wide"),
            (PostageLimit.Width, true) => Say($"{by} too narrow"),
            (PostageLimit.Thickness, false) => Say($"{by} too thick"),
            (PostageLimit.Thickness, true) => Say($"{by} too thin"),
            _ => Say($"{by} too heavy"),
        };
    }

    /// <summary>A change to the book, as a beginning of a sentence.</summary>
    public static string Of(WayDown way, PapersView view, PressFormat format) => way switch
    {
        TrimmedMore { Edge: Edge.Foot } trimmed => Say($"Trim {format.Length(trimmed.By)} more off the foot"),
        TrimmedMore trimmed => Say($"Trim {format.Length(trimmed.By)} more off the fore-edge"),
        FewerPages fewer => Say($"Drop {Words.Pages(fewer.By, format.Count)} of the {view.Source.Edition.Parts[fewer.Part].Part.Name}"),
        LighterPaper lighter => Say($"Print the {view.Source.Edition.Parts[lighter.Part].Part.Name} on {view.StockName(lighter.StockId)}"),
        _ => "",
    };

    /// <summary>More leaves to spare than this need no count.</summary>
    public const int MostLeavesCounted = 99;

    /// <summary>Leaves to spare: <c>4</c>, <c>plenty</c>.</summary>
    public static string Leaves(int leaves, PressFormat format) => leaves > MostLeavesCounted ? Say("leaves to spare", $"plenty") : format.Count(leaves);

    /// <summary>What "to spare" means, and by how many leaves a part of this book grows.</summary>
    public static string ToSpare(Edition edition, int part) =>
        Say($"To spare is what the piece could weigh more, or be thicker, before its postage changes or its service refuses it.")
        + " "
        + (RoomToGrow.Step(edition.Binding, part), edition.Parts[part].Name) switch
        {
            (0, var name) => Say($"The {name} can gain no leaves; the binding takes one sheet."),
            (2, var name) => Say($"In leaves: how many the {name} could gain, two at a time, since a folded sheet is two leaves and four pages."),
            (_, var name) => Say($"In leaves: how many the {name} could gain."),
        };

    /// <summary>Where a region's pieces go, as a heading.</summary>
    public static string Region(string region) => region.Length == 0 ? region : char.ToUpperInvariant(region[0]) + region[1..];
}
