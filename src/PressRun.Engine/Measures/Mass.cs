namespace PressRun.Engine.Measures;

/// <summary>A mass. Held as exact decimal grams. The default is zero.</summary>
public readonly record struct Mass : IComparable<Mass>
{
    /// <summary>Grams in an avoirdupois pound, exact (international yard and pound agreement, 1959).</summary>
    public const decimal GramsPerPound = 453.59237m;

    /// <summary>Grams in an avoirdupois ounce: a sixteenth of a pound, exact.</summary>
    public const decimal GramsPerOunce = GramsPerPound / 16m;

    private const int SettledDecimals = 12;

    private Mass(decimal grams) => Grams = grams;

    /// <summary>No mass.</summary>
    public static Mass Zero => default;

    /// <summary>The whole mass in grams.</summary>
    public decimal Grams { get; }

    /// <summary>The whole mass in kilograms.</summary>
    public decimal Kilograms => Grams / 1000m;

    /// <summary>The whole mass in ounces.</summary>
    public decimal Ounces => Grams / GramsPerOunce;

    /// <summary>The whole mass in pounds.</summary>
    public decimal Pounds => Grams / GramsPerPound;

    /// <summary>
    /// The mass to twelve decimals of a gram, to be compared with a limit: what a quotient that never ends, such as the grammage of most
    /// basis weights, left in the last digit held must not push a mass over a limit that it only reaches.
    /// </summary>
    public Mass Settled() => new(decimal.Round(Grams, SettledDecimals));

    /// <summary>A mass of <paramref name="grams"/> g.</summary>
    public static Mass FromGrams(decimal grams) => new(grams);

    /// <summary>A mass of <paramref name="kilograms"/> kg.</summary>
    public static Mass FromKilograms(decimal kilograms) => new(kilograms * 1000m);

    /// <summary>A mass of <paramref name="ounces"/> oz.</summary>
    public static Mass FromOunces(decimal ounces) => new(ounces * GramsPerOunce);

    /// <summary>A mass of <paramref name="pounds"/> lb.</summary>
    public static Mass FromPounds(decimal pounds) => new(pounds * GramsPerPound);

    /// <summary>The sum of two masses.</summary>
    public static Mass operator +(Mass left, Mass right) => new(left.Grams + right.Grams);

    /// <summary>What is left of <paramref name="left"/> when <paramref name="right"/> is taken off; may be negative.</summary>
    public static Mass operator -(Mass left, Mass right) => new(left.Grams - right.Grams);

    /// <summary>A mass taken <paramref name="factor"/> times.</summary>
    public static Mass operator *(Mass mass, decimal factor) => new(mass.Grams * factor);

    /// <summary>A mass taken <paramref name="factor"/> times.</summary>
    public static Mass operator *(decimal factor, Mass mass) => mass * factor;

    /// <summary>True where the left mass is the lighter one.</summary>
    public static bool operator <(Mass left, Mass right) => left.Grams < right.Grams;

    /// <summary>True where the left mass is the heavier one.</summary>
    public static bool operator >(Mass left, Mass right) => left.Grams > right.Grams;

    /// <summary>True where the left mass is not the heavier one.</summary>
    public static bool operator <=(Mass left, Mass right) => left.Grams <= right.Grams;

    /// <summary>True where the left mass is not the lighter one.</summary>
    public static bool operator >=(Mass left, Mass right) => left.Grams >= right.Grams;

    /// <inheritdoc/>
    public int CompareTo(Mass other) => Grams.CompareTo(other.Grams);
}
