using PressRun.Web.People;
using PressRun.Web.Quotes;

namespace PressRun.Web.Layout;

/// <summary>What every answer tells the browser about itself.</summary>
public static class PageHeaders
{
    // Scripts, fonts and connections of this host only, and no script inside a page. MudBlazor writes style attributes, so styles may stand
    // inside a page; a page that does without it may say so more strictly before the answer starts.
    private const string Policy =
        "default-src 'self'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; font-src 'self'; connect-src 'self'; "
        + "object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    // For what is refused before anything is known of the request: it is no page, loads nothing and leads nowhere.
    private const string NoPage = "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /// <summary>Where the page lies that says that nothing is here.</summary>
    public const string NothingHere = "/not-found";

    /// <summary>Has every answer carry headers that has none yet, whatever refused it before the rest was asked, such as a name that this host does not have. It comes first, so that
    /// it is asked last when an answer starts: pages have set their own by then.</summary>
    public static void UseHeadersOfRefusals(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        context.Response.OnStarting(() =>
        {
            Add(context.Response.Headers, NoPage, "no-referrer");
            return Task.CompletedTask;
        });
        return next(context);
    });

    /// <summary>Adds the headers where an answer does not bring its own.</summary>
    public static WebApplication UsePageHeaders(this WebApplication app)
    {
        app.Use((context, next) =>
        {
            // Asked now: an error page is rendered under another path.
            var isShared = context.Request.Path.StartsWithSegments(SharePages.Folder);
            var referrers = IsKey(context.Request) ? "strict-origin" : "same-origin";
            context.Response.OnStarting(() =>
            {
                var headers = context.Response.Headers;
                if (isShared)
                {
                    SharePages.Hide(headers);
                }

                StayHere(context);

                // Assets bring their own; all else is somebody's, files that are saved too.
                Add(headers, Policy, referrers);

                // In the place of another answer the page keeps that one's status; asked for by itself it is no page either.
                if (context.Request.Path == NothingHere && context.Response.StatusCode == StatusCodes.Status200OK)
                {
                    context.Response.StatusCode = StatusCodes.Status404NotFound;
                }

                return Task.CompletedTask;
            });
            return next(context);
        });
        return app;
    }

    // Where a proxy with TLS stands in front and is not named yet, the app takes its own address for one by http, and browsers follow no form there, without a word (form-action). A path leads to where they are.
    private static void StayHere(HttpContext context)
    {
        var (request, headers) = (context.Request, context.Response.Headers);
        if (headers.Location is [{ } to] && $"{request.Scheme}://{request.Host}" is var own && to.StartsWith(own + "/", StringComparison.OrdinalIgnoreCase) && OwnAddress.Of(to[own.Length..]) is { Length: > 0 } path)
        {
            headers.Location = path;
        }
    }

    // An open invitation's address is its key, also while whoever holds it signs in first: as a referrer it would stand in a proxy's log with every font of the page. Without any referrer
    // browsers would leave out where its form comes from, too, and forms of unknown pages are refused (see OwnOrigin).
    private static bool IsKey(HttpRequest request) =>
        request.Path.StartsWithSegments("/join") || (request.Path.StartsWithSegments("/sign-in") && request.Query.ContainsKey("to"));

    private static void Add(IHeaderDictionary headers, string policy, string referrers)
    {
        headers.TryAdd("Cache-Control", "private, no-store");
        headers.TryAdd("Content-Security-Policy", policy);
        headers.TryAdd("X-Content-Type-Options", "nosniff");
        headers.TryAdd("Referrer-Policy", referrers);
    }
}
