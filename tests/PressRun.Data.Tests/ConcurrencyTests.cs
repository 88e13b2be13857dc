using PressRun.Data.Tests.Fixtures;
using PressRun.Data.Titles;

namespace PressRun.Data.Tests;

public sealed class ConcurrencyTests(PostgresFixture postgres)
{
    private const int Savers = 8;

    [Fact]
    public async Task Savers_of_one_edition_at_once_lose_no_update_and_leave_nothing_half_saved()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var conflicts = 0;

        // Each saver adds one copy and as many pages; after a conflict it goes on from what stands there.
        async Task SaveAsync(int saves)
        {
            var mine = (await stores.Editions.LoadAsync(small.Id, small.Edition.Id))!;
            for (var done = 0; done < saves;)
            {
                switch (await stores.Editions.SaveAsync(small.Id, OneMore(mine)))
                {
                    case SaveResult<EditionRecord>.Saved saved:
                        mine = saved.Now;
                        done++;
                        break;
                    case SaveResult<EditionRecord>.Conflict conflict:
                        mine = conflict.Theirs;
                        Interlocked.Increment(ref conflicts);
                        break;
                    default:
                        Assert.Fail("A save was neither stored nor in conflict.");
                        break;
                }

                Assert.Equal(mine.FreeCopies + 1, mine.Parts[1].Part.Pages);
                Assert.Equal(mine.FreeCopies, mine.FixedCosts[0].Amount);
            }
        }

        var saves = LongRuns.Count(usual: 100, atLength: 1250);
        SmallPress.Saved(await stores.Editions.SaveAsync(small.Id, OneMore(small.Edition with { FreeCopies = -1 })));
        await Task.WhenAll(Enumerable.Range(0, Savers).Select(_ => SaveAsync(saves)));

        Assert.Equal(Savers * saves, (await stores.Editions.LoadAsync(small.Id, small.Edition.Id))!.FreeCopies);
        Assert.True(conflicts > 0, "No two saves met, so nothing was tested.");
    }

    [Fact]
    public async Task Savers_of_different_things_at_once_are_not_in_each_others_way()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var editions = await Task.WhenAll(Enumerable.Range(2, Savers).Select(async printing =>
            SmallPress.Saved(await stores.Editions.AddAsync(small.Id, SmallPress.NewEdition(small.Title.Id, printing)))));

        var results = await Task.WhenAll(editions.Select(edition => stores.Editions.SaveAsync(small.Id, edition with { FreeCopies = 3 })));

        Assert.All(results, result => Assert.IsType<SaveResult<EditionRecord>.Saved>(result));
    }

    private static EditionRecord OneMore(EditionRecord edition)
    {
        var copies = edition.FreeCopies + 1;
        return edition with
        {
            FreeCopies = copies,
            Parts = [edition.Parts[0], edition.Parts[1] with { Part = edition.Parts[1].Part with { Pages = copies + 1 } }],
            FixedCosts = [edition.FixedCosts[0] with { Amount = copies }],
        };
    }
}
