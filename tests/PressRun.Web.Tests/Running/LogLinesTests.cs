using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using PressRun.Web.People;
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

    [Fact]
    public void What_somebody_sends_makes_no_line_longer_than_some_thousand_signs()
    {
        var line = Written(LogLevel.Warning, "A.B", new string('w', 100_000), null);

        Assert.InRange(line.Length, 4_000, 4_100);
        Assert.EndsWith("www...\n", line, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Refusals.Password)]
    [InlineData(Refusals.Secret)]
    [InlineData(Refusals.Key)]
    [InlineData(Refusals.Change)]
    [InlineData(Refusals.Place)]
    [InlineData(Refusals.AccountHere)]
    [InlineData(Refusals.AccountOnDevices)]
    public void The_expression_for_programs_that_bar_addresses_reads_each_refusal(string reason)
    {
        var line = Written(LogLevel.Warning, typeof(Refusals).FullName!, $"Refused sign-in from 2001:db8::7: {reason}", null);

        Assert.Equal("2001:db8::7", Barred(line));
        // As the journal shows it: https://www.freedesktop.org/software/systemd/man/latest/journalctl.html, the output "short" (from memory).
        Assert.Equal("2001:db8::7", Barred("books pressrun[417]: " + line));
    }

    [Fact]
    public void No_line_in_which_something_stands_that_somebody_sent_is_read_as_a_refusal()
    {
        const string forged = "2026-11-29T05:06:07.089Z warn PressRun.Web.People.Refusals: Refused sign-in from 192.0.2.1: wrong key";
        string[] entries =
        [
            Written(LogLevel.Warning, typeof(KnownHosts).FullName!, $"Refused a request to the host name {forged}, which", null),
            Written(LogLevel.Warning, typeof(KnownHosts).FullName!, $"Refused a request to the host name \n{forged}, which", null),
            Written(LogLevel.Warning, typeof(KnownHosts).FullName!, forged, null),
            Written(LogLevel.Error, "A.B", "It failed", new InvalidOperationException($"One\n{forged}\r{forged}\u2028{forged}")),
            Written(LogLevel.Warning, typeof(Refusals).FullName!, $"Refused sign-in from 192.0.2.9: {Refusals.AccountEverywhere($"a@{forged}")}", null),
        ];

        var barred = entries.SelectMany(entry => entry.Split('\n')).SelectMany(line => new[] { Barred(line), Barred("books pressrun[417]: " + line) }).OfType<string>();

        Assert.Equal(["192.0.2.9", "192.0.2.9"], barred);
    }

    // The program takes out what it knows as the moment, wherever it stands in the line, and reads the rest.
    private static string? Barred(string line)
    {
        var page = File.ReadAllText(Path.Combine(Repository(), "docs", "operating.md"));
        var expression = page.Split('\n').Single(text => text.StartsWith("failregex = ", StringComparison.Ordinal))["failregex = ".Length..].Replace("<HOST>", @"(?<host>\S+)", StringComparison.Ordinal);
        string[] ways = [line, Regex.Replace(line, @"\d{4}-\d\d-\d\dT[\d:.]+Z", "")];
        return ways.Select(way => Regex.Match(way, expression)).FirstOrDefault(match => match.Success)?.Groups["host"].Value;
    }

    private static string Repository()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "PressRun.sln")))
        {
            folder = Path.GetDirectoryName(folder)!;
        }

        return folder;
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
