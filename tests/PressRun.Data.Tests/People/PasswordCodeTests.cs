using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.People;
using PressRun.Data.Presses;
using PressRun.Data.Tests.Fixtures;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;

namespace PressRun.Data.Tests.People;

public sealed class PasswordCodeTests(PostgresFixture postgres)
{
    private readonly SetClock clock = new();

    [Theory]
    [InlineData("ab12-CD34-ef56")]
    [InlineData(" AB12 CD34 EF56 ")]
    [InlineData("ab12cd34ef56")]
    public void A_code_is_known_however_its_groups_are_typed(string typed) => Assert.Equal(Secret.Hash("AB12-CD34-EF56"), Secret.HashTyped(typed));

    [Fact]
    public async Task A_code_holds_once_and_for_a_day_takes_the_place_of_an_earlier_one_and_only_its_hash_is_kept()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true, clock);
        var (press, owner, member) = await PressAsync(stores);
        var (first, second) = (await MakeAsync(stores, owner, press, member), await MakeAsync(stores, owner, press, member));
        await using (var db = stores.Context(default))
        {
            Assert.Equal(Secret.HashTyped(second.Code!), Assert.Single(db.PasswordCodes).SecretHash);
        }

        Assert.Null(await TakeAsync(stores, first.Code!));
        Assert.Equal(member.UserId, await TakeAsync(stores, $" {second.Code!.ToLowerInvariant()} "));
        Assert.Null(await TakeAsync(stores, second.Code));

        var late = await MakeAsync(stores, owner, press, member);
        clock.Pass(PasswordCodeStore.Holds);
        Assert.Null(await TakeAsync(stores, late.Code!));
    }

    [Fact]
    public async Task No_owner_makes_a_code_that_would_open_more_than_they_own()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true, clock);
        var (press, owner, member) = await PressAsync(stores);
        var (theirs, them, _) = await PressAsync(stores);
        var host = await Household.PersonAsync(stores, "Host", isHost: true);
        await Household.JoinAsync(stores, press, host, PressRole.Owner);
        await Household.JoinAsync(stores, press, them, PressRole.Reader);

        Assert.Equal((PeopleResult.NotYours, null), await MakeAsync(stores, owner, press, them));
        Assert.Equal((PeopleResult.NotYours, null), await MakeAsync(stores, owner, press, host));
        Assert.Equal((PeopleResult.NotYours, null), await MakeAsync(stores, owner, press, owner));
        Assert.Equal((PeopleResult.Gone, null), await MakeAsync(stores, them, theirs, member));
        await Assert.ThrowsAsync<AccessRefusedException>(() => MakeAsync(stores, member, press, owner));
        await Assert.ThrowsAsync<AccessRefusedException>(() => MakeAsync(stores, them, press, member));
        Assert.Equal(them.UserId, await TakeAsync(stores, (await stores.PasswordCodes.MakeForHostAsync("Them"))!));
        Assert.Null(await stores.PasswordCodes.MakeForHostAsync("Nobody"));
    }

    [Fact]
    public async Task A_code_ends_when_its_person_finds_another_press_or_its_owner_owns_theirs_no_more()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true, clock);
        var (press, owner, member) = await PressAsync(stores);
        var (elsewhere, _, _) = await PressAsync(stores);
        var left = await MakeAsync(stores, owner, press, member);
        await Household.JoinAsync(stores, elsewhere, member, PressRole.Reader);
        Assert.Null(await TakeAsync(stores, left.Code!));

        var other = await Household.MemberAsync(stores, press, "Other" + Guid.NewGuid(), PressRole.Owner);
        var kept = await MakeAsync(stores, owner, press, other);
        Assert.Equal(PeopleResult.Done, await Household.AsAsync(other, () => stores.People.ChangeAsync(press, owner.UserId, PressRole.Editor)));
        Assert.Null(await TakeAsync(stores, kept.Code!));
    }

    [Fact]
    public async Task A_code_waits_for_whoever_just_joins_another_press_and_then_opens_nothing()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true, clock);
        var (press, owner, member) = await PressAsync(stores);
        var (elsewhere, them, _) = await PressAsync(stores);
        var code = (await MakeAsync(stores, owner, press, member)).Code!;
        var link = await Household.AsAsync(them, () => stores.Invitations.InviteAsync(elsewhere, "Member", PressRole.Reader));
        await using var db = stores.Context(default);
        await using var joining = await db.Database.BeginTransactionAsync(TestContext.Current.CancellationToken);
        Assert.NotNull(await Household.AsAsync(member, () => InvitationStore.AcceptAsync(db, link, member.UserId, clock.GetUtcNow(), TestContext.Current.CancellationToken)));

        var taking = TakeAsync(stores, code);
        await Eventually.HoldsAsync(async () => taking.IsCompleted || await IsWaitingAsync(stores));
        await joining.CommitAsync(TestContext.Current.CancellationToken);

        Assert.Null(await taking);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Nobody_joins_or_makes_a_press_by_a_sign_in_that_a_code_is_just_ending(bool joins)
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true, clock);
        var (press, owner, _) = await PressAsync(stores);
        var (elsewhere, them, _) = await PressAsync(stores);
        var other = await Household.MemberAsync(stores, press, "Other" + Guid.NewGuid(), PressRole.Owner);
        var code = (await MakeAsync(stores, owner, press, other)).Code!;
        var link = await Household.AsAsync(them, () => stores.Invitations.InviteAsync(elsewhere, "Other", PressRole.Reader));
        await using var db = stores.Context(default);
        await using var taking = await db.Database.BeginTransactionAsync(TestContext.Current.CancellationToken);
        Assert.Equal(other.UserId, await PasswordCodeStore.TakeAsync(db, code, clock.GetUtcNow(), TestContext.Current.CancellationToken));

        var coming = Household.AsAsync(other, ComeAsync);
        await Eventually.HoldsAsync(async () => coming.IsCompleted || await IsWaitingAsync(stores));
        await SessionStore.EndOthersAsync(db, other.UserId, null, clock.GetUtcNow(), TestContext.Current.CancellationToken);
        await taking.CommitAsync(TestContext.Current.CancellationToken);

        Assert.False(await coming);
        await using var after = stores.Context(default);
        Assert.Equal(press, Assert.Single(after.Memberships.IgnoreQueryFilters(), row => row.UserId == other.UserId).PressId);

        async Task<bool> ComeAsync()
        {
            try
            {
                return joins
                    ? await stores.Invitations.AcceptAsync(link, other.UserId, TestContext.Current.CancellationToken) is not null
                    : await stores.Presses.CreateAsync(new NewPress("Late Light", "EUR", UnitSystem.Metric, PaperRegion.Iso), TestContext.Current.CancellationToken) is SaveResult<PressRecord>.Saved;
            }
            catch (AccessRefusedException)
            {
                return false;
            }
        }
    }

    // A press with an owner and a reader. The owner of the first is called Own, that of a second Them.
    private static async Task<(PressId Press, Visitor.Person Owner, Visitor.Person Member)> PressAsync(Stores stores)
    {
        var press = (await Household.PressAsync(stores)).Id;
        await using var db = stores.Context(default);
        var name = db.Users.Any() ? "Them" : "Own";
        return (press, await Household.MemberAsync(stores, press, name, PressRole.Owner), await Household.MemberAsync(stores, press, "Mem" + Guid.NewGuid(), PressRole.Reader));
    }

    private static Task<(PeopleResult Result, string? Code)> MakeAsync(Stores stores, Visitor.Person maker, PressId press, Visitor.Person whom) =>
        Household.AsAsync(maker, () => stores.PasswordCodes.MakeAsync(press, whom.UserId));

    private async Task<Guid?> TakeAsync(Stores stores, string code)
    {
        await using var db = stores.Context(default);
        await using var all = await db.Database.BeginTransactionAsync(TestContext.Current.CancellationToken);
        var whose = await PasswordCodeStore.TakeAsync(db, code, clock.GetUtcNow(), TestContext.Current.CancellationToken);
        await all.CommitAsync(TestContext.Current.CancellationToken);
        return whose;
    }

    private static async Task<bool> IsWaitingAsync(Stores stores)
    {
        await using var db = stores.Context(default);
        return await db.Database.SqlQuery<bool>($"SELECT EXISTS (SELECT 1 FROM pg_stat_activity WHERE datname = current_database() AND wait_event_type = 'Lock') AS \"Value\"").SingleAsync();
    }
}
