using System.Net;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Access;
using PressRun.Data.People;

namespace PressRun.Browser.Tests.People;

/// <summary>Signing in where somebody is signed in already. By passkey and by another server: <c>PasskeyJourney</c>, <c>OtherServerTests</c>.</summary>
public sealed class SignInAnewTests(PeopleApp people)
{
    private const string Next = "nine wet umbrellas, no heron";

    [Fact]
    public async Task By_password_it_ends_the_sign_in_that_was_there_whosever_it_was()
    {
        await people.ReadyAsync();
        var (first, second) = (await people.PersonAsync("Anew", people.Other, PressRole.Reader), await people.PersonAsync("Anewer", people.Other, PressRole.Reader));
        using var browser = await HttpPerson.SignedInAsync(people.App.Address, first);
        foreach (var email in new[] { first, second })
        {
            await EndsAsync(browser, () => browser.FillAsync("sign-in", new() { ["Email"] = email, ["Password"] = PeopleApp.Password }));
        }
    }

    [Fact]
    public async Task By_a_code_for_a_forgotten_password_it_ends_the_sign_in_of_somebody_else_that_was_there()
    {
        await people.ReadyAsync();
        var (lent, lost) = (await people.PersonAsync("Lending", people.Other, PressRole.Reader), await people.PersonAsync("Losing", people.Other, PressRole.Reader));
        using var browser = await HttpPerson.SignedInAsync(people.App.Address, lent);
        var code = await people.Stored.Services.GetRequiredService<PasswordCodeStore>().MakeForHostAsync(lost.ToUpperInvariant());
        await EndsAsync(browser, () => browser.FillAsync("new-password", new() { ["Code"] = code!, ["Password"] = Next }));
    }

    private static async Task EndsAsync(HttpPerson browser, Func<Task<HttpResponseMessage>> signIn)
    {
        using var before = browser.Copied();
        Assert.Equal(HttpStatusCode.OK, await AccountAsync(before));
        using var answer = await signIn();
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal((HttpStatusCode.Redirect, HttpStatusCode.OK), (await AccountAsync(before), await AccountAsync(browser)));
    }

    private static async Task<HttpStatusCode> AccountAsync(HttpPerson person)
    {
        using var answer = await person.AskAsync("GET", "account");
        return answer.StatusCode;
    }
}
