using PressRun.Engine.Quoting;

namespace PressRun.Engine.Tests.Quoting;

public sealed class QuoteCourseTests
{
    private static readonly DateOnly Until = new(2026, 12, 31);

    private static readonly QuoteReader Waiting = new(Open: true, Asked: true, QuoteAnswer.None, Released: false);
    private static readonly QuoteReader Yes = new(Open: true, Asked: true, QuoteAnswer.Agreed, Released: false);
    private static readonly QuoteReader No = new(Open: true, Asked: true, QuoteAnswer.TurnedDown, Released: false);
    private static readonly QuoteReader OnlyReads = new(Open: true, Asked: false, QuoteAnswer.None, Released: false);
    private static readonly QuoteReader Ended = new(Open: false, Asked: true, QuoteAnswer.None, Released: true);

    private static readonly QuoteReader Silent = new(Open: false, Asked: true, QuoteAnswer.None, Released: false);

    public static TheoryData<QuoteState, QuoteReader[]> InTime => new()
    {
        { QuoteState.Held, [] },
        { QuoteState.Held, [Ended] },
        { QuoteState.Out, [Waiting] },
        { QuoteState.Out, [OnlyReads] },
        { QuoteState.Out, [Yes, Waiting] },
        { QuoteState.Agreed, [Yes] },
        { QuoteState.Agreed, [Yes, OnlyReads, Ended] },
        { QuoteState.Agreed, [Yes with { Open = false }] },
        { QuoteState.Out, [Yes, Silent] },
        { QuoteState.Held, [Silent] },
        { QuoteState.TurnedDown, [Yes, No, Waiting] },
    };

    [Theory]
    [MemberData(nameof(InTime))]
    public void It_stands_where_its_readers_leave_it(QuoteState expected, QuoteReader[] readers)
    {
        Assert.Equal(expected, QuoteCourse.Of(false, readers, Until, Until));
    }

    [Fact]
    public void It_lapses_on_the_day_after_its_last_unless_everyone_had_answered()
    {
        Assert.Equal(QuoteState.Lapsed, QuoteCourse.Of(false, [Waiting], Until, Until.AddDays(1)));
        Assert.Equal(QuoteState.Lapsed, QuoteCourse.Of(false, [Yes, Waiting], Until, Until.AddDays(1)));
        Assert.Equal(QuoteState.Lapsed, QuoteCourse.Of(false, [Yes, Silent], Until, Until.AddDays(1)));
        Assert.Equal(QuoteState.Agreed, QuoteCourse.Of(false, [Yes], Until, Until.AddDays(1)));
        Assert.Equal(QuoteState.Agreed, QuoteCourse.Of(false, [Yes, Ended], Until, Until.AddDays(1)));
        Assert.Equal(QuoteState.TurnedDown, QuoteCourse.Of(false, [No], Until, Until.AddDays(1)));
    }

    [Fact]
    public void One_that_was_replaced_is_that_whatever_was_said()
    {
        Assert.Equal(QuoteState.Replaced, QuoteCourse.Of(true, [Yes], Until, Until));
    }
}
