using PressRun.Engine.Costing;
using PressRun.Engine.Selling;
using PressRun.Web.Shared;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Shared;

public class BreakEvenWordsTests
{
    private const string Edition = "titles/marsh-letters/2";

    private static readonly Channel Fair = ARun.Job.Channels[0];

    [Fact]
    public void Where_everything_is_known_the_copy_is_said()
    {
        var estimate = APlan.Estimate(ARun.Job);
        Assert.Equal(Written.Metric.Count(estimate.BreakEven.Copies!.Value), Of(ARun.Job).Copies);
        Assert.Null(Of(ARun.Job).Sentence);
    }

    [Fact]
    public void Without_a_price_that_is_said_and_where_to_set_it() =>
        Says("It has no price yet", Edition, With(Fair with { Price = 0m }));

    [Fact]
    public void Without_a_share_that_is_said_and_where_to_set_it() =>
        Says("No way of selling has a share", "selling", With(Fair with { Mix = 0m }));

    [Fact]
    public void Without_channels_that_is_said() => Says("Nothing says yet how it is sold", "selling", With());

    [Fact]
    public void A_price_that_leaves_nothing_is_called_so_with_what_a_copy_leaves() =>
        Says("At this price a copy keeps \u22121.00", Edition, With(Fair with { Price = 1m, FeeFixed = 2m }));

    private static void Says(string sentence, string at, Job job)
    {
        var words = Of(job);
        Assert.StartsWith(sentence, words.Sentence, StringComparison.Ordinal);
        Assert.Equal((null, at), (words.Copies, words.MendAt));
    }

    private static Job With(params Channel[] channels) => ARun.Job with { Channels = channels };

    private static BreakEvenWords Of(Job job) => BreakEvenWords.Of(APlan.Estimate(job), job, Edition, Written.Metric);
}
