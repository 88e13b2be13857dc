using System.Globalization;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;
using PressRun.Engine.Editions;

namespace PressRun.Data.Tests.Import;

/// <summary>Words for printing in black and in colour as shops of several languages use them (from memory).</summary>
public sealed class PrintWordsTests
{
    private static readonly CellManners German = new(CultureInfo.GetCultureInfo("de-DE"), UnitSystem.Metric);

    private static readonly PriceListTable Tables = PriceListTable.For([], []);

    [Theory]
    [InlineData("s/w")]
    [InlineData("sw")]
    [InlineData("S/W-Druck")]
    [InlineData("schwarz")]
    [InlineData("Schwarzdruck einseitig")]
    [InlineData("1/1-farbig schwarz")]
    [InlineData("n/b")]
    [InlineData("noir")]
    [InlineData("Impression noir et blanc")]
    [InlineData("zwart-wit")]
    [InlineData("b/n")]
    [InlineData("bianco e nero")]
    [InlineData("b&w")]
    [InlineData("Digital B/W, both sides")]
    [InlineData("mono")]
    [InlineData("K")]
    [InlineData("1 colour black")]
    public void Black_is_understood(string word) => Assert.Equal(Ink.Black, Read(word));

    [Theory]
    [InlineData("farbig")]
    [InlineData("4/4-farbig Digitaldruck")]
    [InlineData("CMYK 4/0")]
    [InlineData("quadri")]
    [InlineData("a colori")]
    [InlineData("Full colour, both sides")]
    public void Colour_is_understood(string word) => Assert.Equal(Ink.Colour, Read(word));

    [Theory]
    [InlineData("kunterbunt")]
    [InlineData("4/1")]
    [InlineData("schwarz und farbig")]
    [InlineData("black + 1 spot colour")]
    [InlineData("HKS 13")]
    public void What_may_be_either_is_asked_and_not_guessed(string word) => Assert.Null(Read(word));

    [Fact]
    public void A_row_with_a_word_that_is_not_known_is_told_and_asked_for_and_never_left_out()
    {
        const string text = """
            Druckart;Bogen;je Seite
            s/w;SRA3;0,08
            Sonderton;SRA3;0,20
            """;
        using var file = new TempCsv(text);
        var source = CsvSource.Open(file.Path);
        var mapping = MappingGuess.Of(source, Tables.Print.Columns, German);
        var preview = CsvReading.Preview(source, mapping, Tables.Print, German);

        Assert.Equal(1, preview.ProblemCount);
        Assert.Equal("Sonderton", Assert.Single(preview.UnknownWords(Tables.Print.Columns, German)).Word);
        Assert.Equal(2, CsvReading.Preview(source, mapping.WithMeaning(0, "Sonderton", "colour"), Tables.Print, German).Things);
    }

    [Fact]
    public void A_list_with_print_in_columns_of_other_words_is_guessed()
    {
        const string text = """
            Art.-Nr.;Papier;g/m²;Stärke (µm);Bogenformat;Papier je 100 Bogen;Druck s/w je Seite;Druck farbig je Seite
            K-11;Dünenweiß Offset;80;100;320 x 450;4,10;0,08;0,31
            K-31;Leuchtturm Karton;250;300;SRA3 (320 x 450 mm);15,40;0,08;0,31
            """;
        using var file = new TempCsv(text);
        var source = CsvSource.Open(file.Path);
        var mapping = MappingGuess.Of(source, Tables.Offers.Columns, German);

        Assert.Equal([null, "name", "weight", "caliper", "sheet", "each", "black", "colour"], mapping.Columns.Select(column => column.Column is { } at ? Tables.Offers.Columns[at].Key : null));
        Assert.Equal(MoneyCell.PerHundred, mapping.Columns[5].Unit);
        var problems = new List<CellProblem>();
        var offers = CsvReading.Things(source, mapping, Tables.Offers, German, problems.Add).ToList();
        Assert.Empty(problems);
        Assert.All(offers, offer => Assert.Equal("SRA3", offer.Thing.SheetId));
        Assert.Equal((0.041m, 0.08m, 0.31m), (offers[0].Thing.Steps[0].Sheet, offers[0].Thing.Steps[0].Black, offers[0].Thing.Steps[0].Colour));
    }

    private static Ink? Read(string word) => (Ink?)Tables.Print.Columns[0].Kind.Read(word, German).Value;
}
