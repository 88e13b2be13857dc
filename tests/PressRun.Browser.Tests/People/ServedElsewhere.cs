using System.Net;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Access;
using PressRun.Data.People;

namespace PressRun.Browser.Tests.People;

/// <summary>Tests of one app, one after the other, since whoever comes from the other server is the same for all.</summary>
[CollectionDefinition]
public sealed class Elsewhere : ICollectionFixture<ServedElsewhere>;

/// <summary>An app whose people may sign in by another server, and that server.</summary>
public sealed class ServedElsewhere : IAsyncLifetime
{
    /// <summary>The app.</summary>
    public AppProcess App { get; private set; } = null!;

    /// <summary>The server.</summary>
    public IdentityServer Server { get; private set; } = null!;

    /// <summary>What the app has stored.</summary>
    public Stored Stored { get; private set; } = null!;

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        Server = await IdentityServer.StartAsync();
        App = await AppProcess.StartAsync(sample: true, signIn: true, new()
        {
            ["PressRun__OpenIdServer"] = Server.Address, ["PressRun__OpenIdClient"] = IdentityServer.Client, ["PressRun__OpenIdSecret"] = IdentityServer.Secret, ["PressRun__OpenIdName"] = "The Guild",
        });
        Stored = await Stored.OpenAsync(App);
        // Before anybody has an account the page to sign in speaks of nothing else, and tests come in any order.
        await PersonAsync("First");
    }

    /// <summary>An invitation to the sample press as a reader.</summary>
    public Task<string> InviteAsync(string name) => Stored.Services.GetRequiredService<InvitationStore>().InviteAsync(Stored.Press.Id, name, PressRole.Reader);

    /// <summary>Somebody with a password.</summary>
    /// <returns>Their address.</returns>
    public async Task<string> PersonAsync(string name)
    {
        var email = $"{name.ToLowerInvariant()}@example.org";
        var invitation = await InviteAsync(name);
        await using var scope = Stored.Services.CreateAsyncScope();
        var (made, _) = await scope.ServiceProvider.GetRequiredService<Accounts>().JoinAsync(new NewAccount(name, email, PeopleApp.Password), invitation);
        Assert.True(made.User is not null, made.Problem);
        return email;
    }

    /// <summary>Has the server open somebody's account.</summary>
    public async Task LinkAsync(string email, string subject)
    {
        await using var scope = Stored.Services.CreateAsyncScope();
        var accounts = scope.ServiceProvider.GetRequiredService<Accounts>();
        await accounts.LinkAsync((await accounts.FindAsync(Stored.UserId(email)))!, new AccountLink(Server.Address, subject));
    }

    /// <summary>How many people have accounts.</summary>
    public int People()
    {
        using var scope = Stored.Services.CreateScope();
        return scope.ServiceProvider.GetRequiredService<Data.PressRunDbContext>().Users.Count();
    }

    /// <summary>Sends somebody to the server, who comes back with its answer.</summary>
    /// <returns>The address by which they come back.</returns>
    internal async Task<string> AskAsync(HttpPerson person, string to)
    {
        using var sent = await person.ComeAsync("sign-in/elsewhere?to=" + Uri.EscapeDataString(to), "Sec-Fetch-Site", "same-origin");
        Assert.StartsWith(Server.Address + "/authorize?", sent.Headers.Location?.ToString(), StringComparison.Ordinal);
        using var elsewhere = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false });
        using var answer = await elsewhere.GetAsync(sent.Headers.Location!);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return answer.Headers.Location!.PathAndQuery;
    }

    /// <summary>Sends somebody to the server and takes them back.</summary>
    internal async Task<HttpResponseMessage> ComeAsync(HttpPerson person, string to) => await person.AskAsync("GET", await AskAsync(person, to));

    /// <summary>What a page says.</summary>
    internal static async Task<string> ReadAsync(HttpPerson person, string path)
    {
        using var answer = await person.AskAsync("GET", path);
        Assert.Equal((path, HttpStatusCode.OK), (path, answer.StatusCode));
        return WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync());
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await Stored.DisposeAsync();
        await App.DisposeAsync();
        await Server.DisposeAsync();
    }
}
