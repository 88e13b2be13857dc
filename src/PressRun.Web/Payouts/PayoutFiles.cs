using System.Globalization;
using System.Text;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Tables;
using PressRun.Engine.Quoting;
using PressRun.JobFile;
using PressRun.Web.Layout;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Payouts;

/// <summary>Who gets what of a printing as a table for a spreadsheet.</summary>
public static class PayoutFiles
{
    private static readonly TextCell Cell = new(JobRules.Name);

    // The app never reads such a file again, so that its heads are in the words of whoever saves it.
    private static Column[] Columns =>
    [
        Headed(Say($"Who")), Headed(Say($"For what")), Headed(Say($"In this time")), Headed(Say($"To date")), Headed(Say($"Paid")), Headed(Say("of money", $"Open")),
    ];

    private static Column Headed(string words) => new(words, words, Cell);

    /// <summary>Maps the address of the file.</summary>
    public static void Map(IEndpointRouteBuilder app) => app.MapGet("/titles/{slug}/{printing:int}/payouts.csv", SendAsync);

    /// <summary>A row for each person, and what the press keeps as the last one, with the decimal mark of the viewer; what looks like a formula is defused.</summary>
    public static Task<string> OfAsync(PayoutStatement statement, PressFormat format)
    {
        var rows = statement.People.Select(person => new[]
        {
            person.Name, ClaimWords.Of(person.Claims, format), format.ForFile(person.InTime), format.ForFile(person.ToDate), format.ForFile(person.Paid), format.ForFile(person.Open),
        });
        string[] kept = [Say($"kept by the press"), "", format.ForFile(statement.InTime.Kept), format.ForFile(statement.ToDate.Kept), "", ""];
        return CsvText.OfAsync(Columns, [.. rows, kept], new CellManners(format.Culture, format.Units, format.Currency.MinorDigits));
    }

    private static async Task<IResult> SendAsync(CurrentPress presses, PayoutsService payouts, HttpContext http, string slug, int printing, DateOnly? from, DateOnly? to)
    {
        if (await presses.OfFileAsync(http) is not { } press || await payouts.LoadAsync(press.Record.Id, slug, printing) is not { } view)
        {
            return Results.NotFound();
        }

        var (first, last) = (from ?? DateOnly.MinValue, to ?? view.Today);
        return view.Statement(first, last, press.Format.Currency) is { Succeeded: true, Value: var statement }
            ? Results.File(Encoding.UTF8.GetBytes(await OfAsync(statement, press.Format)), "text/csv; charset=utf-8", string.Create(CultureInfo.InvariantCulture, $"{slug}-{printing}-payouts.csv"))
            : Results.BadRequest(Say($"Write the first day and a last day that comes after it."));
    }
}
