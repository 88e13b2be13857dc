using System.Security.Cryptography;

namespace PressRun.Web.Api;

/// <summary>Keeps the page that describes the interface on this host: whatever its script might ask another one for, the browser refuses.</summary>
internal static class ApiPagePolicy
{
    private const string NonceKey = "PressRun.ApiPage.Nonce";

    /// <summary>The secret of one response that lets its own script run; the same for the same request.</summary>
    public static string Nonce(HttpContext context)
    {
        if (context.Items[NonceKey] is string known)
        {
            return known;
        }

        var nonce = Convert.ToBase64String(RandomNumberGenerator.GetBytes(16));
        context.Items[NonceKey] = nonce;
        return nonce;
    }

    /// <summary>Adds the policy to an endpoint's answers.</summary>
    public static void Apply(EndpointBuilder endpoint)
    {
        if (endpoint.RequestDelegate is not { } inner)
        {
            return;
        }

        endpoint.RequestDelegate = context =>
        {
            var headers = context.Response.Headers;
            // The page's styles are written into it as it runs, which only 'unsafe-inline' allows.
            headers.ContentSecurityPolicy =
                $"default-src 'none'; script-src 'self' 'nonce-{Nonce(context)}'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; "
                + "font-src 'self' data:; connect-src 'self'; base-uri 'self'; form-action 'none'; frame-ancestors 'none'";
            headers.XContentTypeOptions = "nosniff";
            headers["Referrer-Policy"] = "no-referrer";
            return inner(context);
        };
    }
}
