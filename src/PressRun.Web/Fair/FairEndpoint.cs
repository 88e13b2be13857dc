using PressRun.Web.Kept;
using PressRun.Web.Layout;

namespace PressRun.Web.Fair;

/// <summary>Takes what phones sold.</summary>
internal static class FairEndpoint
{
    private static readonly string Rule = $"Send 1 to {KeptPages.MostEntries} entries, each with id, edition, day and amount.";

    /// <summary>Maps the address that entries are sent to.</summary>
    public static void Map(IEndpointRouteBuilder app) => app.MapPost("/fair/entries", TakeAsync).DisableAntiforgery();

    private static Task<IResult> TakeAsync(HttpContext http, CurrentPress presses, FairService fair) => KeptPages.AnswerAsync<FairEntries>(http, Rule, async sent =>
    {
        if (sent is not { Entries: { Count: > 0 and <= KeptPages.MostEntries } entries } || entries.Any(entry => entry is null))
        {
            return null;
        }

        return await presses.FindAsync(sent.Press.ToString()) is { } press && press.Record.Id.Value == sent.Press
            ? Results.Json(await fair.TakeAsync(press.Record.Id, sent, http.RequestAborted))
            : KeptPages.NotHere("There is no such press here.");
    });
}
