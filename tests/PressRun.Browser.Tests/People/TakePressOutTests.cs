using System.Net;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Access;
using PressRun.Data.Presses;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;

namespace PressRun.Browser.Tests.People;

public sealed class TakePressOutTests(PeopleApp people)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_owner_takes_a_press_out_by_its_name_and_their_own_password_and_nobody_else_does()
    {
        await people.ReadyAsync();
        var made = await people.Stored.Services.GetRequiredService<PressStore>().CreateAsync(new NewPress("Low Water", "EUR", UnitSystem.Metric, PaperRegion.Iso), Cancel);
        var press = ((Data.SaveResult<PressRecord>.Saved)made).Now.Id;
        var (owner, editor) = (await people.PersonAsync("Tamsin", press, PressRole.Owner), await people.PersonAsync("Merryn", press, PressRole.Editor));
        using var here = await HttpPerson.SignedInAsync(people.App.Address, owner, press.ToString());
        using var other = await HttpPerson.SignedInAsync(people.App.Address, editor, press.ToString());

        using (var page = await here.AskAsync("GET", "press"))
        {
            var text = await page.Content.ReadAsStringAsync(Cancel);
            Assert.Contains("href=\"press/out\"", text, StringComparison.Ordinal);
            Assert.DoesNotContain("Its name, as it stands above", text, StringComparison.Ordinal);
        }

        await StaysAsync(here, "Low Water", "", "This is not the password that you have now.");
        await StaysAsync(here, "Low Water", "wrong wrong wrong wrong", "This is not the password that you have now.");
        await StaysAsync(here, "High Water", PeopleApp.Password, "The press is not called so. Write its name as it stands above.");
        using (var page = await other.AskAsync("GET", "press/out"))
        {
            Assert.DoesNotContain("name=\"PressName\"", await page.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        }

        using (var refused = await SendAsync(other, "account", "Low Water", PeopleApp.Password))
        {
            Assert.NotEqual(HttpStatusCode.Redirect, refused.StatusCode);
        }

        Assert.NotNull(await people.Stored.Services.GetRequiredService<PressStore>().LoadAsync(press, Cancel));
        using var gone = await SendAsync(here, "press/out", "Low Water", PeopleApp.Password);
        Assert.Equal((HttpStatusCode.Redirect, "/start?out=true"), (gone.StatusCode, new Uri(people.App.Address, gone.Headers.Location!).PathAndQuery));
        Assert.Null(await people.Stored.Services.GetRequiredService<PressStore>().LoadAsync(press, Cancel));

        async Task StaysAsync(HttpPerson person, string name, string password, string words)
        {
            using var answer = await SendAsync(person, "press/out", name, password);
            Assert.Contains(words, await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        }

        Task<HttpResponseMessage> SendAsync(HttpPerson person, string token, string name, string password) =>
            person.SendAsync(token, "press/out?", new() { ["_handler"] = "take-out", ["PressId"] = press.ToString(), ["PressName"] = name, ["Password"] = password });
    }
}
