using PressRun.Engine.Comparing;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Engine.Tests.Support;

namespace PressRun.Engine.Tests.Comparing;

public class PaperReadingTests
{
    // By hand (ISO 536): 14 leaves of 5.5 × 8.5 in; with cover, centre and mailer the piece passes 100 g between 120 and 150 g/m².
    private static readonly int[] Grammages = [70, 90, 120, 150, 200];

    [Fact]
    public void The_marks_are_those_of_the_rows()
    {
        var (job, comparison) = Compared(150);
        var reading = PaperReading.Of(job, comparison, "post", 150)!;

        Assert.Equal(Grammages.Length + 1, reading.Rows.Count);
        Assert.Equal("cream-text", reading.Now!.StockIds[1]);
        Assert.Equal(reading.Rows.Min(row => row.InHand), reading.Cheapest.InHand);
        Assert.Equal("g70", reading.Lightest.StockIds[1]);
        Assert.Equal("g120", reading.KeepsStep!.StockIds[1]);
        Assert.Equal("g150", reading.FirstOver!.StockIds[1]);
        Assert.Empty(reading.OverBecause);
    }

    [Fact]
    public void What_is_posted_dearer_because_it_is_too_thick_says_so()
    {
        // By hand: 18 leaves, 4 of them of cover and centre, and a mailer of 1 mm; the service takes no more than the copy of now and a little.
        var (job, _) = Compared(150);
        var now = PreparedJob.Prepare(job).Value.Copy;
        var thin = job.Postage[1] with { Id = "thin", MaxThickness = now.Thickness + Length.FromMillimetres(1.1m), Steps = [new MassStep(Mass.FromGrams(500m), 1m)] };
        var slim = job with { Postage = [.. job.Postage, thin] };
        var comparison = StockComparer.Compare(slim, new([new(1, ["cream-text", "g90", "g120"])], [], [150]), TestContext.Current.CancellationToken).Value;

        var reading = PaperReading.Of(slim, comparison, "post", 150)!;

        Assert.Equal("thin", reading.Now!.Postage!.ServiceId);
        Assert.Equal("g120", reading.FirstOver!.StockIds[1]);
        Assert.Equal([PostageLimit.Thickness], reading.OverBecause.Select(refused => refused.Limit));
    }

    [Fact]
    public void Going_up_a_paper_is_told_from_the_papers_of_now()
    {
        // 60 lb text is 88.8 g/m²: the next heavier is 90.
        var (job, comparison) = Compared(150);
        var reading = PaperReading.Of(job, comparison, "post", 150)!;

        var up = Assert.Single(reading.StepsUp);
        Assert.Equal((1, "g90"), (up.Part, up.To.StockIds[1]));
        Assert.Equal(up.To.InHand - reading.Now!.InHand, up.CostsMore);
        Assert.Equal(0m, up.PostageMore);
    }

    [Fact]
    public void Where_the_papers_of_now_are_left_out_the_others_are_told_from_the_cheapest()
    {
        var (job, _) = Compared(150);
        var comparison = StockComparer.Compare(job, new([new(1, ["g70", "g90", "g150"])], [], [150]), TestContext.Current.CancellationToken).Value;

        var reading = PaperReading.Of(job, comparison, "post", 150)!;

        Assert.Null(reading.Now);
        Assert.Same(reading.Cheapest, reading.Start);
        Assert.Equal("g70", reading.Start.StockIds[1]);
        Assert.Equal(("g90", "g150"), (reading.KeepsStep!.StockIds[1], reading.FirstOver!.StockIds[1]));
        var up = Assert.Single(reading.StepsUp);
        Assert.Equal("g90", up.To.StockIds[1]);
        Assert.Equal(up.To.InHand - reading.Start.InHand, up.CostsMore);
    }

    [Fact]
    public void Lines_stand_where_a_copy_leaves_its_step()
    {
        // The mailer weighs 28 g, so that steps of 100 and 250 g are met by copies of 72 and 222 g.
        var (job, comparison) = Compared(150);
        var reading = PaperReading.Of(job, comparison, "post", 150)!;

        Assert.Equal([(72m, 1.60m), (222m, 2.35m)], reading.Lines.Select(line => (line.CopyMass.Grams, line.Price)));
        Assert.All(reading.Rows, row => Assert.Equal(row.Postage!.Price, reading.Lines.First(line => row.Copy.Mass <= line.CopyMass).Price));
    }

    [Fact]
    public void A_row_is_what_the_job_itself_says_of_these_papers()
    {
        var (job, comparison) = Compared(80);
        foreach (var row in PaperReading.Of(job, comparison, "post", 80)!.Rows)
        {
            var alone = PreparedJob.Prepare(job.WithStocks(row.StockIds.Select((id, part) => (part, id)))).Value.Estimate(80).Value;
            Assert.Equal(alone.UnitCost, row.UnitCost);
            Assert.Equal(alone.Copy, row.Copy);
            Assert.Equal(alone.UnitCost + 0.35m + row.Postage!.Price, row.InHand);
        }
    }

    [Fact]
    public void Where_nothing_is_posted_the_unit_cost_is_what_counts()
    {
        var (job, comparison) = Compared(150);
        var reading = PaperReading.Of(job, comparison, null, 150)!;

        Assert.All(reading.Rows, row => Assert.Equal(row.UnitCost, row.InHand));
        Assert.Null(reading.KeepsStep);
        Assert.Empty(reading.Lines);
    }

    [Fact]
    public void A_quantity_at_which_nothing_can_be_printed_has_no_reading()
    {
        var (job, comparison) = Compared(150);

        Assert.Null(PaperReading.Of(job, comparison, "post", 151));
    }

    private static (Job Job, StockComparison Comparison) Compared(int quantity)
    {
        var job = ExampleJob.Create();
        Stock[] papers = [.. Grammages.Select(gsm => new Stock($"g{gsm}", "", PaperWeight.FromGrammage(gsm), null, 1.3m, null))];
        var shop = job.Shop with { Paper = [.. job.Shop.Paper, .. papers.Select((stock, place) => job.Shop.Paper[1] with { StockId = stock.Id, Steps = [new(1, 0.06m + (0.01m * place))] })] };
        var wider = job with { Stocks = [.. job.Stocks, .. papers], Shop = shop };
        return (wider, StockComparer.Compare(wider, new([new(1, ["cream-text", .. papers.Select(stock => stock.Id)])], [], [quantity]), TestContext.Current.CancellationToken).Value);
    }
}
