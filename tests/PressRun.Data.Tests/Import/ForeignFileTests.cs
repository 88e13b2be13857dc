using System.Globalization;
using System.Text;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;

namespace PressRun.Data.Tests.Import;

public sealed class ForeignFileTests
{
    private static readonly CellManners English = new(CultureInfo.GetCultureInfo("en"), UnitSystem.Metric);

    [Fact]
    public void Papers_with_other_heads_another_order_units_in_heads_and_decimal_commas_are_understood()
    {
        using var file = new TempCsv("Preisliste Winter;;;\nDicke (\u00B5m);Gewicht [g/m\u00B2];Bezeichnung;Volumen\n148;120;Kai Offset;1,25\n;90;Kalk;1,75\n");
        var source = CsvSource.Open(file.Path);
        var shape = new StockShape();

        var mapping = MappingGuess.Of(source, shape.Columns, English);
        var papers = Things(source, mapping, shape);

        Assert.Equal((';', 2, true), (source.Separator, mapping.HeadRow, mapping.DecimalComma));
        Assert.Equal(
            [
                new Stock("", "Kai Offset", PaperWeight.FromGrammage(120m), Length.FromMicrometres(148m), 1.25m, null),
                new Stock("", "Kalk", PaperWeight.FromGrammage(90m), null, 1.75m, null),
            ],
            papers.Select(paper => paper.Item));
    }

    [Fact]
    public void A_price_list_with_a_column_for_each_step_becomes_steps()
    {
        using var file = new TempCsv("Paper\tSize\t1-99\t100 - 499\t500+\nQuay offset\tSRA3\t0.07\t0.06\t\nSilk\tSRA3\t0.12\t\t0.09\n");
        var source = CsvSource.Open(file.Path);
        var shape = PriceListTable.For([Paper("quay", "Quay offset"), Paper("silk", "Silk")], []).Paper;

        var prices = Things(source, MappingGuess.Of(source, shape.Columns, English), shape);

        Assert.Equal('\t', source.Separator);
        Assert.Equal([(1L, 0.07m), (100L, 0.06m)], prices[0].Steps.Select(step => (step.From, step.Each)));
        Assert.Equal([(1L, 0.12m), (500L, 0.09m)], prices[1].Steps.Select(step => (step.From, step.Each)));
        Assert.Equal(("quay", "SRA3"), (prices[0].StockId, prices[0].SheetId));
    }

    [Theory]
    [InlineData("Preis je 100", "4,20")]
    [InlineData("Preis (pro 1.000 Bogen)", "42")]
    [InlineData("Preis/100", "4,2")]
    [InlineData("Price per 100 sheets", "4,20")]
    [InlineData("Preis", "0,042")]
    public void A_price_of_many_sheets_becomes_the_price_of_one(string head, string cell)
    {
        using var file = new TempCsv($"Papier;Format;ab;{head};\nQuay offset;SRA3;1;{cell};\n");
        var source = CsvSource.Open(file.Path);
        var shape = PriceListTable.For([Paper("quay", "Quay offset")], []).Paper;

        var price = Assert.Single(Things(source, MappingGuess.Of(source, shape.Columns, English), shape));

        Assert.Equal((1L, 0.042m), (price.Steps[0].From, price.Steps[0].Each));
    }

    [Fact]
    public void Postage_with_a_column_for_each_mass_becomes_steps_and_what_the_file_lacks_is_said_once_for_all_rows()
    {
        using var file = new TempCsv("Service,Zone,up to 100 g,up to 250 g\nLetter,home,0.95,1.60\n");
        var source = CsvSource.Open(file.Path);
        var shape = new PostageShape();
        var mapping = MappingGuess.Of(source, shape.Columns, English) with { Everywhere = new Dictionary<int, string> { [3] = "2026-01-01" } };

        var service = Assert.Single(Things(source, mapping, shape)).Item;

        Assert.Equal([(100m, 0.95m), (250m, 1.60m)], service.Steps.Select(step => (step.Most.Grams, step.Price)));
        Assert.Equal(("home", new DateOnly(2026, 1, 1)), (service.Region, service.ValidFrom));
    }

    [Fact]
    public void Rates_written_as_fractions_are_not_taken_for_per_cent()
    {
        using var file = new TempCsv("Channel,Trade discount,VAT (%)\nShops,0.4,7\nFair,0,7\n");
        var source = CsvSource.Open(file.Path);
        var shape = new ChannelShape([]);

        var channels = Things(source, MappingGuess.Of(source, shape.Columns, English), shape);

        Assert.Equal([(0.4m, 0.07m), (0m, 0.07m)], channels.Select(channel => (channel.Item.TradeDiscount, channel.Item.TaxRate)));
    }

    [Fact]
    public void A_file_of_an_old_western_code_page_keeps_its_letters()
    {
        using var file = new TempCsv(CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetBytes("Name;Gewicht\nB\u00FCttenpapier \u2013 wei\u00DF;120\n"));

        var rows = CsvSource.Open(file.Path).Rows().ToList();

        Assert.Equal("B\u00FCttenpapier \u2013 wei\u00DF", rows[1].Cells[0]);
    }

    [Fact]
    public void Problems_tell_the_row_as_a_spreadsheet_counts_it_and_the_column_by_letter()
    {
        using var file = new TempCsv("Paper,Weight,Finish\nSilk,115 gsm,coated\n\nCard,heavy,coated\n");
        var source = CsvSource.Open(file.Path);
        var shape = new StockShape();
        var mapping = MappingGuess.Of(source, shape.Columns, English);

        var preview = CsvReading.Preview(source, mapping, shape, English);

        var problem = Assert.Single(preview.Problems);
        Assert.Equal((4, "B, Weight", "heavy"), (problem.Row, mapping.PlaceOf(problem.Column, preview.Heads), problem.Value));
        Assert.Equal((2, 1, 1), (preview.Rows, preview.Things, preview.ProblemCount));
    }

    [Theory]
    [InlineData("\0\0\0PK")]
    public void What_is_no_text_is_refused_with_a_sentence(string text)
    {
        using var file = new TempCsv(text);

        Assert.EndsWith(".", Assert.Throws<CsvRefusedException>(() => CsvSource.Open(file.Path)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_quotation_mark_that_never_closes_is_refused_and_not_held_in_memory()
    {
        using var file = new TempCsv("Paper,Weight\n\"Silk,115\n" + new string('x', 2_000_000));

        Assert.Throws<CsvRefusedException>(() => CsvSource.Open(file.Path).Rows().Count());
    }

    private static Stock Paper(string id, string name) => new(id, name, PaperWeight.FromGrammage(100m), null, null, Finish.Coated);

    private static List<T> Things<T>(CsvSource source, CsvMapping mapping, TableShape<T> shape)
        where T : class
    {
        var problems = new List<CellProblem>();
        var things = CsvReading.Things(source, mapping, shape, English, problems.Add).Select(read => read.Thing).ToList();
        Assert.Empty(problems);
        return things;
    }
}
