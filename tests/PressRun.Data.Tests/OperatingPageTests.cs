using PressRun.Data.Running;
using PressRun.Data.Tests.Fixtures;

namespace PressRun.Data.Tests;

public sealed class OperatingPageTests
{
    [Fact]
    public void The_operating_page_has_a_row_for_every_setting_and_none_for_others()
    {
        var rows = File.ReadLines(Path.Combine(Repository.Root, "docs", "operating.md"))
            .Where(line => line.StartsWith("| `PressRun__", StringComparison.Ordinal))
            .Select(line => line.Split('`')[1]);

        Assert.Equal(
            typeof(PressRunOptions).GetProperties().Select(property => $"PressRun__{property.Name}").Order(StringComparer.Ordinal),
            rows.Order(StringComparer.Ordinal));
    }
}
