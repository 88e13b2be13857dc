using System.Globalization;
using System.Text;
using PressRun.Data.Presses;
using PressRun.Data.Running;
using PressRun.Engine.Measures;
using PressRun.Web.Shared.Faces;

namespace PressRun.Web.Shared.Wording;

/// <summary>Writes figures as one press and one viewer read them: the press's units and currency, the viewer's locale. It rounds for display only.</summary>
/// <param name="currency">Of all amounts.</param>
/// <param name="units">Shown first.</param>
/// <param name="culture">The viewer's.</param>
/// <param name="zone">Where days are counted; null for where the server stands.</param>
public sealed class PressFormat(Currency currency, UnitSystem units, CultureInfo culture, TimeZoneInfo? zone = null)
{
    // A sixteenth of an inch is the finest mark of a common ruler; a length within 0.02 mm of one is that mark.
    private const int FinestFraction = 16;
    private const decimal FractionTolerance = 0.0008m;

    // Where a locale puts the sign (NumberFormatInfo.CurrencyPositivePattern).
    private const int Before = 0;
    private const int BeforeGap = 2;
    private const int AfterGap = 3;

    // Names of months are words of a sentence: they are in the language of the sentences, whatever the viewer's numbers look like.
    private readonly CultureInfo words = Texts.Language;

    private readonly TimeZoneInfo here = zone ?? TimeZoneInfo.Local;

    private readonly NumberFormatInfo figures = WithMinus(culture, "\u2212");

    private readonly NumberFormatInfo filed = WithMinus(culture, "-");

    /// <summary>Of all amounts.</summary>
    public Currency Currency { get; } = currency;

    /// <summary>How the currency is told beside a figure. A sign that several currencies have says which one only where the viewer is at home in it; elsewhere the code does.</summary>
    public string CurrencySign { get; } = currency.Code switch
    {
        "EUR" => "€",
        "GBP" => "£",
        var code when !culture.IsNeutralCulture && culture.Name.Length > 0 && new RegionInfo(culture.Name) is var home && home.ISOCurrencySymbol == code && IsPlain(home.CurrencySymbol) => home.CurrencySymbol,
        var code => code,
    };

    /// <summary>Shown first.</summary>
    public UnitSystem Units { get; } = units;

    /// <summary>The viewer's.</summary>
    public CultureInfo Culture { get; } = culture;

    /// <summary>Unit of a length that is typed without one.</summary>
    public string LengthUnit => Units == UnitSystem.Imperial ? "in" : "mm";

    /// <summary>Unit of a mass that is typed without one.</summary>
    public string MassUnit => Units == UnitSystem.Imperial ? "oz" : "g";

    /// <summary>A count: <c>1,200</c>.</summary>
    public string Count(decimal count) => count.ToString("N0", figures);

    /// <summary>An amount with the digits of the currency's minor unit, without its sign: <c>305.83</c>.</summary>
    public string Money(decimal amount) => Currency.Round(amount).ToString("N" + Currency.MinorDigits.ToString(CultureInfo.InvariantCulture), figures);

    /// <summary>An amount that stands by itself, such as the sum that a page begins with: with its currency where the viewer's locale puts it, <c>€305.83</c>, <c>305,83 €</c>, <c>CHF 305.83</c>.</summary>
    public string Sum(decimal amount)
    {
        var (number, pattern) = (Money(Math.Abs(amount)), Culture.NumberFormat.CurrencyPositivePattern);
        var gap = pattern is AfterGap or BeforeGap || char.IsLetter(CurrencySign[^1]) || char.IsLetter(CurrencySign[0]) ? "\u00a0" : "";
        var sum = pattern is Before or BeforeGap ? CurrencySign + gap + number : number + gap + CurrencySign;
        return Currency.Round(amount) < 0m ? figures.NegativeSign + sum : sum;
    }

    /// <summary>A price that may be finer than the minor unit, with as many digits as it has: <c>0.004</c>.</summary>
    public string Price(decimal price) => price.ToString("N" + Math.Max(Currency.MinorDigits, Scale(price)).ToString(CultureInfo.InvariantCulture), figures);

    /// <summary>An amount in a table for a spreadsheet: every digit it has and at least the currency's, with a hyphen for minus and without marks between thousands,
    /// which not every spreadsheet reads back: <c>1305.80</c>.</summary>
    public string ForFile(decimal amount) => amount.ToString($"0.{new string('0', Currency.MinorDigits)}{new string('#', 28 - Currency.MinorDigits)}", filed);

    /// <summary>A fraction as per cent: <c>5 %</c>.</summary>
    public string Percent(decimal fraction) => (fraction * 100m).ToString("0.##", figures) + "\u00a0%";

