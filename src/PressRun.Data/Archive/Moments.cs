using System.Globalization;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Archive;

/// <summary>Moments in an archive: universal time, to the microsecond, in one form only.</summary>
internal static class Moments
{
    /// <summary>How a moment is written.</summary>
    public const string Rule = "Write a moment in universal time, such as \"2026-03-02T14:00:00.000000Z\".";

    private const string Form = "yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'";

    private static readonly TextRule Text = new(Rule, 40, false);

    public static string Written(DateTimeOffset at) => at.UtcDateTime.ToString(Form, CultureInfo.InvariantCulture);

    public static DateTimeOffset Read(JsonBlock block, string name)
    {
        if (block.Text(name, Need.Must, Text) is not { } text)
        {
            return default;
        }

        if (DateTimeOffset.TryParseExact(text, Form, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var at))
        {
            return at;
        }

        block.Problems.Add(block.Path.Member(name), text, Rule);
        return default;
    }
}
