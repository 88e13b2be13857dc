using System.Globalization;
using System.Text;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Logging.Console;
using PressRun.Data.Running;

namespace PressRun.Web.Running;

/// <summary>
/// The log as it is written unless the host chooses another form: an entry a line, which begins with the moment in UTC (ISO 8601), how grave it is and who says it;
/// what belongs to a fault follows in lines that are indented. The framework's own forms write dates in the calendar of whoever asked for a page, and let what
/// somebody typed begin a line. No line is longer than some thousand signs, whoever made what stands in it.
/// </summary>
public sealed class LogLines(TimeProvider time) : ConsoleFormatter(FormName)
{
    /// <summary>How the host names this form.</summary>
    public const string FormName = "line";

    private const string Moment = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";
    private const string Indent = "    ";

    // Longer than anything the app says by itself.
    private const int MostSigns = 4_000;

    // The framework's settings of the console's log.
    private const string Form = "Logging:Console:FormatterName";
    private static readonly string[] Forms = [FormName, ConsoleFormatterNames.Json, ConsoleFormatterNames.Simple, ConsoleFormatterNames.Systemd];
    private const string JsonMoment = "Logging:Console:FormatterOptions:TimestampFormat";
    private const string JsonInUtc = "Logging:Console:FormatterOptions:UseUtcTimestamp";

    /// <summary>Makes it the usual form; the framework's JSON, which says no time by itself, says it too.</summary>
    public static void AddTo(WebApplicationBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        Check(builder.Configuration);
        builder.Services.TryAddSingleton(TimeProvider.System);
        builder.Logging.AddConsoleFormatter<LogLines, ConsoleFormatterOptions>();
        if (string.IsNullOrWhiteSpace(builder.Configuration[Form]))
        {
            builder.Configuration.AddInMemoryCollection([new(Form, FormName)]);
        }
        else if (builder.Configuration[Form] == ConsoleFormatterNames.Json && string.IsNullOrEmpty(builder.Configuration[JsonMoment]))
        {
            // The round-trip form is the same in every culture.
            builder.Configuration.AddInMemoryCollection([new(JsonMoment, "O"), new(JsonInUtc, "true")]);
        }
    }

    // The framework takes any word for a form, and refuses one for a level without saying where it stands.
    private static void Check(ConfigurationManager configuration)
    {
        foreach (var level in configuration.GetSection("Logging").AsEnumerable().Where(setting => setting.Key.Contains("LogLevel:", StringComparison.OrdinalIgnoreCase)))
        {
            if (!string.IsNullOrEmpty(level.Value) && !Enum.TryParse<LogLevel>(level.Value, ignoreCase: true, out _))
            {
                throw new StartRefusedException($"{level.Key.Replace(":", "__", StringComparison.Ordinal)} is {level.Value}; write {string.Join(", ", Enum.GetNames<LogLevel>()[..^1])} or {nameof(LogLevel.None)}.");
            }
        }

        if (configuration[Form] is { } form && !string.IsNullOrWhiteSpace(form) && !Forms.Contains(form, StringComparer.OrdinalIgnoreCase))
        {
            throw new StartRefusedException($"{Form.Replace(":", "__", StringComparison.Ordinal)} is {form}; write {ConsoleFormatterNames.Json}, or leave it out.");
        }
    }

    /// <inheritdoc/>
    public override void Write<TState>(in LogEntry<TState> logEntry, IExternalScopeProvider? scopeProvider, TextWriter textWriter)
    {
        ArgumentNullException.ThrowIfNull(textWriter);
        var said = new StringBuilder().Append(time.GetUtcNow().ToString(Moment, CultureInfo.InvariantCulture)).Append(' ').Append(Level(logEntry.LogLevel)).Append(' ')
            .Append(logEntry.Category).Append(": ");
        AppendInOneLine(said, logEntry.Formatter(logEntry.State, logEntry.Exception));
        foreach (var line in (logEntry.Exception?.ToString() ?? "").EnumerateLines())
        {
            if (line.Length > 0)
            {
                AppendInOneLine(said.Append('\n').Append(Indent), line);
            }
        }

        textWriter.WriteLine(said);
    }

    private static string Level(LogLevel level) => level switch
    {
        LogLevel.Trace => "trace",
        LogLevel.Debug => "debug",
        LogLevel.Information => "info",
        LogLevel.Warning => "warn",
        LogLevel.Error => "error",
        _ => "critical",
    };

    // Signs that end a line, or turn its direction, are written as escapes.
    private static void AppendInOneLine(StringBuilder said, ReadOnlySpan<char> text)
    {
        var cut = text.Length > MostSigns;
        foreach (var sign in cut ? text[..MostSigns] : text)
        {
            if (CharUnicodeInfo.GetUnicodeCategory(sign) is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator)
            {
                said.Append("\\u").Append(((int)sign).ToString("X4", CultureInfo.InvariantCulture));
            }
            else
            {
                said.Append(sign);
            }
        }

        said.Append(cut ? "..." : "");
    }
}
