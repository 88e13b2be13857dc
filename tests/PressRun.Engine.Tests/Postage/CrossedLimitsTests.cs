using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Postage;

/// <summary>A carrier's table typed in wrongly, with a least above its most: a piece between them breaks both.</summary>
public sealed class CrossedLimitsTests
{
    [Fact]
    public void A_piece_between_crossed_limits_is_told_of_each_that_it_breaks()
    {
        var service = new PostageService("letter", "letter", "home", Date, null, null, Mm(5m), null, null, Mm(7m), [new MassStep(G(100m), 1m)]);
        var mailer = new Mailer("none", "none", Mm(200m), Mm(100m), Length.Zero, Mass.Zero, 0m);

        var choice = PostageTable.Choose([service], "post", mailer, new CopyEstimate(G(50m), Mm(6m), Length.Zero), copies: 1);

        Assert.Null(choice.ServiceId);
        Assert.Equal([new("letter", PostageLimit.Thickness, 1m), new("letter", PostageLimit.Thickness, 1m) { TooLittle = true }], choice.Refused);
    }
}
