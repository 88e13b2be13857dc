using System.Text.Json;
using PressRun.Engine.Measures;
using PressRun.JobFile.Reading;
using PressRun.JobFile.Writing;

namespace PressRun.JobFile.Results;

/// <summary>Figures as results write them. What is null is written as null, since a result always has all its members.</summary>
internal static class ResultWriting
{
    private const int MeasureDecimals = 6;

    /// <summary>A measure: six decimals at most, halves away from zero, no trailing zeros.</summary>
    public static void Measure(this Utf8JsonWriter json, string name, decimal? value)
    {
        if (value is { } number)
        {
            json.WriteNumber(name, Rounded(number));
        }
        else
        {
            json.WriteNull(name);
        }
    }

    /// <summary>A measure in a list.</summary>
    public static void MeasureValue(this Utf8JsonWriter json, decimal value) => json.WriteNumberValue(Rounded(value));

    /// <summary>An amount that the costing has rounded, with the digits of the minor unit.</summary>
    public static void Money(this Utf8JsonWriter json, string name, decimal? amount, Currency currency) =>
        json.WriteString(name, amount is { } value ? currency.Format(NumberText.Trimmed(value)) : null);

    /// <summary>A price, with the digits of the minor unit and more only where it has more.</summary>
    public static void Price(this Utf8JsonWriter json, string name, decimal? price, Currency currency) =>
        json.WriteString(name, price is { } value ? Amounts.AtLeastMinorDigits(value, currency) : null);

    /// <summary>A figure per copy, with four decimals.</summary>
    public static void PerCopy(this Utf8JsonWriter json, string name, decimal? amount) =>
        json.WriteString(name, amount is { } value ? Amounts.PerCopy(value) : null);

    public static void Count(this Utf8JsonWriter json, string name, long? count)
    {
        if (count is { } number)
        {
            json.WriteNumber(name, number);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    private static decimal Rounded(decimal value) => NumberText.Trimmed(decimal.Round(value, MeasureDecimals, MidpointRounding.AwayFromZero));
}
