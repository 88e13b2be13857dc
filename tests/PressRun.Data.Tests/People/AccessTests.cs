using System.Collections.Concurrent;
using System.Reflection;
using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.Archive;
using PressRun.Data.Copies;
using PressRun.Data.Drafts;
using PressRun.Data.Presses;
using PressRun.Data.Running;
using PressRun.Data.Tests.Fixtures;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;

namespace PressRun.Data.Tests.People;

public sealed class AccessTests(PostgresFixture postgres)
{
    [Fact]
    public void Stores_reach_rows_through_the_guarded_database_and_by_no_other_way()
    {
        var stores = typeof(PressArchiveStore).Assembly.GetExportedTypes()
            .Where(type => type is { IsClass: true } && (type.Name.EndsWith("Store", StringComparison.Ordinal) || type.Name.Contains("Store`", StringComparison.Ordinal) || type.Name.EndsWith("Query", StringComparison.Ordinal))).ToList();

        Assert.True(stores.Count > 15, "The stores are found.");
        Assert.All(stores, store => Assert.All(
            store.GetFields(BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.Public | BindingFlags.DeclaredOnly),
            field => Assert.DoesNotContain("Context", field.FieldType.ToString(), StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_reader_sees_everything_and_changes_nothing()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var press = await Household.PressAsync(stores);
        var reader = await Household.MemberAsync(stores, press.Id, "Rea", PressRole.Reader);
        using var visiting = Visiting.As(reader);

        Assert.NotNull(await stores.Titles.LoadAsync(press.Id, press.Title.Id));
        Assert.NotEmpty(await stores.Stocks.ListAsync(press.Id));
        Assert.Equal(press.Id, Assert.Single(await stores.Presses.ListAsync()).Id);
        var before = await AllAsync();
        await RefusedAsync(() => stores.Archives.ExportAsync(press.Id));
        await RefusedAsync(() => stores.PressRemovals.DeleteOwnAsync(press.Id, press.Press.Name));
        await RefusedAsync(() => stores.Titles.SaveAsync(press.Id, press.Title with { Title = "Mine" }));
        await RefusedAsync(() => stores.Editions.SaveAsync(press.Id, press.Edition with { Price = 1m }));
        await RefusedAsync(() => stores.Plans.DeleteAsync(press.Id, press.Plan));
        await RefusedAsync(async () => await stores.Stocks.SaveAllAsync(press.Id, await stores.Stocks.ListAsync(press.Id)));
        await RefusedAsync(() => stores.Stocks.ImportAsync(press.Id, () => []));
        await RefusedAsync(() => stores.Titles.DeleteAsync(press.Id, press.Title));
        await RefusedAsync(() => stores.People.ListAsync(press.Id));
        await RefusedAsync(() => stores.Keys.ListAsync(press.Id));
        Assert.Equal(before, await AllAsync());
        await stores.Outlooks.KeepAsync(press.Id, [(new MovedTitle(press.Title.Id, 0), null)]);

        var own = new DraftSubject(reader.UserId.ToString(), "edition", press.Edition.Id.ToString());
        await stores.Drafts.KeepAsync(press.Id, own, new Draft("price", "9", DateTimeOffset.UnixEpoch));
        Assert.Single(await stores.Drafts.OfSubjectAsync(press.Id, own));

        async Task<byte[]?> AllAsync()
        {
            using var program = Visiting.As(new Visitor.Program());
            return await stores.Archives.ExportAsync(press.Id);
        }
    }

    [Fact]
    public async Task Only_an_owner_saves_a_whole_press_or_takes_it_out_and_only_by_its_name()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var (press, other) = (await Household.PressAsync(stores), await Household.PressAsync(stores));
        var (name, foreign) = (press.Press.Name, await Household.MemberAsync(stores, other.Id, "Ona", PressRole.Owner));
        foreach (var visitor in new[] { await Household.MemberAsync(stores, press.Id, "Edi", PressRole.Editor), foreign })
        {
            using var visiting = Visiting.As(visitor);
            await RefusedAsync(() => stores.Archives.ExportAsync(press.Id));
            await RefusedAsync(() => stores.PressRemovals.DeleteOwnAsync(press.Id, name));
        }

        var owner = await Household.MemberAsync(stores, press.Id, "Own", PressRole.Owner);
        using (Visiting.As(owner))
        {
            Assert.NotEmpty((await stores.Archives.ExportAsync(press.Id))!);
            Assert.False(await stores.PressRemovals.DeleteOwnAsync(press.Id, name + "s"));
            Assert.NotNull(await stores.Presses.LoadAsync(press.Id));
            Assert.True(await stores.PressRemovals.DeleteOwnAsync(press.Id, $" {name} "));
            Assert.Empty(await stores.Presses.ListAsync());
        }

        using (Visiting.As(foreign))
        {
            Assert.NotNull(await stores.Titles.LoadAsync(other.Id, other.Title.Id));
        }
    }

    [Fact]
    public async Task Whoever_belongs_to_a_press_is_told_when_it_is_taken_out_and_nobody_else()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var (press, other) = (await Household.PressAsync(stores), await Household.PressAsync(stores));
        var members = new[] { await Household.MemberAsync(stores, press.Id, "Own", PressRole.Owner), await Household.MemberAsync(stores, press.Id, "Rea", PressRole.Reader) };
        await Household.MemberAsync(stores, other.Id, "Ona", PressRole.Owner);
        using var news = new ServerNews(stores.Database, TimeProvider.System);
        var (told, listens, all) = (new ConcurrentQueue<Guid>(), new TaskCompletionSource(), new TaskCompletionSource());
        news.Missed += () => listens.TrySetResult();
        news.SessionEnded += _ => all.TrySetResult();
        news.RightsChanged += told.Enqueue;
        await news.StartAsync(TestContext.Current.CancellationToken);
        await listens.Task.WaitAsync(TestContext.Current.CancellationToken);

        Assert.True(await Household.AsAsync(members[0], () => stores.PressRemovals.DeleteOwnAsync(press.Id, press.Press.Name)));

        // News come in their order: with the next all of them are there.
        await stores.Sessions.EndAsync(members[1].UserId, members[1].SessionId);
        await all.Task.WaitAsync(TimeSpan.FromSeconds(20), TestContext.Current.CancellationToken);
        Assert.Equal(members.Select(member => member.UserId).Order(), told.Order());
        await news.StopAsync(TestContext.Current.CancellationToken);
    }

    [Fact]
    public async Task An_editor_changes_books_and_neither_people_nor_keys_nor_takes_titles_out()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var press = await Household.PressAsync(stores);
        using var visiting = Visiting.As(await Household.MemberAsync(stores, press.Id, "Edi", PressRole.Editor));

        SmallPress.Saved(await stores.Titles.SaveAsync(press.Id, press.Title with { Title = "Edited" }));

        await RefusedAsync(() => stores.Titles.DeleteAsync(press.Id, press.Title));
        await RefusedAsync(() => stores.People.ListAsync(press.Id));
        await RefusedAsync(() => stores.Invitations.InviteAsync(press.Id, "Somebody", PressRole.Owner));
        await RefusedAsync(() => stores.Keys.MakeAsync(press.Id, "Mine", mayWrite: true));
        await RefusedAsync(async () => await stores.Presses.SaveAsync((await stores.Presses.LoadAsync(press.Id))!));
        await RefusedAsync(() => stores.Presses.CreateAsync(new NewPress("Another", "EUR", UnitSystem.Metric, PaperRegion.Iso)));
    }

