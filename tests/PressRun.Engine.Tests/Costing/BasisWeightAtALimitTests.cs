using PressRun.Engine.Comparing;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Costing;

/// <summary>
/// A basis weight is what 500 sheets of the basic size weigh, so a ream weighs its pounds to the last gram. Few grammages that follow from one
/// end, though, and the last digit held may be a hair too much: it must not push a mass over a limit that it only reaches.
/// </summary>
public sealed class BasisWeightAtALimitTests
{
    public static TheoryData<PaperCategory, int> Papers
    {
        get
        {
            var papers = new TheoryData<PaperCategory, int>();
            foreach (var category in Enum.GetValues<PaperCategory>())
            {
                foreach (var pounds in new[] { 20, 24, 50, 60, 65, 70, 80, 100, 110 })
                {
                    papers.Add(category, pounds);
                }
            }

            return papers;
        }
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void A_ream_fills_one_carton_and_takes_the_delivery_step_of_its_pounds(PaperCategory category, int pounds)
    {
        var estimate = Ream(category, pounds, reams: 1, most: pounds).Estimate();

        Assert.Equal(1, estimate.Freight.Cartons);
        Assert.Equal(5m, estimate.Totals.Delivery);
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void Three_reams_over_a_step_of_two_pay_for_the_kilograms_begun_and_no_more(PaperCategory category, int pounds)
    {
        var over = Mass.FromPounds(3 * pounds) - Mass.FromKilograms(2m);
        var job = Ream(category, pounds, reams: 3, most: over.Pounds).WithOrder(order => order with
        {
            Delivery = new Delivery([new MassStep(over, 5m)], 1m, null),
        });

        Assert.Equal(7m, job.Estimate().Totals.Delivery);
    }

    [Theory]
    [InlineData(24)]
    [InlineData(48)]
    [InlineData(72)]
    public void Letter_size_leaves_of_bond_take_the_postage_step_that_they_reach(int pounds)
    {
        // Four leaves of 8.5 × 11 in are one sheet of 17 × 22 in, so 100 of them weigh a twentieth of the ream.
        var limit = Mass.FromPounds(pounds / 20m);
        var copy = new CopyEstimate(Mass.FromGrams(100 * LeafGrams(pounds)), Mm(2), Length.Zero);
        var mailer = new Mailer("none", "none", In(11m), In(8.5m), Length.Zero, Mass.Zero, 0m);
        var service = new PostageService("letter", "letter", "home", Date, null, null, null, null, null, null, [new MassStep(limit, 1m)]);

        var choice = PostageTable.Choose([service], "post", mailer, copy, copies: 1);

        Assert.Equal("letter", choice.ServiceId);
        Assert.Equal(0m, choice.HeadroomMass!.Value.Grams);
    }

    [Theory]
    [InlineData(24)]
    [InlineData(48)]
    [InlineData(72)]
    public void A_step_with_room_for_five_more_leaves_says_five(int pounds)
    {
        var job = Ream(PaperCategory.Bond, pounds, reams: 1, most: pounds).WithEdition(edition => edition with { Page = InSize(8.5m, 11m), Parts = [Part(190)] }) with
        {
            Mailers = [new Mailer("none", "none", In(11m), In(8.5m), Length.Zero, Mass.Zero, 0m)],
            Postage = [new PostageService("letter", "letter", "home", Date, null, null, null, null, null, null, [new MassStep(Mass.FromPounds(pounds / 20m), 1m)])],
            Channels = [Channel() with { MailerId = "none", PostageRegion = "home" }],
        };

        var row = Assert.Single(StockComparer.Compare(job, new([], [], [500]), TestContext.Current.CancellationToken).Value.Rows);

        Assert.Equal([5], Assert.Single(row.InHand).HeadroomLeaves);
    }

    [Fact]
    public void A_piece_takes_the_thickness_limit_that_it_reaches()
    {
        // A third of a millimetre cannot be held in decimals; three of them are a millimetre.
        var copy = new CopyEstimate(G(10), Mm(2m / 3m), Length.Zero);
        var mailer = new Mailer("none", "none", In(11m), In(8.5m), Length.Zero, Mass.Zero, 0m);
        var service = new PostageService("letter", "letter", "home", Date, null, null, Mm(2m), null, null, null, [new MassStep(G(100), 1m)]);

        Assert.Equal(0m, PostageTable.Choose([service], "post", mailer, copy, copies: 3).HeadroomThickness!.Value.Millimetres);
    }

    // Loose leaves of the basic size, one to a sheet of that size, sent flat in cartons that hold a ream.
    private static Job Ream(PaperCategory category, int pounds, int reams, decimal most)
    {
        var (width, height) = PaperWeight.BasicSize(category);
        var stock = new Stock("plain", "plain", PaperWeight.FromBasisWeight(pounds, category), Mm(0.1m), null, null);
        var plain = Plain();
        return plain
            .With(shop => shop with { Sheets = [Sheet() with { Width = width, Height = height }] })
            .WithEdition(edition => edition with { Binding = Binding.Loose, Page = new Size(width, height), Parts = [Part(2)] })
            .WithOrder(order => order with
            {
                Carton = new Carton(Mass.FromPounds(pounds), Mass.Zero),
                Delivery = new Delivery([new MassStep(Mass.FromPounds(most), 5m)], 1m, null),
            }) with
        { Stocks = [stock], Quantity = 500 * reams };
    }

    private static decimal LeafGrams(int pounds) =>
        Grams.Of(InSize(8.5m, 11m), PaperWeight.FromBasisWeight(pounds, PaperCategory.Bond)).Grams;
}
