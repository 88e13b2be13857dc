using CsCheck;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Postage;

public sealed class PostageTableTests
{
    private static readonly PostageService Small = Service("small", 1m, 100);
    private static readonly CopyEstimate Copy = new(G(20), Mm(2), Length.Zero);
    private static readonly Mailer Board = new("board", "Board", Mm(150), Mm(250), Mm(1), G(10), 0.35m);

    [Fact]
    public void Copies_and_mailer_add_up_to_the_piece()
    {
        var choice = Choose(3, Small);
        Assert.Equal((G(70), Mm(7)), (choice.Mass, choice.Thickness));
        Assert.Equal((G(30), null), (choice.HeadroomMass!.Value, choice.HeadroomThickness));
    }

    [Fact]
    public void The_cheapest_service_is_taken_and_of_equals_the_first_listed()
    {
        Assert.Equal("cheap", Choose(1, Small, Service("cheap", 0.5m, 100), Service("dear", 2m, 100)).ServiceId);
        Assert.Equal("small", Choose(1, Small, Service("same", 1m, 100)).ServiceId);
        Assert.Empty(Choose(1, Small, Service("dear", 2m, 100)).Refused);
    }

    [Fact]
    public void The_step_is_the_first_that_the_mass_does_not_pass()
    {
        var service = Small with { Steps = [new MassStep(G(29.9m), 1m), new MassStep(G(30), 2m), new MassStep(G(50), 3m)] };
        Assert.Equal((2m, Mass.Zero), (Choose(1, service).Price!.Value, Choose(1, service).HeadroomMass!.Value));
    }

    [Fact]
    public void Sides_are_compared_sorted_and_a_side_equal_to_a_limit_fits()
    {
        var turned = Small with { MaxLength = Mm(150), MaxWidth = Mm(250) };
        Assert.Equal("small", Choose(1, turned).ServiceId);
        Assert.Equal("small", Choose(1, turned with { MaxLength = Mm(250), MaxWidth = Mm(150) }).ServiceId);
    }

    [Fact]
    public void A_limit_named_for_one_side_binds_that_side_only()
    {
        // The longest side of the piece is 250 mm, the other 150 mm.
        Assert.Equal([(PostageLimit.Length, 1m)], Broken(Small with { MaxLength = Mm(249) }));
        Assert.Equal([(PostageLimit.Width, 1m)], Broken(Small with { MaxWidth = Mm(149) }));
        Assert.Equal([(PostageLimit.Width, 1m)], Broken(Small with { MinWidth = Mm(151) }));
        Assert.Empty(Broken(Small with { MinLength = Mm(250), MaxWidth = Mm(150) }));
    }

    [Fact]
    public void A_broken_limit_says_whether_the_piece_is_too_much_or_too_little()
    {
        var refused = Choose(1, Small with { MinLength = Mm(251), MaxWidth = Mm(149) }).Refused;

        Assert.Equal([(PostageLimit.Length, true), (PostageLimit.Width, false)], refused.Select(broken => (broken.Limit, broken.TooLittle)));
    }

    [Fact]
    public void A_refused_service_is_told_by_every_limit_it_breaks_in_order()
    {
        var strict = Small with { MaxLength = Mm(200), MaxWidth = Mm(100), MaxThickness = Mm(1), Steps = [new MassStep(G(25), 1m)] };
        Assert.Equal([(PostageLimit.Length, 50m), (PostageLimit.Width, 50m), (PostageLimit.Thickness, 2m), (PostageLimit.Mass, 5m)], Broken(strict));
    }

    [Fact]
    public void A_piece_too_small_or_too_thin_is_refused_by_what_it_lacks() =>
        Assert.Equal(
            [(PostageLimit.Length, 50m), (PostageLimit.Width, 10m), (PostageLimit.Thickness, 2m)],
            Broken(Small with { MinLength = Mm(300), MinWidth = Mm(160), MinThickness = Mm(5) }));

    [Fact]
    public void A_service_without_steps_takes_nothing() => Assert.Equal([(PostageLimit.Mass, 30m)], Broken(Small with { Steps = [] }));

    [Fact]
    public void The_latest_table_of_a_service_that_has_begun_is_in_force()
    {
        PostageService[] services =
        [
            Small, Small with { ValidFrom = Date.AddDays(-10) }, Small with { ValidFrom = Date.AddDays(1) },
            Service("other", 1m, 1) with { ValidFrom = Date.AddDays(-20) }, Service("later", 1m, 1) with { ValidFrom = Date.AddDays(5) },
        ];
        Assert.Equal([Small, services[3]], PostageTable.InForce(services, Date));
        Assert.Equal([services[1]], PostageTable.Past(services, Date));
    }

    [Fact]
    public void Only_services_to_the_channels_region_are_looked_at_and_without_a_region_nothing_is_posted()
    {
        var job = Plain() with
        {
            Mailers = [Board],
            Postage = [Small with { Region = "abroad", Steps = [new MassStep(G(1), 1m)] }, Service("home", 2m, 500)],
            Channels = [Channel("post") with { MailerId = "board", PostageRegion = "home" }, Channel() with { MailerId = "board" }],
        };
        var estimate = job.Estimate();
        var postage = Assert.Single(estimate.Postage);
        Assert.Equal(("post", "home"), (postage.ChannelId, postage.ServiceId));
        Assert.Empty(postage.Refused);
        Assert.Equal([10m - 0.35m - 2m, 10m - 0.35m], estimate.Channels.Select(channel => channel.NetPerCopy!.Value));
    }

    [Fact]
    public void The_choice_is_the_cheapest_that_fits_by_a_plain_look_at_every_service() => JobGen.Any.Sample(job =>
    {
        if (job.Prepared().Estimate(job.Quantity) is not { Succeeded: true } outcome)
        {
            return;
        }

        Assert.All(outcome.Value.Postage, choice =>
        {
            var channel = job.Channels.Single(channel => channel.Id == choice.ChannelId);
            var mailer = job.Mailers.Single(mailer => mailer.Id == channel.MailerId);
            decimal[] sides = [mailer.Length.Millimetres, mailer.Width.Millimetres];
            var fitting = job.Postage
                .Where(service => service.ValidFrom <= job.Date
                    && sides.Max() <= service.MaxLength!.Value.Millimetres && sides.Min() <= service.MaxWidth!.Value.Millimetres
                    && choice.Thickness <= service.MaxThickness && (service.MinLength is not { } least || sides.Max() >= least.Millimetres)
                    && choice.Mass <= service.Steps[^1].Most)
                .Select(service => (decimal?)service.Steps.First(step => choice.Mass <= step.Most).Price)
                .ToList();
            Assert.Equal(fitting.Min(), choice.Price);
            Assert.Equal(job.Postage.Count(service => service.ValidFrom <= job.Date) - fitting.Count, choice.Refused.Select(refused => refused.ServiceId).Distinct().Count());
        });
    });

    private static PostageService Service(string id, decimal price, int grams) =>
        new(id, id, "home", Date, null, null, null, null, null, null, [new MassStep(G(grams), price)]);

    private static PostageChoice Choose(int copies, params PostageService[] services) => PostageTable.Choose(services, "post", Board, Copy, copies);

    private static IEnumerable<(PostageLimit, decimal)> Broken(PostageService service) =>
        Choose(1, service).Refused.Select(refused => (refused.Limit, refused.By));
}
