using Bunit;
using PressRun.Data.Presses;
using PressRun.Web.Shared;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Shared;

public class DraftsTests
{
    private const string Key = "edition/7/page.width";

    [Fact]
    public async Task What_the_browser_holds_is_the_later_one()
    {
        await using var page = Page((Key, "150"));
        var drafts = Open(page, out _);
        await drafts.Paused(Key, "148");
        Assert.Equal("150", await drafts.RecallAsync(Key));
    }

    [Fact]
    public async Task On_another_device_the_servers_comes_back()
    {
        await using var page = Page();
        var drafts = Open(page, out _);
        await drafts.Paused(Key, "148");
        Assert.Equal("148", await drafts.RecallAsync(Key));
        Assert.Null(await drafts.RecallAsync("edition/8/page.width"));
    }

    [Fact]
    public async Task A_saved_field_is_forgotten_everywhere()
    {
        await using var page = Page((Key, "150"));
        var drafts = Open(page, out var server);
        await drafts.Paused(Key, "150");
        await drafts.RecallAsync(Key);
        await drafts.ForgetAsync(Key);
        Assert.Null(await drafts.RecallAsync(Key));
        Assert.Empty(server.Kept);
    }

    [Theory]
    [InlineData("left", DraftOrigin.LeftBeforeLive)]
    [InlineData("typing", DraftOrigin.BeingTyped)]
    [InlineData("earlier", DraftOrigin.Earlier)]
    public async Task How_a_draft_came_about_is_the_browsers_to_say(string said, DraftOrigin origin)
    {
        await using var page = Page((Key, "150"));
        page.JSInterop.SetupModule("./js/drafts.js").Setup<string>("origin", Key).SetResult(said);
        Assert.Equal(origin, await Open(page, out _).OriginAsync(Key));
    }

    [Fact]
    public async Task Without_a_press_only_the_browser_keeps_it()
    {
        await using var page = Page(("start/name", "Gull"));
        var drafts = Open(page, out var server);
        drafts.Press = null;
        await drafts.Paused("start/name", "Gull");
        Assert.Empty(server.Kept);
        Assert.Equal("Gull", await drafts.RecallAsync("start/name"));
    }

    private static Drafts Open(BunitContext page, out KeptNowhere server)
    {
        server = new KeptNowhere();
        return new Drafts(page.JSInterop.JSRuntime, server) { Press = PressId.New() };
    }

    private static BunitContext Page(params (string Key, string Text)[] held)
    {
        var page = new BunitContext();
        var module = page.JSInterop.SetupModule("./js/drafts.js");
        module.Setup<Dictionary<string, string>>("recall").SetResult(held.ToDictionary(draft => draft.Key, draft => draft.Text));
        module.SetupVoid("forget", _ => true).SetVoidResult();
        return page;
    }
}
