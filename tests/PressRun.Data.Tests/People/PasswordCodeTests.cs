using PressRun.Data.Access;
using PressRun.Data.People;
using PressRun.Data.Presses;
using PressRun.Data.Tests.Fixtures;

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
        return await PasswordCodeStore.TakeAsync(db, code, clock.GetUtcNow(), TestContext.Current.CancellationToken);
    }
}
