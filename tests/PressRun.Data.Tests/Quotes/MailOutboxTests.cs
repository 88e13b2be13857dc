using PressRun.Data.Access;
using PressRun.Data.Mail;
using PressRun.Data.Quotes;
using PressRun.Data.Tests.Fixtures;
using PressRun.Data.Tests.People;

namespace PressRun.Data.Tests.Quotes;

public sealed class MailOutboxTests(PostgresFixture postgres)
{
    [Fact]
    public async Task What_a_reader_does_is_told_once_however_often_it_is_sent()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var (quote, _, look) = await SmallQuote.SharedAsync(stores, small);
        SmallPress.Saved(await stores.Shared.ReplyAsync(look, new Reply.Remark("Ada", "Is it thick?")));
        SmallPress.Saved(await stores.Shared.ReplyAsync(look, new Reply.AskFor("Ada", 200, 1m)));
        SmallPress.Saved(await stores.Shared.ReplyAsync(look, SmallQuote.AgreeTo(quote)));
        SmallPress.Saved(await stores.Shared.ReplyAsync(look, SmallQuote.AgreeTo(quote)));
        Assert.IsType<SaveResult<QuoteEvent>.Refused>(await stores.Shared.ReplyAsync(look, new Reply.Remark("Ada", "")));

        var told = await AllAsync(stores);

