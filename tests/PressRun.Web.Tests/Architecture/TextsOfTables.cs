using System.Globalization;
using System.Text.RegularExpressions;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;

namespace PressRun.Web.Tests.Architecture;

/// <summary>What the tables of <c>PressRun.Data</c> bring along and pages show: heads, what belongs below them, units, and the words that can be chosen.</summary>
internal static partial class TextsOfTables
{
    /// <summary>The columns of all tables.</summary>
    public static IReadOnlyList<Column> Columns
    {
        get
        {
            var list = PriceListTable.For([], []);
            ITableShape[] shapes =
            [
                new StockShape(), new MailerShape(), new PostageShape(), new ChannelShape([]), new BenchStepShape(), new ConsumableShape(),
                LedgerShape.Of([], printing => printing.ToString(CultureInfo.InvariantCulture), [], default),
                list.Sheets, list.Print, list.Paper, list.Offers, list.Books, list.Finishing, list.Discounts, list.Delivery,
            ];
            return [.. shapes.SelectMany(shape => shape.Columns), .. new PriceListFile([]).Columns.Take(2)];
        }
    }

    /// <summary>All of it, each word once.</summary>
    public static IReadOnlyList<TextOfCode> All =>
    [
        .. Columns.SelectMany(OfColumn).Concat(Terms.All.SelectMany(OfTerm)).Append("Discounts").OfType<string>().Where(word => !Symbol().IsMatch(word)).Distinct(StringComparer.Ordinal)
            .Select(word => new TextOfCode(null, word, "PressRun.Web.Libraries.CellWords", "")),
    ];

    private static IEnumerable<string?> OfColumn(Column column) => [column.Title, column.About, .. OfKind(column.Kind)];

    private static IEnumerable<string?> OfTerm(Term term) => [term.Title, term.Note, .. OfKind(term.Kind)];

    private static IEnumerable<string?> OfKind(CellKind kind) =>
        [kind.UnitOf(new CellManners(CultureInfo.InvariantCulture, UnitSystem.Metric)), .. kind.Units, .. kind.IsClosed ? kind.Choices : []];

    // Symbols of measures are the same in all languages.
    [GeneratedRegex(@"^(µm|mm|cm|in|g|kg|oz|lb|gsm|s|min|%|cm³/g|lb [a-z]+)$")]
    private static partial Regex Symbol();
}
