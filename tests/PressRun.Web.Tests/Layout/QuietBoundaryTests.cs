using Microsoft.Extensions.Logging;
using PressRun.Web.Layout;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Layout;

public sealed class QuietBoundaryTests
{
    [Fact]
    public async Task A_fault_is_told_in_full_once_a_minute_and_another_fault_by_itself()
    {
        using var heard = new HeardLines();
        using var logging = LoggerFactory.Create(made => made.AddProvider(heard));
        var time = new SetClock();
        var boundary = new QuietBoundary(logging.CreateLogger<QuietBoundary>(), time);

        await boundary.LogErrorAsync(Thrown(() => throw new InvalidOperationException("One.")));
        await boundary.LogErrorAsync(Thrown(() => int.Parse("x", null)));
        time.Pass(TimeSpan.FromSeconds(59));
        for (var again = 0; again < 100; again++)
        {
            await boundary.LogErrorAsync(Thrown(() => int.Parse("y", null)));
        }

        Assert.Equal(2, heard.Lines.Count(line => line == "A page could not be shown"));
        Assert.Equal(100, heard.Lines.Count(line => line == "A page could not be shown, for the reason told a moment ago: FormatException"));

        time.Pass(TimeSpan.FromSeconds(2));
        await boundary.LogErrorAsync(Thrown(() => int.Parse("x", null)));
        Assert.Equal(3, heard.Lines.Count(line => line == "A page could not be shown"));
    }

    private static Exception Thrown(Action defect) => Record.Exception(defect)!;
}
