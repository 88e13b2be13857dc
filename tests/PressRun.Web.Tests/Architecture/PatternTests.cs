using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Components;
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

    // The framework ends a page at a value that it cannot read as what the page takes, and writes its trace into the log.
    [Fact]
    public void What_an_address_asks_of_a_page_is_taken_as_text()
    {
        var asked = typeof(Typed).Assembly.GetTypes().Where(typeof(IComponent).IsAssignableFrom)
            .SelectMany(page => page.GetProperties(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly))
            .Where(property => property.GetCustomAttribute<SupplyParameterFromQueryAttribute>() is not null).ToList();

        Assert.True(asked.Count > 20, "What pages ask for is found.");
        Assert.All(asked, property => Assert.Equal(typeof(string), property.PropertyType));
    }
}
