using PressRun.Data.RunPlans;
using PressRun.Data.Tests.Fixtures;
using PressRun.Engine.Costing;
using PressRun.Engine.Reprint;
using PressRun.JobFile;

namespace PressRun.Data.Tests;

public sealed class PlanStoreTests(PostgresFixture postgres)
{
    [Fact]
    public async Task A_plan_comes_back_as_it_was_saved_and_the_first_one_is_chosen()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        var loaded = await stores.Plans.LoadAsync(small.Id, small.Plan.Id);

        Assert.Equivalent(small.Plan, loaded, strict: true);
        Assert.True(loaded!.Chosen);
        var wanted = SmallPress.NewPlan(small.Edition, small.List);
        Assert.Equal((wanted.Name, wanted.Date, wanted.Quantity, wanted.Ladder), (loaded.Name, loaded.Date, loaded.Quantity, loaded.Ladder));
        Assert.Equal(wanted.Stocks, loaded.Stocks);
        Assert.Equal("millrace", loaded.ShopId);
    }

    [Fact]
    public async Task A_plan_becomes_a_job_with_its_papers_its_finishing_and_its_bench_steps()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        var job = (await stores.Plans.SourceAsync(small.Id, small.Plan.Id))!.Build();

        Assert.Equal("Tidepool Almanac", job.Edition.Title);
        Assert.Equal(["text", "text"], job.Edition.Parts.Select(part => part.StockId));
        Assert.Equal([SmallPress.Text], job.Stocks);
        Assert.Equal(["text"], job.Shop.Paper.Select(price => price.StockId));
        Assert.Equal("Millrace", job.Shop.Name);
        Assert.Equal(["cutting to size"], job.Shop.Finishing.Select(operation => operation.Name));
        Assert.Equal(["stitch", "fold"], job.Bench.Steps.Select(step => step.Name));
        Assert.Equal(9.00m, Assert.Single(job.Channels).Price);
        Assert.Equal((150, 6, "USD", small.Plan.Ladder), (job.Quantity, job.FreeCopies, job.Currency.Code, job.Ladder));
    }

    [Fact]
    public async Task A_plan_that_is_called_by_its_shop_follows_when_the_shop_is_renamed_and_one_with_a_name_of_its_own_does_not()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var shop = (await stores.Shops.ListAsync(small.Id)).Single(shop => shop.Id == small.Plan.ShopId);
        foreach (var name in new[] { "Millrace", "Millrace, half on Silk and half on Cream", "Millrace by hand", "Autumn" })
        {
            SmallPress.Saved(await stores.Plans.DuplicateAsync(small.Id, small.Plan.Id, name));
        }

        SmallPress.Saved(await stores.Shops.SaveAsync(small.Id, shop with { Name = "Weir House" }));

        var names = (await stores.Plans.OfEditionAsync(small.Id, small.Edition.Id)).Select(plan => plan.Name).ToList();
        Assert.Equal(["Weir House, bind at home", "Weir House", "Weir House, half on Silk and half on Cream", "Millrace by hand", "Autumn"], names);
        Assert.Equal("Weir House", (await stores.Plans.SourceAsync(small.Id, small.Plan.Id))!.Build().Shop.Name);
    }

    [Fact]
    public async Task A_plan_of_two_halves_keeps_both_papers_is_copied_forward_with_them_and_holds_them_in_the_library()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var inside = small.Edition.Parts[1].Id;
        var halved = small.Plan with
        {
            Stocks = new Dictionary<Guid, string>(small.Plan.Stocks) { [inside] = SmallPress.Text.Id },
            SecondHalf = new PlanHalf(inside, SmallPress.Cover.Id),
        };

        var saved = SmallPress.Saved(await stores.Plans.SaveAsync(small.Id, halved));
        var source = (await stores.Plans.SourceAsync(small.Id, small.Plan.Id))!;
        var job = source.Build();
        var next = SmallPress.Saved(await stores.Editions.CopyForwardAsync(small.Id, small.Edition.Id));

        Assert.Equal(halved.SecondHalf, saved.SecondHalf);
        Assert.Equal(new SecondHalf(1, SmallPress.Cover.Id), job.SecondHalf);
        Assert.Equal([SmallPress.Cover.Id, SmallPress.Text.Id], job.Stocks.Select(stock => stock.Id));
        Assert.True(PreparedJob.Prepare(job).Succeeded);
        Assert.Equal(new PlanHalf(next.Parts[1].Id, SmallPress.Cover.Id), Assert.Single(await stores.Plans.OfEditionAsync(small.Id, next.Id)).SecondHalf);
        Assert.Contains(Assert.IsType<DeleteResult.InUse>(await stores.Stocks.DeleteAsync(small.Id, await stores.Stocks.KeptAsync(small.Id, SmallPress.Cover))).Where, use => use.Contains("plan", StringComparison.Ordinal));

        Assert.Null(SmallPress.Saved(await stores.Plans.SaveAsync(small.Id, saved with { SecondHalf = null })).SecondHalf);
    }

    [Fact]
    public async Task A_second_half_on_the_same_paper_or_on_none_that_is_known_is_refused()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var cover = small.Edition.Parts[0].Id;

        Assert.Equal("$.halves", await RefusedAsync(new PlanHalf(cover, SmallPress.Text.Id)));
        Assert.Equal("$.halves", await RefusedAsync(new PlanHalf(small.Edition.Parts[1].Id, SmallPress.Cover.Id)));
        Assert.Equal("$.stocks", await RefusedAsync(new PlanHalf(cover, "velvet")));

        async Task<string> RefusedAsync(PlanHalf half) =>
            Assert.Single(Assert.IsType<SaveResult<PlanRecord>.Refused>(await stores.Plans.SaveAsync(small.Id, small.Plan with { SecondHalf = half })).Problems).Path;
    }

    [Fact]
    public async Task A_plan_that_names_nothing_takes_all_finishing_and_does_all_bench_steps()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        SmallPress.Saved(await stores.Plans.SaveAsync(small.Id, small.Plan with { Finishing = null, BenchSteps = null }));

        var job = (await stores.Plans.SourceAsync(small.Id, small.Plan.Id))!.Build();

        Assert.Equal(2, job.Shop.Finishing.Count);
        Assert.Equal(4, job.Bench.Steps.Count);
    }

    [Fact]
    public async Task What_a_quantity_is_decided_from_is_kept_and_its_job_file_gives_the_same_plan()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var reprint = new PlanReprint(
            new ReprintRequest(7, new HistoryDemand([9, 14, 6, 11], 6.0875m, 1.5m, 0.5m, 0m, 3), 5.25m, 0.5m, 0m, 0.05m, 400m, 0, 200, 1),
            new Horizon(6, HorizonUnit.Months), new DateOnly(2026, 11, 25), new EventAhead(new DateOnly(2026, 12, 12), 1.5m), new OpinionDemand(20m, 40m, 90m, 0));
        SmallPress.Saved(await stores.Plans.SaveAsync(small.Id, small.Plan with { Reprint = reprint }));

        var source = (await stores.Plans.SourceAsync(small.Id, small.Plan.Id))!;
        Assert.Equivalent(reprint, source.Plan.Reprint, strict: true);
        var here = PreparedJob.Prepare(source.Build()).Value;
        var inTheFile = PreparedJob.Prepare(JobReader.Read(JobWriter.Write(source.Build())).Value).Value;
        Assert.Equivalent(Plan(here, reprint.Request), Plan(inTheFile, inTheFile.Job.Reprint!), strict: true);

        static ReprintPlan Plan(PreparedJob job, ReprintRequest request) => ReprintPlanner.Prepare(job, request).Value.Plan().Value;
    }

    [Fact]
    public async Task A_reprint_that_cannot_be_reckoned_with_is_refused()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var upsideDown = new PlanReprint(
            new ReprintRequest(0, new OpinionDemand(90m, 40m, 20m, 0), 5m, 0m, 0m, 0m, null, 0, 100, 1),
            new Horizon(6, HorizonUnit.Months), new DateOnly(2026, 11, 25), null, null);

        var refused = Assert.IsType<SaveResult<PlanRecord>.Refused>(await stores.Plans.SaveAsync(small.Id, small.Plan with { Reprint = upsideDown }));
        Assert.Contains(refused.Problems, problem => problem.Path == "$.reprint.demand.likely");
    }

    [Fact]
    public async Task A_plans_job_written_as_a_job_file_is_read_back_and_costed()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var job = (await stores.Plans.SourceAsync(small.Id, small.Plan.Id))!.Build();

        var read = JobReader.Read(JobWriter.Write(job));

        Assert.Empty(read.Problems);
        var estimate = PreparedJob.Prepare(read.Value).Value.Estimate(job.Quantity).Value;
        Assert.Equal(estimate.Totals.LandedCost, PreparedJob.Prepare(job).Value.Estimate(job.Quantity).Value.Totals.LandedCost);
        Assert.True(estimate.Totals.LandedCost > 0m);
    }

    [Fact]
    public async Task Choosing_another_plan_leaves_one_chosen()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var other = SmallPress.Saved(await stores.Plans.DuplicateAsync(small.Id, small.Plan.Id, "Twice as many"));
        Assert.False(other.Chosen);

        Assert.True(SmallPress.Saved(await stores.Plans.ChooseAsync(small.Id, other.Id)).Chosen);

        Assert.Equal([false, true], (await stores.Plans.OfEditionAsync(small.Id, small.Edition.Id)).Select(plan => plan.Chosen));
    }

    [Fact]
    public async Task People_who_choose_at_once_leave_one_chosen()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var plans = new List<Guid> { small.Plan.Id };
        for (var number = 0; number < 5; number++)
        {
            plans.Add(SmallPress.Saved(await stores.Plans.DuplicateAsync(small.Id, small.Plan.Id, $"Other {number}")).Id);
        }

        await Task.WhenAll(Enumerable.Range(0, 60).Select(turn => stores.Plans.ChooseAsync(small.Id, plans[turn % plans.Count])));

        Assert.Single(await stores.Plans.OfEditionAsync(small.Id, small.Edition.Id), plan => plan.Chosen);
    }

    [Fact]
    public async Task A_plan_keeps_its_price_list_when_the_shop_brings_out_a_newer_one()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var dearer = small.List.Prices with { ValidFrom = new DateOnly(2026, 2, 1), SetUp = new SetUp(50m, 0m, 0m) };
        SmallPress.Saved(await stores.PriceLists.SaveAsync(small.Id, small.List with { Id = Guid.Empty, Version = 0, Prices = dearer }));

        Assert.Equal(5m, (await stores.Plans.SourceAsync(small.Id, small.Plan.Id))!.Build().Shop.SetUp.Order);
    }

    [Fact]
    public async Task A_save_on_a_version_that_has_moved_on_stores_nothing()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        SmallPress.Saved(await stores.Plans.SaveAsync(small.Id, small.Plan with { Stocks = new Dictionary<Guid, string>() }));

        var second = await stores.Plans.SaveAsync(small.Id, small.Plan with { Quantity = 400 });

        Assert.Equal(150, Assert.IsType<SaveResult<PlanRecord>.Conflict>(second).Theirs.Quantity);
    }

    [Fact]
    public async Task A_plan_takes_papers_for_parts_of_its_own_edition_only()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var other = SmallPress.Saved(await stores.Editions.AddAsync(small.Id, SmallPress.NewEdition(small.Title.Id, 2)));

        var result = await stores.Plans.SaveAsync(
            small.Id, small.Plan with { Quantity = 0, Stocks = new Dictionary<Guid, string> { [other.Parts[0].Id] = "text" } });

        Assert.Equal(["$.quantity", "$.stocks"], Assert.IsType<SaveResult<PlanRecord>.Refused>(result).Problems.Select(problem => problem.Path));
    }

    [Fact]
    public async Task A_deleted_plan_is_gone()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        Assert.IsType<DeleteResult.Deleted>(await stores.Plans.DeleteAsync(small.Id, small.Plan));
        Assert.IsType<DeleteResult.Gone>(await stores.Plans.DeleteAsync(small.Id, small.Plan));
        Assert.IsType<SaveResult<PlanRecord>.Gone>(await stores.Plans.SaveAsync(small.Id, small.Plan));
    }

    [Fact]
    public async Task A_plan_that_somebody_else_changed_stays_when_it_is_taken_out_of_an_older_page()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var theirs = SmallPress.Saved(await stores.Plans.SaveAsync(small.Id, small.Plan with { Quantity = 160 }));

        Assert.IsType<DeleteResult.Changed>(await stores.Plans.DeleteAsync(small.Id, small.Plan));
        Assert.Equal(160, (await stores.Plans.LoadAsync(small.Id, small.Plan.Id))!.Quantity);
        Assert.IsType<DeleteResult.Deleted>(await stores.Plans.DeleteAsync(small.Id, theirs));
    }

    [Fact]
    public async Task A_plan_that_was_taken_out_is_put_back_as_it_was_where_it_stood()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var second = SmallPress.Saved(await stores.Plans.DuplicateAsync(small.Id, small.Plan.Id, "second"));
        var third = SmallPress.Saved(await stores.Plans.DuplicateAsync(small.Id, small.Plan.Id, "third"));
        await stores.Plans.DeleteAsync(small.Id, second);

        var back = SmallPress.Saved(await stores.Plans.PutBackAsync(small.Id, second, small.Plan.Id));

        Assert.Equivalent(second with { Version = back.Version }, back, strict: true);
        Assert.Equal([small.Plan.Id, second.Id, third.Id], (await stores.Plans.OfEditionAsync(small.Id, small.Edition.Id)).Select(plan => plan.Id));
        Assert.IsType<SaveResult<PlanRecord>.Conflict>(await stores.Plans.PutBackAsync(small.Id, second, small.Plan.Id));
    }

    [Fact]
    public async Task The_first_plan_is_put_back_before_all_others()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var second = SmallPress.Saved(await stores.Plans.DuplicateAsync(small.Id, small.Plan.Id, "second"));
        SmallPress.Saved(await stores.Plans.ChooseAsync(small.Id, second.Id));
        await stores.Plans.DeleteAsync(small.Id, (await stores.Plans.LoadAsync(small.Id, small.Plan.Id))!);

        SmallPress.Saved(await stores.Plans.PutBackAsync(small.Id, small.Plan, null));

        var plans = await stores.Plans.OfEditionAsync(small.Id, small.Edition.Id);
        Assert.Equal([(small.Plan.Id, false), (second.Id, true)], plans.Select(plan => (plan.Id, plan.Chosen)));
    }
}
