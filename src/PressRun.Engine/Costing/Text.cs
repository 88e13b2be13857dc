using System.Globalization;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Costing;

/// <summary>Figures in the engine's own sentences: invariant, at most two decimals.</summary>
internal static class Text
{
    public static string Of(long value) => value.ToString(CultureInfo.InvariantCulture);

    public static string Of(decimal value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    public static string Exact(decimal value) => value.ToString("0.############################", CultureInfo.InvariantCulture);

    public static string Mm(Length length) => $"{Of(length.Millimetres)} mm";

    public static string G(Mass mass) => $"{Of(mass.Grams)} g";

    public static string Kg(Mass mass) => $"{Of(mass.Kilograms)} kg";

    public static string Date(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
