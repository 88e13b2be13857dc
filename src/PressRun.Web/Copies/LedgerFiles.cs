using System.Globalization;
using PressRun.Data.Copies;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Presses;
using PressRun.Data.Running;
using PressRun.Data.Selling;
using PressRun.Web.Libraries;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Copies;

/// <summary>The copies ledger as a file: lists of sales that come in, and the ledger that goes out.</summary>
public sealed class LedgerFiles(CopiesLedgerStore ledger, ChannelStore channels, TimeProvider time)
{
    private static readonly string[] Ordinals = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"];

    /// <summary>Where a list of sales goes.</summary>
    public async Task<SalesImport> TargetAsync(PressView press)
    {
        var names = await ledger.NamesAsync(press.Record.Id);
        return new SalesImport(ledger, await ShapeAsync(press.Record.Id, names), names, press);
    }

    /// <summary>Writes the ledger of all printings, counts left out.</summary>
    public async Task WriteAsync(Stream stream, PressView press, CancellationToken cancel)
    {
        var shape = await ShapeAsync(press.Record.Id, await ledger.NamesAsync(press.Record.Id, cancel));
        var manners = LibraryManners.Of(press);
        var rows = ledger.StandingAsync(press.Record.Id, cancel).Select(line => shape.Texts(line, manners).Single());
        await CsvText.WriteAsync(stream, shape.Columns, rows, manners, cancel);
    }

    /// <summary>What a printing is called in files: in English whoever writes or reads them, so that each reads what another wrote.</summary>
    public static string InFiles(int printing) => printing <= Ordinals.Length ? $"{Ordinals[printing - 1]} printing" : string.Create(CultureInfo.InvariantCulture, $"printing {printing}");

    private async Task<LedgerShape> ShapeAsync(PressId press, IReadOnlyList<EditionName> names)
    {
        // Somewhere it is tomorrow already.
        var lastDay = time.Today().AddDays(1);
        var known = await channels.ListAsync(press, archived: true);
        return LedgerShape.Of(names, InFiles, [.. known.Select(channel => (channel.Item.Id, channel.Item.Name))], lastDay);
    }
}
