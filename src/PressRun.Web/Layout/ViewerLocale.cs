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

    /// <summary>Numbers and dates follow the first language of the browser that the platform knows; words the first of the browser's that the app speaks, else English. A language that was
    /// chosen by hand takes the numbers along, or a page would read "1,000" between words in which that is one: as the browser writes them where it asks for that language too, else as is usual in it.</summary>
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
            ? new ProviderCultureResult([.. byBrowser?.Cultures.Where(culture => culture.Value is { } name && IsOf(chosen, name)) ?? [], CultureInfo.CreateSpecificCulture(chosen.Name).Name], [chosen.Name])
            : byBrowser;
    }

    private static bool IsOf(CultureInfo language, string culture) => culture.Split('-')[0].Equals(language.Name.Split('-')[0], StringComparison.OrdinalIgnoreCase);
}
