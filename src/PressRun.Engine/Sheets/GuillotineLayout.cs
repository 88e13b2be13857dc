using PressRun.Engine.Measures;

namespace PressRun.Engine.Sheets;

/// <summary>
/// The most equal rectangles that straight edge-to-edge cuts get out of a larger one, upright and turned ones mixed. Exact: a search
/// over all cuts at normal patterns, positions that are sums of piece sides, which lose no optimum (Christofides and Whitlock,
/// "An algorithm for two-dimensional cutting problems", Operations Research 25, 1977).
/// </summary>
internal sealed class GuillotineLayout
{
    /// <summary>Cuts that a search may look at, some tenths of a second; a search that needs more gives up rather than guess.</summary>
    public const long MostWork = 40_000_000;

    private const int MostPositions = 20_000;
    private const decimal UnitsPerMillimetre = 1_000_000_000m;

    private readonly long pieceWidth;
    private readonly long pieceHeight;
    private readonly long[] across;
    private readonly long[] down;
    private readonly Dictionary<long, int> known = [];
    private long work;

    private GuillotineLayout(long width, long height, long pieceWidth, long pieceHeight)
    {
        this.pieceWidth = pieceWidth;
        this.pieceHeight = pieceHeight;
        across = Positions(width);
        down = Positions(height);
    }

    /// <summary>The most pieces; null where the search would pass <see cref="MostWork"/>.</summary>
    /// <param name="width">Usable width, gutter and tolerance added.</param>
    /// <param name="height">Usable height, gutter and tolerance added.</param>
    /// <param name="pieceWidth">Piece width, gutter added.</param>
    /// <param name="pieceHeight">Piece height, gutter added.</param>
    /// <param name="grid">What a plain grid gives, the least that the answer can be.</param>
    public static int? Count(Length width, Length height, Length pieceWidth, Length pieceHeight, int grid)
    {
        var (w, h, a, b) = (Units(width), Units(height), Units(pieceWidth), Units(pieceHeight));
        if (w <= 0 || h <= 0 || AreaBound(w, h, a, b) == grid)
        {
            return grid;
        }

        var layout = new GuillotineLayout(w, h, a, b);
        if (layout.across.Length > MostPositions || layout.down.Length > MostPositions)
        {
            return null;
        }

        var count = layout.Best(layout.across.Length - 1, layout.down.Length - 1);
        return layout.work > MostWork ? null : Math.Max(count, grid);
    }

    private static long Units(Length length) => (long)decimal.Round(length.Millimetres * UnitsPerMillimetre);

    private static long AreaBound(long width, long height, long pieceWidth, long pieceHeight) =>
        (long)((Int128)width * height / ((Int128)pieceWidth * pieceHeight));

    // All sums of piece sides up to the limit, rising, zero included; one more than the most allowed where there are too many.
    private long[] Positions(long limit)
    {
        var positions = new SortedSet<long>();
        for (var x = 0L; x <= limit; x += pieceWidth)
        {
            for (var sum = x; sum <= limit; sum += pieceHeight)
            {
                positions.Add(sum);
                if (positions.Count > MostPositions)
                {
                    return [.. positions];
                }
            }
        }

        return [.. positions];
    }

    private int Best(int i, int j)
    {
        var (width, height) = (across[i], down[j]);
        var floor = Math.Max(Grid(width, height, pieceWidth, pieceHeight), Grid(width, height, pieceHeight, pieceWidth));
        var bound = AreaBound(width, height, pieceWidth, pieceHeight);
        if (floor == bound || work > MostWork)
        {
            return floor;
        }

        var key = ((long)i << 32) | (uint)j;
        if (known.TryGetValue(key, out var found))
        {
            return found;
        }

        var best = floor;
        for (var cut = 1; cut < i && across[cut] * 2 <= width && best < bound; cut++)
        {
            work++;
            best = Math.Max(best, Best(cut, j) + Best(Below(across, width - across[cut], i), j));
        }

        for (var cut = 1; cut < j && down[cut] * 2 <= height && best < bound; cut++)
        {
            work++;
            best = Math.Max(best, Best(i, cut) + Best(i, Below(down, height - down[cut], j)));
        }

        known[key] = best;
        return best;
    }

    private static int Grid(long width, long height, long pieceWidth, long pieceHeight) => (int)(width / pieceWidth * (height / pieceHeight));

    private static int Below(long[] positions, long at, int end)
    {
        var index = Array.BinarySearch(positions, 0, end, at);
        return index >= 0 ? index : ~index - 1;
    }
}
