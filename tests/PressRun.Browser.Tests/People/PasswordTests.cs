using System.Net;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Access;
using PressRun.Data.People;

namespace PressRun.Browser.Tests.People;

public sealed class PasswordTests(PeopleApp people)
{
    private const string Next = "nine wet umbrellas, no heron";

    [Fact]
    public async Task Somebody_changes_their_password_by_giving_the_one_there_is_and_their_other_sign_ins_end()
    {
        await people.ReadyAsync();
        var email = await people.PersonAsync("Changing", people.Other, PressRole.Reader);
        using var here = await HttpPerson.SignedInAsync(people.App.Address, email);
        using var elsewhere = await HttpPerson.SignedInAsync(people.App.Address, email);

        Assert.Contains("This is not the password that you have now.", await ChangeAsync("wrong wrong wrong wrong"), StringComparison.Ordinal);
        using var still = await elsewhere.AskAsync("GET", "account");
        Assert.Equal(HttpStatusCode.OK, still.StatusCode);
        await using var scope = people.Stored.Services.CreateAsyncScope();
        var looked = await scope.ServiceProvider.GetRequiredService<Accounts>().VerifyAsync(email, PeopleApp.Password);
        Assert.Contains("all other sign-ins have ended", await ChangeAsync(PeopleApp.Password), StringComparison.Ordinal);

        // Whoever had given the old one a moment before is as late as any other.
        Assert.Null(await people.Stored.Services.GetRequiredService<SessionStore>().BeginAsync(looked!, "Somebody else's", TestContext.Current.CancellationToken));
        using var ended = await elsewhere.AskAsync("GET", "account");
        using var mine = await here.AskAsync("GET", "account");
        using var again = new HttpPerson(people.App.Address);
        using var old = await again.FillAsync("sign-in", new() { ["Email"] = email, ["Password"] = PeopleApp.Password });
        using var next = await again.FillAsync("sign-in", new() { ["Email"] = email, ["Password"] = Next });
        Assert.Equal(
            [HttpStatusCode.Redirect, HttpStatusCode.OK, HttpStatusCode.OK, HttpStatusCode.Redirect],
            new[] { ended.StatusCode, mine.StatusCode, old.StatusCode, next.StatusCode });

        async Task<string> ChangeAsync(string now)
        {
            using var answer = await here.FillAsync("account", new() { ["Old"] = now, ["New"] = Next });
            return await answer.Content.ReadAsStringAsync();
        }
    }

    // RFC 9110, 5.5: a header is ASCII. Anybody may send such an address.
    [Theory]
    [InlineData("%2Ftitles%2F%D7%90%2F1")]
    [InlineData("%2F%C3%BC")]
    [InlineData("%E2%80%AE")]
    public async Task Whoever_signs_in_by_an_odd_address_is_in(string to)
    {
        await people.ReadyAsync();
        using var person = new HttpPerson(people.App.Address);
        using var answer = await person.FillAsync("sign-in?to=" + to, new() { ["Email"] = PeopleApp.Owner, ["Password"] = PeopleApp.Password });

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        using var account = await person.AskAsync("GET", "account");
        Assert.Equal(HttpStatusCode.OK, account.StatusCode);
    }
}
