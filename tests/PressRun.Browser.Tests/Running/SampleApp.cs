using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Playwright;
using PressRun.Data;
using PressRun.Data.Access;
using PressRun.Data.Archive;
using PressRun.Data.Copies;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Data.Running;
using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Web.Shared.Wording;

namespace PressRun.Browser.Tests.Running;

/// <summary>One app with the sample press for all journeys. Each journey takes titles of its own, so that none disturbs another.</summary>
public sealed class SampleApp : IAsyncLifetime
{
    private AppProcess app = null!;

    /// <summary>Where it answers.</summary>
    public Uri Address => app.Address;

    /// <summary>What it has written to its log.</summary>
    public string Log => app.Said;

    /// <summary>What it has stored.</summary>
    public Stored Stored { get; private set; } = null!;

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        app = await AppProcess.StartAsync(sample: true);
        Stored = await Stored.OpenAsync(app);
    }

    /// <summary>A browser that is about the sample press.</summary>
    public Task<Visit> VisitAsync(Chromium chromium) =>
        Visit.BeginAsync(chromium.Browser, Address, press: Stored.Press.Id.ToString());

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await Stored.DisposeAsync();
        await app.DisposeAsync();
    }
}

/// <summary>What an app has stored, read from its database beside it.</summary>
public sealed class Stored : IAsyncDisposable
{
    private readonly IHost host;

    private Stored(IHost host, PressRecord press)
    {
        this.host = host;
        Press = press;
    }

    /// <summary>The press.</summary>
    public PressRecord Press { get; }

    /// <summary>All that the app's data offer, on behalf of the program: nobody is asked who they are.</summary>
    public IServiceProvider Services => host.Services;

    /// <summary>How the pages write figures for a visitor from Ireland.</summary>
    public PressFormat Format => PressView.Of(Press, CultureInfo.GetCultureInfo("en-IE")).Format;

    private EditionStore Editions => host.Services.GetRequiredService<EditionStore>();

    private PlanStore Plans => host.Services.GetRequiredService<PlanStore>();

    private CopiesLedgerStore Ledger => host.Services.GetRequiredService<CopiesLedgerStore>();

    /// <summary>Opens the database of an app that holds one press.</summary>
    public static async Task<Stored> OpenAsync(AppProcess app)
    {
        ArgumentNullException.ThrowIfNull(app);
        var builder = Host.CreateEmptyApplicationBuilder(null);
        builder.Configuration.AddInMemoryCollection([new("ConnectionStrings:PressRun", app.ConnectionString), new("PressRun:SignIn", "off")]);
        builder.Services.AddPressRunData(builder.Configuration);
        var host = builder.Build();
        await host.StartAsync();
        var presses = await host.Services.GetRequiredService<PressStore>().ListAsync();
        return new Stored(host, presses.Single());
    }

    /// <summary>The whole press, as it is exported.</summary>
    public async Task<string> ArchiveAsync() =>
        System.Text.Encoding.UTF8.GetString((await host.Services.GetRequiredService<PressArchiveStore>().ExportAsync(Press.Id))!);

    /// <summary>The id of whoever signs in by an address.</summary>
    public Guid UserId(string email)
    {
        using var scope = host.Services.CreateScope();
        return scope.ServiceProvider.GetRequiredService<Data.PressRunDbContext>().Users.Single(user => user.Email == email).Id;
    }

    /// <summary>When somebody was last seen.</summary>
    public Task<DateTimeOffset> SeenAsync(string email) => QueryAsync(db => db.Database.SqlQuery<DateTimeOffset>(
        $"""SELECT max(seen_at) AS "Value" FROM sign_in_sessions JOIN users ON users.id = user_id WHERE email = {email}""").SingleAsync());

    /// <summary>Has somebody last been seen at a moment.</summary>
    public Task<int> SeenAsync(string email, DateTimeOffset at) => QueryAsync(db => db.Database.ExecuteSqlAsync(
        $"UPDATE sign_in_sessions SET seen_at = {at} FROM users WHERE users.id = user_id AND email = {email}"));

    /// <summary>A printing by its title.</summary>
    public async Task<Book> BookAsync(string title, int printing)
    {
        var shelf = await FindAsync(title);
        var found = shelf.Titles.Single(on => on.Title == title);
        return new Book(found.Slug, (await Editions.FindAsync(Press.Id, found.Slug, printing))!);
    }

