using PressRun.Data.Access;
using PressRun.Data.Drafts;
using PressRun.Data.Tests.Fixtures;
using PressRun.Data.Tests.People;

namespace PressRun.Data.Tests;

public sealed class DraftStoreTests(PostgresFixture postgres)
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 25, 12, 0, 0, TimeSpan.FromHours(1));
    private static readonly DraftSubject Subject = new("maker", "edition", "7");

    [Fact]
    public async Task A_draft_is_there_after_a_new_start_until_it_is_dropped()
    {
        var connection = await postgres.NewDatabaseAsync();
        var before = Stores.On(connection);
        var small = await SmallPress.CreateAsync(before);
        await before.Drafts.KeepAsync(small.Id, Subject, new Draft("page.width", "5 1/2 i", Noon));
        await before.DisposeAsync();
        await using var after = Stores.On(connection);

        Assert.Equal(new Draft("page.width", "5 1/2 i", Noon.ToUniversalTime()), Assert.Single(await after.Drafts.OfSubjectAsync(small.Id, Subject)));
        await after.Drafts.DropAsync(small.Id, Subject, "page.width");
        Assert.Empty(await after.Drafts.OfSubjectAsync(small.Id, Subject));
    }

    [Fact]
    public async Task Of_two_drafts_of_a_field_the_one_typed_later_counts_in_whatever_order_they_arrive()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        await stores.Drafts.KeepAsync(small.Id, Subject, new Draft("price", "9.50", Noon.AddSeconds(2)));
        await stores.Drafts.KeepAsync(small.Id, Subject, new Draft("price", "9.", Noon));

        Assert.Equal("9.50", Assert.Single(await stores.Drafts.OfSubjectAsync(small.Id, Subject)).Text);
    }

    [Fact]
    public async Task Drafts_belong_to_one_person_and_one_subject()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        await stores.Drafts.KeepAsync(small.Id, Subject, new Draft("price", "9", Noon));
        await stores.Drafts.KeepAsync(small.Id, Subject, new Draft("bleed", "yes", Noon));

        Assert.Empty(await stores.Drafts.OfSubjectAsync(small.Id, Subject with { Person = "helper" }));
        Assert.Empty(await stores.Drafts.OfSubjectAsync(small.Id, Subject with { SubjectId = "8" }));
        await stores.Drafts.DropAsync(small.Id, Subject with { Person = "helper" });
        Assert.Equal(["bleed", "price"], (await stores.Drafts.OfSubjectAsync(small.Id, Subject)).Select(draft => draft.Field));
    }

    [Fact]
    public async Task One_person_keeps_so_many_drafts_and_no_more_and_the_oldest_go()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        await stores.Drafts.KeepAsync(small.Id, Subject with { Person = "another" }, new Draft("price", "9", Noon));

        for (var i = 0; i <= DraftStore.Most; i++)
        {
            await stores.Drafts.KeepAsync(small.Id, Subject, new Draft($"field {i}", "9", Noon.AddSeconds(i)));
        }

        var kept = await stores.Drafts.OfSubjectAsync(small.Id, Subject);
        Assert.Equal(DraftStore.Most, kept.Count);
        Assert.DoesNotContain(kept, draft => draft.Field == "field 0");
        Assert.Single(await stores.Drafts.OfSubjectAsync(small.Id, Subject with { Person = "another" }));
    }

    [Fact]
    public async Task Drafts_that_are_old_or_whose_writer_has_left_are_swept_out_and_no_others()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var small = await Household.PressAsync(stores);
        var (stays, leaves) = (await Household.MemberAsync(stores, small.Id, "Stays", PressRole.Owner), await Household.MemberAsync(stores, small.Id, "Leaves", PressRole.Reader));
        var now = TimeProvider.System.GetUtcNow();
        foreach (var person in new[] { stays, leaves })
        {
            await Household.AsAsync(person, async () =>
            {
                await KeepAsync(person.UserId.ToString(), "price", now);
                await KeepAsync(person.UserId.ToString(), "bleed", now - DraftStore.Longest - TimeSpan.FromDays(1));
            });
        }

        using (Visiting.As(new Visitor.Program()))
        {
            await KeepAsync(DraftStore.OnlyPerson, "price", now);
        }

        await Household.AsAsync(leaves, () => stores.People.LeaveAsync(small.Id));

        Assert.Equal(3, await stores.Drafts.SweepAsync());
        await using var db = stores.Context(small.Id);
        Assert.Equal([stays.UserId.ToString(), DraftStore.OnlyPerson], db.Drafts.OrderBy(draft => draft.Person == DraftStore.OnlyPerson).Select(draft => draft.Person));
        Assert.All(db.Drafts, draft => Assert.Equal("price", draft.Field));

        Task KeepAsync(string person, string field, DateTimeOffset at) => stores.Drafts.KeepAsync(small.Id, Subject with { Person = person }, new Draft(field, "9", at));
    }

    [Fact]
    public async Task A_draft_that_is_found_by_more_than_a_word_is_refused()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        await Assert.ThrowsAsync<ArgumentException>(() => stores.Drafts.KeepAsync(small.Id, Subject, new Draft(new string('f', DraftStore.LongestKey + 1), "9", Noon)));
    }

    [Fact]
    public async Task A_draft_longer_than_the_longest_is_refused()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        await stores.Drafts.KeepAsync(small.Id, Subject, new Draft("about", new string('x', DraftStore.LongestText), Noon));
        await Assert.ThrowsAsync<ArgumentException>(() =>
            stores.Drafts.KeepAsync(small.Id, Subject, new Draft("about", new string('x', DraftStore.LongestText + 1), Noon)));
    }
}
