using CsCheck;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Postage;

public sealed class LowerStepTests
{
    // A leaf of 100 × 200 mm at 100 g/m² weighs 2 g (ISO 536): 40 pages on folded sheets are 20 leaves, 40 g, with the mailer 50 g.
    private static readonly Job Forty = Plain().WithEdition(_ => Edition(Binding.Saddle, Part(4, "cover"), Part(36))) with
    {
        Stocks = [PlainStock(), PlainStock("thin", 80m, 90m), PlainStock("thinner", 60m, 70m)],
        Mailers = [new Mailer("board", "Board", Mm(250), Mm(150), Mm(1), G(10), 0.30m)],
    };

    [Fact]
    public void The_least_trim_the_fewest_pages_and_the_heaviest_lighter_paper_are_found()
    {
        // To 48 g: 2 g of 40 is a twentieth of a side, 5 mm of 100 or 10 of 200; 4 pages weigh 4 g; the cover alone on 60 g/m² loses 1.6 g.
        var found = Find(Forty with { Postage = [Service((48m, 1m), (100m, 2m))] });

        Assert.Equal(2m, found.Now.Price);
        Assert.Collection(
            found.Ways,
            way => Assert.Equal((Edge.ForeEdge, Mm(5)), (Assert.IsType<TrimmedMore>(way).Edge, ((TrimmedMore)way).By)),
            way => Assert.Equal((Edge.Foot, Mm(10)), (Assert.IsType<TrimmedMore>(way).Edge, ((TrimmedMore)way).By)),
            way => Assert.Equal((1, 4), (Assert.IsType<FewerPages>(way).Part, ((FewerPages)way).By)),
            way => Assert.Equal((1, "thin"), (Assert.IsType<LighterPaper>(way).Part, ((LighterPaper)way).StockId)));
        Assert.All(found.Ways, way => Assert.Equal(1m, way.Saves));
    }

    [Fact]
    public void Nothing_is_found_where_only_another_book_would_be_light_enough() =>
        Assert.Empty(Find(Forty with { Postage = [Service((15m, 1m), (100m, 2m))] }).Ways);

    [Fact]
    public void What_nothing_takes_is_made_to_fit_and_saves_no_postage_that_was_paid()
    {
        var found = Find(Forty with { Postage = [Service((48m, 1m))] });

        Assert.Null(found.Now.Price);
        Assert.NotEmpty(found.Ways);
        Assert.All(found.Ways, way => Assert.Null(way.Saves));
    }

    [Fact]
    public void A_piece_that_is_too_thick_is_helped_by_fewer_pages_and_thinner_paper_but_not_by_the_knife()
    {
        // 20 leaves of 0.1 mm and 1 mm of mailer are 3 mm.
        var thin = Service((500m, 1m)) with { MaxThickness = Mm(2.9m) };
        var found = Find(Forty with { Postage = [thin, Service((500m, 2m)) with { Id = "thick" }] });

        Assert.Equal(2m, found.Now.Price);
        Assert.DoesNotContain(found.Ways, way => way is TrimmedMore);
        Assert.Contains(found.Ways, way => way is FewerPages { Part: 1, By: 4 });
        Assert.Contains(found.Ways, way => way is LighterPaper { Part: 1, StockId: "thin" });
    }

    [Fact]
    public void What_the_scale_said_stays_less_what_the_reckoned_copy_loses()
    {
        // Weighed 1 g above what is reckoned: 3 g must go, so that 7 mm of 100 are not enough and 8 are.
        var weighed = Forty.WithEdition(edition => edition with { Weighed = new Weighed(G(41), null) }) with { Postage = [Service((48m, 1m), (100m, 2m))] };

        Assert.Contains(Find(weighed).Ways, way => way is TrimmedMore { Edge: Edge.ForeEdge, By.Millimetres: 8m });
        Assert.Contains(Find(weighed).Ways, way => way is FewerPages { Copy.Mass.Grams: 37m });
    }

    [Fact]
    public void Each_way_is_what_the_changed_job_itself_says() => JobGen.Any.Sample(
        job =>
        {
            if (Posting(job) is var (ready, mailer, found))
            {
                foreach (var way in found.Ways)
                {
                    var changed = (job with { Edition = way.Edition }).Prepared();
                    Assert.Equal(changed.Copy, way.Copy);
                    Assert.Equal(way.Posted.Price, Choose(changed, mailer).Price);
                    Assert.True(found.Now.Price is null || way.Posted.Price < found.Now.Price);
                    Assert.True(way.InHand is null || way.InHand == (changed.LandedCost(job.Quantity) / job.Quantity) + mailer.Price + way.Posted.Price);
                }
            }
        },
        iter: 300);

    [Fact]
    public void One_unit_less_does_not_reach() => JobGen.Any.Sample(
        job =>
        {
            if (Posting(job) is not var (ready, mailer, found))
            {
                return;
            }

            foreach (var way in found.Ways)
            {
                var less = way switch
                {
                    TrimmedMore { Edge: Edge.Foot } trimmed => Less(way, edition => edition with { Page = edition.Page with { Height = edition.Page.Height + Mm(1) } }),
                    TrimmedMore => Less(way, edition => edition with { Page = edition.Page with { Width = edition.Page.Width + Mm(1) } }),
                    FewerPages fewer => Less(way, edition => edition with { Parts = [.. edition.Parts.Select((part, at) => at == fewer.Part ? part with { Pages = part.Pages + BindingRules.PagesPerPiece(edition.Binding, at) } : part)] }),
                    _ => null,
                };
                if (less is { Weighed: null })
                {
                    var price = Choose((job with { Edition = less }).Prepared(), mailer).Price;
                    Assert.True(price is null || price >= found.Now.Price);
                }
            }
        },
        iter: 300);

    private static Edition Less(WayDown way, Func<Edition, Edition> change) => change(way.Edition);

    private static (PreparedJob Ready, Mailer Mailer, LowerStep Found)? Posting(Job job) =>
        PreparedJob.Prepare(job) is { Succeeded: true, Value: var ready } && job.Mailers is [var mailer, ..] && ready.LandedCost(job.Quantity, out _) is null
            ? (ready, mailer, LowerStep.Find(ready, mailer, "home", 1, Mm(1), _ => job.Stocks.Select(stock => stock.Id)))
            : null;

    private static PostageChoice Choose(PreparedJob ready, Mailer mailer) =>
        PostageTable.Choose([.. PostageTable.InForce(ready.Job.Postage, ready.Job.Date).Where(service => service.Region == "home")], "", mailer, ready.Copy, 1);

    private static LowerStep Find(Job job) => LowerStep.Find(job.Prepared(), job.Mailers[0], "home", 1, Mm(1), _ => ["plain", "thin", "thinner"]);

    private static PostageService Service(params (decimal Grams, decimal Price)[] steps) =>
        new("post", "Post", "home", Date, null, null, null, null, null, null, [.. steps.Select(step => new MassStep(G(step.Grams), step.Price))]);
}
