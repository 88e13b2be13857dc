using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Http.Features;
using PressRun.Web.Running;

namespace PressRun.Web.Kept;

/// <summary>
/// Pages that a phone keeps and opens without a connection, and what their scripts send. No antiforgery token is asked for, because such a page may have lain
/// in a phone for days: a page of another site is refused by its origin, and could not send JSON without asking first.
/// </summary>
internal static class KeptPages
{
    /// <summary>Most entries of one message.</summary>
    public const int MostEntries = 100;

    private const int MostBytes = 64 * 1024;

    // Stricter than the other pages': nothing of MudBlazor stands here.
    private const string Policy =
        "default-src 'self'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'self'; worker-src 'self'; "
        + "object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    private static readonly JsonSerializerOptions Reading =
        new(JsonSerializerDefaults.Web) { MaxDepth = 8, Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false) } };

    /// <summary>Says in the headers what such a page is.</summary>
    public static void Describe(HttpContext? http)
    {
        if (http is { Response.HasStarted: false })
        {
            http.Response.Headers.ContentSecurityPolicy = Policy;
            // The phone keeps the page itself; nothing between it and here shall hand out an older one.
            http.Response.Headers.CacheControl = "no-store";
        }
    }

    /// <summary>Reads a message, and answers it.</summary>
    /// <param name="http">The request.</param>
    /// <param name="rule">What would be right, where it is not of the right shape.</param>
    /// <param name="answer">Answers it; null where it is not of the right shape after all.</param>
    public static async Task<IResult> AnswerAsync<T>(HttpContext http, string rule, Func<T, Task<IResult?>> answer)
        where T : class
    {
        if (!PlainJson.IsNamed(http.Request))
        {
            return Refused(StatusCodes.Status415UnsupportedMediaType, "Send it as application/json, in UTF-8.");
        }

        if (http.Request.ContentLength is not (> 0 and <= MostBytes))
        {
            return Refused(StatusCodes.Status413PayloadTooLarge, "Say how long the message is, and send fewer entries at once.");
        }

        http.Features.Get<IHttpMaxRequestBodySizeFeature>()?.MaxRequestBodySize = MostBytes;
        return await ReadAsync<T>(http.Request) is { } sent && await answer(sent) is { } result ? result : Refused(StatusCodes.Status400BadRequest, rule);
    }

    /// <summary>Says that there is no such thing.</summary>
    public static IResult NotHere(string problem) => Refused(StatusCodes.Status404NotFound, problem);

    private static async Task<T?> ReadAsync<T>(HttpRequest request)
        where T : class
    {
        try
        {
            return await JsonSerializer.DeserializeAsync<T>(request.Body, Reading, request.HttpContext.RequestAborted);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static IResult Refused(int status, string problem) => Results.Json(new { problem }, statusCode: status);
}
