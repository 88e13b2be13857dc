using Microsoft.Extensions.DependencyInjection;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Access;
using PressRun.Data.People;
using PressRun.Data.Presses;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;

[assembly: AssemblyFixture(typeof(PeopleApp))]

namespace PressRun.Browser.Tests.Running;

/// <summary>One app in which people sign in, with the sample press, a press of somebody else's, and people of both. It starts when it is first
/// asked for.</summary>
public sealed class PeopleApp : IAsyncLifetime
{
    /// <summary>Everybody's password: long, and nobody else's.</summary>
    public const string Password = "six herons, one umbrella";

    /// <summary>Name of the press that is not the sample.</summary>
    public const string OtherPress = "Harbour Loft";

    private readonly Lazy<Task<AppProcess>> starting = new(() => AppProcess.StartAsync(sample: true, signIn: true));
    private readonly SemaphoreSlim furnishing = new(1);
    private Stored? stored;

    /// <summary>The app.</summary>
    public AppProcess App => starting.Value.Result;

    /// <summary>What it has stored.</summary>
    public Stored Stored => stored!;

    /// <summary>The press that is not the sample.</summary>
    public PressId Other { get; private set; }

    /// <summary>Mail address of the sample press's owner, who is the first one too.</summary>
    public static string Owner => "owner@example.org";

    /// <inheritdoc/>
    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    /// <summary>Starts the app and lets its people in, once.</summary>
    public async Task<PeopleApp> ReadyAsync()
    {
        await furnishing.WaitAsync();
        try
        {
            if (stored is null)
            {
                stored = await Stored.OpenAsync(await starting.Value);
                await MakeAsync(accounts => accounts.MakeFirstAsync(new NewAccount("Orla Owner", Owner, Password)));
                var made = await stored.Services.GetRequiredService<PressStore>().CreateAsync(new NewPress(OtherPress, "EUR", UnitSystem.Metric, PaperRegion.Iso));
                Other = ((Data.SaveResult<PressRecord>.Saved)made).Now.Id;
            }

            return this;
        }
        finally
        {
            furnishing.Release();
        }
    }

    /// <summary>Somebody new in a press.</summary>
    /// <returns>Their mail address.</returns>
    public async Task<string> PersonAsync(string name, PressId press, PressRole role)
    {
        await ReadyAsync();
        var email = name.ToLowerInvariant() + "@example.org";
        var link = await Stored.Services.GetRequiredService<InvitationStore>().InviteAsync(press, name, role);
        await MakeAsync(async accounts => (await accounts.JoinAsync(new NewAccount(name, email, Password), link)).Account);
        return email;
    }

    /// <summary>A browser in which somebody has signed in.</summary>
    public async Task<Visit> SignInAsync(Chromium chromium, string email)
    {
        await ReadyAsync();
        var visit = await Visit.BeginAsync(chromium.Browser, App.Address);
        await SignInAsync(visit, email);
        return visit;
    }

    /// <summary>Signs somebody in, in a browser in which nobody is.</summary>
    public static async Task SignInAsync(Visit visit, string email)
    {
        await visit.Page.GotoAsync("shelf");
        await visit.Field("Mail address").FillAsync(email);
        await visit.Field("Password").FillAsync(Password);
        await visit.Page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        await visit.AnswersAsync();
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (stored is not null)
        {
            await stored.DisposeAsync();
        }

        if (starting.IsValueCreated)
        {
            await (await starting.Value).DisposeAsync();
        }

        furnishing.Dispose();
    }

    private async Task MakeAsync(Func<Accounts, Task<AccountResult>> make)
    {
        await using var scope = Stored.Services.CreateAsyncScope();
        var made = await make(scope.ServiceProvider.GetRequiredService<Accounts>());
        Assert.True(made.User is not null, made.Problem);
    }
}
