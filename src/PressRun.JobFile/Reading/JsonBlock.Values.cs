using System.Globalization;
using System.Text.Json;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;

namespace PressRun.JobFile.Reading;

/// <content>The kinds of values that members have.</content>
public sealed partial class JsonBlock
{
    /// <summary>Reads a text on one line.</summary>
    /// <param name="name">Its key.</param>
    /// <param name="need">Whether it may be left out.</param>
    /// <param name="rule">What it should be, and its longest length.</param>
    public string? Text(string name, Need need, TextRule rule)
    {
        if (Take(name, need, rule.Sentence) is not { } element)
        {
            return null;
        }

        if (element.ValueKind == JsonValueKind.String && element.GetString() is { } text && rule.Holds(text))
        {
            return text;
        }

        return Refuse<string>(name, element, rule.Sentence);
    }

    /// <summary>Reads true or false.</summary>
    public bool? Flag(string name, Need need = Need.May)
    {
        const string rule = "Write true or false, without quotes.";
        return Take(name, need, rule) switch
        {
            null => null,
            { ValueKind: JsonValueKind.True } => true,
            { ValueKind: JsonValueKind.False } => false,
            { } element => RefuseValue<bool>(name, element, rule),
        };
    }

    /// <summary>Reads a number: a JSON number or, unless it is a count, a decimal string.</summary>
    public decimal? Number(string name, NumberRule rule, Need need = Need.May)
    {
        if (Take(name, need, rule.Sentence) is not { } element)
        {
            return null;
        }

        return NumberOf(element, rule) ?? RefuseValue<decimal>(name, element, rule.Sentence);
    }

    /// <summary>Reads a count.</summary>
    public int? Count(string name, NumberRule rule, Need need = Need.May) => (int?)Number(name, rule, need);

    /// <summary>The number that an element is, or null where it is none that keeps the rule.</summary>
    public static decimal? NumberOf(JsonElement element, NumberRule rule)
    {
        var text = element.ValueKind switch
        {
            JsonValueKind.Number => element.GetRawText(),
            JsonValueKind.String when !rule.IsWhole => element.GetString(),
            _ => null,
        };
        return text is not null && NumberText.TryParse(text, out var number) && rule.Holds(number) ? number : null;
    }

    /// <summary>Reads a day, <c>2026-03-02</c>.</summary>
    public DateOnly? Day(string name, Need need)
    {
        const string rule = "Write a day as year-month-day, such as \"2026-03-02\".";
        if (Take(name, need, rule) is not { } element)
        {
            return null;
        }

        return element.ValueKind == JsonValueKind.String
            && DateOnly.TryParseExact(element.GetString(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            ? day
            : RefuseValue<DateOnly>(name, element, rule);
    }

    /// <summary>Reads one of several words.</summary>
    public T? Choice<T>(string name, Words<T> words, Need need = Need.May)
        where T : struct, Enum
    {
        if (Take(name, need, words.Rule) is not { } element)
        {
            return null;
        }

        var word = element.ValueKind == JsonValueKind.String ? element.GetString()! : string.Empty;
        if (words.Find(word) is { } value)
        {
            return value;
        }

        var meant = Nearest.To(word, words.All) is { } near ? $" Did you mean \"{near}\"?" : string.Empty;
        return RefuseValue<T>(name, element, words.Rule + meant);
    }

    /// <summary>Reads a length.</summary>
    public Length? Length(string name, LengthRule rule, Need need = Need.May)
    {
        if (Take(name, need, rule.Sentence) is not { } element)
        {
            return null;
        }

        return element.ValueKind == JsonValueKind.String
            && MeasureText.TryParseLength(element.GetString()!, CultureInfo.InvariantCulture, out var length)
            && rule.Holds(length)
            ? length
            : RefuseValue<Length>(name, element, rule.Sentence);
    }

    /// <summary>Reads a mass.</summary>
    public Mass? Mass(string name, MassRule rule, Need need = Need.May)
    {
        if (Take(name, need, rule.Sentence) is not { } element)
        {
            return null;
        }

        return element.ValueKind == JsonValueKind.String
            && MeasureText.TryParseMass(element.GetString()!, CultureInfo.InvariantCulture, out var mass)
            && rule.Holds(mass)
            ? mass
            : RefuseValue<Mass>(name, element, rule.Sentence);
    }

    /// <summary>Reads a paper weight, required.</summary>
    public PaperWeight? Weight(string name)
    {
        var rule = JobRules.PaperWeightSentence;
        if (Take(name, Need.Must, rule) is not { } element)
        {
            return null;
        }

        return element.ValueKind == JsonValueKind.String
            && MeasureText.TryParseWeight(element.GetString()!, CultureInfo.InvariantCulture, out var weight)
            && JobRules.IsPaperWeight(weight)
            ? weight
            : RefuseValue<PaperWeight>(name, element, rule);
    }

    private T? Refuse<T>(string name, JsonElement element, string rule)
        where T : class
    {
        Problems.Add(Path.Member(name), element, rule);
        return null;
    }

    private T? RefuseValue<T>(string name, JsonElement element, string rule)
        where T : struct
    {
        Problems.Add(Path.Member(name), element, rule);
        return null;
    }
}
