using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Access;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.People;

/// <summary>One browser, in which one person after another signs in.</summary>
public sealed class HalfTypedTests(Chromium chromium, PeopleApp people)
{
    private const string Typed = "A title that nobody knows of";

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task What_somebody_typed_and_did_not_save_is_shown_to_nobody_who_signs_in_there_after_them_and_comes_back_unless_they_signed_out(bool signsOut)
    {
        await people.ReadyAsync();
        var (first, second) = (await people.PersonAsync("Half" + signsOut, people.Stored.Press.Id, PressRole.Editor), await people.PersonAsync("Next" + signsOut, people.Stored.Press.Id, PressRole.Editor));
        await using var visit = await people.SignInAsync(chromium, first);
        await visit.OpenAsync("titles/new");
        await visit.Field("Title").PressSequentiallyAsync(Typed);

        await LeaveAsync(visit, signsOut);
        await PeopleApp.SignInAsync(visit, second);
        await visit.OpenAsync("titles/new");
        await Expect(visit.Field("Title")).ToHaveValueAsync("");

        await LeaveAsync(visit, signsOut);
        await PeopleApp.SignInAsync(visit, first);
        await visit.OpenAsync("titles/new");
        await Expect(visit.Field("Title")).ToHaveValueAsync(signsOut ? "" : Typed);
    }

    [Fact]
    public async Task A_row_that_somebody_left_half_typed_in_one_press_comes_up_in_no_other()
    {
        await people.ReadyAsync();
        var (first, second) = (await people.PersonAsync("Rower", people.Stored.Press.Id, PressRole.Editor), await people.PersonAsync("Other", people.Other, PressRole.Owner));
        await using var visit = await people.SignInAsync(chromium, first);
        await visit.OpenAsync("papers");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Add a paper" }).ClickAsync();
        await visit.Page.Keyboard.TypeAsync(Typed);
        await visit.Page.Keyboard.PressAsync("Tab");
        await Expect(visit.Page.Locator("tr[data-row]").Filter(new() { HasText = Typed })).ToHaveCountAsync(1);

        await LeaveAsync(visit, signsOut: false);
        await PeopleApp.SignInAsync(visit, second);
        await visit.OpenAsync("papers");
        await Expect(visit.Page.Locator("[data-grid]").First).ToBeVisibleAsync();
        await Expect(visit.Page.GetByText(Typed)).ToHaveCountAsync(0);

        await LeaveAsync(visit, signsOut: false);
        await PeopleApp.SignInAsync(visit, first);
        await visit.OpenAsync("papers");
        await Expect(visit.Page.Locator("tr[data-row]").Filter(new() { HasText = Typed })).ToHaveCountAsync(1);
    }

    // Signed out by a press, or by the end of the sign-in.
    private static async Task LeaveAsync(Visit visit, bool signsOut)
    {
        if (signsOut)
        {
            await visit.Page.GotoAsync("account");
            await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Sign out", Exact = true }).ClickAsync();
        }
        else
        {
            await visit.Page.Context.ClearCookiesAsync();
        }
    }
}
