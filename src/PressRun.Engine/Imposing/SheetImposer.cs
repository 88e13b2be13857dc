using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Imposing;

/// <summary>Lays the pieces of a run on its sheets. Positions are exact; what is drawn from them is true to scale.</summary>
public static class SheetImposer
{
    /// <summary>Most pieces of a sheet that is laid out piece by piece: far more than anybody cuts out of one, and few enough to be drawn.</summary>
    public const int MostPieces = 1_000;

    /// <summary>Most places on all different sheets of a run together.</summary>
    public const int MostPlaces = 100_000;

    /// <summary>What keeps a run's sheets from being laid out piece by piece, though its costs are known; null where nothing does.</summary>
    /// <param name="prepared">The run's job.</param>
    /// <param name="estimate">The same at its quantity.</param>
    public static Problem? TooMany(PreparedJob prepared, Estimate estimate)
    {
        var places = 0L;
        foreach (var (part, on) in prepared.OrderedPieces.Zip(estimate.Parts, (part, estimated) => (part, estimated.OnSheets)))
        {
            if (on is { PiecesPerSheet: > MostPieces })
            {
                return new Problem("$.shop.sheets", Text.Of(on.PiecesPerSheet), $"So many pieces of {part.Part.Name} lie on one sheet that they cannot be drawn; a sheet is laid out for at most {Text.Of(MostPieces)}.");
            }

            var perSheet = on?.PiecesPerSheet ?? 1;
            var together = Together(on?.Layout ?? Layout.StepAndRepeat, part.Count, perSheet);
            places += ((long)(together + perSheet - 1) / perSheet * perSheet) + ((long)(part.Count - together) * perSheet);
        }

        return places > MostPlaces ? new Problem("$.edition.parts", Text.Of(places), $"The sheets of this run have more than {Text.Of(MostPlaces)} places together, too many to be laid out piece by piece.") : null;
    }

    /// <summary>
    /// Every different sheet of a run, in the order of the book. Step and repeat: a sheet for each piece. Cut and stack: sheets of neighbouring pieces, the
    /// last with blank places where they do not come out even. Combined: full sheets first, then one for each piece left. Where the shop prices
    /// whole books its sheets are not known, and each piece stands on a sheet of its own size. A part of which each half of the run is on a stock of its own has its sheets twice, the first
    /// half's and then the second's.
    /// </summary>
    /// <param name="prepared">The run's job.</param>
    /// <param name="estimate">The same at its quantity.</param>
    public static IReadOnlyList<ImposedSheet> Impose(PreparedJob prepared, Estimate estimate)
    {
        var started = estimate.CopiesToStart;
        var (sheets, mixtures) = (new List<ImposedSheet>(), new Mixtures(prepared.Job.Edition.Bleed));
        var pieces = prepared.Impose().Pieces;
        var others = prepared.OtherHalf is { } otherHalf ? Imposer.Impose(otherHalf, prepared.Job.Bench.StapleFromSpine).Pieces : pieces;
        for (var index = 0; index < prepared.Block.Parts.Count; index++)
        {
            var place = estimate.PlaceOf(index);
            if (prepared is { OtherHalf: { } other, Job.SecondHalf: { } half } && half.Part == index && estimate.Parts[place].OnSheets is not null)
            {
                sheets.AddRange(Of(prepared.Block, pieces, index, estimate.Parts[place], started - (started / 2), half: 1));
                sheets.AddRange(Of(other, others, index, estimate.Parts[place + 1], started / 2, half: 2));
            }
            else
            {
                sheets.AddRange(Of(prepared.Block, pieces, index, estimate.Parts[place], started, half: null));
            }
        }

        return sheets;

        IEnumerable<ImposedSheet> Of(BookBlock block, IReadOnlyList<ImposedPiece> imposed, int index, PartEstimate part, long copies, int? half)
        {
            if (copies == 0)
            {
                return [];
            }

            var (sheet, layout) = SheetOf(prepared, part, block.Parts[index]);
            var ofPart = imposed.Skip(block.Parts.Take(index).Sum(before => before.Count)).Take(block.Parts[index].Count);
            var laid = new List<ImposedSheet>();
            Lay(block, index, sheet, Place.On(sheet, block.Parts[index].Piece, mixtures), layout, copies, [.. ofPart], sheets.Count, laid);
            return half is null ? laid : laid.Select(one => one with { Half = half, HalfOn = block.Parts[index].Stock.Name });
        }
    }

    private static (Sheet Sheet, Layout Layout) SheetOf(PreparedJob prepared, PartEstimate estimate, PartPieces part) => estimate.OnSheets is { } on
        ? (prepared.Job.Shop.Sheets.First(sheet => sheet.Id == on.SheetId), on.Layout)
        : (new Sheet(string.Empty, part.Piece.Width, part.Piece.Height, Length.Zero, Length.Zero, false, GrainRule.Any), Layout.StepAndRepeat);

    // How many of a part's different pieces share sheets; each of the rest fills one by itself.
    private static int Together(Layout layout, int pieces, int perSheet) => layout switch
    {
        Layout.StepAndRepeat => 0,
        Layout.CutAndStack => pieces,
        _ => pieces / perSheet * perSheet,
    };

    private static void Lay(
        BookBlock block, int partIndex, Sheet sheet, IReadOnlyList<Place> places, Layout layout, long copies, IReadOnlyList<ImposedPiece> pieces, int before, List<ImposedSheet> sheets)
    {
        var n = places.Count;
        var together = Together(layout, pieces.Count, n);
        foreach (var stacked in pieces.Take(together).Chunk(n))
        {
            Add(Layout.CutAndStack, copies, places.Select((place, at) => (place, at < stacked.Length ? stacked[at] : null)));
        }

        foreach (var repeated in pieces.Skip(together))
        {
            Add(Layout.StepAndRepeat, (copies + n - 1) / n, places.Select(place => (place, (ImposedPiece?)repeated)));
        }

        void Add(Layout laid, long prints, IEnumerable<(Place, ImposedPiece?)> on) =>
            sheets.Add(FaceLayer.Of(block, partIndex, sheet, laid, before + sheets.Count + 1, prints, [.. on]));
    }
}
