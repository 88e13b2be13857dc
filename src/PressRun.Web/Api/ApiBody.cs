using Microsoft.AspNetCore.Http.Features;
using Microsoft.Net.Http.Headers;

namespace PressRun.Web.Api;

/// <summary>Reads what is sent.</summary>
internal static class ApiBody
{
    /// <summary>The body; null where it is no JSON or too much, and the caller has been told so.</summary>
    public static async Task<ReadOnlyMemory<byte>?> ReadAsync(HttpContext context, int most)
    {
        if (!IsPlainJson(context.Request))
        {
            await ApiProblem.WrongKind(context);
            return null;
        }

        if (context.Request.ContentLength > most || await ReadUpToAsync(context, most) is not { } body)
        {
            await ApiProblem.TooLarge(context, most);
            return null;
        }

        return body;
    }

    // JSON is UTF-8 by its standard (RFC 8259), and a media type of JSON has no other parameter that matters. A caller who names none is believed.
    private static bool IsPlainJson(HttpRequest request)
    {
        if (request.Headers.ContentEncoding.Count > 0 && request.Headers.ContentEncoding != "identity")
        {
            return false;
        }

        if (string.IsNullOrEmpty(request.ContentType))
        {
            return true;
        }

        return MediaTypeHeaderValue.TryParse(request.ContentType, out var type)
            && (type.MediaType.Equals("application/json", StringComparison.OrdinalIgnoreCase) || type.Suffix.Equals("json", StringComparison.OrdinalIgnoreCase))
            && (!type.Charset.HasValue || type.Charset.Equals("utf-8", StringComparison.OrdinalIgnoreCase));
    }

    // Null where there is more than it may have; the rest of such a body is not read.
    private static async Task<ReadOnlyMemory<byte>?> ReadUpToAsync(HttpContext context, int limit)
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
        {
            size.MaxRequestBodySize = null;
        }

        var most = (int)(context.Request.ContentLength ?? limit + 1);
        using var body = new MemoryStream(Math.Min(most, 65_536));
        var buffer = new byte[16_384];
        int read;
        while ((read = await context.Request.Body.ReadAsync(buffer, context.RequestAborted)) > 0)
        {
            if (body.Length + read > limit)
            {
                return null;
            }

            body.Write(buffer, 0, read);
        }

        return body.GetBuffer().AsMemory(0, (int)body.Length);
    }
}
