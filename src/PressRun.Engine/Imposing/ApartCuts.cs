using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Imposing;

/// <summary>The side that lies against the cutter's fence.</summary>
public enum FenceSide
{
    /// <summary>The left edge of the sheet, or of the strip.</summary>
    Left,

    /// <summary>The upper edge.</summary>
    Top,

    /// <summary>The right edge, which the cut before has made.</summary>
    Right,

    /// <summary>The lower edge, which the cut before has made.</summary>
    Bottom,
}

/// <summary>A cut that parts a sheet, or strips of it, into pieces.</summary>
/// <param name="Number">In the order of work, from 1.</param>
/// <param name="Letters">Places on the strips that it is made through; every letter of the sheet where the sheet is whole.</param>
/// <param name="Strips">How many strips it is made on, one after the other; 1 where the sheet is whole.</param>
/// <param name="Against">What lies against the fence, as seen on the sheet's front.</param>
/// <param name="Fence">What stays between the fence and the blade.</param>
public sealed record ApartCut(int Number, IReadOnlyList<string> Letters, int Strips, FenceSide Against, Length Fence);

/// <summary>
/// Parts sheets into pieces by straight cuts. The furthest cut comes first, so that the sheet keeps one edge at the fence; what the last strip has left at
/// that edge comes off turned round (common practice).
/// </summary>
public static class ApartCuts
{
    /// <summary>The cuts of a sheet, strips that are alike together.</summary>
    /// <param name="sheet">The sheet, a stack of which is cut at once.</param>
    public static IReadOnlyList<ApartCut> Of(ImposedSheet sheet)
    {
        var cuts = new List<ApartCut>();
        Part([new Strip(new Box(Length.Zero, Length.Zero, sheet.Sheet.Width, sheet.Sheet.Height), [.. sheet.Stacks.Select(stack => stack.Place)])], true, cuts);
        return cuts;
    }

    private sealed record Strip(Box Box, IReadOnlyList<Place> Places)
    {
        public Length From(bool upright) => upright ? Box.Left : Box.Top;

        public Length To(bool upright) => upright ? Box.Right : Box.Bottom;
    }

    // A stretch of a strip that no cut across it may enter.
    private sealed record Run(Length From, Length To, IReadOnlyList<Place> Places);

    private static void Part(IReadOnlyList<Strip> alike, bool upright, List<ApartCut> cuts)
    {
        var across = Fences(alike[0], upright).Any() ? upright : !upright;
        var fences = Fences(alike[0], across).ToList();
        if (fences.Count == 0)
        {
            return;
        }

        foreach (var (against, fence) in fences)
        {
            cuts.Add(new ApartCut(cuts.Count + 1, [.. alike.SelectMany(strip => strip.Places).Select(place => place.Letter)], alike.Count, against, fence));
        }

        foreach (var strips in alike.SelectMany(strip => Cut(strip, across)).GroupBy(strip => Pattern(strip, !across)))
        {
            Part([.. strips], !across, cuts);
        }
    }

    private static IEnumerable<Strip> Cut(Strip strip, bool upright) => Runs(strip, upright).Select(run => new Strip(
        upright ? strip.Box with { Left = run.From, Width = run.To - run.From } : strip.Box with { Top = run.From, Height = run.To - run.From },
        run.Places));

    // Places that overlap in the direction that is cut stay together.
    private static List<Run> Runs(Strip strip, bool upright)
    {
        var runs = new List<Run>();
        foreach (var place in strip.Places.OrderBy(place => upright ? place.Box.Left : place.Box.Top))
        {
            var (from, to) = upright ? (place.Box.Left, place.Box.Right) : (place.Box.Top, place.Box.Bottom);
            if (runs.Count > 0 && from + PiecesOnSheet.Tolerance < runs[^1].To)
            {
                runs[^1] = new Run(runs[^1].From, to > runs[^1].To ? to : runs[^1].To, [.. runs[^1].Places, place]);
            }
            else
            {
                runs.Add(new Run(from, to, [place]));
            }
        }

        return runs;
    }

    private static IEnumerable<(FenceSide Against, Length Fence)> Fences(Strip strip, bool upright)
    {
        var (start, end, runs) = (strip.From(upright), strip.To(upright), Runs(strip, upright));
        for (var at = runs.Count - 1; at >= 0; at--)
        {
            if (Apart(runs[at].To, end))
            {
                yield return (upright ? FenceSide.Left : FenceSide.Top, runs[at].To - start);
            }

            end = runs[at].From;
            if (at > 0)
            {
                yield return (upright ? FenceSide.Left : FenceSide.Top, end - start);
            }
        }

        if (Apart(start, end))
        {
            yield return (upright ? FenceSide.Right : FenceSide.Bottom, runs[0].To - runs[0].From);
        }
    }

    private static bool Apart(Length from, Length to) => to - from > PiecesOnSheet.Tolerance;

    // Strips are alike where their cuts stand at the same fences and fall into strips that are alike.
    private static string Pattern(Strip strip, bool upright) => string.Join(
        ' ',
        new[] { strip.Box.Width, strip.Box.Height }.Concat(Runs(strip, upright).SelectMany(run => new[] { run.From - strip.From(upright), run.To - run.From }))
            .Select(length => decimal.Round(length.Micrometres)).Append(strip.Places.Count));
}
