using System.Net;
using System.Text;
using Microsoft.AspNetCore.Diagnostics;
using PressRun.Web.Quotes;
using PressRun.Web.Running;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Layout;

/// <summary>A page in the house's look that says one thing, made without a database, a circuit or anybody's data: for what is to be said when the rest
/// cannot be.</summary>
public static class PlainPage
{
    private const string Type = "text/html; charset=utf-8";

    /// <summary>The document.</summary>
    /// <param name="http">The request that it answers.</param>
    /// <param name="heading">What has happened; markup is not told from text.</param>
    /// <param name="words">A sentence or two, as markup.</param>
    /// <param name="more">What follows, as markup.</param>
    /// <param name="masthead">True for the app's own pages, false for those of links, whose readers know nothing of it.</param>
    public static byte[] Of(HttpContext http, string heading, string words, string more = "", bool masthead = false)
    {
        ArgumentNullException.ThrowIfNull(http);
        var basePath = BasePath(http);
        var table = http.Request.Cookies["table"] is ("light" or "dark") and var chosen ? $" data-table=\"{chosen}\"" : "";
        var head = masthead ? """<header><div class="masthead"><a class="wordmark" href="">PressRun</a></div><hr class="masthead-rule"></header>""" : "";
        return Encoding.UTF8.GetBytes($"""
            <!DOCTYPE html><html lang="{Texts.Language.Name}"{table}><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light dark"><meta name="robots" content="noindex">
            <title>{heading}</title><base href="{basePath}">{string.Concat(SharePage.StyleSheets.Select(sheet => $"<link rel=\"stylesheet\" href=\"{sheet}\">"))}<link rel="icon" type="image/svg+xml" href="mark.svg"></head>
            <body{(masthead ? "" : " class=\"share\"")}>{head}<main class="page"><section class="sheet"><div class="state"><h1>{heading}</h1><p>{words}</p>{more}</div></section></main></body></html>
            """);
    }

    /// <summary>Sends it as the answer, in the place of any other page.</summary>
    public static Task SendAsync(HttpContext http, int status, byte[] page, string type = Type)
    {
        ArgumentNullException.ThrowIfNull(http);
        ArgumentNullException.ThrowIfNull(page);
        if (http.Features.Get<IStatusCodePagesFeature>() is { } pages)
        {
            pages.Enabled = false;
        }

        var response = http.Response;
        response.StatusCode = status;
        response.ContentType = type;
        response.ContentLength = page.Length;
        return HttpMethods.IsHead(http.Request.Method) ? Task.CompletedTask : response.Body.WriteAsync(page, http.RequestAborted).AsTask();
    }

    /// <summary>Where the app's addresses begin, as the page's base: as it was set, in whatever case it is asked for, because some pages are kept for all who ask.</summary>
    public static string BasePath(HttpContext http)
    {
        ArgumentNullException.ThrowIfNull(http);
        return http.Request.PathBase.HasValue ? HostSetup.PathBase(http.RequestServices.GetRequiredService<IConfiguration>()).ToUriComponent() + "/" : "/";
    }

    /// <summary>The address that was asked for, to ask again, as an attribute's value.</summary>
    public static string SameAddress(HttpContext http)
    {
        ArgumentNullException.ThrowIfNull(http);
        var request = http.Request;
        // Two strokes at its beginning would name another host.
        var path = "/" + (request.PathBase.ToUriComponent() + request.Path.ToUriComponent()).TrimStart('/');
        return WebUtility.HtmlEncode(path + request.QueryString.ToUriComponent());
    }
}
