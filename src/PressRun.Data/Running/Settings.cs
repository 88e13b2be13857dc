using System.Reflection;

namespace PressRun.Data.Running;

/// <summary>Says in the documentation's words what a property of the options sets.</summary>
/// <param name="usual">What holds where the host says nothing.</param>
/// <param name="sets">What it sets.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class SettingAttribute(string usual, string sets) : Attribute
{
    /// <summary>What holds where the host says nothing.</summary>
    public string Usual { get; } = usual;

    /// <summary>What it sets.</summary>
    public string Sets { get; } = sets;
}

/// <summary>A variable by which the host sets something.</summary>
/// <param name="Variable">As it stands in the environment.</param>
/// <param name="Usual">What holds where it is left out, in words.</param>
/// <param name="Sets">What it sets.</param>
public sealed record Setting(string Variable, string Usual, string Sets);

/// <summary>Everything that the host can set: PressRun's own options, and those of the framework that it needs.</summary>
public static class Settings
{
    /// <summary>The host names that are always answered to: those of this machine alone.</summary>
    public const string UsualHosts = "localhost;127.0.0.1;[::1]";

    /// <summary>In the order of the documentation.</summary>
    public static IReadOnlyList<Setting> All { get; } =
    [
        new("ConnectionStrings__PressRun", "none: a private PostgreSQL", "the database, in [Npgsql's form](https://www.npgsql.org/doc/connection-string-parameters.html)"),
        .. typeof(PressRunOptions).GetProperties().Select(property => (property.Name, Said: property.GetCustomAttribute<SettingAttribute>()))
            .Where(option => option.Said is not null).Select(option => new Setting($"{PressRunOptions.Section}__{option.Name}", option.Said!.Usual, option.Said.Sets)),
        new("PressRun__Api__MostAtOnce", "one fewer than the processors", "short jobs that the HTTP interface works out at the same time"),
        new("PressRun__Api__MostLongAtOnce", "half the processors", "long ones, such as ladders of many quantities, beside them"),
        new("PressRun__Api__MostWaiting", "`64`", "jobs that wait for their turn; further ones are answered by 503"),
        new("PressRun__Api__LongestSeconds", "`20`", "seconds that a job may wait and be worked on"),
        new("ASPNETCORE_URLS", "`http://127.0.0.1:5080`", "where it listens"),
        new("AllowedHosts", "none", $"host names that it answers to besides `{UsualHosts}`, separated by semicolons, also where a proxy forwards another"),
        new("PathBase", "none", "path that it is served under, such as `/press`"),
        new("TZ", "the machine's", "the zone that [days and times](#days-and-times) are told in, such as `Europe/Vienna`"),
        new("LANG", "English", "language and numbers of [mail](#mail), such as `de_DE.UTF-8`"),
        new("Logging__LogLevel__Default", "`Information`", "how much PressRun itself tells: `Warning` and up leave lines out, `Debug` and `Trace` add none, and what the framework says of requests stays off; `Logging__Console__FormatterName=json` logs as JSON"),
    ];

    /// <summary>The table of docs/operating.md.</summary>
    public static string Table() => string.Concat(
        All.Select(setting => $"| `{setting.Variable}` | {setting.Usual} | {setting.Sets} |\n").Prepend("|---|---|---|\n").Prepend("| variable | default | what it sets |\n"));
}
