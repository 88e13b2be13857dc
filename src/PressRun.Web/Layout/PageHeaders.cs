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

    /// <summary>Where the page lies that says that nothing is here.</summary>
    public const string NothingHere = "/not-found";

    /// <summary>Adds the headers where an answer does not bring its own.</summary>
    public static WebApplication UsePageHeaders(this WebApplication app)
    {
        app.Use((context, next) =>
        {
            // Asked now: an error page is rendered under another path.
            var isShared = context.Request.Path.StartsWithSegments(SharePages.Folder);
            context.Response.OnStarting(() =>
            {
                var headers = context.Response.Headers;
                if (isShared)
                {
                    SharePages.Hide(headers);
                }

                // Assets bring their own; all else is somebody's, files that are saved too.
                headers.TryAdd("Cache-Control", "private, no-store");
                headers.TryAdd("Content-Security-Policy", Policy);
                headers.TryAdd("X-Content-Type-Options", "nosniff");
                headers.TryAdd("Referrer-Policy", "same-origin");

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
}
