using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Imposing;

/// <summary>Lays the pieces of a run on its sheets. Positions are exact; what is drawn from them is true to scale.</summary>
public static class SheetImposer
{
    /// <summary>
    /// Every different sheet of a run, in the order of the book. Step and repeat: a sheet for each piece. Cut and stack: sheets of neighbouring pieces, the
    /// last with blank places where they do not come out even. Combined: full sheets first, then one for each piece left. Where the shop prices
    /// whole books its sheets are not known, and each piece stands on a sheet of its own size.
    /// </summary>
    /// <param name="prepared">The run's job.</param>
    /// <param name="estimate">The same at its quantity.</param>
    public static IReadOnlyList<ImposedSheet> Impose(PreparedJob prepared, Estimate estimate)
    {
        var pieces = prepared.Impose().Pieces;
        var sheets = new List<ImposedSheet>();
        var first = 0;
        for (var index = 0; index < prepared.Block.Parts.Count; index++)
        {
            var part = prepared.Block.Parts[index];
            var (sheet, layout) = SheetOf(prepared, estimate.Parts[index], part);
            Lay(prepared.Block, index, sheet, layout, estimate.CopiesToStart, [.. pieces.Skip(first).Take(part.Count)], sheets);
            first += part.Count;
        }

        return sheets;
    }

    private static (Sheet Sheet, Layout Layout) SheetOf(PreparedJob prepared, PartEstimate estimate, PartPieces part) => estimate.OnSheets is { } on
        ? (prepared.Job.Shop.Sheets.First(sheet => sheet.Id == on.SheetId), on.Layout)
        : (new Sheet(string.Empty, part.Piece.Width, part.Piece.Height, Length.Zero, Length.Zero, false, GrainRule.Any), Layout.StepAndRepeat);

    private static void Lay(
        BookBlock block, int partIndex, Sheet sheet, Layout layout, long copies, IReadOnlyList<ImposedPiece> pieces, List<ImposedSheet> sheets)
    {
        var places = Place.On(sheet, block.Parts[partIndex].Piece, block.Edition.Bleed);
        var n = places.Count;
        var together = layout switch
        {
            Layout.StepAndRepeat => 0,
            Layout.CutAndStack => pieces.Count,
            _ => pieces.Count / n * n,
        };
        foreach (var stacked in pieces.Take(together).Chunk(n))
        {
            Add(Layout.CutAndStack, copies, places.Select((place, at) => (place, at < stacked.Length ? stacked[at] : null)));
        }

        foreach (var repeated in pieces.Skip(together))
        {
            Add(Layout.StepAndRepeat, (copies + n - 1) / n, places.Select(place => (place, (ImposedPiece?)repeated)));
        }

        void Add(Layout laid, long prints, IEnumerable<(Place, ImposedPiece?)> on) =>
            sheets.Add(FaceLayer.Of(block, partIndex, sheet, laid, sheets.Count + 1, prints, [.. on]));
    }
}
