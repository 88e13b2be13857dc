using CsCheck;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Costing;

public sealed class WarningsTests
{
    private static readonly Mailer Board = new("board", "Board", Mm(250), Mm(150), Length.Zero, G(10), 0m);

    private static readonly PostageService Letter =
        new("letter", "Letter", "home", Date, null, null, null, null, null, null, [new MassStep(G(100), 1m)]);

    // One copy of 4 g in a mailer of 10 g.
    private static readonly Job Posted = Plain() with
    {
        Mailers = [Board],
        Postage = [Letter],
        Channels = [Channel("post") with { MailerId = "board", PostageRegion = "home" }],
    };

    [Fact]
    public void A_plain_job_has_nothing_to_look_at() => Assert.Empty(Plain().Estimate().Warnings);

    [Theory]
    [InlineData(4, 0, false)] // One sheet has no creep.
    [InlineData(8, 0, true)]
    [InlineData(8, 0.1, false)]
    [InlineData(12, 0.1, true)]
    public void Creep_beyond_the_fore_edge_trim_is_told_also_where_nothing_is_trimmed(int pages, double trim, bool told)
    {
        var job = Plain()
            .With(shop => shop with { Sheets = [Sheet(width: 210)] })
            .WithEdition(edition => edition with { Parts = [Part(pages)], Trim = new Trim(default, default, Mm((decimal)trim), default) });
        Assert.Equal(told, Codes(job).Contains(WarningCode.CreepExceedsTrim));
    }

    [Fact]
    public void A_thickness_from_the_finish_alone_is_called_estimated_by_name()
    {
        var stock = new Stock("plain", "Cream text", PaperWeight.FromGrammage(100m), null, null, Finish.Uncoated);
        var warning = Assert.Single((Plain() with { Stocks = [stock] }).Estimate().Warnings);
        Assert.Equal(WarningCode.CaliperEstimated, warning.Code);
        Assert.Contains("Cream text", warning.Message, StringComparison.Ordinal);
        Assert.Equal(["Cream text"], warning.About);
    }

    [Fact]
    public void A_page_that_does_not_lie_in_its_mailer_either_way_is_told_and_still_priced()
    {
        Assert.Empty(Codes(Posted));
        var job = Posted with { Mailers = [Board with { Width = Mm(99) }] };
        Assert.Equal([WarningCode.MailerTooSmall], Codes(job));
        Assert.Equal(1m, Assert.Single(job.Estimate().Postage).Price);
    }

    [Fact]
    public void A_mailer_without_post_is_looked_at_too()
    {
        var job = Plain() with { Mailers = [Board with { Width = Mm(99) }], Channels = [Channel() with { MailerId = "board" }] };
        Assert.Equal([WarningCode.MailerTooSmall], Codes(job));
    }

    [Fact]
    public void Where_no_service_takes_the_piece_there_is_no_net_no_price_and_a_warning()
    {
        var job = Posted with { Postage = [Letter with { Steps = [new MassStep(G(13), 1m)] }] };
        var estimate = job.Estimate();
        var postage = Assert.Single(estimate.Postage);
        Assert.Equal([WarningCode.NoPostage], Codes(job));
        Assert.Equal([job.Channels[0].Name], estimate.Warnings[0].About);
        Assert.Equal((null, null, null, null), (postage.ServiceId, postage.Price, postage.HeadroomMass, postage.HeadroomThickness));
        Assert.Equal((null, null), (estimate.Channels[0].NetPerCopy, estimate.Channels[0].BreakEvenPrice));
        Assert.Null(estimate.BreakEven.Copies);
    }

    [Theory]
    [InlineData(14.42, false)] // Headroom of 3 % of 14 g exactly.
    [InlineData(14.41, true)]
    public void A_piece_within_three_per_cent_of_its_steps_limit_is_told_unless_the_copy_was_weighed(double most, bool told)
    {
        // Common practice: paper varies.
        var job = Posted with { Postage = [Letter with { Steps = [new MassStep(G((decimal)most), 1m)] }] };
        Assert.Equal(told, Codes(job).Contains(WarningCode.NearPostageStep));
        Assert.Empty(Codes(job.WithEdition(edition => edition with { Weighed = new Weighed(G(4), null) })));
    }

    [Fact]
    public void A_channel_that_no_price_pays_for_and_a_run_that_its_copies_do_not_pay_for_are_told()
    {
        var job = Plain() with { Channels = [Channel("gift") with { TradeDiscount = 1m, Mix = 0m }, Channel(price: 0.20m)] };
        Assert.Equal([WarningCode.NoBreakEvenPrice, WarningCode.BreakEvenBeyondRun], Codes(job));
        Assert.Equal([[job.Channels[0].Name], []], job.Estimate().Warnings.Select(warning => warning.About));
        Assert.Equal((125L, false), (job.Estimate().BreakEven.Copies!.Value, job.Estimate().BreakEven.WithinRun));
    }

    [Fact]
    public void Warnings_stand_in_the_order_of_their_codes() =>
        JobGen.Any.Sample(job =>
        {
            if (job.Prepared().Estimate(job.Quantity) is { Succeeded: true } outcome)
            {
                Assert.Equal(outcome.Value.Warnings.Select(warning => warning.Code).Order(), outcome.Value.Warnings.Select(warning => warning.Code));
            }
        });

    private static IEnumerable<WarningCode> Codes(Job job) => job.Estimate().Warnings.Select(warning => warning.Code);
}
