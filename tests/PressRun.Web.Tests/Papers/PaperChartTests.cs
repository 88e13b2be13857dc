using PressRun.Data.Presses;
using PressRun.Engine.Comparing;
using PressRun.Web.Charts;
using PressRun.Web.Papers;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Papers;

public class PaperChartTests
{
    private static readonly PapersView View = APost.View();

    private static readonly PaperReading Reading =
        PapersAnswer.Of(View.Source, new PaperChoice(new Dictionary<int, IReadOnlyList<string>> { [1] = View.Priced(1) }, [100], "post")).Readings[100]!;

    [Theory]
    [InlineData(UnitSystem.Metric)]
    [InlineData(UnitSystem.Imperial)]
    public void Every_paper_and_every_name_lies_within_the_plot(UnitSystem units)
    {
        foreach (var frame in new[] { PaperFrame.Wide, PaperFrame.Narrow })
        {
            var chart = Draw(frame, units);
            Assert.Equal(Reading.Rows.Count, chart.Named.Count);
            Assert.All(chart.Named, paper => Assert.True(Within(paper.X, frame.Left, frame.Right) && Within(paper.Y, frame.Top, frame.Bottom)));
            Assert.All(chart.MassMarks, mark => Assert.True(Within(chart.X(mark), frame.Left, frame.Right)));
            Assert.All(chart.CostMarks, mark => Assert.True(Within(chart.Y(mark), frame.Top, frame.Bottom)));
            Assert.True(chart.MassMarks.Count > 1 && chart.CostMarks.Count > 1);
        }
    }

    [Fact]
    public void What_stands_out_has_a_shape_of_its_own()
    {
        var shapes = Draw(PaperFrame.Wide).Named.ToDictionary(paper => paper.Row.StockIds[1], paper => paper.Shape);

        // By hand: on 95 g/m² the piece weighs 71 g, on 110 it is 76 and past the step at 75 g.
        Assert.Equal(PaperShape.Pick, shapes["g95"]);
        Assert.Equal(PaperShape.Now, shapes["thin"]);
        Assert.Equal(PaperShape.Dot, shapes["g150"]);
        Assert.Contains(PaperShape.Cheapest, shapes.Values);
    }

    [Fact]
    public void A_postage_step_stands_between_the_papers_that_it_parts()
    {
        var chart = Draw(PaperFrame.Wide);
        var named = chart.Named.ToDictionary(paper => paper.Row.StockIds[1], paper => paper.X);

        var line = Assert.Single(chart.Lines, line => line.Line.Price == 1.50m);
        Assert.InRange(line.X, named["g95"], named["g110"]);
        Assert.Equal('a', line.Key);
    }

    // Long names of pairs, many of them on nearly one place: each still has its number, and no label lies on another or on a mark that is not its own.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Every_paper_has_its_number_and_no_label_lies_on_another_on_a_mark_or_on_a_step(bool pairs)
    {
        var choice = pairs ? PaperChoice.Read(View, null, null, null) : new PaperChoice(new Dictionary<int, IReadOnlyList<string>> { [1] = View.Priced(1) }, [100], "post");
        var reading = PapersAnswer.Of(View.Source, choice).Readings[100]!;
        var numbers = PaperChart.Numbers(reading);
        foreach (var frame in new[] { PaperFrame.Wide, PaperFrame.Narrow })
        {
            var chart = PaperChart.Of(reading, UnitSystem.Metric, row => $"{View.StockName(row.StockIds[0])} 250 + {View.StockName(row.StockIds[1])}", frame);
            var named = chart.Named;
            var labelled = named.Where(paper => paper.Label is not null).ToList();
            var boxes = labelled.ConvertAll(paper => Box(paper.Label!));

            Assert.Equal(
                Enumerable.Range(1, reading.Rows.Count), labelled.SelectMany(paper => Told(paper.Label!)).Order());
            Assert.All(labelled, paper => Assert.Contains(numbers[paper.Row], Told(paper.Label!)));
            for (var one = 0; one < boxes.Count; one++)
            {
                Assert.DoesNotContain(boxes.Skip(one + 1), other => Overlap(boxes[one], other));
                Assert.DoesNotContain(chart.Lines, line => boxes[one].X1 < line.X && line.X < boxes[one].X2);
                Assert.DoesNotContain(named, mark => Overlap(boxes[one], (mark.X - 5, mark.Y - 5, mark.X + 5, mark.Y + 5)));
                Assert.True(boxes[one].X1 >= frame.Left && boxes[one].X2 <= frame.Right && boxes[one].Y1 >= frame.Top && boxes[one].Y2 <= frame.Bottom);
            }
        }
    }

    [Fact]
    public void A_single_paper_is_drawn_too()
    {
        var one = PapersAnswer.Of(View.Source, new PaperChoice(new Dictionary<int, IReadOnlyList<string>>(), [100], "post")).Readings[100]!;

        var paper = Assert.Single(PaperChart.Of(one, UnitSystem.Metric, Name, PaperFrame.Wide).Named);
        Assert.True(double.IsFinite(paper.X) && double.IsFinite(paper.Y));
    }

    [Fact]
    public void Thousands_of_papers_are_one_path_with_no_point_twice()
    {
        string[] all = [.. View.Offered.Where(id => id != "unpriced")];
        var many = PapersAnswer.Of(View.Source, new PaperChoice(new[] { 0, 1, 2 }.ToDictionary(part => part, _ => (IReadOnlyList<string>)all), [100], "post")).Readings[100]!;

        var chart = PaperChart.Of(many, UnitSystem.Metric, Name, PaperFrame.Narrow);

        var points = chart.Cloud.Split('M', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(points.Length, points.Distinct().Count());
        Assert.InRange(points.Length, 50, many.Rows.Count - 1);
        Assert.InRange(chart.Named.Count, 1, 4);
    }

    private static PaperChart Draw(PaperFrame frame, UnitSystem units = UnitSystem.Metric) => PaperChart.Of(Reading, units, Name, frame);

    // "3 Heron 95" tells one number, "2, 5" two.
    private static IEnumerable<int> Told(PlacedLabel label) =>
        label.Text.Contains(", ", StringComparison.Ordinal) ? label.Text.Split(", ").Select(number => int.Parse(number, System.Globalization.CultureInfo.InvariantCulture)) : [int.Parse(label.Text.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture)];

    private static (double X1, double Y1, double X2, double Y2) Box(PlacedLabel label)
    {
        // The widest that letters of 12.5 units are on average in the pictures' face (measured).
        var width = label.Text.Length * 6.5;
        var left = label.Anchor switch { "start" => label.X, "end" => label.X - width, _ => label.X - (width / 2) };
        return (left, label.Y - 9, left + width, label.Y + 2);
    }

    private static bool Overlap((double X1, double Y1, double X2, double Y2) a, (double X1, double Y1, double X2, double Y2) b) =>
        a.X1 < b.X2 && b.X1 < a.X2 && a.Y1 < b.Y2 && b.Y1 < a.Y2;

    private static string Name(PaperRow row) => View.StockName(row.StockIds[1]);

    private static bool Within(double value, double from, double to) => value >= from && value <= to;
}
