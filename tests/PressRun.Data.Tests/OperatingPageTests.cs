using System.Globalization;
using PressRun.Data.Running;
using PressRun.Data.Tests.Fixtures;

namespace PressRun.Data.Tests;

public sealed class OperatingPageTests
{
    [Fact]
    public void The_table_of_settings_is_the_one_that_the_code_makes()
    {
        var page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "operating.md"));
        var from = page.IndexOf("| variable |", StringComparison.Ordinal);
        var stands = page[from..(page.IndexOf("\n\n", from, StringComparison.Ordinal) + 1)];
        Assert.True(stands == Settings.Table(), $"docs/operating.md is out of date. Its table has to be:{Environment.NewLine}{Settings.Table()}");
    }

    [Fact]
    public void Every_option_says_what_it_sets_and_what_holds_without_it()
    {
        var usual = new PressRunOptions();
        Assert.All(typeof(PressRunOptions).GetProperties(), property =>
        {
            var setting = Assert.Single(Settings.All, setting => setting.Variable == $"PressRun__{property.Name}");
            Assert.NotEmpty(setting.Sets);
            // What the code holds without a setting is what the words say; nothing is said otherwise, such as "none".
            if (property.GetValue(usual) is { } value && Convert.ToString(value, CultureInfo.InvariantCulture) is { Length: > 0 } text)
            {
                Assert.StartsWith($"`{text.ToLowerInvariant()}`", setting.Usual, StringComparison.Ordinal);
            }
        });
    }
}
