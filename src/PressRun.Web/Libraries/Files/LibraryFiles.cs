using System.Globalization;
using PressRun.Data;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Postage;
using PressRun.Data.RunPlans;
using PressRun.Data.Selling;
using PressRun.Data.Shops;
using PressRun.Data.Stocks;
using PressRun.Web.Copies;
using PressRun.Web.Layout;
using PressRun.Web.Libraries.Shops;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Libraries.Files;

/// <summary>Libraries and price lists as files.</summary>
public sealed class LibraryFiles(
    CurrentPress presses, StockStore stocks, MailerStore mailers, PostageServiceStore services, ChannelStore channels, LibraryService libraries, ShopService shops, PriceListStore lists, PlanStore plans, LedgerFiles ledger)
{
    private const string Papers = "papers";
    private const string Mailers = "post/mailers";
    private const string Services = "post/services";
    private const string Selling = "selling";
    private const string Sales = "sales";
    private const string Csv = "text/csv; charset=utf-8";

    private static readonly string[] Libraries = [Papers, Mailers, Services, Selling];

    /// <summary>Where a file for a library goes; null where there is no such library.</summary>
    /// <param name="press">The press.</param>
    /// <param name="library">The library's address: <c>papers</c>, <c>post/mailers</c>.</param>
    public async Task<IImportTarget?> TargetAsync(PressView press, string library) => library switch
    {
        Papers => new LibraryImport<Engine.Paper.Stock>(stocks, new StockShape(), press, "papers"),
        Mailers => new LibraryImport<Engine.Postage.Mailer>(mailers, new MailerShape(), press, "post"),
        Services => new LibraryImport<Engine.Postage.PostageService>(services, await libraries.PostageShapeAsync(press), press, "post"),
        Selling => new LibraryImport<Engine.Selling.Channel>(channels, await libraries.ChannelShapeAsync(press), press, "selling"),
        Sales => await ledger.TargetAsync(press),
        _ => null,
    };

    /// <summary>Where a file for a price list goes; null where there is no such list.</summary>
    public async Task<IImportTarget?> ListTargetAsync(PressView press, string shop, Guid? list) =>
        await shops.OpenAsync(press, shop, list) is { Editor: not null } view ? new PriceListImport(view, press, shops, stocks, plans) : null;

    /// <summary>Maps the addresses under which the files are fetched.</summary>
    public static void Map(IEndpointRouteBuilder app)
    {
        foreach (var library in Libraries)
        {
            app.MapGet($"/{library}/export.csv", (LibraryFiles files, HttpContext http) => files.SendAsync(http, library));
        }

        app.MapGet("/sales/export.csv", (LibraryFiles files, HttpContext http) => files.SendLedgerAsync(http));
        app.MapGet("/shops/{shop}/{list:guid}/export.csv", (LibraryFiles files, HttpContext http, string shop, Guid list) => files.SendListAsync(http, shop, list));
    }

    private async Task<IResult> SendAsync(HttpContext http, string library)
    {
        if (await PressOfAsync(http) is not { } press)
        {
            return Results.NotFound();
        }

        return library switch
        {
            Papers => await SendAsync(http, press, "papers", stocks, new StockShape()),
            Mailers => await SendAsync(http, press, "mailers", mailers, new MailerShape()),
            Services => await SendAsync(http, press, "postage", services, new PostageShape()),
            _ => await SendAsync(http, press, "ways-of-selling", channels, await libraries.ChannelShapeAsync(press)),
        };
    }

    private async Task<IResult> SendLedgerAsync(HttpContext http) => await PressOfAsync(http) is { } press
        ? Results.Stream(stream => ledger.WriteAsync(stream, press, http.RequestAborted), Csv, "copies-ledger.csv")
        : Results.NotFound();

    private static async Task<IResult> SendAsync<T>(HttpContext http, PressView press, string name, LibraryStore<T> store, TableShape<LibraryItem<T>> shape)
        where T : class
    {
        var manners = LibraryManners.Of(press);
        var things = await store.ListAsync(press.Record.Id, archived: true, http.RequestAborted);
        return Send(name, shape.Columns, things.SelectMany(thing => shape.Texts(thing, manners)), manners);
    }

    private async Task<IResult> SendListAsync(HttpContext http, string shop, Guid list)
    {
        if (await PressOfAsync(http) is not { } press
            || await lists.LoadAsync(press.Record.Id, list, http.RequestAborted) is not { } record
            || record.ShopId != shop)
        {
            return Results.NotFound();
        }

        var manners = LibraryManners.Of(press);
        var file = new PriceListFile([.. (await stocks.ListAsync(press.Record.Id, archived: true, http.RequestAborted)).Select(stock => stock.Item)]);
        var name = string.Create(CultureInfo.InvariantCulture, $"{shop}-{record.Prices.ValidFrom:yyyy-MM-dd}");
        return Send(name, file.Columns, file.Texts(record.Prices, manners), manners);
    }

    private static IResult Send(string name, IReadOnlyList<Column> columns, IEnumerable<string[]> rows, CellManners manners) =>
        Results.Stream(stream => CsvText.WriteAsync(stream, columns, rows.ToAsyncEnumerable(), manners), Csv, $"{name}.csv");

    private Task<PressView?> PressOfAsync(HttpContext http) => presses.OfFileAsync(http);
}
