using System.Globalization;
using Microsoft.AspNetCore.Localization;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Layout;

/// <summary>In which language and with which numbers a viewer is answered.</summary>
public static class ViewerLocale
{
    /// <summary>Name of the cookie that remembers which language somebody chose by hand.</summary>
    public const string CookieName = "language";

    private static readonly AcceptLanguageHeaderRequestCultureProvider Browser = new();

    /// <summary>Numbers and dates follow the first language of the browser that the platform knows; words the language that was chosen by hand, else the first of the
    /// browser's that the app speaks, else English.</summary>
    public static WebApplication UseViewerLocale(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.UseRequestLocalization(new RequestLocalizationOptions
        {
            DefaultRequestCulture = new RequestCulture(Translation.Own),
            SupportedCultures = CultureInfo.GetCultures(CultureTypes.SpecificCultures | CultureTypes.NeutralCultures),
            SupportedUICultures = [.. Translation.Languages],
            RequestCultureProviders = [new CustomRequestCultureProvider(AskedForAsync)],
        });
        return app;
    }

    private static async Task<ProviderCultureResult?> AskedForAsync(HttpContext http)
    {
        var byBrowser = await Browser.DetermineProviderCultureResult(http);
        var byHand = http.Request.Cookies[CookieName];
        return Translation.Languages.FirstOrDefault(language => language.Name == byHand) is { } chosen
            ? new ProviderCultureResult(byBrowser?.Cultures ?? [chosen.Name], [chosen.Name])
            : byBrowser;
    }
}