    /// <summary>What the shelf finds by some words.</summary>
    public Task<ShelfPage> FindAsync(string words, bool archived = false) =>
        host.Services.GetRequiredService<ShelfQuery>().ShowAsync(Press.Id, new ShelfFilter(words, Archived: archived));

    /// <summary>A printing as it is stored now; null where there is none.</summary>
    public Task<EditionRecord?> EditionAsync(string slug, int printing) => Editions.FindAsync(Press.Id, slug, printing);

    /// <summary>The copies ledger of a printing, the latest day first.</summary>
    public Task<IReadOnlyList<MovementRecord>> LedgerAsync(Guid edition) => Ledger.OfEditionAsync(Press.Id, edition);

    /// <summary>What is on hand of a printing.</summary>
    public async Task<CopiesOnHand> OnHandAsync(Guid edition) => (await Ledger.OnHandAsync(Press.Id, edition))!.Value;

    /// <summary>The plans of a printing with all that their costing needs, in the order in which they were made.</summary>
    public async Task<IReadOnlyList<JobSource>> PlansAsync(Guid edition)
    {
        var plans = await Plans.OfEditionAsync(Press.Id, edition);
        var sources = await Plans.SourcesAsync(Press.Id, [.. plans.Select(plan => plan.Id)]);
        return [.. plans.Select(plan => sources[plan.Id])];
    }

    /// <summary>A link to a quote, by which everything may be done; answers its secret.</summary>
    public async Task<string> ShareAsync(int number, string name)
    {
        var quotes = host.Services.GetRequiredService<QuoteStore>();
        var quote = (await quotes.FindAsync(Press.Id, number))!.Quote;
        var link = new NewLink(name, new LinkRights(20, quote.Quantity * 2, Remark: true, Agree: true), TimeProvider.System.GetUtcNow().AddDays(30), null);
        return ((SaveResult<MadeLink>.Saved)await quotes.LinkAsync(Press.Id, quote.Id, link, Press.Name)).Now.Secret;
    }

    /// <summary>Marks all that happened to quotes as read.</summary>
    public async Task ReadAllQuotesAsync()
    {
        var quotes = host.Services.GetRequiredService<QuoteStore>();
        foreach (var quote in await quotes.ListAsync(Press.Id))
        {
            await quotes.SeeAsync(Press.Id, quote.Id, (await quotes.FindAsync(Press.Id, quote.Number))!.Changes);
        }
    }

    /// <summary>The plan that a printing goes by.</summary>
    public async Task<JobSource> ChosenPlanAsync(Guid edition) => (await PlansAsync(edition)).Single(source => source.Plan.Chosen);

    /// <summary>Gives somebody another role in the press while the app does not hear of it: nothing is announced, and the line by which it hears is cut.</summary>
    public Task<int> GiveUnheardAsync(string email, PressRole role) => QueryAsync(db => db.Database.ExecuteSqlAsync(
        $"""
        WITH given AS (UPDATE memberships SET role = {(int)role} WHERE press_id = {Press.Id.Value} AND user_id = (SELECT id FROM users WHERE email = {email}) RETURNING 1)
        SELECT pg_terminate_backend(pid) FROM pg_stat_activity, given WHERE query IN ('LISTEN pressrun_news', 'SELECT 1') AND datname = current_database() AND pid <> pg_backend_pid()
        """));

    private async Task<T> QueryAsync<T>(Func<PressRunDbContext, Task<T>> query)
    {
        await using var scope = host.Services.CreateAsyncScope();
        return await query(scope.ServiceProvider.GetRequiredService<PressRunDbContext>());
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await host.StopAsync();
        host.Dispose();
    }
}

/// <summary>A printing with its place on the shelf.</summary>
/// <param name="Slug">Of its title.</param>
/// <param name="Edition">As it was stored when it was read.</param>
public sealed record Book(string Slug, EditionRecord Edition)
{
    /// <summary>Where its page lies.</summary>
    public string Path => $"titles/{Slug}/{Edition.Printing.ToString(CultureInfo.InvariantCulture)}";
}
