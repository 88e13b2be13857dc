using System.Globalization;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;

namespace PressRun.Data.Tests.Import;

/// <summary>Files that lack something, or say it in words that nobody foresaw.</summary>
public sealed class UnfinishedFileTests
{
    private static readonly CellManners English = new(CultureInfo.GetCultureInfo("en"), UnitSystem.Metric);

    private static PaperShape PaperPrices =>
        PriceListTable.For([new Stock("quay", "Quay offset", PaperWeight.FromGrammage(100m), null, null, Engine.Paper.Finish.Uncoated)], []).Paper;

    [Fact]
    public void A_column_without_a_head_and_without_cells_is_never_a_source()
    {
        using var file = new TempCsv("Papiersorte;Format;ab Bogen;Preis je Bogen;\nUnbekannt 90;SRA3;1;0,05;\nQuay offset;SRA3;1;0,07;\n");

        var mapping = MappingGuess.Of(CsvSource.Open(file.Path), PaperPrices.Columns, English);

        Assert.Equal([0, 1, 2, 3, null], mapping.Columns.Select(column => column.Column));
    }

    [Fact]
    public void A_column_with_cells_beats_an_empty_one_of_the_same_head()
    {
        using var file = new TempCsv("Paper,Name of the paper,Weight\n,Quay offset,100\n,Silk,115\n");

        var mapping = MappingGuess.Of(CsvSource.Open(file.Path), new StockShape().Columns, English);

        Assert.Equal([null, 1, 2], mapping.Columns.Select(column => column.Column));
    }

    [Fact]
    public void An_empty_column_under_a_head_is_still_a_source_where_nothing_else_is()
    {
        using var file = new TempCsv("Paper,Weight,Caliper\nQuay offset,100,\n");

        var mapping = MappingGuess.Of(CsvSource.Open(file.Path), new StockShape().Columns, English);

        Assert.Equal([1, 2, 3], mapping.Columns.Select(column => column.Column));
    }

    [Fact]
    public void Names_that_look_like_numbers_say_nothing_of_the_decimal_mark()
    {
        using var file = new TempCsv("service,region,up to 100 g,max length (mm)\nLetter,\"1,5\",2,9.525\nParcel,\"1,5\",3,9.525\n");

        Assert.False(MappingGuess.Of(CsvSource.Open(file.Path), new PostageShape().Columns, English).DecimalComma);
    }

    [Fact]
    public void A_finish_said_once_makes_papers_of_a_list_without_thickness()
    {
        using var file = new TempCsv("Paper,Weight\nQuay offset,100\nSilk,115\n");
        var source = CsvSource.Open(file.Path);
        var shape = new StockShape();
        var mapping = MappingGuess.Of(source, shape.Columns, English);
        var finish = Assert.Single(mapping.NotSaid(shape.Columns), column => shape.Columns[column].Key == "finish");

        var bare = CsvReading.Preview(source, mapping, shape, English);
        var said = CsvReading.Preview(source, mapping with { Everywhere = new Dictionary<int, string> { [finish] = "uncoated" } }, shape, English);

        Assert.Equal((2, 0), (bare.ProblemCount, bare.Things));
        Assert.Equal((0, 2), (said.ProblemCount, said.Things));
    }

    [Fact]
    public void What_every_row_needs_and_one_of_several_that_are_needed_can_be_said_once_and_steps_cannot()
    {
        using var file = new TempCsv("Paper\nQuay offset\n");
        var source = CsvSource.Open(file.Path);
        string[] NotSaid(IReadOnlyList<Column> table) => [.. MappingGuess.Of(source, table, English).NotSaid(table).Select(column => table[column].Key)];

        Assert.Equal(["weight", "caliper", "bulk", "finish"], NotSaid(new StockShape().Columns));
        Assert.Equal(["sheet"], NotSaid(PaperPrices.Columns));
        Assert.Equal(["ink", "sheet"], NotSaid(PriceListTable.For([], []).Print.Columns));
        Assert.Contains("validFrom", NotSaid(new PostageShape().Columns));
    }

    [Theory]
    [InlineData("farbig", Ink.Colour)]
    [InlineData("Farbe", Ink.Colour)]
    [InlineData("4/4", Ink.Colour)]
    [InlineData("4/4-farbig", Ink.Colour)]
    [InlineData("4c", Ink.Colour)]
    [InlineData("full colour", Ink.Colour)]
    [InlineData("couleur", Ink.Colour)]
    [InlineData("quadrichromie", Ink.Colour)]
    [InlineData("Schwarz-Wei\u00DF", Ink.Black)]
    [InlineData("s/w", Ink.Black)]
    [InlineData("1/1", Ink.Black)]
    [InlineData("black & white", Ink.Black)]
    [InlineData("noir et blanc", Ink.Black)]
    [InlineData("greyscale", Ink.Black)]
    public void Words_for_inks_in_English_German_and_French_are_understood(string word, Ink ink) =>
        Assert.Equal(ink, Kind(PriceListTable.For([], []).Print, "ink").Read(word, English).Value);

