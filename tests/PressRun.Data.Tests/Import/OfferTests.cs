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
        var list = Offers.Into(Empty, offers, stored, problems.Add);

        Assert.Empty(problems);
        Assert.Equal(["paper-0", "paper-1"], list.Paper.Select(price => price.StockId));
        Assert.Equal([(1L, 0.042m), (500L, 0.036m)], list.Paper[0].Steps.Select(step => (step.From, step.Each)));

        // By hand: 500 sheets printed on both sides begin at side 999; colour has one price and so one step.
        Assert.Equal([(1L, 0.09m), (999L, 0.06m)], list.Print.Single(price => price.Ink == Ink.Black).Steps.Select(step => (step.From, step.Each)));
        Assert.Equal([(1L, 0.35m)], list.Print.Single(price => price.Ink == Ink.Colour).Steps.Select(step => (step.From, step.Each)));
        Assert.Equal("SRA3", Assert.Single(list.Sheets).Id);
    }

    [Fact]
    public void A_paper_that_is_there_stays_as_it_is_and_its_price_takes_the_place_of_the_old_one()
    {
        var (_, offers, problems) = Read(File);
        var known = offers[0].Thing.Paper with { Id = "mine", Name = "Moosgrund weiß", Bulk = 1.1m };
        var other = offers[1].Thing.Paper with { Id = "other" };
        var before = Empty with { Paper = [new PaperPrice("mine", "SRA3", [new PriceStep(1, 9m)], StepRule.AllUnits), new PaperPrice("other", "A3", [new PriceStep(1, 8m)], StepRule.AllUnits)] };

        Assert.Empty(Offers.Lacking(offers.Select(offer => offer.Thing), [known, other]));
        var list = Offers.Into(before, offers, [known, other], problems.Add);

        Assert.Empty(problems);
        Assert.Equal([("other", "A3", 8m), ("mine", "SRA3", 0.042m), ("other", "SRA3", 0.064m)], list.Paper.Select(price => (price.StockId, price.SheetId, price.Steps[0].Each)));
    }

    [Fact]
    public void Two_papers_that_would_print_at_two_prices_on_one_sheet_are_told_by_row_and_column()
    {
        var (_, offers, problems) = Read(File.Replace("120;150;1;6,40;0,09", "120;150;1;6,40;0,10", StringComparison.Ordinal));
        Offers.Into(Empty, offers, [], problems.Add);

        var problem = Assert.Single(problems);
        Assert.Equal((5, OfferShape.Black), (problem.Row, problem.Column));
        Assert.Contains("row 3", problem.Rule, StringComparison.Ordinal);
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
