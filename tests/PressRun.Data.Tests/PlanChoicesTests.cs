using PressRun.Data.RunPlans;
using PressRun.Data.Tests.Fixtures;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;

namespace PressRun.Data.Tests;

public sealed class PlanChoicesTests(PostgresFixture postgres)
{
    [Fact]
    public async Task An_operation_that_is_new_on_a_price_list_joins_no_plan_that_is_there()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var all = SmallPress.Saved(await stores.Plans.SaveAsync(small.Id, small.Plan with { Finishing = null }));

        SmallPress.Saved(await stores.PriceLists.SaveAsync(small.Id, small.List with
        {
            Prices = small.List.Prices with { Finishing = [.. small.List.Prices.Finishing, new Finishing("foil", FinishingUnit.Copy, 2m, 0m)] },
        }));

        var source = (await stores.Plans.SourceAsync(small.Id, all.Id))!;
        Assert.Equal(["cutting to size", "folding"], source.Build().Shop.Finishing.Select(operation => operation.Name));
        Assert.Equal(3, source.PriceList.Finishing.Count);
    }

    [Fact]
    public async Task A_changed_price_is_no_new_operation_and_leaves_plans_untouched()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var all = SmallPress.Saved(await stores.Plans.SaveAsync(small.Id, small.Plan with { Finishing = null }));

        SmallPress.Saved(await stores.PriceLists.SaveAsync(small.Id, small.List with
        {
            Prices = small.List.Prices with { Finishing = [.. small.List.Prices.Finishing.Select(operation => operation with { Each = 1m })] },
        }));

        var now = (await stores.Plans.LoadAsync(small.Id, all.Id))!;
        Assert.Null(now.Finishing);
        Assert.Equal(all.Version, now.Version);
    }

    [Fact]
    public async Task A_step_that_is_new_at_the_bench_joins_no_plan_that_is_there()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var all = SmallPress.Saved(await stores.Plans.SaveAsync(small.Id, small.Plan with { BenchSteps = null }));
        var bench = (await stores.Bench.LoadAsync(small.Id))!;

        SmallPress.Saved(await stores.Bench.SaveAsync(small.Id, bench with
        {
            Item = bench.Item with { Steps = [.. bench.Item.Steps, new BenchStep("score", 5m, 5m, 0m, 0m, 1, 0m)] },
        }));

        Assert.Equal(["collate", "stitch", "fold", "trim"], (await stores.Plans.SourceAsync(small.Id, all.Id))!.Build().Bench.Steps.Select(step => step.Name));
    }
}
