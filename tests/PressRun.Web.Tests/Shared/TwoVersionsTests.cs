using Bunit;
using PressRun.Web.Shared;

namespace PressRun.Web.Tests.Shared;

public class TwoVersionsTests
{
    [Fact]
    public async Task Both_versions_are_shown_and_one_is_chosen()
    {
        await using var page = new BunitContext();
        page.JSInterop.Mode = JSRuntimeMode.Loose;
        var (kept, taken) = (0, 0);
        var versions = page.Render<TwoVersions>(parameters => parameters
            .Add(part => part.What, "plan")
            .Add(part => part.Differences, [("Copies", "100", "120")])
            .Add(part => part.KeepMine, () => kept++)
            .Add(part => part.TakeTheirs, () => taken++));
        Assert.Equal("Two people changed this plan", versions.Find("h2").TextContent);
        Assert.Equal(["100", "120"], versions.FindAll("tbody td").Select(cell => cell.TextContent));
        await versions.FindAll("button")[0].ClickAsync(new());
        Assert.Equal((1, 0), (kept, taken));
        await versions.FindAll("button")[1].ClickAsync(new());
        Assert.Equal((1, 1), (kept, taken));
    }
}
