using System.Globalization;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Paper;

namespace PressRun.Data.Tests.Import;

public sealed class OfferTests
{
    private static readonly CellManners German = new(CultureInfo.GetCultureInfo("de-DE"), UnitSystem.Metric);

    private static readonly Shop Empty = PriceListTable.Empty("An invented shop", new DateOnly(2026, 1, 1));

    private const string File = """
        Preisliste;;;;;;;
        Bezeichnung;Format;g/m²;Dicke (µm);Menge ab;Preis je 100;Druck schwarz;Druck farbig
        Moosgrund;320 x 450;80;98;1;4,20;0,09;0,35
        Moosgrund;320 x 450;80;98;500;3,60;0,06;0,35
        Moosgrund;320 x 450;120;150;1;6,40;0,09;0,35
        Moosgrund;320 x 450;120;150;500;5,70;0,06;0,35
        """;

    [Fact]
    public void One_file_is_guessed_to_be_papers_with_their_prices_and_gives_papers_paper_prices_and_print_prices()
    {
        var (mapping, offers, problems) = Read(File);

        Assert.Empty(problems);
        Assert.Equal(8, mapping.Columns.Count(column => column.Column is not null));
        var papers = Offers.Lacking(offers.Select(offer => offer.Thing), []);
        Assert.Equal(["Moosgrund", "Moosgrund 120"], papers.Select(paper => paper.Name));
        List<Stock> stored = [.. papers.Select((paper, at) => paper with { Id = $"paper-{at}" })];
        var list = Offers.Into(Empty, offers, stored, _ => Assert.Fail("All print alike."));

        Assert.Empty(problems);
        Assert.Equal(["paper-0", "paper-1"], list.Paper.Select(price => price.StockId));
        Assert.Equal([(1L, 0.042m), (500L, 0.036m)], list.Paper[0].Steps.Select(step => (step.From, step.Each)));

        // By hand: 500 sheets printed on both sides begin at side 999; colour has one price and so one step.
        Assert.Equal([(1L, 0.09m), (999L, 0.06m)], list.Print.Single(price => price.Ink == Ink.Black).Steps.Select(step => (step.From, step.Each)));
        Assert.Equal([(1L, 0.35m)], list.Print.Single(price => price.Ink == Ink.Colour).Steps.Select(step => (step.From, step.Each)));
        Assert.Equal("SRA3", Assert.Single(list.Sheets).Id);
    }

    [Theory]
    [InlineData("Papier;g/m²;Dicke (µm);je Bogen SRA3\nMoosgrund;80;98;0,05", "SRA3")]
    [InlineData("Preise für Bogen SRA3\nPapier;g/m²;Dicke (µm);je Bogen\nMoosgrund;80;98;0,05", "SRA3")]
    [InlineData("Papier;g/m²;Dicke (µm);je Bogen\nMoosgrund;80;98;0,05", null)]
    public void A_sheet_that_no_column_names_is_the_one_that_stands_in_the_heads_or_above_them(string file, string? sheet)
    {
        var shape = PriceListTable.For([], []).Offers;
        var mapping = MappingGuess.Of(CsvSource.Open(() => new MemoryStream(System.Text.Encoding.UTF8.GetBytes(file)), default), shape.Columns, German);

        Assert.Equal(sheet, mapping.Everywhere.Values.SingleOrDefault());
    }

    [Fact]
    public void Where_the_list_has_one_sheet_all_rows_are_on_it()
    {
        var sheet = new Engine.Sheets.Sheet("ours", Engine.Measures.Length.FromMillimetres(330m), Engine.Measures.Length.FromMillimetres(480m), default, default, false, Engine.Sheets.GrainRule.Any);
        var shape = PriceListTable.For([], [sheet]).Offers;
        var mapping = MappingGuess.Of(CsvSource.Open(() => new MemoryStream("Papier;g/m²;Dicke (µm);je Bogen\nMoosgrund;80;98;0,05"u8.ToArray()), default), shape.Columns, German);

        Assert.Equal(shape.Columns.Single(column => column.Key == "sheet").Kind.Choices, mapping.Everywhere.Values);
    }

