using PressRun.Engine.Measures;

namespace PressRun.Engine.Sheets;

/// <summary>
/// The most equal rectangles that straight edge-to-edge cuts get out of a larger one, upright and turned ones mixed. Exact: a search
/// over all cuts at normal patterns, positions that are sums of piece sides, which lose no optimum (Christofides and Whitlock,
/// "An algorithm for two-dimensional cutting problems", Operations Research 25, 1977).
/// </summary>
internal sealed class GuillotineLayout
{
    /// <summary>Cuts that the searches of one job may look at, some tenths of a second; what needs more is given up rather than guessed.</summary>
    public const long MostWork = 20_000_000;

    // Keeps the table of known rectangles and the depth of the search small enough for any machine.
    private const int MostPositions = 1_500;
    private const decimal UnitsPerMillimetre = 1_000_000_000m;

    // More than binary fractions err by, and less than any layout differs by: bounds stay bounds.
    private const double Slack = 1d + 1e-12;

    private readonly Side across;
    private readonly Side down;

    // By place across and down: 0 where not yet known, else the count and one.
    private readonly int[] known;
    private long workLeft;

    private GuillotineLayout(Side across, Side down, long workLeft)
    {
        this.workLeft = workLeft;
        this.across = across;
        this.down = down;
        known = new int[across.Positions.Length * down.Positions.Length];
    }

    /// <summary>The most pieces; null where the search would take more work than is left.</summary>
    /// <param name="width">Usable width, gutter and tolerance added.</param>
    /// <param name="height">Usable height, gutter and tolerance added.</param>
    /// <param name="pieceWidth">Piece width, gutter added.</param>
    /// <param name="pieceHeight">Piece height, gutter added.</param>
    /// <param name="grid">What a plain grid gives, the least that the answer can be.</param>
    /// <param name="workLeft">Cuts that may still be looked at; those looked at are taken off.</param>
    public static int? Count(Length width, Length height, Length pieceWidth, Length pieceHeight, int grid, ref long workLeft)
    {
        var (w, h, a, b) = (Units(width), Units(height), Units(pieceWidth), Units(pieceHeight));
        if (w <= 0 || h <= 0 || (Int128)w * h / ((Int128)a * b) == grid)
        {
            return grid;
        }

        var (across, down) = (Side.Of(w, a, b), Side.Of(h, b, a));
        if (across is null || down is null)
        {
            return null;
        }

        var layout = new GuillotineLayout(across, down, workLeft);
        var count = layout.Best(across.Positions.Length - 1, down.Positions.Length - 1);
        workLeft = layout.workLeft;
        return workLeft <= 0 ? null : Math.Max(count, grid);
    }

    /// <summary>Where the most pieces lie, for a search that <see cref="Count"/> has ended; null where a plain grid holds as many.</summary>
    public static List<(Length Left, Length Top, bool Turned)>? Places(Length width, Length height, Length pieceWidth, Length pieceHeight, int grid)
    {
        var (w, h, a, b) = (Units(width), Units(height), Units(pieceWidth), Units(pieceHeight));
        if (w <= 0 || h <= 0 || Side.Of(w, a, b) is not { } across || Side.Of(h, b, a) is not { } down)
        {
            return null;
        }

        var layout = new GuillotineLayout(across, down, long.MaxValue);
        var (i, j) = (across.Positions.Length - 1, down.Positions.Length - 1);
        if (layout.Best(i, j) <= grid)
        {
            return null;
        }

        var places = new List<(Length, Length, bool)>();
        layout.Lay(i, j, 0, 0, (a, b), places);
        return places;
    }

