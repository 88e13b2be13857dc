using System.Globalization;

namespace PressRun.Web.Charts;

/// <summary>Numbers as SVG wants them: a point whatever the viewer's locale, two decimals at most.</summary>
public static class Svg
{
    /// <summary>A coordinate.</summary>
    public static string N(double coordinate) => coordinate.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>A point.</summary>
    public static string Point(double x, double y) => N(x) + "," + N(y);
}