    /// <summary>A fraction as so many of a hundred, to the last digit, as it is typed.</summary>
    public string PerHundred(decimal fraction) => Number(fraction * 100m, 10);

    /// <summary>How far a second figure is above the first where both are shown with so many decimals: who takes one from the other finds it.</summary>
    public static decimal Apart(decimal first, decimal second, int decimals) => Rounded(second, decimals) - Rounded(first, decimals);

    /// <summary>A mass as <see cref="Mass(Mass)"/> shows it.</summary>
    public Mass AsShown(Mass mass) => Units switch
    {
        UnitSystem.Imperial when mass.Pounds >= 1m => Engine.Measures.Mass.FromPounds(Rounded(mass.Pounds, 1)),
        UnitSystem.Imperial => Engine.Measures.Mass.FromOunces(Rounded(mass.Ounces, mass.Ounces < 10m ? 2 : 1)),
        _ when mass.Grams >= 1000m => Engine.Measures.Mass.FromKilograms(Rounded(mass.Kilograms, 1)),
        _ => Engine.Measures.Mass.FromGrams(Rounded(mass.Grams, mass.Grams < 10m ? 1 : 0)),
    };

    /// <summary>A thickness as <see cref="Thickness"/> shows it.</summary>
    public Length AsShown(Length length) => Units == UnitSystem.Imperial
        ? Engine.Measures.Length.FromInches(Rounded(length.Inches, 3))
        : Engine.Measures.Length.FromMillimetres(Rounded(length.Millimetres, Decimals(length)));

    /// <summary>A number with at most so many decimals: hours, sheets a copy.</summary>
    public string Number(decimal number, int decimals) => number.ToString("#,0." + new string('#', decimals), figures);

    /// <summary>A size on the page: inches with ruler fractions, or millimetres.</summary>
    public Shown Length(Length length) => Units == UnitSystem.Imperial ? Inches(length) : new Shown(Number(length.Millimetres, 1), null, "mm");

    /// <summary>The thickness of a book or a paper: too fine for ruler fractions, and with as many decimals beside a round figure as beside another, so that both read as equally sure.</summary>
    public Shown Thickness(Length length) => Units == UnitSystem.Imperial
        ? new Shown(Fixed(length.Inches, 3), null, "in")
        : new Shown(Fixed(length.Millimetres, Decimals(length)), null, "mm");

    /// <summary>A thickness as somebody gauged and typed it, without its unit.</summary>
    public string Gauged(Length length) => Units == UnitSystem.Imperial ? Number(length.Inches, 4) : Number(length.Millimetres, 3);

    /// <summary>A mass as somebody weighed and typed it, in <see cref="MassUnit"/> and without it.</summary>
    public string Weighed(Mass mass) => Units == UnitSystem.Imperial ? Number(mass.Ounces, 3) : Number(mass.Grams, 2);

    /// <summary>The mass of a copy or a carton.</summary>
    public Shown Mass(Mass mass) => Units switch
    {
        UnitSystem.Imperial when mass.Pounds >= 1m => new Shown(Number(mass.Pounds, 1), null, "lb"),
        UnitSystem.Imperial => new Shown(Number(mass.Ounces, mass.Ounces < 10m ? 2 : 1), null, "oz"),
        _ when mass.Grams >= 1000m => new Shown(Number(mass.Kilograms, 1), null, "kg"),
        _ => new Shown(Number(mass.Grams, mass.Grams < 10m ? 1 : 0), null, "g"),
    };

    /// <summary>How much heavier a piece may get: never told as more than it is, and to the tenth of a gram where grams decide.</summary>
    public Shown Spare(Mass mass) => Units switch
    {
        UnitSystem.Imperial when mass.Pounds >= 1m => new Shown(Number(Down(mass.Pounds, 1), 1), null, "lb"),
        UnitSystem.Imperial => new Shown(Number(Down(mass.Ounces, 2), 2), null, "oz"),
        _ when mass.Grams >= 1000m => new Shown(Number(Down(mass.Kilograms, 1), 1), null, "kg"),
        _ when mass.Grams >= FinelySpare => new Shown(Number(Down(mass.Grams, 0), 0), null, "g"),
        _ => new Shown(Number(Down(mass.Grams, 1), 1), null, "g"),
    };

    /// <summary>How much thicker a piece may get: never told as more than it is.</summary>
    public Shown Spare(Length length)
    {
        var decimals = Decimals(length);
        return Units == UnitSystem.Imperial ? new Shown(Fixed(Down(length.Inches, 3), 3), null, "in") : new Shown(Fixed(Down(length.Millimetres, decimals), decimals), null, "mm");
    }

