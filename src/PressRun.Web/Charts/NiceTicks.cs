namespace PressRun.Web.Charts;

/// <summary>Round places for the marks of an axis.</summary>
public static class NiceTicks
{
    private static readonly double[] Steps = [1, 2, 2.5, 5, 10];

    /// <summary>Distance between marks so that there are at most <paramref name="most"/> steps over a span: 1, 2, 2.5 or 5 times a power of ten.</summary>
    /// <param name="span">More than 0.</param>
    /// <param name="most">At least 1.</param>
    /// <param name="whole">True where marks must be whole numbers.</param>
    public static double Step(double span, int most, bool whole)
    {
        var rough = span / most;
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        var step = Steps.Select(factor => factor * power).First(candidate => candidate >= rough * 0.999999 && (!whole || candidate % 1 == 0 || candidate < 1));
        return whole ? Math.Max(1, step) : step;
    }

    /// <summary>Multiples of the step from <paramref name="from"/> to <paramref name="to"/>, both included where they are multiples.</summary>
    public static IEnumerable<double> Between(double from, double to, double step)
    {
        for (var n = Math.Ceiling(from / step); n * step <= to * 1.0000001; n++)
        {
            yield return n * step;
        }
    }
}
