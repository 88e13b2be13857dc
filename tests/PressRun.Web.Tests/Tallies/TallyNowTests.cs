using PressRun.Data.Tallies;
using PressRun.Engine.Bench;
using PressRun.Web.Shared;
using PressRun.Web.Tallies;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Tallies;

public class TallyNowTests
{
    [Fact]
    public void What_a_phone_is_told_are_the_sums_and_a_mark_that_alters_with_anything_new()
    {
        var now = TallyNow.Of(ATally.Of(ATally.Done(0, 40, "Ada"), ATally.Spoiled(0, 2, "Ben"), ATally.Worked(0, 90, "Ben")), 17);

        Assert.Equal((3, 17L, false, 100, 2L, 8L), (now.Lines, now.At, now.Written, now.Wanted, now.Spoiled, now.Spare));
        // 68 still to be folded, of which a twentieth goes wrong: 3.4, so 4.
        Assert.Equal(4, now.Further);
        Assert.Equal((40L, 2L, 68L, 90L), (now.Steps[0].Done, now.Steps[0].Spoiled, now.Steps[0].Left, now.Steps[0].Seconds));
        Assert.Equal(["3", "3w", "4"], [now.Mark, TallyNow.MarkOf(3, written: true), TallyNow.MarkOf(4, written: false)]);
    }

    [Fact]
    public void Steps_that_the_table_has_no_name_for_have_the_trades()
    {
        var work = TallyService.WorkOf(Records.Source(), BenchLimits.Usual)!;

        Assert.Equal(("fold", 36m * work.Copies / 60m), (work.Steps.Single(step => step.Kind == WorkKind.Fold).Name, work.Steps.Single(step => step.Kind == WorkKind.Fold).Minutes));
        Assert.All(work.Steps, step => Assert.NotEmpty(step.Name));
        Assert.All(Enum.GetValues<WorkKind>(), kind => Assert.NotEmpty(Words.Of(kind)));
        Assert.Equal(Enum.GetValues<WorkKind>().Length, Enum.GetValues<WorkKind>().Select(Words.Of).Distinct().Count());
    }

    [Theory]
    [InlineData(0, "0 min")]
    [InlineData(89, "1 min")]
    [InlineData(3570, "1 h 0 min")]
    [InlineData(7500, "2 h 5 min")]
    public void A_time_is_written_to_the_minute(long seconds, string words) => Assert.Equal(words, TallyWords.Time(seconds));

    [Theory]
    [InlineData(-5, 0)]
    [InlineData(90, 90)]
    [InlineData(long.MaxValue, 366L * 86_400)]
    public void However_long_ago_a_phone_says_something_was_it_can_be_read(long ago, long seconds) =>
        Assert.Equal(TimeSpan.FromSeconds(seconds), new SentEntry(Guid.NewGuid(), 0, TallyKind.Done, 1, 0, null, ago, false).ToNew().Ago);
}
