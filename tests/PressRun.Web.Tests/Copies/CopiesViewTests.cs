using Bunit;
using PressRun.Engine.Copies;
using PressRun.Web.Charts;
using PressRun.Web.Copies;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Copies;

public class CopiesViewTests
{
    [Fact]
    public void A_line_and_its_pair_are_both_taken_back_and_a_line_settled_against_a_count_names_its_day()
    {
        var sale = ALedger.Line(3, MovementKind.Sold, -2, 12m);
        var count = ALedger.Line(9, MovementKind.Counted, -1);
        var view = ALedger.View(
            ALedger.Line(0, MovementKind.Printed, 50, 100m), sale, count,
            sale with { Id = Guid.NewGuid(), Movement = sale.Movement with { Copies = 2, Amount = -12m }, TakesBack = sale.Id },
            ALedger.Line(9, MovementKind.Counted, 2) with { SettledBy = count.Id });

        Assert.Equal(2, view.Rows.Count(row => row.TakenBack));
        Assert.Equal([count.Movement.Day], view.Rows.Where(row => row.Count is not null).Select(row => row.Count!.Value));
        Assert.Equal([MovementKind.Counted, MovementKind.Printed], view.Rows.Where(row => row.CanBeTakenBack).Select(row => row.Line.Movement.Kind));
        Assert.Equal(51, view.Rows[0].OnHand);
    }

    [Fact]
    public void The_line_that_takes_another_back_names_it()
    {
        var sale = ALedger.Line(3, MovementKind.Sold, -2, 12m);
        var back = sale with { Id = Guid.NewGuid(), Movement = sale.Movement with { Copies = 2, Amount = -12m }, TakesBack = sale.Id };
        var view = ALedger.View(ALedger.Line(0, MovementKind.Printed, 50, 100m), sale, back);
        Assert.Equal($"takes back 2 copies sold on {Written.Metric.Day(sale.Movement.Day)}", LedgerWords.Explained(view.Rows.Single(row => row.Line.TakesBack is not null), Written.Metric));
        Assert.Equal("taken back", LedgerWords.Explained(view.Rows.Single(row => row.Line.Id == sale.Id), Written.Metric));
    }

    [Fact]
    public void Copies_beside_printings_stay_in_the_picture_and_off_each_other()
    {
        var view = ALedger.View(
            ALedger.Line(0, MovementKind.Printed, 120, 200m), ALedger.Line(92, MovementKind.Printed, 113, 200m), ALedger.Line(96, MovementKind.Printed, 108, 200m), ALedger.Line(99, MovementKind.Counted, 0));
        foreach (var frame in new[] { CopiesFrame.Wide, CopiesFrame.Narrow })
        {
            var boxes = CopiesDrawing.Of(view, Written.Metric, frame).Marks.Where(mark => mark.Label is not null).Select(mark => Box(mark.Label!)).ToList();
            Assert.InRange(boxes.Count, 2, 3);
            Assert.All(boxes, box => Assert.True(box.Left >= frame.Left && box.Right <= frame.Width, $"{box.Left} to {box.Right}"));
            Assert.All(boxes.Zip(boxes.Skip(1)), pair => Assert.True(pair.First.Right <= pair.Second.Left || pair.Second.Right <= pair.First.Left || Math.Abs(pair.First.Foot - pair.Second.Foot) >= 12));
        }

    }

    [Fact]
    public void Copies_beside_a_printing_are_not_struck_through_by_the_line()
    {
        var view = ALedger.View(ALedger.Line(0, MovementKind.Printed, 121, 200m), ALedger.Line(60, MovementKind.Sold, -4, 20m), ALedger.Line(80, MovementKind.Printed, 50, 90m));
        foreach (var frame in new[] { CopiesFrame.Wide, CopiesFrame.Narrow })
        {
            var drawing = CopiesDrawing.Of(view, Written.Metric, frame);
            var labels = drawing.Marks.Select(mark => mark.Label).OfType<PlacedLabel>().ToList();
            Assert.Equal(["+121", "+50"], labels.Select(label => label.Text).Order());
            foreach (var (left, right, foot) in labels.Select(Box))
            {
                // Letters of 12.5 units stand about 9 high.
                Assert.All([121, 117, 167], copies => Assert.False(
                    drawing.Y(copies) > foot - 10 && drawing.Y(copies) < foot + 1 && right > drawing.X(ARun.Day.AddDays(copies == 167 ? 80 : copies == 117 ? 60 : 0)), $"{left} to {right} at {foot}"));
            }
        }
    }

