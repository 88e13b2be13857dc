using System.Globalization;
using PressRun.Engine.Measures;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Writing;

/// <summary>Amounts of money as invariant text.</summary>
public static class Amounts
{
    /// <summary>With the digits of the minor unit, and more only where the amount has more: <c>0.40</c>, <c>0.004</c>.</summary>
    public static string AtLeastMinorDigits(decimal amount, Currency currency)
    {
        var trimmed = NumberText.Trimmed(amount);
        return trimmed.Scale >= currency.MinorDigits ? trimmed.ToString(CultureInfo.InvariantCulture) : currency.Format(trimmed);
    }

    /// <summary>Rounded to four decimals, halves away from zero: the form of a figure per copy.</summary>
    public static string PerCopy(decimal amount)
    {
        var rounded = decimal.Round(amount, 4, MidpointRounding.AwayFromZero);
        return (rounded == 0m ? 0m : rounded).ToString("F4", CultureInfo.InvariantCulture);
    }
}
