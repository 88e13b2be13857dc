using PressRun.Web.Quotes;

namespace PressRun.Web.Running;

/// <summary>
/// Keeps other sites' pages from using a visitor's browser against this app: what changes something or opens a connection is answered only
/// where the browser says that it comes from the app's own pages. Programs that are not browsers send none of these headers.
/// </summary>
public static class OwnOrigin
{
    /// <summary>Refuses foreign requests with 403.</summary>
    public static void UseOwnOriginOnly(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        if (!IsForeign(context.Request))
        {
            return next(context);
        }

        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        return Task.CompletedTask;
    });

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

        return request.Headers["Sec-Fetch-Site"] == "cross-site"
            || (request.Headers.Origin is [{ Length: > 0 } origin] && !IsOwn(origin, request.Host));
    }

    private static bool IsOwn(string origin, HostString host) =>
        Uri.TryCreate(origin, UriKind.Absolute, out var uri) && string.Equals(uri.Authority, WithoutUsualPort(host, uri.Scheme), StringComparison.OrdinalIgnoreCase);

    // An origin leaves the usual port of its scheme out; a host header may name it.
    private static string WithoutUsualPort(HostString host, string scheme) =>
        (scheme, host.Port) is ("http", 80) or ("https", 443) ? host.Host : host.Value ?? string.Empty;
}
