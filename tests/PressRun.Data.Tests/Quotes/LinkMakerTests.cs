using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.People;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Data.Tests.Fixtures;
using PressRun.Data.Tests.People;
using PressRun.Engine.Quoting;

namespace PressRun.Data.Tests.Quotes;

/// <summary>Whoever made a link knows its secret, so that it ends once they may change nothing in the press any more.</summary>
public sealed class LinkMakerTests(PostgresFixture postgres)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static TheoryData<string> Ways => ["taken out", "made a reader", "left", "account deleted", "account deleted by the host"];

    [Theory]
    [MemberData(nameof(Ways))]
    public async Task A_link_ends_with_its_makers_right_to_change_the_press_and_no_other_one_does(string way)
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var (here, there) = (await Household.PressAsync(stores), await Household.PressAsync(stores));
        var (owner, editor) = (await Household.MemberAsync(stores, here.Id, "OWN", PressRole.Owner), await Household.MemberAsync(stores, here.Id, "ED", PressRole.Editor));
        await Household.JoinAsync(stores, there.Id, editor, PressRole.Editor);
        var quote = await Household.AsAsync(owner, () => SmallQuote.FreezeAsync(stores, here));
        var (ofEditor, ofOwner) = (await LinkAsync(stores, editor, here.Id, quote, "Ada"), await LinkAsync(stores, owner, here.Id, quote, "Bo"));
        var other = await Household.AsAsync(editor, () => SmallQuote.FreezeAsync(stores, there));
        var elsewhere = await LinkAsync(stores, editor, there.Id, other, "Cy");

        await GoAsync(stores, here.Id, owner, editor, way);

        Assert.False((await SmallQuote.LookAsync(stores, ofEditor))!.IsOpen);
        Assert.IsType<SaveResult<QuoteEvent>.Gone>(await stores.Shared.ReplyAsync((await SmallQuote.LookAsync(stores, ofEditor))!, SmallQuote.AgreeTo(quote)));
        Assert.True((await SmallQuote.LookAsync(stores, ofOwner))!.IsOpen);
        Assert.Equal(!way.StartsWith("account", StringComparison.Ordinal), (await SmallQuote.LookAsync(stores, elsewhere))!.IsOpen);
        var whole = (await Household.AsAsync(owner, () => stores.Quotes.FindAsync(here.Id, quote.Number)))!;
        var ended = Assert.Single(whole.Events, happened => happened.Kind == QuoteEventKind.LinkEndedWithMaker);
        Assert.Equal((whole.Links[0].Id, here.Press.Name), (ended.LinkId!.Value, ended.By));
        Assert.Equal((ended.At, null), (whole.Links[0].MakerGoneAt, whole.Links[0].EndedAt));
        Assert.Equal(1, await Household.AsAsync(owner, () => stores.Quotes.UnseenAsync(here.Id)));
        Assert.Equal("Cy", SmallPress.Saved(await Household.AsAsync(owner, () => stores.Quotes.LinkAsync(here.Id, quote.Id, SmallQuote.ForAda with { Name = "Cy" }, ""))).Link.Name);
    }

    [Fact]
    public async Task What_was_answered_stays_and_a_link_that_ended_with_its_maker_is_no_answer()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var small = await Household.PressAsync(stores);
        var (owner, editor) = (await Household.MemberAsync(stores, small.Id, "Own", PressRole.Owner), await Household.MemberAsync(stores, small.Id, "Ed", PressRole.Editor));
        var quote = await Household.AsAsync(owner, () => SmallQuote.FreezeAsync(stores, small));
        var secrets = new List<string>();
        foreach (var reader in new[] { "Ada", "Bo" })
        {
            secrets.Add(await LinkAsync(stores, editor, small.Id, quote, reader));
        }

        SmallPress.Saved(await stores.Shared.ReplyAsync((await SmallQuote.LookAsync(stores, secrets[0]))!, SmallQuote.AgreeTo(quote)));

        await GoAsync(stores, small.Id, owner, editor, "taken out");

        var whole = (await Household.AsAsync(owner, () => stores.Quotes.FindAsync(small.Id, quote.Number)))!;
        Assert.All(secrets, secret => Assert.False(SmallQuote.LookAsync(stores, secret).Result!.IsOpen));
        Assert.Equal([QuoteAnswer.Agreed, QuoteAnswer.None], whole.Links.Select(link => link.Answer));
        Assert.Equal(2, whole.Events.Count(happened => happened.Kind == QuoteEventKind.LinkEndedWithMaker));
        Assert.Equal(QuoteState.Held, whole.State);
    }

    [Fact]
    public async Task The_course_says_who_made_and_who_ended_a_link_and_the_press_where_nobody_signed_in()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var small = await Household.PressAsync(stores);
        var (owner, editor) = (await Household.MemberAsync(stores, small.Id, "Own", PressRole.Owner), await Household.MemberAsync(stores, small.Id, "Ed", PressRole.Editor));
        var (quote, made, _) = await Household.AsAsync(editor, () => SmallQuote.SharedAsync(stores, small));
        SmallPress.Saved(await Household.AsAsync(owner, () => stores.Quotes.EndAsync(small.Id, quote.Id, made.Link.Id, "Low Tide Press")));
        SmallPress.Saved(await Household.AsAsync(new Visitor.Program(), () => stores.Quotes.LinkAsync(small.Id, quote.Id, SmallQuote.ForAda, "Low Tide Press")));

        var whole = (await Household.AsAsync(owner, () => stores.Quotes.FindAsync(small.Id, quote.Number)))!;

        Assert.Equal(["Ed", "Own", "Low Tide Press"], whole.Events.Select(happened => happened.By));
    }

    [Fact]
    public async Task Whoever_may_still_change_the_press_keeps_their_links_and_sees_which_would_end()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var small = await Household.PressAsync(stores);
        var (owner, editor) = (await Household.MemberAsync(stores, small.Id, "Own", PressRole.Owner), await Household.MemberAsync(stores, small.Id, "Ed", PressRole.Editor));
        var (first, second) = (await Household.AsAsync(owner, () => SmallQuote.FreezeAsync(stores, small)), await Household.AsAsync(owner, () => SmallQuote.FreezeAsync(stores, small)));
        await LinkAsync(stores, editor, small.Id, second, "Ada");
        var secret = await LinkAsync(stores, editor, small.Id, first, "Ada");
        await LinkAsync(stores, editor, small.Id, first, "Bo");
        var over = await Household.AsAsync(editor, () => stores.Quotes.LinkAsync(small.Id, first.Id, SmallQuote.ForAda with { Name = "Cy" }, ""));
        await Household.AsAsync(editor, () => stores.Quotes.EndAsync(small.Id, first.Id, SmallPress.Saved(over).Link.Id, ""));
        await Household.AsAsync(new Visitor.Program(), () => stores.Quotes.LinkAsync(small.Id, first.Id, SmallQuote.ForAda, "Low Tide Press"));

        foreach (var role in new[] { PressRole.Owner, PressRole.Editor })
        {
            Assert.Equal(PeopleResult.Done, await Household.AsAsync(owner, () => stores.People.ChangeAsync(small.Id, editor.UserId, role)));
        }

        Assert.True((await SmallQuote.LookAsync(stores, secret))!.IsOpen);
        Assert.Equal(
            [("Ed", "1 1 2"), ("Own", "")],
            (await Household.AsAsync(owner, () => stores.People.ListAsync(small.Id))).Select(member => (member.Name, string.Join(' ', member.LinksTo))));
        Assert.Equal([1, 1, 2], await Household.AsAsync(editor, () => stores.People.OwnLinksAsync(small.Id)));
        Assert.Empty(await Household.AsAsync(owner, () => stores.People.OwnLinksAsync(small.Id)));
    }

    [Fact]
    public async Task An_owner_sees_the_open_links_that_end_with_nobody_as_it_is_not_known_who_made_them()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var (small, other) = (await Household.PressAsync(stores), await Household.PressAsync(stores));
        var (owner, editor) = (await Household.MemberAsync(stores, small.Id, "Own", PressRole.Owner), await Household.MemberAsync(stores, small.Id, "Ed", PressRole.Editor));
        var quote = await Household.AsAsync(owner, () => SmallQuote.FreezeAsync(stores, small));
        await LinkAsync(stores, editor, small.Id, quote, "Ada");
        var orphans = new List<Guid>();
        foreach (var reader in new[] { "Bo", "Cy" })
        {
            orphans.Add(SmallPress.Saved(await Household.AsAsync(
                new Visitor.Program(), () => stores.Quotes.LinkAsync(small.Id, quote.Id, SmallQuote.ForAda with { Name = reader }, "Low Tide Press"))).Link.Id);
        }

        await Household.AsAsync(new Visitor.Program(), () => SmallQuote.SharedAsync(stores, other));
        SmallPress.Saved(await Household.AsAsync(owner, () => stores.Quotes.EndAsync(small.Id, quote.Id, orphans[1], "")));

        var link = Assert.Single(await Household.AsAsync(owner, () => stores.Quotes.OrphansAsync(small.Id)));
        Assert.Equal((orphans[0], quote.Number, "Bo"), (link.Id, link.Quote, link.Name));
        await Assert.ThrowsAsync<AccessRefusedException>(() => Household.AsAsync(editor, () => stores.Quotes.OrphansAsync(small.Id)));
    }

    [Fact]
    public async Task A_link_that_is_made_while_its_maker_is_taken_out_does_not_outlive_them()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var small = await Household.PressAsync(stores);
        var (owner, editor) = (await Household.MemberAsync(stores, small.Id, "Own", PressRole.Owner), await Household.MemberAsync(stores, small.Id, "Ed", PressRole.Editor));
        var quote = await Household.AsAsync(owner, () => SmallQuote.FreezeAsync(stores, small));
        var made = Enumerable.Range(0, 8).Select(_ => TryAsync()).ToList();

        await GoAsync(stores, small.Id, owner, editor, "taken out");
        await Task.WhenAll(made);

        Assert.DoesNotContain((await Household.AsAsync(owner, () => stores.Quotes.FindAsync(small.Id, quote.Number)))!.Links, link => link.IsOpen(TimeProvider.System.GetUtcNow()));

        async Task TryAsync()
        {
            try
            {
                await LinkAsync(stores, editor, small.Id, quote, "Ada");
            }
            catch (AccessRefusedException)
            {
                // Taken out already.
            }
        }
    }

    [Fact]
    public async Task Of_a_deleted_account_a_link_keeps_no_id_and_its_end_names_nobody()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var small = await Household.PressAsync(stores);
        var (owner, editor) = (await Household.MemberAsync(stores, small.Id, "Own", PressRole.Owner), await Household.MemberAsync(stores, small.Id, "Ed", PressRole.Editor));
        await Household.AsAsync(editor, () => SmallQuote.SharedAsync(stores, small));
        await using var db = stores.Context(small.Id);
        Assert.Equal(editor.UserId, (await db.QuoteLinks.AsNoTracking().SingleAsync(Cancel)).MadeBy);

        await GoAsync(stores, small.Id, owner, editor, "account deleted");

        Assert.Null((await db.QuoteLinks.AsNoTracking().SingleAsync(Cancel)).MadeBy);
        Assert.Equal(["Ed", small.Press.Name], await db.QuoteEvents.OrderBy(happened => happened.Sequence).Select(happened => happened.By).ToListAsync(Cancel));
    }

    private static async Task GoAsync(Stores stores, PressId press, Visitor.Person owner, Visitor.Person editor, string way)
    {
        switch (way)
        {
            case "taken out":
                Assert.Equal(PeopleResult.Done, await Household.AsAsync(owner, () => stores.People.RemoveAsync(press, editor.UserId)));
                break;
            case "made a reader":
                Assert.Equal(PeopleResult.Done, await Household.AsAsync(owner, () => stores.People.ChangeAsync(press, editor.UserId, PressRole.Reader)));
                break;
            case "left":
                Assert.Equal(PeopleResult.Done, await Household.AsAsync(editor, () => stores.People.LeaveAsync(press)));
                break;
            case "account deleted":
                Assert.Empty(await stores.Removals.DeleteAsync(editor.UserId, Cancel));
                break;
            default:
                Assert.Empty((await stores.Removals.DeleteForHostAsync("ED", Cancel))!);
                break;
        }
    }

    private static async Task<string> LinkAsync(Stores stores, Visitor.Person maker, PressId press, QuoteRecord quote, string reader) =>
        SmallPress.Saved(await Household.AsAsync(maker, () => stores.Quotes.LinkAsync(press, quote.Id, SmallQuote.ForAda with { Name = reader }, "Low Tide Press"))).Secret;
}
