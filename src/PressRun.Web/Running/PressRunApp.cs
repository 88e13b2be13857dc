using PressRun.Data.Running;
using PressRun.Web.Api;
using PressRun.Web.Layout;
using PressRun.Web.People;

namespace PressRun.Web.Running;

/// <summary>The whole app, put together in its order.</summary>
public static class PressRunApp
{
    /// <summary>Builds it; nothing runs yet.</summary>
    /// <param name="args">Settings from the command line, such as <c>--urls=http://127.0.0.1:5080</c>.</param>
    public static WebApplication Build(string[] args)
    {
        // What belongs to the program lies beside it, from whatever folder it is started. Built and not published, it serves its files from where they were built from.
        var builder = WebApplication.CreateBuilder([$"--contentRoot={AppContext.BaseDirectory}", .. args]);
        builder.WebHost.UseStaticWebAssets();
        builder.AddPressRunHost();
        builder.Services.AddPressRunData(builder.Configuration);
        builder.Services.AddPressRunSignIn(builder.Configuration);
        builder.Services.AddPressRunPages();
        builder.Services.AddPressRunApi();
        var app = builder.Build();
        app.UsePressRunHost();
        app.UsePageHeaders();
        app.UseViewerLocale();
        app.UseAwayAnswers();
        app.UseOwnOriginOnly();
        app.UseStatusCodePagesWithReExecute(PageHeaders.NothingHere);
        app.UsePlainAnswersToForms();
        app.UseSmallForms();
        app.UsePressRunSignIn();
        app.UseAntiforgery();
        app.UseTokensOrNothing();
        app.MapPressRunHealth().Public("A supervisor asks whether the server lives, and has no account.");
        app.MapPressRunApi();
        app.MapPressRunPages();
        return app;
    }
}
