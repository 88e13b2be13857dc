using PressRun.Data.RunPlans;
using PressRun.Data.Tests.Fixtures;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;

namespace PressRun.Data.Tests;

public sealed class JobFileStoreTests(PostgresFixture postgres)
{
    [Fact]
    public async Task A_file_of_the_same_book_becomes_a_plan_beside_the_others_on_the_papers_and_prices_that_are_there()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var job = await JobAsync(stores, small) with { Quantity = 210 };

        var taken = SmallPress.Saved(await stores.JobFiles.TakeInAsync(small.Id, job, small.Edition.Id));

        Assert.Equal((false, null, small.List.Id), (taken.NewTitle, taken.NewShop, taken.Source.Plan.PriceListId));
        Assert.Empty(taken.NewStocks);
        Assert.Equal([small.Plan.Id, taken.Source.Plan.Id], (await stores.Plans.OfEditionAsync(small.Id, small.Edition.Id)).Select(plan => plan.Id));
        Assert.Equal(Landed(job), Landed(taken.Source.Build()));
    }

    [Fact]
    public async Task A_file_with_halves_becomes_a_plan_with_them_and_goes_out_as_it_came()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var inside = small.Edition.Parts[1].Id;
        SmallPress.Saved(await stores.Plans.SaveAsync(small.Id, small.Plan with
        {
            Stocks = new Dictionary<Guid, string>(small.Plan.Stocks) { [inside] = SmallPress.Text.Id },
            SecondHalf = new PlanHalf(inside, SmallPress.Cover.Id),
        }));
        var job = await JobAsync(stores, small);

        var taken = SmallPress.Saved(await stores.JobFiles.TakeInAsync(small.Id, job, small.Edition.Id));

        Assert.False(taken.NewTitle);
        Assert.Equal(new PlanHalf(inside, SmallPress.Cover.Id), taken.Source.Plan.SecondHalf);
        Assert.Equal(JobFile.JobWriter.Write(job), JobFile.JobWriter.Write(taken.Source.Build()));
    }

    [Fact]
    public async Task Another_book_becomes_a_title_and_what_the_press_lacks_is_added_without_changing_what_it_has()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var known = await JobAsync(stores, small);
        var job = known with
        {
            Edition = known.Edition with { Page = new Size(Length.FromMillimetres(100m), Length.FromMillimetres(140m)) },
            Stocks = [.. known.Stocks.Select(stock => stock with { Name = "Another " + stock.Name })],
            Shop = known.Shop with { SetUp = known.Shop.SetUp with { Order = known.Shop.SetUp.Order + 1m } },
        };
        var (list, papers) = (await stores.PriceLists.LoadAsync(small.Id, small.List.Id), await stores.Stocks.ListAsync(small.Id));

        var taken = SmallPress.Saved(await stores.JobFiles.TakeInAsync(small.Id, job, small.Edition.Id));

        Assert.True(taken.NewTitle);
        Assert.NotEqual(small.Edition.Id, taken.Source.Edition.Id);
        Assert.Equal(job.Edition.Page, (await stores.Editions.LoadAsync(small.Id, taken.Source.Edition.Id))!.Page);
        Assert.True((await stores.Plans.LoadAsync(small.Id, taken.Source.Plan.Id))!.Chosen);
        Assert.Equal(job.Stocks.Select(stock => stock.Name), taken.NewStocks);
        Assert.StartsWith($"{known.Shop.Name}, by a job file", taken.NewShop, StringComparison.Ordinal);
        Assert.Equivalent(list, await stores.PriceLists.LoadAsync(small.Id, small.List.Id), strict: true);
        Assert.Equal(papers, (await stores.Stocks.ListAsync(small.Id)).Take(papers.Count));
        Assert.Equal(Landed(job), Landed(taken.Source.Build()));
    }

    [Fact]
    public async Task Looking_at_a_file_says_what_taking_it_in_would_and_stores_nothing()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var job = await JobAsync(stores, small);
        job = job with { FreeCopies = job.FreeCopies + 1 };
        var before = await stores.Archives.ExportAsync(small.Id);

        var look = SmallPress.Saved(await stores.JobFiles.LookAsync(small.Id, job, small.Edition.Id));

        Assert.True(look.NewTitle);
        Assert.Equal(before, await stores.Archives.ExportAsync(small.Id));
        Assert.Equal(look.Slug, SmallPress.Saved(await stores.JobFiles.TakeInAsync(small.Id, job, small.Edition.Id)).Slug);
    }

    [Fact]
    public async Task A_file_in_another_currency_or_without_a_title_is_refused_with_every_reason_and_nothing_is_stored()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var job = await JobAsync(stores, small);
        var before = await stores.Archives.ExportAsync(small.Id);

        var refused = Assert.IsType<SaveResult<TakenIn>.Refused>(
            await stores.JobFiles.TakeInAsync(small.Id, job with { Currency = Currency.Find("JPY")!, Edition = job.Edition with { Title = "" } }, null));

        Assert.Equal(["$.currency", "$.edition.title"], refused.Problems.Select(problem => problem.Path));
        Assert.Equal(before, await stores.Archives.ExportAsync(small.Id));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(200)]
    [InlineData(1_000)]
    public async Task What_a_file_brings_in_goes_out_with_its_press_and_comes_in_again(int letters)
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var job = await JobAsync(stores, small);
        var shop = job.Shop with { Name = new string('w', letters) };

        foreach (var printing in new[] { 1, 2 })
        {
            SmallPress.Saved(await stores.JobFiles.TakeInAsync(small.Id, job with { Shop = shop, Edition = job.Edition with { Title = new string('t', 200), Printing = printing } }, null));
        }

        SmallPress.Saved(await stores.JobFiles.TakeInAsync(small.Id, job with { Shop = shop }, small.Edition.Id));
        var again = await stores.Archives.ImportAsync((await stores.Archives.ExportAsync(small.Id))!);

        Assert.Empty(again.Problems);
    }

    [Fact]
    public async Task A_title_of_a_file_is_held_to_what_may_be_typed()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var job = await JobAsync(stores, small);

        var refused = Assert.IsType<SaveResult<TakenIn>.Refused>(
            await stores.JobFiles.TakeInAsync(small.Id, job with { Edition = job.Edition with { Title = new string('t', 201) } }, null));

        Assert.Equal("$.edition.title", Assert.Single(refused.Problems).Path);
    }

    private static async Task<Job> JobAsync(Stores stores, SmallPress small) => (await stores.Plans.SourceAsync(small.Id, small.Plan.Id))!.Build();

    private static decimal Landed(Job job) => PreparedJob.Prepare(job).Value.Estimate(job.Quantity).Value.Totals.LandedCost;
}