    /// <summary>The mass of a piece as finely as what it has to spare is shown beside it, so that both add up to the limit.</summary>
    public Shown MassBeside(Mass mass, Mass spare) => Units == UnitSystem.Metric && spare.Grams < FinelySpare && mass.Grams is >= 10m and < 1000m
        ? new Shown(Number(mass.Grams, 1), null, "g")
        : Mass(mass);

    /// <summary>A page size: <c>5½ × 8½ in</c>.</summary>
    public string Size(Engine.Editions.Size size) => $"{Length(size.Width).NumberText} × {Length(size.Height)}";

    /// <summary>A day in a sentence, in the language of the sentence whatever the viewer's numbers look like: <c>3 March 2026</c>.</summary>
    public string Day(DateOnly day) => day.ToString(Say($"d MMMM yyyy"), words);

    /// <summary>A day as it stands in a table: <c>3 Mar 2026</c>.</summary>
    public string ShortDay(DateOnly day) => Written(day);

    /// <summary>The same where no press is at hand, as in a field for a day.</summary>
    public static string Written(DateOnly day) => day.ToString(Say($"d MMM yyyy"), Texts.Language);

    /// <summary>A day where the year is plain: <c>3 Mar</c>.</summary>
    public string DayOfYear(DateOnly day) => day.ToString(Say($"d MMM"), words);

    /// <summary>A month as a heading: <c>March 2026</c>.</summary>
    public string Month(DateOnly month) => month.ToString(Say($"MMMM yyyy"), words);

    /// <summary>A month in a table: <c>Mar 2026</c>.</summary>
    public string ShortMonth(DateOnly month) => month.ToString(Say($"MMM yyyy"), words);

    /// <summary>A month on an axis: <c>Mar</c>, and of January its year.</summary>
    public string MonthOfAxis(DateOnly month) => month.ToString(month.Month == 1 ? "yyyy" : "MMM", words);

    /// <summary>A moment in a table: <c>3 Mar, 14:05 UTC+1</c>.</summary>
    public string Moment(DateTimeOffset at) => Moments.Told(at, Say($"d MMM, HH:mm"), words, here);

    /// <summary>The day that a moment falls on, where days are counted.</summary>
    public DateOnly DayOf(DateTimeOffset at) => here.DayOf(at);

    // Letters that run from the right, which no face of documents has, and signs that only direct text would turn the sentence around them, and what the faces lack would be a mark there: the code says as much.
    private static bool IsPlain(string sign) => !Face.Lacks(sign) && sign.EnumerateRunes().All(letter => Rune.GetUnicodeCategory(letter) != UnicodeCategory.Format);

    // A figure that is shown has a minus sign; a hyphen is what a keyboard has instead. Typed figures are read with either.
    private static NumberFormatInfo WithMinus(CultureInfo culture, string sign)
    {
        var figures = (NumberFormatInfo)culture.NumberFormat.Clone();
        // Some have signs beside it that direct text, and turn the figure around in a sentence that runs the other way.
        figures.NegativeSign = sign;
        return figures;
    }

    private static readonly Length Millimetre = Engine.Measures.Length.FromMillimetres(1m);

    // No pile of paper is gauged to a tenth of a millimetre from here on.
    private static readonly Length Hand = Engine.Measures.Length.FromMillimetres(100m);

    // Grams of postage are counted finely only where few are left.
    private const decimal FinelySpare = 100m;

    private static int Decimals(Length length) => length < Millimetre ? 2 : length < Hand ? 1 : 0;

    private static decimal Rounded(decimal number, int decimals) => decimal.Round(number, decimals, MidpointRounding.AwayFromZero);

    private static decimal Down(decimal number, int decimals) => decimal.Round(number, decimals, MidpointRounding.ToZero);

    private string Fixed(decimal number, int decimals) => number.ToString("N" + decimals.ToString(CultureInfo.InvariantCulture), figures);

    private Shown Inches(Length length)
    {
        var whole = decimal.Truncate(length.Inches);
        var parts = (length.Inches - whole) * FinestFraction;
        var nearest = decimal.Round(parts);
        if (Math.Abs(parts - nearest) > FractionTolerance * FinestFraction)
        {
            return new Shown(Number(length.Inches, 3), null, "in");
        }

        if (nearest == 0m)
        {
            return new Shown(Count(whole), null, "in");
        }

        if (nearest == FinestFraction)
        {
            return new Shown(Count(whole + 1m), null, "in");
        }

        var (numerator, denominator) = ((int)nearest, FinestFraction);
        while (numerator % 2 == 0)
        {
            numerator /= 2;
            denominator /= 2;
        }

        return new Shown(whole == 0m ? "" : Count(whole), string.Create(CultureInfo.InvariantCulture, $"{numerator}/{denominator}"), "in");
    }

    private static int Scale(decimal price) => (price / 1.0000000000000000000000000000m).Scale;
}
