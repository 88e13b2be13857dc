using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.AspNetCore.SignalR;
using MudBlazor;
using MudBlazor.Services;
using PressRun.Web.Bindery;
using PressRun.Web.Copies;
using PressRun.Web.Editions;
using PressRun.Web.Fair;
using PressRun.Web.Libraries;
using PressRun.Web.Libraries.Files;
using PressRun.Web.Libraries.Shops;
using PressRun.Web.Mail;
using PressRun.Web.Papers;
using PressRun.Web.Payouts;
using PressRun.Web.People;
using PressRun.Web.Posting;
using PressRun.Web.Quotes;
using PressRun.Web.Reprint;
using PressRun.Web.RunPlans;
using PressRun.Web.Shared;
using PressRun.Web.Shelf;
using PressRun.Web.Start;
using PressRun.Web.Tallies;

namespace PressRun.Web.Layout;

/// <summary>Everything that the pages need of the host, in two calls.</summary>
public static class WebPages
{
    // What a page may tell at once: a pasted block of cells, or the drafts that the browser holds (see drafts.js).
    private const int MostMessage = 512 * 1024;

    /// <summary>Adds Blazor, MudBlazor and the features' services.</summary>
    public static IServiceCollection AddPressRunPages(this IServiceCollection services)
    {
        services.AddRazorComponents().AddInteractiveServerComponents()
            .AddHubOptions(hub =>
            {
                hub.MaximumReceiveMessageSize = MostMessage;
                hub.AddFilter<LinesOfPeople>();
                hub.AddFilter<HandmadeFrames>();
            });
        services.AddScoped<AuthenticationStateProvider, HeldPages>();
        services.AddSingleton<IErrorBoundaryLogger, QuietBoundary>();
        services.AddMudServices(mud =>
        {
            mud.SnackbarConfiguration.PositionClass = Defaults.Classes.Position.BottomLeft;
            mud.SnackbarConfiguration.HideTransitionDuration = 150;
            mud.SnackbarConfiguration.ShowTransitionDuration = 150;
        });
        services.AddSingleton<IServerDrafts, ServerDrafts>();
        services.AddScoped<Drafts>();
        services.AddScoped<PapersUsed>();
        services.AddSingleton<HandoverTable>();
        services.AddScoped<Handover>();
        services.AddSingleton<CurrentPress>();
        services.AddSingleton<RunPlanService>();
        services.AddSingleton<ReprintService>();
        services.AddSingleton<RunFiles>();
        services.AddSingleton<WholePress>();
        services.AddShelf();
        services.AddSingleton<EditionService>();
        services.AddSingleton<FixService>();
        services.AddSingleton<TitleService>();
        services.AddSingleton<StartService>();
        services.AddSingleton<CopiesService>();
        services.AddSingleton<FairService>();
        services.AddSingleton<TallyService>();
        services.AddSingleton<LibraryService>();
        services.AddSingleton<ShopService>();
        services.AddSingleton<LedgerFiles>();
        services.AddSingleton<LearnedRatesService>();
        services.AddSingleton<LibraryFiles>();
        services.AddSingleton<RepriceService>();
        services.AddSingleton<BenchOrShopService>();
        services.AddSingleton<PapersService>();
        services.AddSingleton<PayoutsService>();
        services.AddSingleton<BinderyService>();
        services.AddSingleton<FrozenJobs>();
        services.AddSingleton<QuoteService>();
        services.AddSingleton<QuoteNews>();
        services.AddSingleton<SharedQuotes>();
        services.AddHostedService<MailSender>();
        return services;
    }

    /// <summary>Maps the pages and the files they use; a viewer's numbers follow the languages that the browser asks for.</summary>
    public static WebApplication MapPressRunPages(this WebApplication app)
    {
        app.MapStaticAssets().Public("Styles, scripts and fonts are the same for everybody.");
        LibraryFiles.Map(app);
        RunFiles.Map(app);
        WholePress.Map(app);
        FairEndpoint.Map(app);
        TallyEndpoints.Map(app);
        QuoteFiles.Map(app);
        PayoutFiles.Map(app);
        BinderyFiles.Map(app);
        SharePages.Map(app);
        AccountEndpoints.Map(app);
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(server => server.ContentSecurityFrameAncestorsPolicy = null);
        return app;
    }
}
