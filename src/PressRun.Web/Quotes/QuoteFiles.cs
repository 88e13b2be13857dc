using System.Globalization;
using System.Text;
using PressRun.Web.Layout;
using PressRun.Web.Pdf;

namespace PressRun.Web.Quotes;

/// <summary>A quote as files, for the maker.</summary>
public static class QuoteFiles
{
    /// <summary>What a PDF is called on the way.</summary>
    public const string Pdf = "application/pdf";

    /// <summary>Maps the addresses under which a quote is fetched as a file.</summary>
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapGet("/quotes/{number:int}/job.json", (CurrentPress presses, QuoteService quotes, HttpContext http, int number) =>
            SendAsync(http, presses, quotes, number, view => Task.FromResult(Results.File(view.Quote.Job, "application/json", Name(view, "json")))));
        app.MapGet("/quotes/{number:int}/quote.pdf", (CurrentPress presses, QuoteService quotes, HttpContext http, int number) =>
            SendAsync(http, presses, quotes, number, view => Task.FromResult(Results.File(QuotePdf.Of(view, allLines: true), Pdf))));
        app.MapGet("/quotes/{number:int}/quote.csv", (CurrentPress presses, QuoteService quotes, HttpContext http, int number) =>
            SendAsync(http, presses, quotes, number, async view => Results.File(Encoding.UTF8.GetBytes(await QuoteCsv.OfAsync(view)), "text/csv; charset=utf-8", Name(view, "csv"))));
    }

    private static async Task<IResult> SendAsync(HttpContext http, CurrentPress presses, QuoteService quotes, int number, Func<QuoteView, Task<IResult>> send) =>
        await presses.OfFileAsync(http) is { } press && await quotes.FindAsync(press.Record.Id, number, http.RequestAborted) is { } view
            ? await send(view)
            : Results.NotFound();

    private static string Name(QuoteView view, string ending) => string.Create(CultureInfo.InvariantCulture, $"quote-{view.Quote.Number}.{ending}");
}
