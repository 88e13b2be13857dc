using PressRun.Data.Titles;
using PressRun.Web.Shelf;

namespace PressRun.Web.Tests.Shelf;

public class ShelfDecisionTests
{
    [Theory]
    [InlineData(100, 0, true, DecisionKind.NoneLeft)]
    [InlineData(100, 10, true, DecisionKind.RunningOut)]
    [InlineData(100, 11, true, DecisionKind.None)]
    [InlineData(100, 0, false, DecisionKind.None)]
    public void A_printing_asks_when_its_last_tenth_is_going_unless_a_later_one_exists(int printed, int onHand, bool isLatest, DecisionKind asks) =>
        Assert.Equal(asks, ShelfDecision.Of(Edition(printed, onHand), isLatest, true, true));

    [Theory]
    [InlineData(true, true, DecisionKind.Planned)]
    [InlineData(true, false, DecisionKind.NotPaidFor)]
    [InlineData(false, false, DecisionKind.NotWorkedOut)]
    public void A_planned_printing_asks_where_it_is_not_worked_out_or_not_paid_for(bool isWorkedOut, bool isPaidFor, DecisionKind asks) =>
        Assert.Equal(asks, ShelfDecision.Of(Edition(null, 0), true, isWorkedOut, isPaidFor));

    [Theory]
    [InlineData(DecisionKind.None, DecisionKind.Due)]
    [InlineData(DecisionKind.Planned, DecisionKind.Due)]
    [InlineData(DecisionKind.RunningOut, DecisionKind.Due)]
    [InlineData(DecisionKind.NoneLeft, DecisionKind.NoneLeft)]
    [InlineData(DecisionKind.NotPaidFor, DecisionKind.NotPaidFor)]
    public void A_title_that_is_due_says_so_before_anything_milder(DecisionKind kind, DecisionKind asks)
    {
        Assert.Equal(asks, ShelfDecision.WhereDue(kind));
        Assert.True(ShelfDecision.Asks(asks));
    }

    [Fact]
    public void A_run_that_is_planned_needs_no_decision() => Assert.False(ShelfDecision.Asks(DecisionKind.Planned));

    private static ShelfEdition Edition(int? printed, int onHand) => new(Guid.NewGuid(), 1, null, printed, onHand, false, 6m, 1, null, default);
}
