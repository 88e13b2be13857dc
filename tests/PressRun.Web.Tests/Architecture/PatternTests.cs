using System.Reflection;
using System.Text.RegularExpressions;
using PressRun.Data.Import.Csv;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Tests.Architecture;

public class PatternTests
{
    // A busy machine can let more than any such time pass between two characters: what is read is bounded instead.
    [Fact]
    public void No_pattern_gives_up_by_the_clock()
    {
        var patterns = new[] { typeof(Typed).Assembly, typeof(CsvMapping).Assembly }.SelectMany(assembly => assembly.GetTypes())
            .SelectMany(type => type.GetMethods(BindingFlags.Static | BindingFlags.NonPublic | BindingFlags.Public | BindingFlags.DeclaredOnly))
            .Select(method => (method.DeclaringType!.Name, method.GetCustomAttribute<GeneratedRegexAttribute>()?.MatchTimeoutMilliseconds))
            .Where(pattern => pattern.MatchTimeoutMilliseconds is not null).ToList();

        Assert.True(patterns.Count > 8, "The patterns are found.");
        Assert.All(patterns, pattern => Assert.Equal(Timeout.Infinite, pattern.MatchTimeoutMilliseconds));
    }
}
