using PressRun.Data.Import.Shapes;
using PressRun.Data.Postage;
using PressRun.Data.Running;
using PressRun.Data.Selling;
using PressRun.Data.Stocks;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Libraries;

/// <summary>The libraries of a press as tables, each fetched and ready to be edited.</summary>
public sealed class LibraryService(StockStore stocks, MailerStore mailers, PostageServiceStore services, ChannelStore channels, TimeProvider time)
{
    /// <summary>Papers.</summary>
    public Task<LibraryTable<Stock>> PapersAsync(PressView press) => LoadedAsync(
        new LibraryTable<Stock>(stocks, new StockShape(), stock => stock.Name, press.Record.Id, LibraryManners.Of(press)));

    /// <summary>Mailers.</summary>
    public Task<LibraryTable<Mailer>> MailersAsync(PressView press) => LoadedAsync(
        new LibraryTable<Mailer>(mailers, new MailerShape(), mailer => mailer.Name, press.Record.Id, LibraryManners.Of(press)));

    /// <summary>Postage services.</summary>
    public async Task<LibraryTable<PostageService>> PostageAsync(PressView press) => await LoadedAsync(
        new LibraryTable<PostageService>(
            services, await PostageShapeAsync(press), service => service.Name, press.Record.Id, LibraryManners.Of(press), all => PostageTable.Past(all, time.Today())));

    /// <summary>Ways of selling.</summary>
    public async Task<LibraryTable<Channel>> ChannelsAsync(PressView press) => await LoadedAsync(
        new LibraryTable<Channel>(channels, await ChannelShapeAsync(press), channel => channel.Name, press.Record.Id, LibraryManners.Of(press)));

    /// <summary>How ways of selling are read: with the press's mailers, archived ones too, since old ways may use them.</summary>
    public async Task<ChannelShape> ChannelShapeAsync(PressView press) =>
        new([.. (await mailers.ListAsync(press.Record.Id, archived: true)).Select(mailer => (mailer.Item.Id, mailer.Item.Name))]);

    /// <summary>How postage services are read: one that names no region goes where most of the press's go.</summary>
    public async Task<PostageShape> PostageShapeAsync(PressView press) =>
        new(PostageShape.UsualRegion((await services.ListAsync(press.Record.Id)).Select(service => service.Item)));

    private static async Task<LibraryTable<T>> LoadedAsync<T>(LibraryTable<T> table)
        where T : class
    {
        await table.LoadAsync(archived: false);
        return table;
    }
}
