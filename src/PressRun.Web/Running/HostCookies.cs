using Microsoft.Net.Http.Headers;

namespace PressRun.Web.Running;

/// <summary>
/// Ties every cookie to this host where the app is served over TLS: its name begins with <c>__Host-</c>, so that a browser takes it from here only,
/// and neither a neighbouring host nor an unprotected answer can put another in its place (RFC 6265bis, 4.1.3.2; from memory). Browsers take such
/// names over TLS only, so without it the names are plain. The rest of the app knows the plain names.
/// </summary>
public static class HostCookies
{
    /// <summary>What the names begin with.</summary>
    public const string Prefix = "__Host-";

    /// <summary>Renames cookies on their way out and back in.</summary>
    public static void UseHostCookies(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        var isSafe = context.Request.IsHttps;
        if (context.Request.Headers.Cookie is { Count: > 0 } sent)
        {
            context.Request.Headers.Cookie = string.Join("; ", sent.SelectMany(line => Known(line ?? "", isSafe)));
        }

        if (isSafe)
        {
            context.Response.OnStarting(() =>
            {
                context.Response.Headers.SetCookie = context.Response.Headers.SetCookie.Select(Tied).ToArray();
                return Task.CompletedTask;
            });
        }

        return next(context);
    });

    // A browser ties a cookie by the first letters of its name; with another white space before them, it is an ordinary one to it, that a neighbour may set.
    private static IEnumerable<string> Known(string line, bool isSafe) => line.Split(';')
        .Select(cookie => cookie.Trim(' ', '\t')).Where(cookie => cookie.Length > 0)
        .Where(cookie => cookie.StartsWith(Prefix, StringComparison.Ordinal) == isSafe)
        .Select(cookie => isSafe ? cookie[Prefix.Length..] : cookie);

    private static string? Tied(string? set)
    {
        if (!SetCookieHeaderValue.TryParse(set, out var cookie))
        {
            return set;
        }

        (cookie.Name, cookie.Path, cookie.Domain, cookie.Secure) = (Prefix + cookie.Name, "/", null, true);
        return cookie.ToString();
    }
}
