using System.Globalization;
using PressRun.Web.Kept;
using PressRun.Web.Layout;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Tallies;

/// <summary>Where the tally's page sends what was counted, and asks what others counted.</summary>
internal static class TallyEndpoints
{
    private const string NoPress = "There is no such press here.";
    private const string NoTally = "There is no such tally here.";
    private static readonly string Rule = $"Send the tally and 1 to {KeptPages.MostEntries} entries, each with id, step, kind and copies or seconds.";

    /// <summary>Maps them.</summary>
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapPost("/tally/begin", BeginAsync).DisableAntiforgery();
        app.MapPost("/tally/entries", TakeAsync).DisableAntiforgery();
        app.MapGet("/tally/now", NowAsync);
    }

    private static Task<IResult> BeginAsync(HttpContext http, CurrentPress presses, TallyService tallies) => KeptPages.AnswerAsync<TallyBegin>(
        http, "Send press, id, edition, plan, copies and wanted.", async asked => asked is not { Copies: not null, Wanted: not null }
            ? null
            : await FindAsync(presses, asked.Press) is not { } press
                ? KeptPages.NotHere(NoPress)
                : await tallies.BeginAsync(press.Record.Id, asked, CultureInfo.CurrentCulture) is { } begun ? Results.Json(begun) : KeptPages.NotHere("There is no such plan here."));

    private static Task<IResult> TakeAsync(HttpContext http, CurrentPress presses, TallyService tallies) => KeptPages.AnswerAsync<TallyEntries>(http, Rule, async sent =>
    {
        if (sent is not { Entries: { Count: > 0 and <= KeptPages.MostEntries } entries } || entries.Any(entry => entry is null))
        {
            return null;
        }

        return await FindAsync(presses, sent.Press) is not { } press
            ? KeptPages.NotHere(NoPress)
            : await tallies.TakeAsync(press.Record.Id, sent, http.RequestAborted) is { } answer ? Results.Json(answer) : KeptPages.NotHere(NoTally);
    });

    private static async Task<IResult> NowAsync(Guid press, Guid tally, string? since, CurrentPress presses, TallyService tallies, CancellationToken cancel)
    {
        if (await FindAsync(presses, press) is not { } here)
        {
            return KeptPages.NotHere(NoPress);
        }

        var (isThere, news) = await tallies.NewsAsync(here.Record.Id, tally, since ?? "", cancel);
        return isThere ? news is null ? Results.NoContent() : Results.Json(news) : KeptPages.NotHere(NoTally);
    }

    private static async Task<PressView?> FindAsync(CurrentPress presses, Guid press) =>
        await presses.FindAsync(press.ToString()) is { } found && found.Record.Id.Value == press ? found : null;
}
