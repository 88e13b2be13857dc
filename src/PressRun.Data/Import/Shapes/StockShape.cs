using PressRun.Data.Import.Tables;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Import.Shapes;

/// <summary>Papers, one a row.</summary>
public sealed class StockShape : TableShape<LibraryItem<Stock>>
{
    private const int Id = 0;
    private const int NameOf = 1;
    private const int Weight = 2;
    private const int Caliper = 3;
    private const int Bulk = 4;
    private const int Finish = 5;
    private const int Archived = 6;
    private const string Thickness = "thickness";

    /// <inheritdoc/>
    public override string Name => "papers";

    /// <summary>Heads that mean the weight of a paper.</summary>
    public static IReadOnlyList<string> WeightWords { get; } = Cells.Words("weight|paper weight|grammage|gsm|basis weight|substance|g m2|gewicht|grammatur|poids|gramaje");

    /// <inheritdoc/>
    public override IReadOnlyList<Column> Columns { get; } =
    [
        Cells.IdColumn("id|sku|article no|item no|code"),
        Cells.NameColumn("Paper", "name|paper|stock|paper name|description|product|material|papier|papel|bezeichnung|sorte"),
        new("weight", "Weight", new WeightCell())
        {
            Required = true, Words = WeightWords,
        },
        new("caliper", "Caliper", new LengthCell(JobRules.Thickness, fine: true))
        {
            OneOf = Thickness, Words = Cells.Words("caliper|thickness|calliper|micron|microns|epaisseur|dicke|papierdicke|starke|papierstarke|grosor|dikte|spessore"),
        },
        new("bulk", "Bulk", new NumberCell(JobRules.Bulk, "cm\u00B3/g")) { OneOf = Thickness, Words = Cells.Words("bulk|volume|specific volume|volumen|main") },
        new("finish", "Finish", PrintWords.Finish)
        {
            OneOf = Thickness, Words = Cells.Words("finish|surface|coating|coated|oberflache|finition|acabado"),
        },
        Cells.Archived,
    ];

    /// <inheritdoc/>
    public override IEnumerable<object?[]> Rows(LibraryItem<Stock> thing)
    {
        var stock = thing.Item;
        yield return [stock.Id, stock.Name, stock.Weight, stock.StatedCaliper, stock.Bulk, stock.Finish, thing.Archived ? true : null];
    }

    /// <inheritdoc/>
    public override LibraryItem<Stock>? Thing(IReadOnlyList<object?[]> rows, Refuse refuse)
    {
        var row = rows[0];
        var stock = new Stock(
            row.Text(Id), row.Text(NameOf), row.Value<PaperWeight>(Weight), row.Maybe<Length>(Caliper), row.Maybe<decimal>(Bulk), row.Maybe<Finish>(Finish));
        if (stock.Caliper <= Length.Zero)
        {
            refuse(0, Caliper, "Write a caliper, a bulk or a finish, so that the paper's thickness is known.");
            return null;
        }

        return new LibraryItem<Stock>(stock, row.Value<bool>(Archived), 0);
    }

    /// <inheritdoc/>
    public override (string Key, int Column)? KeyOf(LibraryItem<Stock> thing) => LibraryKey.Of(thing.Item.Id, thing.Item.Name, NameOf);

    /// <inheritdoc/>
    public override bool MayRepeat => true;

    /// <summary>Shops list a paper once a price step, and papers of several weights under one name: what is the same is there already, and of another weight it
    /// is a paper of its own, whose name ends with it.</summary>
    public override LibraryItem<Stock>? Again(LibraryItem<Stock> first, LibraryItem<Stock> again)
    {
        var named = again with { Item = again.Item with { Name = first.Item.Name } };
        return named == first ? first
            : again.Item.Id.Length > 0 || again.Item.Weight == first.Item.Weight ? null
            : again with { Item = again.Item with { Name = $"{again.Item.Name} {NumberText.Plain(again.Item.Weight.Stated)}" } };
    }
}
