using CsCheck;
using PressRun.Engine.Costing;
using PressRun.Engine.Postage;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Postage;

public sealed class MailTableTests
{
    private static readonly Mailer Small = new("small", "Small", Mm(150), Mm(100), Mm(1), G(5), 0.10m);
    private static readonly Mailer Board = new("board", "Board", Mm(250), Mm(150), Mm(1), G(10), 0.30m);
    private static readonly Mailer Box = new("box", "Box", Mm(300), Mm(220), Mm(5), G(60), 0.90m);

    [Fact]
    public void Every_region_every_number_of_copies_and_every_mailer_has_its_row()
    {
        var job = Plain() with { Postage = [Service("near", "home"), Service("far", "abroad")], Mailers = [Small, Board, Box] };
        var rows = MailTable.Of(job.Prepared(), job.Mailers, [1, 2, 5]);

        Assert.Equal(18, rows.Count);
        Assert.Equal(["home", "abroad"], rows.Select(row => row.Region).Distinct());
        Assert.All(rows, row => Assert.Equal(row.Mailer.Price + row.Choice.Price, row.Cost));
    }

    [Fact]
    public void The_cheapest_is_sought_among_the_mailers_that_the_page_lies_in()
    {
        // A page of 100 × 200 mm does not lie in a mailer of 150 × 100 mm.
        var job = Plain() with { Postage = [Service("near", "home")], Mailers = [Small, Board, Box] };
        var rows = MailTable.Of(job.Prepared(), job.Mailers, [1]);

        Assert.Equal([false, true, true], rows.Select(row => row.Lies));
        Assert.Equal("board", Assert.Single(rows, row => row.Cheapest).Mailer.Id);
    }

    [Fact]
    public void More_copies_never_weigh_less_and_the_piece_is_what_the_postage_table_says() => JobGen.Any.Sample(
        job =>
        {
            if (PreparedJob.Prepare(job) is not { Succeeded: true, Value: var ready })
            {
                return;
            }

            var rows = MailTable.Of(ready, job.Mailers, [1, 2, 5]);
            foreach (var row in rows)
            {
                var services = PostageTable.InForce(job.Postage, job.Date).Where(service => service.Region == row.Region).ToList();
                Assert.Equal(PostageTable.Choose(services, "", row.Mailer, ready.Copy, row.Copies).Price, row.Choice.Price);
            }

            foreach (var pair in rows.GroupBy(row => (row.Region, row.Mailer.Id)).SelectMany(group => group.Zip(group.Skip(1))))
            {
                Assert.True(pair.First.Choice.Mass <= pair.Second.Choice.Mass);
            }
        },
        iter: 200);

    private static PostageService Service(string id, string region) =>
        new(id, id, region, Date, null, null, null, null, null, null, [new MassStep(G(1000), 1.50m), new MassStep(G(5000), 4m)]);
}
