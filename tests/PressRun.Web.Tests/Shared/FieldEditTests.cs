using Bunit;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Web.Shared;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Shared;

public class FieldEditTests
{
    [Fact]
    public async Task What_was_typed_stays_beside_the_sentence_that_refuses_it()
    {
        await using var page = Page();
        var field = Render(page, "28", _ => Task.FromResult<string?>("Take 28 or 32."));
        await field.Find("input").ChangeAsync(new() { Value = "30" });
        Assert.Equal("30", field.Find("input").GetAttribute("value"));
        Assert.Equal("true", field.Find("input").GetAttribute("aria-invalid"));
        Assert.Equal("Take 28 or 32.", field.Find("[role=alert]").TextContent);
        Assert.Equal(field.Find("[role=alert]").Id, field.Find("input").GetAttribute("aria-describedby"));
    }

    [Fact]
    public async Task A_saved_value_shows_as_the_server_writes_it_and_the_draft_is_forgotten()
    {
        await using var page = Page();
        var saved = "";
        var field = Render(page, "28", text =>
        {
            saved = text;
            return Task.FromResult<string?>(null);
        });
        await field.Find("input").ChangeAsync(new() { Value = " 32 " });
        field.Render(parameters => parameters.Add(part => part.Value, "32"));
        Assert.Equal("32", saved);
        Assert.Equal("32", field.Find("input").GetAttribute("value"));
        Assert.Empty(field.FindAll(".message"));
        Assert.Equal("edition/1/pages", Assert.Single(page.JSInterop.Invocations["forget"]).Arguments[0]);
    }

    [Fact]
    public async Task What_was_refused_and_is_stored_later_all_the_same_is_refused_no_more()
    {
        await using var page = Page();
        var field = Render(page, "", _ => Task.FromResult<string?>("Kept until the others are there."));
        await field.Find("input").ChangeAsync(new() { Value = "40" });
        Assert.NotEmpty(field.FindAll("[role=alert]"));

        field.Render(parameters => parameters.Add(part => part.Value, "40"));

        Assert.Empty(field.FindAll(".message"));
        Assert.Equal("40", field.Find("input").GetAttribute("value"));
    }

    [Fact]
    public async Task Leaving_a_field_as_it_was_saves_nothing()
    {
        await using var page = Page();
        var field = Render(page, "28", _ => throw new InvalidOperationException("saved"));
        await field.Find("input").ChangeAsync(new() { Value = "28" });
        Assert.Empty(field.FindAll(".message"));
    }

    [Fact]
    public async Task A_draft_that_the_browser_kept_comes_back_and_says_that_it_is_not_saved()
    {
        await using var page = Page(("edition/1/pages", "36"));
        var field = Render(page, "28", _ => Task.FromResult<string?>(null));
        field.WaitForAssertion(() => Assert.Equal("36", field.Find("input").GetAttribute("value")));
        Assert.Contains("not saved", field.Find(".message").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_draft_equal_to_what_is_stored_is_no_draft()
    {
        await using var page = Page(("edition/1/pages", "28"));
        Assert.Empty(Render(page, "28", _ => Task.FromResult<string?>(null)).FindAll(".message"));
    }

    [Fact]
    public async Task A_page_that_needs_all_fields_asks_again_for_what_was_refused_and_for_what_came_back()
    {
        await using var page = Page(("edition/1/pages", "36"));
        var allowed = "30";
        var saved = "";
        var field = Render(page, "28", text =>
        {
            saved = text;
            return Task.FromResult(text == allowed ? null : "Take 28 or 32.");
        });
        field.WaitForAssertion(() => Assert.Equal("36", field.Find("input").GetAttribute("value")));

        Assert.False(await field.InvokeAsync(field.Instance.SaveTypedAsync));
        Assert.Equal(("36", "Take 28 or 32."), (saved, field.Find("[role=alert]").TextContent));
        allowed = "36";
        Assert.True(await field.InvokeAsync(field.Instance.SaveTypedAsync));
        Assert.Empty(field.FindAll(".message"));
    }

    [Fact]
    public async Task A_notice_about_the_stored_value_stands_beside_it()
    {
        await using var page = Page();
        var field = page.Render<FieldEdit>(parameters => parameters
            .Add(part => part.Label, "Pages").Add(part => part.Value, "30").Add(part => part.Notice, "Take 28 or 32.").Add(part => part.Save, _ => Task.FromResult<string?>(null)));
        Assert.Equal("Take 28 or 32.", field.Find(".message").TextContent);
    }

    [Fact]
    public async Task The_label_belongs_to_the_input()
    {
        await using var page = Page();
        var field = Render(page, "28", _ => Task.FromResult<string?>(null));
        Assert.Equal(field.Find("input").Id, field.Find("label").GetAttribute("for"));
    }

    [Fact]
    public async Task What_was_typed_and_left_before_the_page_answered_is_saved_as_soon_as_it_does()
    {
        await using var page = Page("left", ("edition/1/pages", "36"));
        var saved = "";
        var field = Render(page, "28", text =>
        {
            saved = text;
            return Task.FromResult<string?>(null);
        });

        field.WaitForAssertion(() => Assert.Equal("36", saved));
        Assert.Empty(field.FindAll(".message"));
        Assert.Single(page.JSInterop.Invocations["forget"]);
    }

    [Fact]
    public async Task What_is_being_typed_when_the_page_answers_stays_with_the_cursor_and_nothing_is_saved_yet()
    {
        await using var page = Page("typing", ("edition/1/pages", "3"));
        var field = Render(page, "28", _ => throw new InvalidOperationException("saved"));

        field.WaitForAssertion(() => Assert.Equal("3", field.Find("input").GetAttribute("value")));
        Assert.Equal("edition/1/pages", Assert.Single(page.JSInterop.Invocations["goOn"]).Arguments[0]);
        Assert.Empty(field.FindAll(".message"));
    }

    private static BunitContext Page(params (string Key, string Text)[] drafts) => Page("earlier", drafts);

    private static BunitContext Page(string origin, params (string Key, string Text)[] drafts)
    {
        var page = new BunitContext();
        page.Services.AddSingleton<IServerDrafts>(new KeptNowhere());
        page.Services.AddScoped<Drafts>();
        var module = page.JSInterop.SetupModule("./js/drafts.js");
        module.Setup<Dictionary<string, string>>("recall").SetResult(drafts.ToDictionary(draft => draft.Key, draft => draft.Text));
        module.Setup<string>("origin", _ => true).SetResult(origin);
        module.SetupVoid("goOn", _ => true).SetVoidResult();
        module.SetupVoid("forget", _ => true).SetVoidResult();
        return page;
    }

    private static IRenderedComponent<FieldEdit> Render(BunitContext page, string value, Func<string, Task<string?>> save) =>
        page.Render<FieldEdit>(parameters => parameters
            .Add(part => part.Label, "Pages").Add(part => part.Value, value).Add(part => part.DraftKey, "edition/1/pages").Add(part => part.Save, save));
}
