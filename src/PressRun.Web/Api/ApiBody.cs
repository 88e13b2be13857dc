using Microsoft.AspNetCore.Http.Features;
using PressRun.Web.Running;

namespace PressRun.Web.Api;

/// <summary>Reads what is sent.</summary>
internal static class ApiBody
{
    /// <summary>The body; null where it is no JSON or too much, and the caller has been told so.</summary>
    public static async Task<ReadOnlyMemory<byte>?> ReadAsync(HttpContext context, int most)
    {
        // A caller who names no kind is believed.
        if (!PlainJson.IsNamed(context.Request) && !PlainJson.IsUnnamed(context.Request))
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