    // Follows the cuts that gave the best count.
    private void Lay(int i, int j, long left, long top, (long Width, long Height) piece, List<(Length, Length, bool)> places)
    {
        var best = Best(i, j);
        if (across.Upright[i] * down.Upright[j] == best)
        {
            LayGrid(across.Upright[i], down.Upright[j], piece.Width, piece.Height, false);
            return;
        }

        if (across.Turned[i] * down.Turned[j] == best)
        {
            LayGrid(across.Turned[i], down.Turned[j], piece.Height, piece.Width, true);
            return;
        }

        for (int cut = 1, rest = i - 1; across.Rest(i, cut, ref rest); cut++)
        {
            if (Best(cut, j) + Best(rest, j) == best)
            {
                Lay(cut, j, left, top, piece, places);
                Lay(rest, j, left + across.Positions[cut], top, piece, places);
                return;
            }
        }

        for (int cut = 1, rest = j - 1; down.Rest(j, cut, ref rest); cut++)
        {
            if (Best(i, cut) + Best(i, rest) == best)
            {
                Lay(i, cut, left, top, piece, places);
                Lay(i, rest, left, top + down.Positions[cut], piece, places);
                return;
            }
        }

        void LayGrid(int columns, int rows, long width, long height, bool turned)
        {
            for (var at = 0; at < columns * rows; at++)
            {
                places.Add((OfUnits(left + (at % columns * width)), OfUnits(top + (at / columns * height)), turned));
            }
        }

        static Length OfUnits(long units) => Length.FromMillimetres(units / UnitsPerMillimetre);
    }

    private static long Units(Length length) => (long)decimal.Round(length.Millimetres * UnitsPerMillimetre);

    private int Best(int i, int j)
    {
        var floor = Math.Max(across.Upright[i] * down.Upright[j], across.Turned[i] * down.Turned[j]);
        var bound = Bound(i, j);
        if (floor >= bound || workLeft <= 0)
        {
            return floor;
        }

        ref var answer = ref known[(i * down.Positions.Length) + j];
        if (answer > 0)
        {
            return answer - 1;
        }

        var best = floor;
        for (int cut = 1, rest = i - 1; across.Rest(i, cut, ref rest) && best < bound; cut++)
        {
            workLeft--;
            if (Bound(cut, j) + Bound(rest, j) > best)
            {
                best = Math.Max(best, Best(cut, j) + Best(rest, j));
            }
        }

        for (int cut = 1, rest = j - 1; down.Rest(j, cut, ref rest) && best < bound; cut++)
        {
            workLeft--;
            if (Bound(i, cut) + Bound(i, rest) > best)
            {
                best = Math.Max(best, Best(i, cut) + Best(i, rest));
            }
        }

        answer = best + 1;
        return best;
    }

    // What the area holds.
    private int Bound(int i, int j) => (int)(across.Share[i] * down.Share[j]);

    /// <summary>One side of the sheet with the positions that cuts may take, rising from 0.</summary>
    /// <param name="Positions">All sums of piece sides up to the side's length.</param>
    /// <param name="Upright">Upright pieces that fit up to each position.</param>
    /// <param name="Turned">Turned pieces that fit up to each position.</param>
    /// <param name="Share">Each position over the upright piece's side.</param>
    private sealed record Side(long[] Positions, int[] Upright, int[] Turned, double[] Share)
    {
        /// <summary>The positions of a side; null where there are too many.</summary>
        public static Side? Of(long length, long upright, long turned)
        {
            var positions = new SortedSet<long>();
            for (var x = 0L; x <= length; x += upright)
            {
                for (var sum = x; sum <= length; sum += turned)
                {
                    positions.Add(sum);
                    if (positions.Count > MostPositions)
                    {
                        return null;
                    }
                }
            }

            return new Side(
                [.. positions],
                [.. positions.Select(at => (int)(at / upright))],
                [.. positions.Select(at => (int)(at / turned))],
                [.. positions.Select(at => at * Slack / upright)]);
        }

        /// <summary>Moves <paramref name="rest"/> down to the largest position that fits beside a cut; false past the middle, from where cuts repeat.</summary>
        public bool Rest(int whole, int cut, ref int rest)
        {
            if (cut >= whole || Positions[cut] * 2 > Positions[whole])
            {
                return false;
            }

            while (Positions[rest] > Positions[whole] - Positions[cut])
            {
                rest--;
            }

            return true;
        }
    }
}
