using Microsoft.EntityFrameworkCore;
using PressRun.Data.Copies;
using PressRun.Data.Tests.Fixtures;
using PressRun.Data.Titles;
using PressRun.Engine.Copies;

namespace PressRun.Data.Tests;

public sealed class RemovalTests(PostgresFixture postgres)
{
    [Fact]
    public async Task A_title_of_which_no_copy_was_written_down_goes_with_its_printings_and_their_plans()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        Assert.IsType<DeleteResult.Deleted>(await stores.Titles.DeleteAsync(small.Id, small.Title));

        await using var db = stores.Context(small.Id);
        Assert.Equal((0, 0, 0), (await db.Titles.CountAsync(), await db.Editions.CountAsync(), await db.RunPlans.CountAsync()));
        Assert.IsType<DeleteResult.Gone>(await stores.Titles.DeleteAsync(small.Id, small.Title));
    }

    [Fact]
    public async Task What_has_lines_in_its_ledger_stays_even_when_all_of_them_were_taken_back()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        await stores.Ledger.TakeBackAsync(small.Id, SmallPress.Saved(await SellAsync(stores, small)).Id);

        var title = Assert.IsType<DeleteResult.InUse>(await stores.Titles.DeleteAsync(small.Id, small.Title));
        var edition = Assert.IsType<DeleteResult.InUse>(await stores.Editions.DeleteAsync(small.Id, small.Edition));

        Assert.Equal(["printing 1: lines in its copies ledger"], title.Where);
        Assert.Equal(title.Where, edition.Where);
    }

    [Fact]
    public async Task What_somebody_saved_in_between_stays()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        SmallPress.Saved(await stores.Titles.SaveAsync(small.Id, small.Title with { By = "B. Maker" }));
        SmallPress.Saved(await stores.Editions.SaveAsync(small.Id, small.Edition with { Price = 8m }));

        Assert.IsType<DeleteResult.Changed>(await stores.Titles.DeleteAsync(small.Id, small.Title));
        Assert.IsType<DeleteResult.Changed>(await stores.Editions.DeleteAsync(small.Id, small.Edition));
        Assert.NotNull(await stores.Editions.LoadAsync(small.Id, small.Edition.Id));
    }

    [Fact]
    public async Task A_planned_printing_goes_with_its_plans_and_leaves_the_others()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var next = SmallPress.Saved(await stores.Editions.CopyForwardAsync(small.Id, small.Edition.Id));

        Assert.IsType<DeleteResult.Deleted>(await stores.Editions.DeleteAsync(small.Id, next));

        Assert.Equal([small.Edition.Id], (await stores.Editions.OfTitleAsync(small.Id, small.Title.Id)).Select(edition => edition.Id));
        Assert.Single(await stores.Plans.OfEditionAsync(small.Id, small.Edition.Id));
    }

    [Fact]
    public async Task While_a_title_is_taken_out_others_who_sell_or_copy_forward_are_told_and_nothing_is_left_half_done()
    {
        await using var stores = await Stores.NewAsync(postgres);
        for (var round = 0; round < 10; round++)
        {
            var small = await SmallPress.CreateAsync(stores);

            var removal = stores.Titles.DeleteAsync(small.Id, small.Title);
            var sale = SellAsync(stores, small);
            var copy = stores.Editions.CopyForwardAsync(small.Id, small.Edition.Id);
            var other = stores.Editions.AddAsync(small.Id, SmallPress.NewEdition(small.Title.Id, 9));
            await Task.WhenAll(removal, sale, copy, other);

            var left = await stores.Editions.OfTitleAsync(small.Id, small.Title.Id);
            if (await removal is DeleteResult.Deleted)
            {
                Assert.IsType<SaveResult<MovementRecord>.Gone>(await sale);
                Assert.Empty(left);
            }
            else
            {
                Assert.IsType<DeleteResult.InUse>(await removal);
                Assert.Equal(-1, left[0].CopiesOnHand);
                Assert.Equal(3, left.Count);
            }
        }
    }

    private static Task<SaveResult<MovementRecord>> SellAsync(Stores stores, SmallPress small) =>
        stores.Ledger.WriteAsync(small.Id, new NewMovement(Guid.NewGuid(), small.Edition.Id, SmallPress.ListDate, MovementKind.Sold, 1, 9m));
}
