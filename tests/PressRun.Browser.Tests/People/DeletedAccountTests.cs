using System.Net;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Access;
using PressRun.Data.People;

namespace PressRun.Browser.Tests.People;

public sealed class DeletedAccountTests(PeopleApp people)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Somebody_deletes_their_account_by_giving_their_password_and_nothing_opens_it_any_more()
    {
        await people.ReadyAsync();
        var email = await people.PersonAsync("Leaving", people.Other, PressRole.Reader);
        using var here = await HttpPerson.SignedInAsync(people.App.Address, email);
        using var elsewhere = await HttpPerson.SignedInAsync(people.App.Address, email);

        using (var wrong = await SendAsync(here, "delete", new() { ["Farewell"] = "wrong wrong wrong wrong" }))
        {
            Assert.Contains("This is not the password that you have now.", await wrong.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        }

        using var gone = await SendAsync(here, "delete", new() { ["Farewell"] = PeopleApp.Password });
        Assert.Equal((HttpStatusCode.Redirect, "/sign-in?said=Deleted"), (gone.StatusCode, new Uri(people.App.Address, gone.Headers.Location!).PathAndQuery));
        using var door = await here.AskAsync("GET", "sign-in?said=Deleted");
        Assert.Contains("Your account is deleted.", await door.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        using var ended = await elsewhere.AskAsync("GET", "account");
        using var old = await new HttpPerson(people.App.Address).FillAsync("sign-in", new() { ["Email"] = email, ["Password"] = PeopleApp.Password });
        Assert.Equal((HttpStatusCode.Redirect, HttpStatusCode.OK), (ended.StatusCode, old.StatusCode));
        await using var scope = people.Stored.Services.CreateAsyncScope();
        Assert.Null(await scope.ServiceProvider.GetRequiredService<Accounts>().FindByAddressAsync(email));
    }

    [Fact]
    public async Task The_last_owner_is_told_which_press_would_be_without_one_and_stays()
    {
        await people.ReadyAsync();
        using var owner = await HttpPerson.SignedInAsync(people.App.Address, PeopleApp.Owner);

        using var refused = await SendAsync(owner, "delete", new() { ["Farewell"] = PeopleApp.Password });

        var page = await refused.Content.ReadAsStringAsync(Cancel);
        Assert.Contains("Nothing was deleted. You are the last owner of", page, StringComparison.Ordinal);
        Assert.Contains(people.Stored.Press.Name, page, StringComparison.Ordinal);
        using var still = await owner.AskAsync("GET", "account");
        Assert.Equal(HttpStatusCode.OK, still.StatusCode);
    }

    [Fact]
    public async Task Somebody_is_called_by_the_name_that_they_give()
    {
        await people.ReadyAsync();
        var email = await people.PersonAsync("Renamed", people.Other, PressRole.Reader);
        using var person = await HttpPerson.SignedInAsync(people.App.Address, email);

        using (var nothing = await SendAsync(person, "name", new() { ["OwnName"] = "\u200B" }))
        {
            Assert.Contains("Write the name that others are to read", await nothing.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        }

        using var renamed = await SendAsync(person, "name", new() { ["OwnName"] = " Rena Anew " });

        Assert.Equal(HttpStatusCode.Redirect, renamed.StatusCode);
        using var account = await person.AskAsync("GET", "account");
        var page = await account.Content.ReadAsStringAsync(Cancel);
        Assert.Contains("""<a class="account" href="account"><bdi>Rena Anew</bdi></a>""", page, StringComparison.Ordinal);
        Assert.Contains("You are <strong><bdi>Rena Anew</bdi></strong>", page, StringComparison.Ordinal);
    }

    // To an address of its own, so that the form is the one that is named and not the page's first.
    private static Task<HttpResponseMessage> SendAsync(HttpPerson person, string form, Dictionary<string, string> fields) =>
        person.SendAsync("account", "account?", new(fields) { ["_handler"] = form });
}
