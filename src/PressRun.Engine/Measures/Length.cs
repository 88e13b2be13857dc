namespace PressRun.Engine.Measures;

/// <summary>A length. Held as exact decimal millimetres, so that 17 in over 8.5 in is 2 and not nearly 2. The default is zero.</summary>
public readonly record struct Length : IComparable<Length>
{
    /// <summary>Millimetres in an inch, exact (international yard and pound agreement, 1959).</summary>
    public const decimal MillimetresPerInch = 25.4m;

    private const int SettledDecimals = 12;

    private Length(decimal millimetres) => Millimetres = millimetres;

    /// <summary>No length.</summary>
    public static Length Zero => default;

    /// <summary>The whole length in millimetres.</summary>
    public decimal Millimetres { get; }

    /// <summary>The whole length in inches.</summary>
    public decimal Inches => Millimetres / MillimetresPerInch;

    /// <summary>The whole length in micrometres, the unit of caliper.</summary>
    public decimal Micrometres => Millimetres * 1000m;

    /// <summary>The length to twelve decimals of a millimetre, to be compared with a limit: see <see cref="Mass.Settled"/>.</summary>
    public Length Settled() => new(decimal.Round(Millimetres, SettledDecimals));

    /// <summary>A length of <paramref name="millimetres"/> mm.</summary>
    public static Length FromMillimetres(decimal millimetres) => new(millimetres);

    /// <summary>A length of <paramref name="centimetres"/> cm.</summary>
    public static Length FromCentimetres(decimal centimetres) => new(centimetres * 10m);

    /// <summary>A length of <paramref name="inches"/> in.</summary>
    public static Length FromInches(decimal inches) => new(inches * MillimetresPerInch);

    /// <summary>A length of <paramref name="micrometres"/> µm.</summary>
    public static Length FromMicrometres(decimal micrometres) => new(micrometres / 1000m);

    /// <summary>The sum of two lengths.</summary>
    public static Length operator +(Length left, Length right) => new(left.Millimetres + right.Millimetres);

    /// <summary>What is left of <paramref name="left"/> when <paramref name="right"/> is taken off; may be negative.</summary>
    public static Length operator -(Length left, Length right) => new(left.Millimetres - right.Millimetres);

    /// <summary>A length taken <paramref name="factor"/> times.</summary>
    public static Length operator *(Length length, decimal factor) => new(length.Millimetres * factor);

    /// <summary>A length taken <paramref name="factor"/> times.</summary>
    public static Length operator *(decimal factor, Length length) => length * factor;

    /// <summary>The longer of two lengths.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    public static Length Max(Length left, Length right) => left > right ? left : right;

    /// <summary>True where the left length is the shorter one.</summary>
    public static bool operator <(Length left, Length right) => left.Millimetres < right.Millimetres;

    /// <summary>True where the left length is the longer one.</summary>
    public static bool operator >(Length left, Length right) => left.Millimetres > right.Millimetres;

    /// <summary>True where the left length is not the longer one.</summary>
    public static bool operator <=(Length left, Length right) => left.Millimetres <= right.Millimetres;

    /// <summary>True where the left length is not the shorter one.</summary>
    public static bool operator >=(Length left, Length right) => left.Millimetres >= right.Millimetres;

    /// <inheritdoc/>
    public int CompareTo(Length other) => Millimetres.CompareTo(other.Millimetres);
}
