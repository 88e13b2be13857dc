using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.JobFile;

namespace PressRun.Engine.Tests.JobFile;

public class JobReaderTests
{
    [Fact]
    public void Reads_the_worked_example()
    {
        var job = JobReader.Read(Example.Bytes("job")).Value;

        Assert.Equal(new DateOnly(2026, 3, 2), job.Date);
        Assert.Equal("USD", job.Currency.Code);
        Assert.Equal(150, job.Quantity);
        Assert.Equal(6, job.FreeCopies);
        Assert.Equal("Tidepool Almanac", job.Edition.Title);
        Assert.Equal(new Size(Length.FromInches(5.5m), Length.FromInches(8.5m)), job.Edition.Page);
        Assert.Equal([4, 28, 4], job.Edition.Parts.Select(part => part.Pages));
        Assert.Equal(PaperWeight.FromBasisWeight(80m, PaperCategory.Cover), job.Stocks[0].Weight);
        Assert.Equal(Length.FromMicrometres(230m), job.Stocks[0].StatedCaliper);
        Assert.Equal(StepRule.Incremental, job.Shop.Print[1].Rule);
        Assert.Equal(new PriceStep(1000, 0.06m), job.Shop.Print[1].Steps[1]);
        Assert.Equal(Delivered.CutPieces, job.Shop.Delivers);
        Assert.Equal(Mass.FromKilograms(12m), job.Shop.Order.Carton!.Capacity);
        Assert.Equal(3, job.Bench.Steps[3].CopiesPerPile);
        Assert.Equal(1, job.Bench.Steps[0].CopiesPerPile);
        Assert.Equal(0.004m, job.Bench.Consumables[0].PerCopy);
        Assert.Equal("board", job.Channels[1].MailerId);
        Assert.Equal(20, job.Ladder!.Value.Count);
    }

    [Fact]
    public void Whatever_is_not_required_defaults_to_none_or_nothing()
    {
        var job = Example.Read(Least).Value;

        Assert.Equal(string.Empty, job.Edition.Title);
        Assert.Equal(1, job.Edition.Printing);
        Assert.False(job.Edition.Bleed);
        Assert.Equal(default, job.Edition.Trim);
        Assert.Equal(FoldShape.Flat, job.Edition.Fold);
        Assert.Null(job.Edition.Weighed);
        Assert.Equal(Ink.None, job.Edition.Parts[0].Outside);
        Assert.Equal("s", job.Stocks[0].Name);
        Assert.Equal(StepRule.AllUnits, job.Shop.Print[0].Rule);
        Assert.Equal(default, job.Shop.SetUp);
        Assert.Equal(Collating.Never, job.Shop.Collates);
        Assert.Null(job.Shop.Delivers);
        Assert.Same(OrderRules.None, job.Shop.Order);
        Assert.Same(BenchRates.None, job.Bench);
        Assert.Equal(Length.FromMillimetres(5m), job.Bench.StapleFromSpine);
        Assert.Equal(0.95m, job.Bench.Overs.Confidence);
        Assert.Null(job.Ladder);
        Assert.Empty(job.Channels);
        Assert.Equal(0, job.FreeCopies);
    }

    [Fact]
    public void Elements_of_lists_have_defaults_too()
    {
        var job = Example.Job();
        Example.Set(job, "channels", """[ { "id": "fair" } ]""");
        Example.Set(job, "mailers", """[ { "id": "bag" } ]""");
        Example.Set(job, "postage", """[ { "id": "letter", "steps": [ { "most": "100 g", "price": 1 } ] } ]""");
        Example.Set(job, "bench", """{ "steps": [ { "name": "fold" } ], "consumables": [ { "name": "thread" } ], "overs": {} }""");
        Example.Set(job, "edition.fixedCosts", """[ {} ]""");
        Example.Set(job, "shop.finishing", """[ { "per": "edition" } ]""");
        Example.Set(job, "shop.order", """{ "carton": { "capacity": "1 kg" }, "delivery": { "perFurtherKg": 2 } }""");
        var read = Example.Read(job).Value;

        Assert.Equal(("fair", "fair", 0m, 1, 0m), (read.Channels[0].Id, read.Channels[0].Name, read.Channels[0].Price, read.Channels[0].CopiesPerOrder, read.Channels[0].Mix));
        Assert.Equal(Length.Zero, read.Mailers[0].Width);
        Assert.Equal(DateOnly.MinValue, read.Postage[0].ValidFrom);
        Assert.Equal(OversMode.Plain, read.Bench.Overs.Mode);
        Assert.Equal(Mass.Zero, read.Shop.Order.Carton!.Tare);
        Assert.Empty(read.Shop.Order.Delivery!.Steps);
    }