    // Figures of 12.5 units are about 7 wide.
    private static (double Left, double Right, double Foot) Box(PlacedLabel label)
    {
        var width = 7 * label.Text.Length;
        var left = label.Anchor switch { "end" => label.X - width, "middle" => label.X - (width / 2d), _ => label.X };
        return (left, left + width - 1, label.Y);
    }

    [Fact]
    public async Task The_sentence_says_sold_out_and_asks_for_a_count_with_its_reason()
    {
        Assert.Contains("is sold out", await SaidAsync(ALedger.Line(0, MovementKind.Printed, 5, 10m), ALedger.Line(1, MovementKind.Sold, -5, 30m)), StringComparison.Ordinal);
        var beyond = await SaidAsync(ALedger.Line(0, MovementKind.Printed, 5, 10m), ALedger.Line(1, MovementKind.Sold, -8, 48m));
        Assert.Contains("Count needed: more copies went than were written down as printed, 3 at this moment", beyond, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_sentence_holds_what_sales_brought_against_what_the_copies_cost()
    {
        var said = await SaidAsync(ALedger.Line(0, MovementKind.Printed, 50, 100m), ALedger.Line(1, MovementKind.Sold, -10, 60m));
        Assert.Contains("40 of 50 copies printed are on hand, at USD 2.00 each. Sales of 10 copies brought 60.00; those copies had cost 20.00.", said, StringComparison.Ordinal);
    }

    [Fact]
    public void The_line_over_time_moves_level_and_upright_only_and_shades_the_time_without_copies()
    {
        var view = ALedger.View(
            ALedger.Line(0, MovementKind.Printed, 10, 20m), ALedger.Line(20, MovementKind.Sold, -10, 60m), ALedger.Line(60, MovementKind.Printed, 20, 40m));
        var drawing = CopiesDrawing.Of(view, Written.Metric, CopiesFrame.Wide);

        Assert.Matches("^M[\\d.,-]+([HV][\\d.-]+)+$", drawing.Path);
        var gap = Assert.Single(drawing.Gaps);
        // Day 20 still sold; 21 to 59 are without.
        Assert.Equal(39, gap.Time.Days);
        Assert.Equal(drawing.X(ARun.Day.AddDays(21)), gap.X);
        Assert.Equal(drawing.X(ARun.Day.AddDays(60)), gap.X + gap.Width, 6);
        Assert.Equal(2, drawing.Marks.Count(mark => mark.Printed));
    }

    [Fact]
    public void A_ledger_that_went_below_nothing_is_drawn_below_the_line_of_nothing()
    {
        var drawing = CopiesDrawing.Of(ALedger.View(ALedger.Line(0, MovementKind.Sold, -3, 18m)), Written.Metric, CopiesFrame.Narrow);
        Assert.True(drawing.CopiesMarks[0] <= -3);
        Assert.Contains(0d, drawing.CopiesMarks);
        Assert.InRange(drawing.Y(-3), drawing.Y(0) + 1, CopiesFrame.Narrow.Bottom);
    }

    [Fact]
    public async Task What_was_taken_back_is_struck_and_can_not_be_taken_back_again()
    {
        var sale = ALedger.Line(3, MovementKind.Sold, -2, 12m);
        await using var page = new BunitContext();
        LedgerRow? asked = null;
        var table = page.Render<LedgerTable>(parameters => parameters
            .Add(part => part.View, ALedger.View(ALedger.Line(0, MovementKind.Printed, 50, 100m), sale, sale with { Id = Guid.NewGuid(), TakesBack = sale.Id }))
            .Add(part => part.Format, Written.Metric).Add(part => part.TakeBack, row => asked = row));

        Assert.Equal(2, table.FindAll("tr.taken-back s:first-child").Select(struck => struck.Closest("tr")).Distinct().Count());
        await table.Find("td button").ClickAsync(new());
        Assert.Equal(MovementKind.Printed, asked!.Line.Movement.Kind);
        Assert.Single(table.FindAll("td button"));
    }

    private static async Task<string> SaidAsync(params Data.Copies.MovementRecord[] lines)
    {
        await using var page = new BunitContext();
        var view = ALedger.View(lines);
        var text = page.Render<CopiesSentence>(parameters => parameters
            .Add(part => part.Position, view.Position).Add(part => part.Edition, view.Edition).Add(part => part.Format, Written.Metric)).Find("p").TextContent;
        return string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Replace(" ;", ";", StringComparison.Ordinal).Replace(" .", ".", StringComparison.Ordinal).Replace(" ,", ",", StringComparison.Ordinal);
    }
}
