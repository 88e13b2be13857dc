using System.Globalization;
using System.Reflection;
using Microsoft.Extensions.Configuration;

namespace PressRun.Data.Running;

/// <summary>Looks at what the host has set before anything is done by it.</summary>
public static class SettingsReading
{
    private const string Section = PressRunOptions.Section;
    private const string Levels = "__";
    private const string FromFile = "_FILE";
    private const string ConnectionStrings = "ConnectionStrings";

    private static readonly string[] Ours = [.. Settings.All.Select(setting => setting.Variable).Where(variable => variable.Contains(Levels, StringComparison.Ordinal))];

    /// <summary>Options that are left empty, and so to be taken as if they were not set: a sample file of settings may name them all.</summary>
    /// <returns>Their keys, each with what holds without it.</returns>
    /// <exception cref="StartRefusedException">An option that is no text cannot be read; the sentence says what would be right.</exception>
    public static Dictionary<string, string?> Emptied(IConfiguration configuration)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        var (usual, emptied) = (new PressRunOptions(), new Dictionary<string, string?>());
        foreach (var option in typeof(PressRunOptions).GetProperties().Where(option => option.GetCustomAttribute<SettingAttribute>() is not null))
        {
            var key = $"{Section}:{option.Name}";
            if (configuration[key] is not { } text)
            {
                continue;
            }

            if (string.IsNullOrWhiteSpace(text))
            {
                emptied[key] = Convert.ToString(option.GetValue(usual), CultureInfo.InvariantCulture);
            }
            else if (Wanted(option.PropertyType, text) is { } wanted)
            {
                throw new StartRefusedException($"{Section}{Levels}{option.Name} is {text}; write {wanted}.");
            }
        }

        return emptied;
    }

    /// <summary>Settings that look like PressRun's and are none: nothing is done by them.</summary>
    /// <returns>Each with the nearest that there is.</returns>
    public static IReadOnlyList<(string Variable, string Nearest)> Unknown(IConfiguration configuration)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        var alike = configuration.GetChildren().Select(root => root.Key).Where(key => key.StartsWith(Section, StringComparison.OrdinalIgnoreCase) && !Same(key, Section));
        var inside = new[] { Section, ConnectionStrings }.SelectMany(section => configuration.GetSection(section).AsEnumerable())
            .Where(setting => setting.Value is not null && !Same(setting.Key, Section) && !Same(setting.Key, ConnectionStrings))
            .Select(setting => setting.Key.Replace(":", Levels, StringComparison.Ordinal));
        return [.. alike.Concat(inside).Where(variable => !IsKnown(variable)).Order(StringComparer.Ordinal).Select(variable => (variable, Nearest(variable)))];
    }

    private static string? Wanted(Type type, string text) =>
        type == typeof(bool) && !bool.TryParse(text, out _) ? "true or false"
        : type == typeof(int) && !int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out _) ? "a whole number"
        : null;

    private static bool IsKnown(string variable) => Ours.Any(known => Same(known, Named(variable)));

    // The setting, also where its value is to come from a file.
    private static string Named(string variable) => variable.EndsWith(FromFile, StringComparison.Ordinal) ? variable[..^FromFile.Length] : variable;

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);

    private static string Nearest(string variable) => Ours.MinBy(known => Distance(known.ToUpperInvariant(), Named(variable).ToUpperInvariant()))!;

    // Letters to put in, take out or change (Levenshtein), row by row.
    private static int Distance(string one, string other)
    {
        var row = Enumerable.Range(0, other.Length + 1).ToArray();
        for (var i = 0; i < one.Length; i++)
        {
            var before = row[0]++;
            for (var j = 0; j < other.Length; j++)
            {
                (before, row[j + 1]) = (row[j + 1], Math.Min(Math.Min(row[j], row[j + 1]) + 1, before + (one[i] == other[j] ? 0 : 1)));
            }
        }

        return row[^1];
    }
}
