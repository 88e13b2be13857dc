using PressRun.Data.Import.Tables;
using PressRun.Engine.Selling;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Import.Shapes;

/// <summary>Ways of selling, one a row. The price is not here: each edition brings its own.</summary>
/// <param name="mailers">The mailers that a way may use: ids with names.</param>
public sealed class ChannelShape(IReadOnlyList<(string Id, string Name)> mailers) : TableShape<LibraryItem<Channel>>
{
    private const int Id = 0;
    private const int NameOf = 1;
    private const int Mix = 2;
    private const int Discount = 3;
    private const int FeeRate = 4;
    private const int FeeFixed = 5;
    private const int TaxRate = 6;
    private const int TaxIncluded = 7;
    private const int Copies = 8;
    private const int Mailer = 9;
    private const int Region = 10;
    private const int Charged = 11;
    private const int Archived = 12;

    private static readonly NumberRule CopiesPerOrder =
        new("Write how many copies an order has, a whole number from 1 to 1,000,000.", 1m, 1_000_000m, IsWhole: true);

    /// <inheritdoc/>
    public override string Name => "ways of selling";

    /// <inheritdoc/>
    public override IReadOnlyList<Column> Columns { get; } =
    [
        Cells.IdColumn("id|code"),
        Cells.NameColumn("Way of selling", "name|channel|way of selling|outlet|sold|kanal"),
        new("mix", "Share", new NumberCell(JobRules.Mix)) { Words = Cells.Words("share|mix|weight|part of sales") },
        new("tradeDiscount", "Discount", Cells.Percent) { Words = Cells.Words("trade discount|discount|commission|rabatt|remise") },
        new("feeRate", "Fee", Cells.PercentBelowAll) { Words = Cells.Words("fee rate|payment fee|fee percent|gebuhr") },
        new("feeFixed", "and each order", Cells.Money) { Words = Cells.Words("fee fixed|fee per order|fixed fee|and each order|fee") },
        new("taxRate", "Tax", Cells.Percent) { Words = Cells.Words("tax rate|tax|vat|sales tax|mwst|tva|iva") },
        new("priceIncludesTax", "Tax in price", Cells.YesNo) { Words = Cells.Words("price includes tax|tax in price|including tax|inkl mwst|ttc") },
        new("copiesPerOrder", "Copies an order", new NumberCell(CopiesPerOrder)) { Words = Cells.Words("copies per order|copies an order|copies|units per order") },
        new("mailer", "Mailer", new ReferenceCell("mailer", mailers)) { Words = Cells.Words("mailer|envelope|box|packaging") },
        new("postageRegion", "Posted to", Cells.Name) { Words = Cells.Words("postage region|posted to|region|destination|zone") },
        new("postageCharged", "Postage charged", Cells.Money) { Words = Cells.Words("postage charged|shipping charged|shipping|postage") },
        Cells.Archived,
    ];

    /// <inheritdoc/>
    public override IEnumerable<object?[]> Rows(LibraryItem<Channel> thing)
    {
        var channel = thing.Item;
        yield return
        [
            channel.Id, channel.Name, channel.Mix, channel.TradeDiscount, channel.FeeRate, channel.FeeFixed, channel.TaxRate, channel.PriceIncludesTax,
            (decimal)channel.CopiesPerOrder, channel.MailerId, channel.PostageRegion, channel.PostageCharged, thing.Archived ? true : null,
        ];
    }

    /// <inheritdoc/>
    public override LibraryItem<Channel> Thing(IReadOnlyList<object?[]> rows, Refuse refuse)
    {
        var row = rows[0];
        var channel = new Channel(
            row.Text(Id),
            row.Text(NameOf),
            0m,
            row.Value<bool>(TaxIncluded),
            row.Value<decimal>(TaxRate),
            row.Value<decimal>(Discount),
            row.Value<decimal>(FeeRate),
            row.Value<decimal>(FeeFixed),
            (int)row.Value(Copies, 1m),
            (string?)row[Mailer],
            (string?)row[Region],
            row.Value<decimal>(Charged),
            row.Value<decimal>(Mix));
        return new LibraryItem<Channel>(channel, row.Value<bool>(Archived), 0);
    }

    /// <inheritdoc/>
    public override (string Key, int Column)? KeyOf(LibraryItem<Channel> thing) => LibraryKey.Of(thing.Item.Id, thing.Item.Name, NameOf);
}