        Assert.Equal([QuoteEventKind.Agreed, QuoteEventKind.AskedFor, QuoteEventKind.Remarked], told.Select(mail => mail.Event.Kind).Order());
        Assert.All(told, mail => Assert.Equal("maker@example.org", mail.Address));
        Assert.All(told, mail => Assert.Equal(small.Id, mail.Press));
    }

    [Fact]
    public async Task What_the_maker_does_is_told_to_nobody()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var (quote, _, _) = await SmallQuote.SharedAsync(stores, small);
        SmallPress.Saved(await stores.Quotes.RemarkAsync(small.Id, quote.Id, "Press", "Mine"));

        Assert.Null(await stores.Outbox.TakeAsync());
    }

    [Fact]
    public async Task What_one_node_has_taken_another_leaves_until_it_was_away_too_long()
    {
        var clock = new SetClock();
        var (stores, mail) = await OneAsync(clock);
        await using var _ = stores;

        Assert.Null(await stores.Outbox.TakeAsync());
        clock.Pass(TimeSpan.FromMinutes(9));
        Assert.Null(await stores.Outbox.TakeAsync());
        clock.Pass(TimeSpan.FromMinutes(2));
        var again = (await stores.Outbox.TakeAsync())!;

        Assert.Equal((mail.Id, 2), (again.Id, again.Tries));
        await stores.Outbox.DoneAsync(again);
        clock.Pass(TimeSpan.FromDays(9));
        Assert.Null(await stores.Outbox.TakeAsync());
    }

    [Fact]
    public async Task A_server_that_stays_away_is_asked_less_and_less_and_given_up_after_two_days()
    {
        var clock = new SetClock();
        var (stores, mail) = await OneAsync(clock);
        await using var _ = stores;
        foreach (var minutes in new[] { 1, 2, 4, 8, 16, 32, 64, 128, 256, 360, 360, 360, 360 })
        {
            Assert.True(await stores.Outbox.LaterAsync(mail));
            clock.Pass(TimeSpan.FromMinutes(minutes) - TimeSpan.FromSeconds(1));
            Assert.Null(await stores.Outbox.TakeAsync());
            clock.Pass(TimeSpan.FromSeconds(1));
            mail = (await stores.Outbox.TakeAsync())!;
        }

        Assert.Equal(MailOutbox.MostTries, mail.Tries);
        Assert.False(await stores.Outbox.LaterAsync(mail));
        clock.Pass(TimeSpan.FromDays(9));
        Assert.Null(await stores.Outbox.TakeAsync());
    }

    [Fact]
    public async Task Where_people_sign_in_all_who_may_change_the_press_are_told_and_nobody_else()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var small = await Household.PressAsync(stores);
        foreach (var role in Enum.GetValues<PressRole>())
        {
            await Household.MemberAsync(stores, small.Id, $"{role}", role);
        }

        await Household.PersonAsync(stores, "stranger", isHost: true);
        var (_, _, look) = await Household.AsAsync(new Visitor.Program(), () => SmallQuote.SharedAsync(stores, small));
        SmallPress.Saved(await stores.Shared.ReplyAsync(look, new Reply.Remark("Ada", "Is it thick?")));

        Assert.Equal(["Editor@example.org", "Owner@example.org"], (await AllAsync(stores)).Select(mail => mail.Address).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Whoever_wants_no_mail_of_a_press_gets_none_of_it_and_goes_on_getting_that_of_others()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var (here, there) = (await Household.PressAsync(stores), await Household.PressAsync(stores));
        var owner = await Household.MemberAsync(stores, here.Id, "Quiet", PressRole.Owner);
        await Household.JoinAsync(stores, there.Id, owner, PressRole.Owner);
        await Household.MemberAsync(stores, here.Id, "Told", PressRole.Editor);
        await Household.AsAsync(owner, () => stores.People.SetMailAsync(here.Id, without: true));
        Assert.True(await Household.AsAsync(owner, () => stores.People.IsWithoutMailAsync(here.Id)));
        Assert.False(await Household.AsAsync(owner, () => stores.People.IsWithoutMailAsync(there.Id)));

        foreach (var (press, told) in new[] { (here, "Told@example.org"), (there, "Quiet@example.org") })
        {
            var (_, _, look) = await Household.AsAsync(new Visitor.Program(), () => SmallQuote.SharedAsync(stores, press));
            SmallPress.Saved(await stores.Shared.ReplyAsync(look, new Reply.Remark("Ada", "Is it thick?")));
            Assert.Equal([told], (await AllAsync(stores)).Select(mail => mail.Address));
        }
    }

    [Fact]
    public async Task Mail_that_waits_goes_to_nobody_who_was_taken_out_may_change_nothing_any_more_or_wants_none_by_now()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var small = await Household.PressAsync(stores);
        var owner = await Household.MemberAsync(stores, small.Id, "Stays", PressRole.Owner);
        var (gone, less, quiet) = (await EditorAsync("Gone"), await EditorAsync("Less"), await EditorAsync("Quiet"));
        var (_, _, look) = await Household.AsAsync(new Visitor.Program(), () => SmallQuote.SharedAsync(stores, small));
        SmallPress.Saved(await stores.Shared.ReplyAsync(look, new Reply.Remark("Ada", "Is it thick?")));
        await Household.AsAsync(owner, () => stores.People.RemoveAsync(small.Id, gone.UserId));
        await Household.AsAsync(owner, () => stores.People.ChangeAsync(small.Id, less.UserId, PressRole.Reader));
        await Household.AsAsync(quiet, () => stores.People.SetMailAsync(small.Id, without: true));

        Assert.Equal(["Stays@example.org"], (await AllAsync(stores)).Select(mail => mail.Address));
        await using var db = stores.Context(small.Id);
        Assert.Equal(["Stays@example.org"], db.Mails.Select(mail => mail.Address));

        Task<Visitor.Person> EditorAsync(string name) => Household.MemberAsync(stores, small.Id, name, PressRole.Editor);
    }

    private async Task<(Stores Stores, DueMail Mail)> OneAsync(SetClock clock)
    {
        var stores = await Stores.NewAsync(postgres, time: clock);
        var small = await SmallPress.CreateAsync(stores);
        var (_, _, look) = await SmallQuote.SharedAsync(stores, small, SmallQuote.ForAda with { EndsAt = clock.GetUtcNow().AddDays(30) });
        SmallPress.Saved(await stores.Shared.ReplyAsync(look, new Reply.Remark("Ada", "Is it thick?")));
        return (stores, (await stores.Outbox.TakeAsync())!);
    }

    private static async Task<List<DueMail>> AllAsync(Stores stores)
    {
        var all = new List<DueMail>();
        while (await stores.Outbox.TakeAsync() is { } mail)
        {
            all.Add(mail);
        }

        return all;
    }
}
