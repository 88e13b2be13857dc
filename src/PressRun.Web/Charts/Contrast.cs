using System.Globalization;

namespace PressRun.Web.Charts;

/// <summary>How light a colour is to the eye.</summary>
public static class Contrast
{
    /// <summary>Relative luminance of an sRGB colour, 0 black to 1 white (WCAG 2.2, definition of relative luminance).</summary>
    /// <param name="colour">As <c>#rrggbb</c>; anything else counts as middle grey.</param>
    public static double Luminance(string colour)
    {
        if (colour.Length != 7 || !int.TryParse(colour.AsSpan(1), NumberStyles.HexNumber, CultureInfo.InvariantCulture, out var rgb))
        {
            return 0.2;
        }

        return (0.2126 * Linear((rgb >> 16) & 255)) + (0.7152 * Linear((rgb >> 8) & 255)) + (0.0722 * Linear(rgb & 255));
    }

    private static double Linear(int channel)
    {
        var part = channel / 255.0;
        return part <= 0.04045 ? part / 12.92 : Math.Pow((part + 0.055) / 1.055, 2.4);
    }
}