    [Fact]
    public void Null_is_the_same_as_left_out()
    {
        var job = Example.Job();
        foreach (var place in new[] { "edition.title", "edition.weighed", "edition.parts.0.sheet", "shop.order.delivery.perFurtherKg", "bench", "channels", "ladder", "stocks.silk-cover.bulk" })
        {
            Example.Set(job, place, "null");
        }

        Assert.True(Example.Read(job).Succeeded);
        Assert.Contains("required", Assert.Single(Example.Read(Example.With("quantity", "null")).Problems).Rule);
    }

    [Fact]
    public void All_problems_of_a_file_come_at_once()
    {
        var job = Example.Job();
        Example.Set(job, "quantity", "0");
        Example.Set(job, "edition.parts.1.pages", "-4");
        Example.Set(job, "stocks.silk-cover.weight", "\"80\"");
        Example.Set(job, "shop.collates", "\"sometimes\"");
        Example.Set(job, "channels.2.mailer", "\"bored\"");
        Example.Set(job, "edition.colour", "true");

        Assert.Equal(
            ["$.channels[2].mailer", "$.edition.colour", "$.edition.parts[1].pages", "$.quantity", "$.shop.collates", "$.stocks['silk-cover'].weight"],
            Example.Read(job).Problems.Select(problem => problem.Path).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_list_of_whole_books_makes_sheets_print_and_paper_optional()
    {
        var job = Example.Job();
        foreach (var member in new[] { "sheets", "print", "paper" })
        {
            Example.Set(job, "shop." + member, "(gone)");
        }

        Assert.Equal(["$.shop.sheets", "$.shop.print", "$.shop.paper"], Example.Read(job).Problems.Select(problem => problem.Path));
        Example.Set(job, "shop.bookPrices", "[]");
        Assert.Equal(3, Example.Read(job).Problems.Count);
        Example.Set(job, "shop.bookPrices", """[ { "binding": "saddle", "steps": [ { "from": 1, "perPage": "0.03" } ] } ]""");
        var price = Example.Read(job).Value.Shop.BookPrices[0];
        Assert.Equal((1, 10_000, null), (price.PagesFrom, price.PagesTo, price.StockIds));
        Assert.Equal(new BookStep(1, 0m, 0.03m), price.Steps[0]);
    }

    [Theory]
    [InlineData("0.4", "0.40")]
    [InlineData("\"0.40\"", "0.4")]
    [InlineData("4e-1", "0.4")]
    [InlineData("0.1234567890123456789012345", "0.1234567890123456789012345")]
    public void Amounts_are_read_exactly_from_numbers_and_from_strings(string written, string expected)
    {
        var job = Example.Read(Example.Job().ToJsonString().Replace("\"0.40\"", written, StringComparison.Ordinal)).Value;

        Assert.Equal(decimal.Parse(expected, System.Globalization.CultureInfo.InvariantCulture), job.Shop.Print[0].Steps[0].Each);
    }

    [Fact]
    public void A_comma_for_a_point_in_the_persons_culture_changes_nothing()
    {
        var before = System.Globalization.CultureInfo.CurrentCulture;
        try
        {
            System.Globalization.CultureInfo.CurrentCulture = System.Globalization.CultureInfo.GetCultureInfo("de-DE");
            var job = JobReader.Read(Example.Bytes("job")).Value;
            Assert.Equal(Length.FromMillimetres(139.7m), job.Edition.Page.Width);
            Assert.Equal(0.40m, job.Shop.Print[0].Steps[0].Each);
            Assert.False(Example.Read(Example.With("edition.page.width", "\"5,5 in\"")).Succeeded);
        }
        finally
        {
            System.Globalization.CultureInfo.CurrentCulture = before;
        }
    }

    private const string Least = """
        { "schema": "pressrun/job/1", "date": "2026-03-02", "currency": "EUR", "quantity": 10,
          "edition": { "page": { "width": "105 mm", "height": "148 mm" }, "binding": "loose", "parts": [ { "pages": 2, "stock": "s" } ] },
          "stocks": { "s": { "weight": "100 gsm", "finish": "uncoated" } },
          "shop": { "validFrom": "2026-01-01", "sheets": { "a3": { "width": "297 mm", "height": "420 mm" } },
            "print": [ { "ink": "black", "sheet": "a3", "steps": [ { "from": 1, "each": 0.1 } ] } ],
            "paper": [ { "stock": "s", "sheet": "a3", "steps": [ { "from": 1, "each": 0.05 } ] } ] } }
        """;
}
