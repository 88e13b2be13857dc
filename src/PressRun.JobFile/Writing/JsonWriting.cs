using System.Text.Encodings.Web;
using System.Text.Json;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Writing;

/// <summary>Values as the job file writes them. What is null, and so left out, is not written.</summary>
internal static class JsonWriting
{
    /// <summary>Letters of all scripts stand as they are: the output is a file or an answer of its own, never part of a page.</summary>
    public static JsonWriterOptions Options(bool indented) => new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Indented = indented,
        NewLine = "\n",
    };

    public static void Text(this Utf8JsonWriter json, string name, string? text)
    {
        if (text is not null)
        {
            json.WriteString(name, text);
        }
    }

    public static void Number(this Utf8JsonWriter json, string name, decimal? number)
    {
        if (number is { } value)
        {
            json.WriteNumber(name, NumberText.Trimmed(value));
        }
    }

    /// <summary>An amount as a decimal string with at least the digits of the minor unit, and more only where there are more.</summary>
    public static void Amount(this Utf8JsonWriter json, string name, decimal? amount, Currency currency)
    {
        if (amount is { } value)
        {
            json.WriteString(name, Amounts.AtLeastMinorDigits(value, currency));
        }
    }

    public static void Length(this Utf8JsonWriter json, string name, Length? length)
    {
        if (length is { } value)
        {
            json.WriteString(name, MeasureText.Exact(value));
        }
    }

    public static void Mass(this Utf8JsonWriter json, string name, Mass? mass)
    {
        if (mass is { } value)
        {
            json.WriteString(name, MeasureText.Exact(value));
        }
    }

    public static void Weight(this Utf8JsonWriter json, string name, PaperWeight weight) => json.WriteString(name, MeasureText.Exact(weight));

    public static void Day(this Utf8JsonWriter json, string name, DateOnly day) =>
        json.WriteString(name, day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));

    public static void Word<T>(this Utf8JsonWriter json, string name, Words<T> words, T value)
        where T : struct, Enum => json.WriteString(name, words.Of(value));

    /// <summary>A list of objects; an empty one is left out.</summary>
    public static void List<T>(this Utf8JsonWriter json, string name, IReadOnlyList<T> items, Action<Utf8JsonWriter, T> writeMembers)
    {
        if (items.Count == 0)
        {
            return;
        }

        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            writeMembers(json, item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
