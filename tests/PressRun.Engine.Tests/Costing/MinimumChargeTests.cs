using PressRun.Engine.Costing;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Costing;

public sealed class MinimumChargeTests
{
    // 100 copies at 0.10 are 10.00.
    [Theory]
    [InlineData(15, 15, true)]
    [InlineData(10, 10, false)]
    [InlineData(5, 10, false)]
    public void A_line_says_whether_the_minimum_is_what_is_charged(int minimum, int amount, bool atMinimum)
    {
        var line = Plain().With(shop => shop with { Finishing = [new Finishing("trim", FinishingUnit.Copy, 0.10m, minimum)] }).Estimate().Line(CostCode.Finishing);
        Assert.Equal((amount, atMinimum), (line.Amount, line.AtMinimum));
    }
}
