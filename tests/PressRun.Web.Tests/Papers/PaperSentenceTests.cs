using Bunit;
using PressRun.Engine.Comparing;
using PressRun.Web.Papers;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Papers;

public class PaperSentenceTests
{
    private static readonly PapersView View = APost.View();

    [Fact]
    public async Task The_first_lines_say_what_it_costs_now_the_cheapest_the_pick_and_what_going_up_costs()
    {
        await using var page = new BunitContext();
        var reading = PapersAnswer.Of(View.Source, PaperChoice.Read(View, null, null, null)).Readings[100]!;

        var said = Said(page, reading);

        Assert.Equal(
            $"On Thin cream, as planned, a copy costs {Written.Metric.Sum(reading.Now!.InHand!.Value)} in the reader's hands; it goes as Heronpost flat with 9g to spare. "
            + $"{Name(reading.Cheapest)} is the cheapest at {Written.Metric.Money(reading.Cheapest.InHand!.Value)}. Heron 95 is the heaviest that is posted no dearer than now. "
            + $"Going up a paper for the inside, to Green sheet, costs {Written.Metric.Money(reading.StepsUp[0].CostsMore!.Value)} more a copy and leaves the postage as it is.",
            said);
    }

    [Fact]
    public async Task Where_the_next_paper_leaves_the_step_its_postage_is_told()
    {
        await using var page = new BunitContext();
        var reading = PapersAnswer.Of(View.Source, new PaperChoice(new Dictionary<int, IReadOnlyList<string>> { [1] = ["g110"] }, [100], "post")).Readings[100]!;

        Assert.EndsWith("more a copy; 0.70 of it is postage.", Said(page, reading), StringComparison.Ordinal);
    }

    private static string Name(PaperRow row) => View.StockName(row.StockIds[1]);

    private static string Said(BunitContext page, PaperReading reading) => string.Join(' ', page.Render<PaperSentence>(parameters => parameters
            .Add(part => part.Reading, reading)
            .Add(part => part.Format, Written.Metric)
            .Add(part => part.Name, Name)
            .Add(part => part.View, View)
            .Add(part => part.MainPart, 1)
            .Add(part => part.Posts, true))
        .Find("p").TextContent.Split((char[])[' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));
}
