using System.Globalization;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;

namespace PressRun.Data;

/// <summary>Rules that things of several libraries share.</summary>
internal static class LibraryRules
{
    public static List<Problem> Named(string name) =>
        string.IsNullOrWhiteSpace(name) ? [new Problem("$.name", name, "It needs a name.")] : [];

    public static void NotNegative(this List<Problem> problems, string path, decimal value)
    {
        if (value < 0m)
        {
            problems.Add(new Problem(path, value.ToString(CultureInfo.InvariantCulture), "It is 0 or more."));
        }
    }

    public static void Fraction(this List<Problem> problems, string path, decimal value)
    {
        if (value is < 0m or > 1m)
        {
            problems.Add(new Problem(path, value.ToString(CultureInfo.InvariantCulture), "A rate is a fraction from 0 to 1."));
        }
    }

    public static void Positive(this List<Problem> problems, string path, Length value)
    {
        if (value <= Length.Zero)
        {
            problems.Add(new Problem(path, value.Millimetres.ToString(CultureInfo.InvariantCulture), "A length is more than 0."));
        }
    }
}
