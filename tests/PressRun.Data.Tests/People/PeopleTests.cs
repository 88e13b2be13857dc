using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging.Abstractions;
using PressRun.Data.Access;
using PressRun.Data.People;
using PressRun.Data.Running;
using PressRun.Data.Tests.Fixtures;

namespace PressRun.Data.Tests.People;

public sealed class PeopleTests(PostgresFixture postgres)
{
    [Fact]
    public async Task The_last_owner_of_a_press_neither_leaves_nor_becomes_something_less()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var press = (await Household.PressAsync(stores)).Id;
        var owner = await Household.MemberAsync(stores, press, "Own", PressRole.Owner);
        using var visiting = Visiting.As(owner);

        Assert.Equal(PeopleResult.LastOwner, await stores.People.LeaveAsync(press));
        Assert.Equal(PeopleResult.LastOwner, await stores.People.ChangeAsync(press, owner.UserId, PressRole.Editor));
        Assert.Equal(PeopleResult.LastOwner, await stores.People.RemoveAsync(press, owner.UserId));

        var second = await Household.MemberAsync(stores, press, "Sec", PressRole.Reader);
        Assert.Equal(PeopleResult.Done, await stores.People.ChangeAsync(press, second.UserId, PressRole.Owner));
        Assert.Equal(PeopleResult.Done, await stores.People.LeaveAsync(press));
        await Assert.ThrowsAsync<AccessRefusedException>(() => stores.People.ListAsync(press));
    }

    [Theory]
    [InlineData(null)]
    [InlineData(PressRole.Editor)]
    public async Task Whoever_is_no_owner_any_more_does_not_come_back_by_an_invitation_made_before(PressRole? then)
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var press = (await Household.PressAsync(stores)).Id;
        var (stays, goes) = (await Household.MemberAsync(stores, press, "Stays", PressRole.Owner), await Household.MemberAsync(stores, press, "Goes", PressRole.Owner));
        var link = await Household.AsAsync(goes, () => stores.Invitations.InviteAsync(press, "a friend", PressRole.Owner));

        Assert.Equal(PeopleResult.Done, await Household.AsAsync(stays, () => then is { } role ? stores.People.ChangeAsync(press, goes.UserId, role) : stores.People.RemoveAsync(press, goes.UserId)));

        Assert.Null(await stores.Invitations.LookAsync(link));
        Assert.Null(await stores.Invitations.AcceptAsync(link, goes.UserId));
        Assert.Empty(await Household.AsAsync(stays, () => stores.Invitations.ListAsync(press)));
    }

    [Theory]
    [InlineData(null)]
    [InlineData(PressRole.Editor)]
    public async Task A_key_says_who_made_it_and_ends_when_they_are_no_owner_any_more(PressRole? then)
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var press = (await Household.PressAsync(stores)).Id;
        var (stays, goes) = (await Household.MemberAsync(stores, press, "Stays", PressRole.Owner), await Household.MemberAsync(stores, press, "Goes", PressRole.Owner));
        var (kept, ended) = (await Household.AsAsync(stays, () => stores.Keys.MakeAsync(press, "kept", false)), await Household.AsAsync(goes, () => stores.Keys.MakeAsync(press, "ended", true)));
        Assert.Equal([("ended", "Goes"), ("kept", "Stays")], (await Household.AsAsync(stays, () => stores.Keys.ListAsync(press))).Select(key => (key.Name, key.Maker!)));
        var visitor = (await stores.Keys.FindAsync(ended))!.Value.Visitor;

        Assert.Equal(PeopleResult.Done, await Household.AsAsync(stays, () => then is { } role ? stores.People.ChangeAsync(press, goes.UserId, role) : stores.People.RemoveAsync(press, goes.UserId)));

        Assert.Null(await stores.Keys.FindAsync(ended));
        await Assert.ThrowsAsync<AccessRefusedException>(() => Household.AsAsync(visitor, () => stores.Presses.LoadAsync(press)));
        Assert.NotNull(await stores.Keys.FindAsync(kept));
        Assert.Equal("Stays", Assert.Single(await Household.AsAsync(stays, () => stores.Keys.ListAsync(press))).Maker);
    }

    [Fact]
    public async Task Whoever_leaves_takes_their_keys_along_and_no_others()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var (press, other) = ((await Household.PressAsync(stores)).Id, (await Household.PressAsync(stores)).Id);
        var (stays, goes) = (await Household.MemberAsync(stores, press, "Stays", PressRole.Owner), await Household.MemberAsync(stores, press, "Goes", PressRole.Owner));
        await Household.JoinAsync(stores, other, goes, PressRole.Owner);
        var (here, there) = (await Household.AsAsync(goes, () => stores.Keys.MakeAsync(press, "here", false)), await Household.AsAsync(goes, () => stores.Keys.MakeAsync(other, "there", false)));

        Assert.Equal(PeopleResult.Done, await Household.AsAsync(goes, () => stores.People.LeaveAsync(press)));

        Assert.Null(await stores.Keys.FindAsync(here));
        Assert.NotNull(await stores.Keys.FindAsync(there));
    }

    [Fact]
    public async Task A_key_that_is_made_while_its_maker_is_taken_out_does_not_outlive_them()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var press = (await Household.PressAsync(stores)).Id;
        var (stays, goes) = (await Household.MemberAsync(stores, press, "Stays", PressRole.Owner), await Household.MemberAsync(stores, press, "Goes", PressRole.Owner));
        var made = Enumerable.Range(0, 8).Select(_ => TryAsync()).ToList();

        await Household.AsAsync(stays, () => stores.People.RemoveAsync(press, goes.UserId));
        await Task.WhenAll(made);

        Assert.Empty(await Household.AsAsync(stays, () => stores.Keys.ListAsync(press)));

        async Task TryAsync()
        {
            try
            {
                await Household.AsAsync(goes, () => stores.Keys.MakeAsync(press, "late", true));
            }
            catch (AccessRefusedException)
            {
                // Taken out already.
            }
        }
    }

    [Theory]
    [InlineData("Rex", "R. Hound")]
    [InlineData(" rex", "Somebody")]
    [InlineData("Lost one", "Somebody")]
    [InlineData("rex@example.org", "Rex")]
    public async Task Whoever_was_invited_twice_does_not_come_back_by_the_second_link(string second, string renamed)
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var press = (await Household.PressAsync(stores)).Id;
        var owner = await Household.MemberAsync(stores, press, "Own", PressRole.Owner);
        var rex = await Household.PersonAsync(stores, "Rex");
        var first = second == "Lost one" ? second : "Rex";
        var links = new List<string>();
        foreach (var whom in new[] { first, second, "Ann Other" })
        {
            links.Add(await Household.AsAsync(owner, () => stores.Invitations.InviteAsync(press, whom, PressRole.Editor)));
        }

        Assert.NotNull(await stores.Invitations.AcceptAsync(links[0], rex.UserId));
        await using (var db = stores.Context(press))
        {
            await db.Users.Where(user => user.Id == rex.UserId).ExecuteUpdateAsync(set => set.SetProperty(user => user.Name, renamed));
        }

        Assert.Equal(PeopleResult.Done, await Household.AsAsync(owner, () => stores.People.RemoveAsync(press, rex.UserId)));

        Assert.Null(await stores.Invitations.AcceptAsync(links[1], rex.UserId));
        Assert.Equal("Ann Other", (await stores.Invitations.LookAsync(links[2]))?.For);
    }

    [Theory]
    [InlineData(null, 0)]
    [InlineData(PressRole.Reader, 1)]
    [InlineData(PressRole.Editor, 2)]
    public async Task Whoever_is_taken_out_or_may_do_less_is_not_invited_under_a_like_name_to_do_more(PressRole? then, int left)
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var press = (await Household.PressAsync(stores)).Id;
        var owner = await Household.MemberAsync(stores, press, "Own", PressRole.Owner);
        var rex = await Household.MemberAsync(stores, press, "Réx Hound", PressRole.Editor);
        foreach (var (whom, role) in new[] { ("hound, R.", PressRole.Editor), ("rex.h@example.com", PressRole.Reader), ("R. Other", PressRole.Editor) })
        {
            await Household.AsAsync(owner, () => stores.Invitations.InviteAsync(press, whom, role));
        }

        await Household.AsAsync(owner, () => then is { } role ? stores.People.ChangeAsync(press, rex.UserId, role) : stores.People.RemoveAsync(press, rex.UserId));

        var open = await Household.AsAsync(owner, () => stores.Invitations.ListAsync(press));
        Assert.Equal(left, open.Count(invitation => invitation.For != "R. Other"));
        Assert.Contains(open, invitation => invitation.For == "R. Other");
    }

    [Fact]
    public async Task An_editor_who_goes_ends_nobodys_invitation()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var press = (await Household.PressAsync(stores)).Id;
        var (owner, editor) = (await Household.MemberAsync(stores, press, "Own", PressRole.Owner), await Household.MemberAsync(stores, press, "Ed", PressRole.Editor));
        await Household.AsAsync(owner, () => stores.Invitations.InviteAsync(press, "a friend", PressRole.Reader));

        await Household.AsAsync(owner, () => stores.People.RemoveAsync(press, editor.UserId));

        Assert.Single(await Household.AsAsync(owner, () => stores.Invitations.ListAsync(press)));
    }

    [Fact]
    public async Task Two_owners_who_take_each_other_out_at_once_leave_one()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var press = (await Household.PressAsync(stores)).Id;
        var (one, two) = (await Household.MemberAsync(stores, press, "One", PressRole.Owner), await Household.MemberAsync(stores, press, "Two", PressRole.Owner));

        await Task.WhenAll(TryAsync(one, two), TryAsync(two, one));

        await using var db = stores.Context(press);
        Assert.Equal(PressRole.Owner, Assert.Single(db.Memberships).Role);

        async Task TryAsync(Visitor.Person who, Visitor.Person whom)
        {
            try
            {
                await Household.AsAsync(who, () => stores.People.RemoveAsync(press, whom.UserId));
            }
            catch (AccessRefusedException)
            {
                // The other was quicker.
            }
        }
    }

    [Fact]
    public async Task People_invitations_and_keys_of_another_press_are_not_touched()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var (theirs, mine) = ((await Household.PressAsync(stores)).Id, (await Household.PressAsync(stores)).Id);
        var them = await Household.MemberAsync(stores, theirs, "Them", PressRole.Owner);
        var me = await Household.MemberAsync(stores, mine, "Me", PressRole.Owner);
        var (link, key) = (await Household.AsAsync(them, () => stores.Invitations.InviteAsync(theirs, "X", PressRole.Reader)), await Household.AsAsync(them, () => stores.Keys.MakeAsync(theirs, "X", false)));
        var invitation = (await Household.AsAsync(them, () => stores.Invitations.ListAsync(theirs)))[0].Id;
        var keyId = (await Household.AsAsync(them, () => stores.Keys.ListAsync(theirs)))[0].Id;
        using var visiting = Visiting.As(me);

        Assert.Equal(PeopleResult.Gone, await stores.People.ChangeAsync(mine, them.UserId, PressRole.Reader));
        Assert.Equal(PeopleResult.Gone, await stores.People.RemoveAsync(mine, them.UserId));
        await stores.Invitations.WithdrawAsync(mine, invitation);
        await stores.Keys.RevokeAsync(mine, keyId);
        await Assert.ThrowsAsync<AccessRefusedException>(() => stores.People.RemoveAsync(theirs, them.UserId));
        await Assert.ThrowsAsync<AccessRefusedException>(() => stores.Keys.RevokeAsync(theirs, keyId));

        Assert.NotNull(await stores.Invitations.LookAsync(link));
        Assert.NotNull(await stores.Keys.FindAsync(key));
        Assert.Equal(PressRole.Owner, Assert.Single(await Household.AsAsync(them, () => stores.People.ListAsync(theirs))).Role);
        Assert.Empty(await stores.Keys.ListAsync(mine));
    }

    [Fact]
    public async Task An_invitation_opens_once_also_for_two_who_come_at_once_and_only_its_hash_is_kept()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var press = (await Household.PressAsync(stores)).Id;
        var owner = await Household.MemberAsync(stores, press, "Own", PressRole.Owner);
        var link = await Household.AsAsync(owner, () => stores.Invitations.InviteAsync(press, "Ed", PressRole.Editor));
        var (one, two) = (await Household.PersonAsync(stores, "One"), await Household.PersonAsync(stores, "Two"));
        Assert.Equal(PressRole.Editor, (await stores.Invitations.LookAsync(link))!.Role);
        await using (var db = stores.Context(press))
        {
            Assert.Equal(Secret.Hash(link), Assert.Single(db.Invitations).SecretHash);
        }

        var let = await Task.WhenAll(stores.Invitations.AcceptAsync(link, one.UserId), stores.Invitations.AcceptAsync(link, two.UserId));

        Assert.Equal(press, Assert.Single(let, found => found is not null));
        Assert.Null(await stores.Invitations.LookAsync(link));
        Assert.Equal([PressRole.Editor, PressRole.Owner], (await Household.AsAsync(owner, () => stores.People.ListAsync(press))).Select(member => member.Role).Order());
    }

    [Fact]
    public async Task An_invitation_ends_after_a_week_and_when_it_is_taken_back()
    {
        var clock = new SetClock();
        await using var stores = await Stores.NewAsync(postgres, signIn: true, clock);
        var press = (await Household.PressAsync(stores)).Id;
        var owner = await Household.MemberAsync(stores, press, "Own", PressRole.Owner);
        using var visiting = Visiting.As(owner);
        var (late, back) = (await stores.Invitations.InviteAsync(press, "L", PressRole.Reader), await stores.Invitations.InviteAsync(press, "B", PressRole.Reader));

        await stores.Invitations.WithdrawAsync(press, (await stores.Invitations.ListAsync(press)).Single(made => made.For == "B").Id);
        Assert.Null(await stores.Invitations.LookAsync(back));
        Assert.NotNull(await stores.Invitations.LookAsync(late));
        clock.Pass(InvitationStore.Holds - TimeSpan.FromDays(1));
        Assert.True(await stores.Sessions.UseAsync(owner.UserId, owner.SessionId));
        clock.Pass(TimeSpan.FromDays(1));
        Assert.Null(await stores.Invitations.LookAsync(late));
        Assert.Empty(await stores.Invitations.ListAsync(press));
    }

    [Fact]
    public async Task A_key_opens_its_own_press_as_far_as_it_may_until_it_is_revoked()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var (press, other) = (await Household.PressAsync(stores), await Household.PressAsync(stores));
        var owner = await Household.MemberAsync(stores, press.Id, "Own", PressRole.Owner);
        var (reads, writes) = (await Household.AsAsync(owner, () => stores.Keys.MakeAsync(press.Id, "reads", false)), await Household.AsAsync(owner, () => stores.Keys.MakeAsync(press.Id, "writes", true)));
        var (reader, writer) = ((await stores.Keys.FindAsync(reads))!.Value.Visitor, (await stores.Keys.FindAsync(writes))!.Value.Visitor);

        Assert.NotNull(await Household.AsAsync(reader, () => stores.Titles.LoadAsync(press.Id, press.Title.Id)));
        SmallPress.Saved(await Household.AsAsync(writer, () => stores.Titles.SaveAsync(press.Id, press.Title with { By = "A key" })));
        await Assert.ThrowsAsync<AccessRefusedException>(() => Household.AsAsync(reader, () => stores.Titles.SaveAsync(press.Id, press.Title)));
        await Assert.ThrowsAsync<AccessRefusedException>(() => Household.AsAsync(writer, () => stores.Titles.LoadAsync(other.Id, other.Title.Id)));
        await Assert.ThrowsAsync<AccessRefusedException>(() => Household.AsAsync(writer, () => stores.People.ListAsync(press.Id)));
        Assert.All(await Household.AsAsync(owner, () => stores.Keys.ListAsync(press.Id)), key => Assert.NotNull(key.UsedOn));

        await Household.AsAsync(owner, () => stores.Keys.RevokeAsync(press.Id, writer.KeyId));
        Assert.Null(await stores.Keys.FindAsync(writes));
        await Assert.ThrowsAsync<AccessRefusedException>(() => Household.AsAsync(writer, () => stores.Titles.LoadAsync(press.Id, press.Title.Id)));
        Assert.Null(await stores.Keys.FindAsync(ApiKeyStore.Prefix + Secret.New()));
    }

    [Fact]
    public async Task A_sign_in_ends_when_it_is_old_and_when_it_is_not_used()
    {
        var clock = new SetClock();
        await using var stores = await Stores.NewAsync(postgres, signIn: true, clock);
        var used = await Household.PersonAsync(stores, "Used");
        var idle = await Household.PersonAsync(stores, "Idle");

        for (var day = 0; day < SessionStore.Longest.Days; day++)
        {
            Assert.True(await stores.Sessions.UseAsync(used.UserId, used.SessionId));
            clock.Pass(TimeSpan.FromDays(1));
            Assert.Equal(day + 1 < SessionStore.LongestIdle.Days, (await stores.Sessions.OfUserAsync(idle.UserId)).Count == 1);
        }

        Assert.False(await stores.Sessions.UseAsync(used.UserId, used.SessionId));
        Assert.False(await stores.Sessions.UseAsync(idle.UserId, idle.SessionId));
    }

    [Fact]
    public async Task No_sign_in_begins_with_what_was_changed_while_it_was_looked_at()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var me = await Household.PersonAsync(stores, "Me");
        var looked = await Household.FindAsync(stores, me);
        await using var db = stores.Context(default);
        await using var changing = await db.Database.BeginTransactionAsync(TestContext.Current.CancellationToken);
        await db.Users.Where(user => user.Id == me.UserId).ExecuteUpdateAsync(set => set.SetProperty(user => user.SecurityStamp, "changed"), TestContext.Current.CancellationToken);
        var beginning = stores.Sessions.BeginAsync(looked, "Theirs", TestContext.Current.CancellationToken);
        await Eventually.HoldsAsync(async () => beginning.IsCompleted || await IsWaitingAsync());
        await SessionStore.EndOthersAsync(db, me.UserId, me.SessionId, DateTimeOffset.UnixEpoch, TestContext.Current.CancellationToken);
        await changing.CommitAsync(TestContext.Current.CancellationToken);

        Assert.Null(await beginning);
        Assert.Equal(me.SessionId, Assert.Single(await stores.Sessions.OfUserAsync(me.UserId, TestContext.Current.CancellationToken)).Id);

        async Task<bool> IsWaitingAsync()
        {
            await using var other = stores.Context(default);
            return await other.Database.SqlQuery<bool>($"SELECT EXISTS (SELECT 1 FROM pg_stat_activity WHERE datname = current_database() AND wait_event_type = 'Lock') AS \"Value\"").SingleAsync();
        }
    }

    [Fact]
    public async Task A_sign_in_that_is_not_used_reaches_nothing_any_more_and_looking_whether_it_lasts_is_no_use()
    {
        var clock = new SetClock();
        await using var stores = await Stores.NewAsync(postgres, signIn: true, clock);
        var press = await Household.PressAsync(stores);
        var me = await Household.MemberAsync(stores, press.Id, "Me", PressRole.Owner);
        using var visiting = Visiting.As(me);
        clock.Pass(SessionStore.LongestIdle - TimeSpan.FromHours(1));
        Assert.True(await stores.Sessions.LastsAsync(me.UserId, me.SessionId));
        Assert.NotNull(await stores.Titles.LoadAsync(press.Id, press.Title.Id));

        clock.Pass(TimeSpan.FromHours(2));

        Assert.False(await stores.Sessions.LastsAsync(me.UserId, me.SessionId));
        await Assert.ThrowsAsync<AccessRefusedException>(() => stores.Titles.LoadAsync(press.Id, press.Title.Id));
    }

    [Fact]
    public async Task Somebody_ends_their_own_sign_ins_and_nobody_elses()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var (me, other) = (await Household.PersonAsync(stores, "Me"), await Household.PersonAsync(stores, "Other"));
        var (phone, tablet) = (await Household.SignInAsync(stores, me, "Phone"), await Household.SignInAsync(stores, me, "Tablet"));

        await stores.Sessions.EndAsync(me.UserId, other.SessionId);
        await stores.Sessions.EndAsync(me.UserId, phone);
        Assert.Equal(2, (await stores.Sessions.OfUserAsync(me.UserId)).Count);
        await stores.Sessions.EndOthersAsync(me.UserId, tablet);

        Assert.Equal(tablet, Assert.Single(await stores.Sessions.OfUserAsync(me.UserId)).Id);
        Assert.True(await stores.Sessions.LastsAsync(other.UserId, other.SessionId));
    }

    [Fact]
    public async Task Tries_are_counted_also_when_they_come_at_once_and_forgotten_when_their_time_is_over()
    {
        var clock = new SetClock();
        await using var stores = await Stores.NewAsync(postgres, signIn: true, clock);
        var limit = new AttemptLimit("test", 5, TimeSpan.FromMinutes(15));

        var first = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => stores.Attempts.TakeAsync(limit, "one")));

        Assert.Equal(5, first.Count(may => may));
        Assert.True(await stores.Attempts.TakeAsync(limit, "another"));
        clock.Pass(TimeSpan.FromMinutes(16));
        Assert.True(await stores.Attempts.TakeAsync(limit, "one"));
    }

    [Fact]
    public async Task A_try_that_was_right_is_not_counted()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var limit = new AttemptLimit("test", 2, TimeSpan.FromMinutes(15));

        for (var right = 0; right < 5; right++)
        {
            Assert.True(await stores.Attempts.TakeAsync(limit, "one"));
            await stores.Attempts.GiveBackAsync(limit, "one");
        }

        Assert.True(await stores.Attempts.TakeAsync(limit, "one"));
        Assert.True(await stores.Attempts.TakeAsync(limit, "one"));
        Assert.False(await stores.Attempts.TakeAsync(limit, "one"));
    }

    [Fact]
    public async Task Counts_whose_time_is_over_and_sign_ins_that_have_ended_are_swept_out_and_no_others()
    {
        var clock = new SetClock();
        await using var stores = await Stores.NewAsync(postgres, signIn: true, clock);
        var limit = new AttemptLimit("test", 5, TimeSpan.FromMinutes(15));
        var me = await Household.PersonAsync(stores, "Me");
        var (ended, idle) = (await Household.SignInAsync(stores, me, "Ended"), await Household.SignInAsync(stores, me, "Idle"));
        await stores.Attempts.TakeAsync(limit, "old");
        await stores.Sessions.EndAsync(me.UserId, ended);
        clock.Pass(SessionStore.LongestIdle - TimeSpan.FromDays(1));
        Assert.True(await stores.Sessions.UseAsync(me.UserId, me.SessionId));
        clock.Pass(TimeSpan.FromDays(2));
        await stores.Attempts.TakeAsync(limit, "new");
        using var sweeping = new Sweeping(stores.Attempts, stores.Sessions, stores.Invitations, stores.Drafts, clock, NullLogger<Sweeping>.Instance);

        await sweeping.StartAsync(TestContext.Current.CancellationToken);

        await using var db = stores.Context(default);
        await Eventually.HoldsAsync(async () => await db.Sessions.CountAsync() + await db.Attempts.CountAsync() == 2);
        await sweeping.StopAsync(TestContext.Current.CancellationToken);
        Assert.Equal(me.SessionId, Assert.Single(db.Sessions).Id);
        Assert.NotEqual(idle, me.SessionId);
        Assert.Equal(limit.Kind, Assert.Single(db.Attempts).Kind);
        Assert.Equal(clock.GetUtcNow() + limit.Within, Assert.Single(db.Attempts).EndsAt);
    }
}