    [Fact]
    public void A_paper_that_is_there_stays_as_it_is_and_its_price_takes_the_place_of_the_old_one()
    {
        var (_, offers, problems) = Read(File);
        var known = offers[0].Thing.Paper with { Id = "mine", Name = "Moosgrund weiß", Bulk = 1.1m };
        var other = offers[1].Thing.Paper with { Id = "other" };
        var before = Empty with { Paper = [new PaperPrice("mine", "SRA3", [new PriceStep(1, 9m)], StepRule.AllUnits), new PaperPrice("other", "A3", [new PriceStep(1, 8m)], StepRule.AllUnits)] };

        Assert.Empty(Offers.Lacking(offers.Select(offer => offer.Thing), [known, other]));
        var list = Offers.Into(before, offers, [known, other], _ => Assert.Fail("All print alike."));

        Assert.Empty(problems);
        Assert.Equal([("other", "A3", 8m), ("mine", "SRA3", 0.042m), ("other", "SRA3", 0.064m)], list.Paper.Select(price => (price.StockId, price.SheetId, price.Steps[0].Each)));
    }

    [Fact]
    public void A_paper_that_prints_at_another_price_comes_on_a_sheet_of_its_own_and_is_told()
    {
        const string board = """
            Bezeichnung;Format;g/m²;Dicke (µm);Menge ab;Preis je 100;Druck schwarz;Druck farbig
            Moosgrund;320 x 450;80;98;1;4,20;0,09;0,35
            Moosgrund;320 x 450;120;150;1;6,40;0,09;0,35
            Kalkofen Karton;320 x 450;280;370;1;17,50;0,12;0,42
            """;
        var (_, offers, problems) = Read(board);
        List<Stock> papers = [.. Offers.Lacking(offers.Select(offer => offer.Thing), []).Select((paper, at) => paper with { Id = $"paper-{at}" })];
        var apart = new List<PaperApart>();
        var list = Offers.Into(Empty, offers, papers, apart.Add);

        Assert.Empty(problems);
        Assert.Equal([("paper-0", "SRA3"), ("paper-1", "SRA3"), ("paper-2", "SRA3 (Kalkofen Karton 280)")], list.Paper.Select(price => (price.StockId, price.SheetId)));
        Assert.Equal(
            [(Ink.Black, "SRA3", 0.09m), (Ink.Colour, "SRA3", 0.35m), (Ink.Black, "SRA3 (Kalkofen Karton 280)", 0.12m), (Ink.Colour, "SRA3 (Kalkofen Karton 280)", 0.42m)],
            list.Print.Select(price => (price.Ink, price.SheetId, price.Steps[0].Each)));
        Assert.Equal(list.Sheets.Single(sheet => sheet.Id == "SRA3").Width, list.Sheets.Single(sheet => sheet.Id == "SRA3 (Kalkofen Karton 280)").Width);
        Assert.Equal((4, 2), (Assert.Single(apart).Row, apart[0].LikeRow));

        // Its measures still mean the common sheet.
        Assert.Equal("SRA3", PriceListTable.For(papers, list.Sheets).Paper.Columns[1].Kind.Read("320 x 450", German).Value);

        // Brought in again at one print price, the paper is back on the common sheet and nowhere else.
        var (_, again, _) = Read(board.Replace("0,12;0,42", "0,09;0,35", StringComparison.Ordinal));
        Assert.Equal(["SRA3", "SRA3", "SRA3"], Offers.Into(list, again, papers, apart.Add).Paper.Select(price => price.SheetId));
        Assert.Single(apart);
    }

    private static (CsvMapping Mapping, List<ReadThing<PaperOffer>> Offers, List<CellProblem> Problems) Read(string text)
    {
        using var file = new TempCsv(text);
        var source = CsvSource.Open(file.Path);
        var tables = PriceListTable.For([], []);
        var mapping = MappingGuess.Of(source, tables.Offers.Columns, German);
        Assert.True(MappingGuess.Covers(mapping, tables.Offers.Columns) >= MappingGuess.Covers(MappingGuess.Of(source, tables.Paper.Columns, German), tables.Paper.Columns));
        var problems = new List<CellProblem>();
        return (mapping, [.. CsvReading.Things(source, mapping, tables.Offers, German, problems.Add)], problems);
    }
}