    [Fact]
    public async Task Nobody_else_reaches_a_press_whoever_they_are()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var press = await Household.PressAsync(stores);
        var mine = await Household.PressAsync(stores);
        var stranger = await Household.MemberAsync(stores, mine.Id, "Stray", PressRole.Owner);
        var member = await Household.MemberAsync(stores, press.Id, "Mem", PressRole.Owner);
        var other = await Household.PersonAsync(stores, "Other");
        var strangers = new Visitor[]
        {
            new Visitor.Nobody(), stranger, other, new Visitor.Person(member.UserId, stranger.SessionId), new Visitor.Person(member.UserId, Guid.NewGuid()),
            new Visitor.Key(Guid.NewGuid(), press.Id),
        };

        foreach (var visitor in strangers)
        {
            using var visiting = Visiting.As(visitor);
            await RefusedAsync(() => stores.Titles.LoadAsync(press.Id, press.Title.Id));
            await RefusedAsync(() => stores.Titles.SaveAsync(press.Id, press.Title));
            await RefusedAsync(() => stores.Archives.ExportAsync(press.Id));
            await RefusedAsync(() => stores.People.ListAsync(press.Id));
            Assert.Null(await stores.Presses.RoleAsync(press.Id));
            Assert.DoesNotContain(await stores.Presses.ListAsync(), seen => seen.Id == press.Id);
        }
    }

    [Fact]
    public async Task A_sign_in_that_has_ended_reaches_nothing_with_its_next_step()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var press = await Household.PressAsync(stores);
        var owner = await Household.MemberAsync(stores, press.Id, "Own", PressRole.Owner);
        using var visiting = Visiting.As(owner);
        Assert.NotNull(await stores.Titles.LoadAsync(press.Id, press.Title.Id));

        await stores.Sessions.EndAsync(owner.UserId, owner.SessionId);

        await RefusedAsync(() => stores.Titles.LoadAsync(press.Id, press.Title.Id));
        Assert.Empty(await stores.Presses.ListAsync());
    }

    [Fact]
    public async Task Whoever_makes_a_press_owns_it_and_only_owners_make_them()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var host = await Household.PersonAsync(stores, "Host", isHost: true);
        var press = await Household.AsAsync(host, async () => SmallPress.Saved(await stores.Presses.CreateAsync(new NewPress("First", "EUR", UnitSystem.Metric, PaperRegion.Iso))));

        Assert.Equal(PressRole.Owner, await Household.AsAsync(host, () => stores.Presses.RoleAsync(press.Id)));
        var reader = await Household.MemberAsync(stores, press.Id, "Rea", PressRole.Reader);
        Assert.False(await Household.AsAsync(reader, () => stores.Presses.MayMakeAsync()));
        var second = await Household.MemberAsync(stores, press.Id, "Sec", PressRole.Owner);
        Assert.True(await Household.AsAsync(second, () => stores.Presses.MayMakeAsync()));
    }

    private static Task<AccessRefusedException> RefusedAsync(Func<Task> attempt) => Assert.ThrowsAsync<AccessRefusedException>(attempt);
}
