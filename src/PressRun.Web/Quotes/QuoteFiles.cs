using System.Globalization;
using PressRun.Data.Quotes;
using PressRun.Web.Layout;

namespace PressRun.Web.Quotes;

/// <summary>A quote as files, for the maker.</summary>
public static class QuoteFiles
{
    /// <summary>Maps the addresses under which a quote is fetched as a file.</summary>
    public static void Map(IEndpointRouteBuilder app) =>
        app.MapGet("/quotes/{number:int}/job.json", async (CurrentPress presses, QuoteStore quotes, HttpContext http, int number) =>
            await presses.FindAsync(http.Request.Cookies[CurrentPress.CookieName]) is { } press
            && await quotes.FindAsync(press.Record.Id, number, http.RequestAborted) is { } whole
                ? Results.File(whole.Quote.Job, "application/json", string.Create(CultureInfo.InvariantCulture, $"quote-{number}.json"))
                : Results.NotFound());
}