    [Theory]
    [InlineData("ungestrichen", Engine.Paper.Finish.Uncoated)]
    [InlineData("gestrichen", Engine.Paper.Finish.Coated)]
    [InlineData("Offset", Engine.Paper.Finish.Uncoated)]
    [InlineData("Bilderdruck matt", Engine.Paper.Finish.Coated)]
    [InlineData("non couch\u00E9", Engine.Paper.Finish.Uncoated)]
    [InlineData("couch\u00E9 mat", Engine.Paper.Finish.Coated)]
    [InlineData("natural", Engine.Paper.Finish.Uncoated)]
    [InlineData("satin", Engine.Paper.Finish.Coated)]
    public void Words_for_finishes_in_English_German_and_French_are_understood(string word, Finish finish) =>
        Assert.Equal(finish, Kind(new StockShape(), "finish").Read(word, English).Value);

    [Theory]
    [InlineData("copies", FinishingUnit.Copy)]
    [InlineData("per copy", FinishingUnit.Copy)]
    [InlineData("Exemplare", FinishingUnit.Copy)]
    [InlineData("exemplaire", FinishingUnit.Copy)]
    [InlineData("sheets", FinishingUnit.Sheet)]
    [InlineData("je Bogen", FinishingUnit.Sheet)]
    [InlineData("feuilles", FinishingUnit.Sheet)]
    [InlineData("pieces", FinishingUnit.Piece)]
    [InlineData("Schnitte", FinishingUnit.Cut)]
    [InlineData("pauschal", FinishingUnit.Edition)]
    [InlineData("forfait", FinishingUnit.Edition)]
    public void Words_for_units_in_English_German_and_French_singular_and_plural_are_understood(string word, FinishingUnit unit) =>
        Assert.Equal(unit, Kind(new FinishingShape(), "per").Read(word, English).Value);

    [Fact]
    public void A_word_that_nobody_foresaw_is_told_once_and_what_it_means_holds_for_all_rows()
    {
        using var file = new TempCsv("Ink,Sheet,From,Price\nKunterbunt,SRA3,1,0.30\n,,100,0.20\nKUNTERBUNT,A3,1,0.25\nduster,SRA3,1,0.04\n");
        var source = CsvSource.Open(file.Path);
        var shape = PriceListTable.For([], []).Print;
        var mapping = MappingGuess.Of(source, shape.Columns, English);

        var unknown = CsvReading.Preview(source, mapping, shape, English).UnknownWords(shape.Columns, English);
        Assert.Equal([(0, "Kunterbunt"), (0, "duster")], unknown.Select(word => (word.Column, word.Word)));

        var told = mapping.WithMeaning(0, "kunterbunt", "colour").WithMeaning(0, "duster", "black");
        var preview = CsvReading.Preview(source, told, shape, English);
        Assert.Equal((0, 3), (preview.ProblemCount, preview.Things));
        Assert.Equal([("Kunterbunt", "colour"), ("duster", "black")], [.. told.WithMeaning(0, "Kunterbunt", "colour").Meanings.Select(meaning => (meaning.Word, meaning.Means)).OrderBy(pair => pair.Word, StringComparer.Ordinal)]);
        Assert.Equal(3, CsvReading.Preview(source, told.WithMeaning(0, "Kunterbunt", ""), shape, English).ProblemCount);
    }

    [Fact]
    public void What_is_no_matter_of_words_is_not_asked_for()
    {
        using var file = new TempCsv("Paper,Sheet,From,Price\nQuay offset,SRA3,1,much\nQuay offset,A3,1,0.1\nQuay offset,SRA3,1,0.1\n");
        var source = CsvSource.Open(file.Path);
        var shape = PaperPrices;

        var preview = CsvReading.Preview(source, MappingGuess.Of(source, shape.Columns, English), shape, English);

        Assert.NotEqual(0, preview.ProblemCount);
        Assert.Empty(preview.UnknownWords(shape.Columns, English));
    }

    private static CellKind Kind<T>(TableShape<T> shape, string key)
        where T : class => shape.Columns.Single(column => column.Key == key).Kind;
}
