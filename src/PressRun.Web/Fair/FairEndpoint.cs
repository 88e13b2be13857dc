using System.Text.Json;
using Microsoft.AspNetCore.Http.Features;
using PressRun.Web.Layout;

namespace PressRun.Web.Fair;

/// <summary>
/// Takes what phones sold. No antiforgery token is asked for, because the page may have lain in a phone for days: a page of another site is refused by its
/// origin, and could not send JSON without asking first.
/// </summary>
internal static class FairEndpoint
{
    private const int MostBytes = 64 * 1024;

    private static readonly JsonSerializerOptions Reading = new(JsonSerializerDefaults.Web) { MaxDepth = 8 };

    /// <summary>Maps the address that entries are sent to.</summary>
    public static void Map(IEndpointRouteBuilder app) => app.MapPost("/fair/entries", TakeAsync).DisableAntiforgery();

    private static async Task<IResult> TakeAsync(HttpContext http, CurrentPress presses, FairService fair)
    {
        if (!http.Request.HasJsonContentType())
        {
            return Refused(StatusCodes.Status415UnsupportedMediaType, "Send the entries as application/json.");
        }

        if (http.Request.ContentLength is not (> 0 and <= MostBytes))
        {
            return Refused(StatusCodes.Status413PayloadTooLarge, "Say how long the message is, and send fewer entries at once.");
        }

        http.Features.Get<IHttpMaxRequestBodySizeFeature>()?.MaxRequestBodySize = MostBytes;
        if (await ReadAsync(http.Request) is not { Entries: { Count: > 0 and <= FairService.MostEntries } entries } sent || entries.Any(entry => entry is null))
        {
            return Refused(StatusCodes.Status400BadRequest, $"Send 1 to {FairService.MostEntries} entries, each with id, edition, day and amount.");
        }

        return await presses.FindAsync(sent.Press.ToString()) is { } press && press.Record.Id.Value == sent.Press
            ? Results.Json(await fair.TakeAsync(press.Record.Id, entries, http.RequestAborted))
            : Refused(StatusCodes.Status404NotFound, "There is no such press here.");
    }

    private static async Task<FairEntries?> ReadAsync(HttpRequest request)
    {
        try
        {
            return await request.ReadFromJsonAsync<FairEntries>(Reading, request.HttpContext.RequestAborted);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static IResult Refused(int status, string problem) => Results.Json(new { problem }, statusCode: status);
}
