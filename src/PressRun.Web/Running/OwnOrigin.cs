using System.Net;
using PressRun.JobFile.Reading;
using PressRun.Web.Api;
using PressRun.Web.Layout;
using PressRun.Web.Quotes;

namespace PressRun.Web.Running;

/// <summary>
/// Keeps other sites' pages from using a visitor's browser against this app: what changes something or opens a connection is answered only
/// where the browser says that it comes from the app's own pages. Programs that are not browsers send none of these headers.
/// </summary>
public static partial class OwnOrigin
{
    private const string Site = "Sec-Fetch-Site";

    /// <summary>Refuses foreign requests with 403 and a sentence. Where it seems that a proxy renamed the host, the log is told once: every form fails then.</summary>
    public static void UseOwnOriginOnly(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        var logger = app.Services.GetRequiredService<ILoggerFactory>().CreateLogger(typeof(OwnOrigin).FullName!);
        var told = 0;
        app.Use((context, next) =>
        {
            if (!IsForeign(context.Request))
            {
                return next(context);
            }

            var isRenamed = IsRenamed(context.Request);
            if (isRenamed && Interlocked.Exchange(ref told, 1) == 0)
            {
                LogRenamed(logger, Excerpt.Of(context.Request.Headers.Origin.ToString()), Excerpt.Of(context.Request.Host.Value ?? ""));
            }

            return SayAsync(context, isRenamed);
        });
    }

    /// <summary>True where a page of this app had it opened: not a link elsewhere, nor one that was sent to somebody. Over plain http browsers do not tell of sites, and tell the page that it comes from.</summary>
    public static bool IsOwnStep(HttpRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        return request.Headers[Site] is [{ Length: > 0 } site] ? site == "same-origin" : request.Headers.Referer is [{ Length: > 0 } page] && IsOwn(page, request.Host);
    }

    private static Task SayAsync(HttpContext context, bool isRenamed)
    {
        if (context.Request.Path.StartsWithSegments("/api/v1"))
        {
            return ApiProblem.OtherSite(context);
        }

        var words = isRenamed
            ? Say($"It was sent from a page of <code>{WebUtility.HtmlEncode(context.Request.Headers.Origin)}</code> and arrived under the name <code>{WebUtility.HtmlEncode(context.Request.Host.Value)}</code>, so PressRun cannot tell that it comes from its own pages. If a proxy stands in front, whoever runs it lets it pass on the host name, and names it in <code>PressRun__TrustedProxies</code>.")
            : Say($"It was sent from another site's page, and PressRun takes what is sent from its own pages only. Nothing was changed.");
        return PlainPage.SendAsync(context, StatusCodes.Status403Forbidden, PlainPage.Of(context, Say($"This was not taken"), words, masthead: true));
    }

    // A browser that tells of its page's site knows better than a comparison of names; over plain http it does not tell.
    private static bool IsRenamed(HttpRequest request) =>
        Uri.TryCreate(request.Headers.Origin, UriKind.Absolute, out _) && (request.Headers[Site].Count == 0 || request.Headers[Site] == "same-origin");

    private static bool IsForeign(HttpRequest request)
    {
        // A page that sends no referrer sends no origin with its forms either; a link's secret is its own key, and no cookie goes with it.
        if (request.Path.StartsWithSegments(SharePages.Folder))
        {
            return false;
        }

        var isRead = HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method);
        if (isRead && !request.HttpContext.WebSockets.IsWebSocketRequest && !request.Path.StartsWithSegments("/_blazor"))
        {
            return false;
        }

        return request.Headers[Site] == "cross-site"
            || (request.Headers.Origin is [{ Length: > 0 } origin] && !IsOwn(origin, request.Host));
    }

    private static bool IsOwn(string origin, HostString host) =>
        Uri.TryCreate(origin, UriKind.Absolute, out var uri) && string.Equals(uri.Authority, WithoutUsualPort(host, uri.Scheme), StringComparison.OrdinalIgnoreCase);

    // An origin leaves the usual port of its scheme out; a host header may name it.
    private static string WithoutUsualPort(HostString host, string scheme) =>
        (scheme, host.Port) is ("http", 80) or ("https", 443) ? host.Host : host.Value ?? string.Empty;

    [LoggerMessage(Level = LogLevel.Warning, Message = "Refused what a page of {Origin} sent, as it arrived under the host name {Host}. Where a proxy stands in front, let it pass on the host name and name it in PressRun__TrustedProxies. This is said once.")]
    private static partial void LogRenamed(ILogger logger, string origin, string host);
}
