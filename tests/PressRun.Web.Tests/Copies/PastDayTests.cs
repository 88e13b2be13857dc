using Bunit;
using PressRun.Engine.Copies;
using PressRun.Web.Copies;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Copies;

public class PastDayTests
{
    [Fact]
    public async Task A_day_that_cannot_be_read_shows_the_figures_of_no_day()
    {
        await using var page = new BunitContext();
        var view = ALedger.View(ALedger.Line(0, MovementKind.Printed, 50, 100m), ALedger.Line(3, MovementKind.Sold, -2, 12m));
        var past = page.Render<PastDay>(set => set.Add(part => part.View, view).Add(part => part.Format, ALedger.Press.Format));
        Assert.Contains("48 copies on hand", Figures(), StringComparison.Ordinal);

        await past.Find("input[type=text]").ChangeAsync("the day before");
        Assert.Equal("", Figures());

        await past.Find("input[type=text]").ChangeAsync(Written(2));
        Assert.Contains("50 copies on hand", Figures(), StringComparison.Ordinal);

        string Figures() => past.Find("p[role=status]").TextContent.Trim();
    }

    private static string Written(int day) => ARun.Day.AddDays(day).ToString("O", System.Globalization.CultureInfo.InvariantCulture);
}
