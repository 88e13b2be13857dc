using System.Text.RegularExpressions;
using PressRun.Data.Tests.Fixtures;

namespace PressRun.Data.Tests;

public sealed partial class SecurityPageTests
{
    [Fact]
    public void Every_test_that_the_security_checklist_names_is_there()
    {
        var tests = Directory.GetFiles(Path.Combine(Repository.Root, "tests"), "*.cs", SearchOption.AllDirectories)
            .SelectMany(file => Method().Matches(File.ReadAllText(file)).Select(method => $"{Path.GetFileNameWithoutExtension(file)}.{method.Groups[1].Value}"))
            .ToHashSet(StringComparer.Ordinal);
        var named = File.ReadLines(Path.Combine(Repository.Root, "docs", "security.md"))
            .Where(line => line.StartsWith('|')).Select(line => line.TrimEnd('|', ' ').Split('|')[^1])
            .SelectMany(cell => Named().Matches(cell)).Select(name => name.Groups[1].Value).ToList();

        Assert.True(named.Count > 40, "They are found.");
        Assert.All(named, name => Assert.Contains(tests, test => test.StartsWith(name, StringComparison.Ordinal)));
    }

    [GeneratedRegex(@"public (?:async )?(?:Task|void) (\w+)\(")]
    private static partial Regex Method();

    [GeneratedRegex(@"`(\w+\.\w+)\.\.\.`")]
    private static partial Regex Named();
}
