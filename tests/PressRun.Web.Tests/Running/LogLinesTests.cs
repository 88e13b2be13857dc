using System.Globalization;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using PressRun.Web.Running;

namespace PressRun.Web.Tests.Running;

public sealed class LogLinesTests
{
    [Fact]
    public void An_entry_is_one_line_whatever_was_typed_and_in_whatever_calendar_its_reader_lives()
    {
        // The Thai year is 543 years ahead.
        CultureInfo.CurrentCulture = new CultureInfo("th-TH");

        Assert.Equal(
            "2026-11-29T05:06:07.089Z warn PressRun.Web.People.Refusals: Refused \\u000D\\u000A2026 \\u202Eby\n",
            Written(LogLevel.Warning, "PressRun.Web.People.Refusals", "Refused \r\n2026 \u202Eby", null));
    }

    [Fact]
    public void A_fault_follows_in_lines_that_are_indented()
    {
        var lines = Written(LogLevel.Error, "A.B", "It failed", new InvalidOperationException("One\nTwo")).Split('\n');

        Assert.Equal(["2026-11-29T05:06:07.089Z error A.B: It failed", "    System.InvalidOperationException: One", "    Two", ""], lines);
    }

    private static string Written(LogLevel level, string category, string message, Exception? fault)
    {
        using var text = new StringWriter { NewLine = "\n" };
        new LogLines(new Noon()).Write(new LogEntry<string>(level, category, default, message, fault, (state, _) => state), null, text);
        return text.ToString();
    }

    private sealed class Noon : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 11, 29, 5, 6, 7, 89, TimeSpan.Zero);
    }
}
