using System.Globalization;
using PressRun.Web.Bindery.Drawn;
using PressRun.Web.Layout;
using PressRun.Web.Quotes;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Bindery;

/// <summary>What the table needs as files: the bench sheet, and the sheets of a run at their true size.</summary>
public static class BinderyFiles
{
    /// <summary>Most sheets that one PDF holds, two pages each; more are fetched from another first sheet on.</summary>
    public const int MostSheets = 100;

    // False for the front, true for the back.
    private static readonly bool[] Sides = [false, true];

    /// <summary>Maps the addresses under which they are fetched.</summary>
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapGet("/titles/{slug}/{printing:int}/run/bench.pdf", (CurrentPress presses, BinderyService service, TimeProvider time, HttpContext http, string slug, int printing, Guid? plan) =>
            SendAsync(http, presses, service, slug, printing, plan, (view, format) => Results.File(BenchPdf.Of(view, format, time.GetLocalNow()), QuoteFiles.Pdf, Name(slug, printing, "bench.pdf"))));
        app.MapGet("/titles/{slug}/{printing:int}/run/imposition.pdf", (CurrentPress presses, BinderyService service, HttpContext http, string slug, int printing, Guid? plan, int? from) =>
            SendAsync(http, presses, service, slug, printing, plan, (view, format) => Sheets(view, format, from ?? 1) is { Count: > 0 } pictures
                ? Results.File(PdfPicture.AtTrueSize(Say($"Imposition, {view.Title.Title}"), pictures), QuoteFiles.Pdf, Name(slug, printing, "imposition.pdf"))
                : Results.NotFound()));
        app.MapGet("/titles/{slug}/{printing:int}/run/imposition.svg", (CurrentPress presses, BinderyService service, HttpContext http, string slug, int printing, Guid? plan, int? sheet, bool? back) =>
            SendAsync(http, presses, service, slug, printing, plan, (view, format) => view.Sheet!.Sheets.ElementAtOrDefault((sheet ?? 1) - 1) is { } found
                ? Results.File(
                    SvgFile.Of(SheetPicture.Face(found, back ?? false, view.Source.Edition.Bleed, format)), "image/svg+xml",
                    Name(slug, printing, string.Create(CultureInfo.InvariantCulture, $"sheet-{found.Number}-{(back ?? false ? "back" : "front")}.svg")))
                : Results.NotFound()));
    }

    /// <summary>Front and back of the sheets from one on.</summary>
    public static IReadOnlyList<Picture> Sheets(BinderyView view, PressFormat format, int first) =>
    [
        .. from sheet in view.Sheet!.Sheets.Skip(Math.Max(0, first - 1)).Take(MostSheets)
           from back in Sides
           select SheetPicture.Face(sheet, back, view.Source.Edition.Bleed, format),
    ];

    private static async Task<IResult> SendAsync(
        HttpContext http, CurrentPress presses, BinderyService service, string slug, int printing, Guid? plan, Func<BinderyView, PressFormat, IResult> send) =>
        await presses.OfFileAsync(http) is { } press
        && await service.LoadAsync(press.Record.Id, slug, printing, plan) is { Sheet: not null } view
            ? send(view, press.Format)
            : Results.NotFound();

    private static string Name(string slug, int printing, string ending) => string.Create(CultureInfo.InvariantCulture, $"{slug}-{printing}-{ending}");
}
