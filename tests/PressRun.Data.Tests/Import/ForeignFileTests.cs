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

    [Fact]
    public void A_price_without_a_step_before_others_that_have_one_holds_from_one_on()
    {
        using var file = new TempCsv("Material;Format;Preis je Bogen;ab 100 Bogen;ab 500 Bogen\nQuay offset;SRA3;0,062;0,055;0,049\n");
        var source = CsvSource.Open(file.Path);
        var shape = PriceListTable.For([Paper("quay", "Quay offset")], []).Paper;
        var guessed = MappingGuess.Of(source, shape.Columns, English);
        var said = guessed with { Columns = [.. guessed.Columns.Select(column => column.Step == "1" ? column with { Step = null } : column)] };

        Assert.Equal("1", guessed.Columns[2].Step);
        foreach (var mapping in new[] { guessed, said })
        {
            Assert.Equal([(1L, 0.062m), (100L, 0.055m), (500L, 0.049m)], Assert.Single(Things(source, mapping, shape)).Steps.Select(step => (step.From, step.Each)));
        }
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

    [Theory]
    [InlineData("ab Bogen", "EUR je Seite", "0,06", 1_999L)]
    [InlineData("from sheets", "price per side", "0,06", 1_999L)]
    [InlineData("ab", "Preis", "0,06", 1_000L)]
    [InlineData("ab Bogen", "Preis je Bogen", "0,12", 1_999L)]
    public void Print_that_is_priced_by_the_sheet_is_brought_to_its_two_sides(string from, string each, string cell, long side)
    {
        // A run of n sheets printed on both sides has 2n - 1 sides at least: the last sheet may have one.
        using var file = new TempCsv($"Druckart;Bogen;{from};{each}\nschwarz;SRA3;1;{cell}\nschwarz;SRA3;1000;{cell}\n");
        var source = CsvSource.Open(file.Path);
        var shape = PriceListTable.For([], []).Print;

        var price = Assert.Single(Things(source, MappingGuess.Of(source, shape.Columns, English), shape));

        Assert.Equal([(1L, 0.06m), (side, 0.06m)], price.Steps.Select(step => (step.From, step.Each)));
    }

    [Fact]
    public void A_list_with_a_row_a_step_gives_each_paper_once_and_papers_of_one_name_their_weights()
    {
        using var file = new TempCsv(
            "Bezeichnung;g/m\u00B2;Dicke (\u00B5m);Menge ab;Preis je 100\nKai matt;115;96;1;6,40\nKai matt;115;96;500;5,70\nKai matt;250;235;1;14,80\nKai matt;250;235;500;13,10\n");
        var source = CsvSource.Open(file.Path);
        var shape = new StockShape();

        var papers = Things(source, MappingGuess.Of(source, shape.Columns, English), shape);

        Assert.Equal([("Kai matt", 115m), ("Kai matt 250", 250m)], papers.Select(paper => (paper.Item.Name, paper.Item.Weight.GramsPerSquareMetre)));
    }

    [Fact]
    public void A_paper_that_stands_twice_with_another_thickness_is_refused()
    {
        using var file = new TempCsv("Paper;Weight;Thickness (\u00B5m)\nQuay;115;96\nQuay;115;120\n");
        var source = CsvSource.Open(file.Path);
        var shape = new StockShape();

        var preview = CsvReading.Preview(source, MappingGuess.Of(source, shape.Columns, English), shape, English);

        Assert.Equal((1, 1), (preview.Things, preview.ProblemCount));
    }

    [Fact]
    public void Prices_of_papers_of_one_name_go_by_their_weight()
    {
        using var file = new TempCsv("Bezeichnung;Format;g/m\u00B2;ab;Preis\nKai matt;SRA3;115;1;0,06\nKai matt;SRA3;250;1;0,14\nKai matt;SRA3;300;1;0,20\n");
        var source = CsvSource.Open(file.Path);
        Stock[] papers = [Paper("thin", "Kai matt") with { Weight = PaperWeight.FromGrammage(115m) }, Paper("thick", "Kai matt 250") with { Weight = PaperWeight.FromGrammage(250m) }];
        var shape = PriceListTable.For(papers, []).Paper;
        var problems = new List<CellProblem>();

        var prices = CsvReading.Things(source, MappingGuess.Of(source, shape.Columns, English), shape, English, problems.Add).Select(read => read.Thing).ToList();

        Assert.Equal([("thin", 0.06m), ("thick", 0.14m)], prices.Select(price => (price.StockId, price.Steps[0].Each)));
        Assert.Equal((4, 0), (Assert.Single(problems).Row, problems[0].Column));
    }

    [Theory]
    [InlineData("320 x 450")]
    [InlineData("450\u00D7320 mm")]
    [InlineData("32 x 45 cm")]
    [InlineData("32,0 x 45,0 cm")]
    public void A_sheet_is_known_by_its_measures(string written)
    {
        using var file = new TempCsv($"Papier;Format;ab;Preis\nQuay;{written};1;0,06\n");
        var source = CsvSource.Open(file.Path);
        var own = new Engine.Sheets.Sheet("big sheet", Length.FromMillimetres(320m), Length.FromMillimetres(450m), Length.Zero, Length.Zero, false, Engine.Sheets.GrainRule.Any);

        Assert.Equal("big sheet", SheetOf([own]));
        Assert.Equal("SRA3", SheetOf([]));

        string SheetOf(Engine.Sheets.Sheet[] sheets)
        {
            var shape = PriceListTable.For([Paper("quay", "Quay")], sheets).Paper;
            return Assert.Single(Things(source, MappingGuess.Of(source, shape.Columns, English), shape)).SheetId;
        }
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
