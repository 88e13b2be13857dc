using Microsoft.EntityFrameworkCore;
using PressRun.Data.People;
using PressRun.Data.Quotes;
using PressRun.Data.Running;
using PressRun.Data.Tests.Fixtures;
using PressRun.Engine.Quoting;

namespace PressRun.Data.Tests.Quotes;

public sealed class SharedQuoteStoreTests(PostgresFixture postgres)
{
    [Fact]
    public void Secrets_have_at_least_160_random_bits_and_never_come_twice()
    {
        var secrets = Enumerable.Range(0, 1000).Select(_ => Secret.New()).ToList();

        // Base64url (RFC 4648): six bits a character, and four in the last of 43.
        Assert.All(secrets, secret => Assert.Equal(43, secret.Length));
        Assert.True(Secret.Bits >= 160);
        Assert.Equal(1000, secrets.Distinct().Count());
        // Every character takes every place: the bits are spread over the whole secret.
        Assert.All(Enumerable.Range(0, 42), place => Assert.True(secrets.Select(secret => secret[place]).Distinct().Count() > 40));
    }

    [Fact]
    public async Task Only_the_hash_of_a_secret_is_stored()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var (_, link, _) = await SmallQuote.SharedAsync(stores, small);
        await using var db = stores.Context(small.Id);

        var rows = await db.Database.SqlQuery<string>(
            $"SELECT to_jsonb(l)::text AS \"Value\" FROM quote_links l UNION ALL SELECT to_jsonb(e)::text FROM quote_events e UNION ALL SELECT to_jsonb(q)::text FROM quotes q").ToListAsync();

        Assert.DoesNotContain(rows, row => row.Contains(link.Secret, StringComparison.Ordinal));
        Assert.Equal(Secret.Hash(link.Secret), (await db.QuoteLinks.SingleAsync()).SecretHash);
    }

    [Theory]
    [InlineData("")]
    [InlineData("short")]
    [InlineData("AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA")]
    [InlineData("../../../../../../../../../../..")]
    public async Task A_secret_that_nobody_made_opens_nothing(string secret)
    {
        await using var stores = await Stores.NewAsync(postgres);
        await SmallQuote.SharedAsync(stores, await SmallPress.CreateAsync(stores));

        Assert.Null(await SmallQuote.LookAsync(stores, secret));
    }

    [Fact]
    public async Task Reading_writes_nothing()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var (_, link, look) = await SmallQuote.SharedAsync(stores, small);

        var (whole, mine) = (await stores.Shared.LoadAsync(look))!.Value;

        Assert.Equal((QuoteState.Out, "Ada"), (whole.State, mine.Name));
        Assert.Equal(look, await SmallQuote.LookAsync(stores, link.Secret));
        Assert.Equal([QuoteEventKind.LinkMade], (await stores.Quotes.FindAsync(small.Id, 1))!.Events.Select(happened => happened.Kind));
    }

    [Fact]
    public async Task Agreeing_is_for_exactly_what_is_frozen_and_happens_once()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var (quote, _, look) = await SmallQuote.SharedAsync(stores, small);
        var agree = SmallQuote.AgreeTo(quote);

        Assert.IsType<SaveResult<QuoteEvent>.Refused>(await stores.Shared.ReplyAsync(look, agree with { Quantity = 151 }));
        Assert.IsType<SaveResult<QuoteEvent>.Refused>(await stores.Shared.ReplyAsync(look, agree with { Fingerprint = [.. quote.Fingerprint.Reverse()] }));
        Assert.IsType<SaveResult<QuoteEvent>.Refused>(await stores.Shared.ReplyAsync(look, agree with { Name = " " }));
        var answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => stores.Shared.ReplyAsync(look, agree)));

        Assert.All(answers, answer => Assert.IsType<SaveResult<QuoteEvent>.Saved>(answer));
        var whole = (await stores.Quotes.FindAsync(small.Id, 1))!;
        var agreed = Assert.Single(whole.Events, happened => happened.Kind == QuoteEventKind.Agreed);
        Assert.Equal((QuoteState.Agreed, "Ada Reed", 150, quote.Landed), (whole.State, agreed.By, agreed.Quantity, agreed.Amount));
        Assert.Equal(quote.Fingerprint, agreed.Fingerprint);
        Assert.IsType<SaveResult<QuoteEvent>.Refused>(await stores.Shared.ReplyAsync(look, new Reply.TurnDown("Ada", "")));

        // Sent again with something else than was agreed to, it is not called agreed.
        Assert.IsType<SaveResult<QuoteEvent>.Refused>(await stores.Shared.ReplyAsync(look, agree with { Quantity = 151 }));
        Assert.IsType<SaveResult<QuoteEvent>.Refused>(await stores.Shared.ReplyAsync(look, agree with { Fingerprint = [] }));
        Assert.Equal(1, await stores.Quotes.UnseenAsync(small.Id));
        await stores.Quotes.SeeAsync(small.Id, quote.Id, whole.Changes);
        Assert.Equal(0, await stores.Quotes.UnseenAsync(small.Id));
    }

    [Theory]
    [InlineData("\u200B")]
    [InlineData(" \u00AD\u200F ")]
    [InlineData("\u3164")]
    [InlineData("Mina\u202Eevil")]
    [InlineData("\u2067Mina")]
    [InlineData("Mi\u0301\u0301\u0301\u0301\u0301\u0301\u0301\u0301\u0301na")]
    public async Task A_name_that_cannot_be_seen_or_reads_as_another_agrees_to_nothing(string name)
    {
        await using var stores = await Stores.NewAsync(postgres);
        var (quote, _, look) = await SmallQuote.SharedAsync(stores, await SmallPress.CreateAsync(stores));

        Assert.IsType<SaveResult<QuoteEvent>.Refused>(await stores.Shared.ReplyAsync(look, SmallQuote.AgreeTo(quote, name)));
        Assert.IsType<SaveResult<QuoteEvent>.Saved>(await stores.Shared.ReplyAsync(look, SmallQuote.AgreeTo(quote, "Ángela \u200E(\u05E2\u05DC\u05DE\u05D4)")));
    }

    [Theory]
    [InlineData("\u200B\u200B")]
    [InlineData("\n\u3164\n")]
    [InlineData("Hm\u0336\u0336\u0336\u0336\u0336\u0336\u0336\u0336\u0336")]
    public async Task A_remark_that_cannot_be_seen_or_reaches_over_others_is_not_written(string words)
    {
        await using var stores = await Stores.NewAsync(postgres);
        var (_, _, look) = await SmallQuote.SharedAsync(stores, await SmallPress.CreateAsync(stores));

        Assert.IsType<SaveResult<QuoteEvent>.Refused>(await stores.Shared.ReplyAsync(look, new Reply.Remark("Ada", words)));
        // A word of Hebrew with its points (Unicode Standard, 9.1) and one of Vietnamese taken apart (UAX #15, NFD).
        Assert.IsType<SaveResult<QuoteEvent>.Saved>(await stores.Shared.ReplyAsync(look, new Reply.Remark("Ada", "\u05E9\u05B8\u05C1\u05DC\u05D5\u05B9\u05DD vie\u0323\u0302t")));
    }

    [Fact]
    public async Task Of_two_who_agree_by_one_link_at_once_one_counts_and_the_other_is_told_who_that_was()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var (quote, _, look) = await SmallQuote.SharedAsync(stores, small);
        var names = new[] { "Ada Reed", "Bo Lind", "Cy Marsh" };

        var answers = await Task.WhenAll(names.Select(name => stores.Shared.ReplyAsync(look, new Reply.Agree(name, quote.Quantity, quote.Fingerprint))));

        var counted = Assert.Single(answers.OfType<SaveResult<QuoteEvent>.Saved>()).Now.By;
        var refused = answers.OfType<SaveResult<QuoteEvent>.Refused>().ToList();
        Assert.Equal(2, refused.Count);
        Assert.All(refused, answer => Assert.Contains($"\u2068{counted}\u2069 has agreed by this link already", answer.Problems[0].Rule, StringComparison.Ordinal));
        Assert.Single((await stores.Shared.LoadAsync(look))!.Value.Whole.Events, happened => happened.Kind == QuoteEventKind.Agreed);
    }

    [Fact]
    public async Task A_yes_and_a_no_of_two_at_once_leave_one_answer_each_and_the_no_outweighs()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var (quote, _, ada) = await SmallQuote.SharedAsync(stores, small);
        var bo = (await SmallQuote.LookAsync(stores, SmallPress.Saved(
            await stores.Quotes.LinkAsync(small.Id, quote.Id, SmallQuote.ForAda with { Name = "Bo", Part = null }, "Press")).Secret))!;

        Assert.IsType<SaveResult<QuoteEvent>.Saved>(await stores.Shared.ReplyAsync(ada, SmallQuote.AgreeTo(quote)));
        Assert.Equal(QuoteState.Out, (await stores.Quotes.FindAsync(small.Id, 1))!.State);
        Assert.IsType<SaveResult<QuoteEvent>.Saved>(await stores.Shared.ReplyAsync(bo, new Reply.TurnDown("Bo", "Too many.\nFewer?")));

        Assert.Equal(QuoteState.TurnedDown, (await stores.Quotes.FindAsync(small.Id, 1))!.State);
        var listed = Assert.Single(await stores.Quotes.ListAsync(small.Id));
        Assert.Equal((QuoteState.TurnedDown, 1, 1), (listed.State, listed.Agreed, listed.Asked));
    }

    [Fact]
    public async Task Silence_is_no_yes_a_quote_that_one_of_two_agreed_to_lapses_when_the_others_link_ends_by_itself()
    {
        var clock = new AheadClock();
        await using var stores = await Stores.NewAsync(postgres, time: clock);
        var small = await SmallPress.CreateAsync(stores);
        var (quote, _, ada) = await SmallQuote.SharedAsync(stores, small);
        var bo = SmallPress.Saved(await stores.Quotes.LinkAsync(small.Id, quote.Id, SmallQuote.ForAda with { Name = "Bo", Part = null }, "Press"));
        Assert.IsType<SaveResult<QuoteEvent>.Saved>(await stores.Shared.ReplyAsync(ada, SmallQuote.AgreeTo(quote)));

        clock.Ahead = TimeSpan.FromDays(32);

        Assert.Equal((QuoteState.Lapsed, 1, 2), await StandsAsync());
        SmallPress.Saved(await stores.Quotes.EndAsync(small.Id, quote.Id, bo.Link.Id, "Press"));
        Assert.Equal((QuoteState.Lapsed, 1, 2), await StandsAsync());

        async Task<(QuoteState State, int Agreed, int Asked)> StandsAsync()
        {
            var listed = Assert.Single(await stores.Quotes.ListAsync(small.Id));
            Assert.Equal(listed.State, (await stores.Quotes.FindAsync(small.Id, 1))!.State);
            return (listed.State, listed.Agreed, listed.Asked);
        }
    }

    [Fact]
    public async Task Whom_the_maker_no_longer_asks_is_not_waited_for()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var (quote, _, ada) = await SmallQuote.SharedAsync(stores, small);
        var bo = SmallPress.Saved(await stores.Quotes.LinkAsync(small.Id, quote.Id, SmallQuote.ForAda with { Name = "Bo", Part = null }, "Press"));
        Assert.IsType<SaveResult<QuoteEvent>.Saved>(await stores.Shared.ReplyAsync(ada, SmallQuote.AgreeTo(quote)));
        SmallPress.Saved(await stores.Quotes.EndAsync(small.Id, quote.Id, bo.Link.Id, "Press"));

        Assert.Equal(QuoteState.Agreed, (await stores.Quotes.FindAsync(small.Id, 1))!.State);
    }

    [Fact]
    public async Task An_ended_link_is_known_and_opens_nothing()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var (quote, link, look) = await SmallQuote.SharedAsync(stores, small);
        SmallPress.Saved(await stores.Quotes.EndAsync(small.Id, quote.Id, link.Link.Id, "Press"));

        Assert.False((await SmallQuote.LookAsync(stores, link.Secret))!.IsOpen);
        Assert.Null(await stores.Shared.LoadAsync(look));
        Assert.IsType<SaveResult<QuoteEvent>.Gone>(await stores.Shared.ReplyAsync(look, SmallQuote.AgreeTo(quote)));
        Assert.Equal(QuoteState.Held, (await stores.Quotes.FindAsync(small.Id, 1))!.State);
    }

    [Fact]
    public async Task A_link_does_no_more_than_it_was_made_for()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var (quote, _, look) = await SmallQuote.SharedAsync(stores, small, SmallQuote.ForAda with { Rights = new LinkRights(null, null, Remark: false, Agree: false) });

        Reply[] replies = [SmallQuote.AgreeTo(quote), new Reply.TurnDown("A", ""), new Reply.AskFor("A", 100, 1m), new Reply.Remark("A", "Hello")];
        foreach (var reply in replies)
        {
            Assert.IsType<SaveResult<QuoteEvent>.Refused>(await stores.Shared.ReplyAsync(look, reply));
        }
    }

    [Fact]
    public async Task Another_quantity_is_asked_for_within_the_links_limits()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var (_, _, look) = await SmallQuote.SharedAsync(stores, small);

        Assert.IsType<SaveResult<QuoteEvent>.Refused>(await stores.Shared.ReplyAsync(look, new Reply.AskFor("Ada", 301, 1m)));
        Assert.IsType<SaveResult<QuoteEvent>.Saved>(await stores.Shared.ReplyAsync(look, new Reply.AskFor("Ada", 300, 512.5m)));

        Assert.Contains((await stores.Quotes.FindAsync(small.Id, 1))!.Events, happened => happened is { Kind: QuoteEventKind.AskedFor, Quantity: 300, Amount: 512.5m });
    }

    [Fact]
    public async Task A_quantity_is_asked_for_once_by_one_link_and_not_any_more_once_the_quote_is_settled()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var (quote, _, look) = await SmallQuote.SharedAsync(stores, small);
        var first = SmallPress.Saved(await stores.Shared.ReplyAsync(look, new Reply.AskFor("Ada", 300, 512.5m)));

        Assert.Equal(first, SmallPress.Saved(await stores.Shared.ReplyAsync(look, new Reply.AskFor("Ada", 300, 512.5m))));
        SmallPress.Saved(await stores.Shared.ReplyAsync(look, new Reply.AskFor("Ada", 299, 511m)));
        Assert.Equal(2, (await stores.Quotes.FindAsync(small.Id, 1))!.Events.Count(happened => happened.Kind == QuoteEventKind.AskedFor));
        SmallPress.Saved(await stores.Shared.ReplyAsync(look, SmallQuote.AgreeTo(quote)));
        Assert.IsType<SaveResult<QuoteEvent>.Refused>(await stores.Shared.ReplyAsync(look, new Reply.AskFor("Ada", 300, 512.5m)));
    }

    [Fact]
    public async Task By_one_link_only_so_much_happens_within_a_day()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var (_, _, look) = await SmallQuote.SharedAsync(stores, small);

        var answers = new List<SaveResult<QuoteEvent>>();
        for (var i = 0; i < QuoteRules.MostADay + 3; i++)
        {
            answers.Add(await stores.Shared.ReplyAsync(look, new Reply.Remark("Ada", $"Remark {i}")));
        }

        // What the maker did with it, such as making it, is none of its reader's doing.
        Assert.Equal(QuoteRules.MostADay, answers.OfType<SaveResult<QuoteEvent>.Saved>().Count());
        Assert.Equal(3, answers.OfType<SaveResult<QuoteEvent>.Refused>().Count());
    }

    [Fact]
    public async Task A_quote_can_be_agreed_to_until_its_last_day_ends_where_the_server_stands()
    {
        var zone = TimeZoneInfo.FindSystemTimeZoneById("America/New_York");
        var start = TimeProvider.System.GetUtcNow();
        var lastDay = zone.DayOf(start).AddDays(3);
        var clock = new AheadClock { Zone = zone };
        await using var stores = await Stores.NewAsync(postgres, time: clock);
        var small = await SmallPress.CreateAsync(stores);
        var quote = await SmallQuote.FreezeAsync(stores, small, terms: SmallQuote.Terms with { Until = lastDay });
        var ada = (await SmallQuote.LookAsync(stores, SmallPress.Saved(await stores.Quotes.LinkAsync(small.Id, quote.Id, SmallQuote.ForAda, "Press")).Secret))!;

        // In the evening of the last day it is the next day already in universal time; at the midnight after it the day is over here too.
        clock.Ahead = zone.EndOf(lastDay).AddHours(-2) - start;
        Assert.Equal(QuoteState.Out, (await stores.Quotes.FindAsync(small.Id, 1))!.State);
        Assert.Equal(QuoteState.Out, Assert.Single(await stores.Quotes.ListAsync(small.Id)).State);
        clock.Ahead = zone.EndOf(lastDay).AddHours(1) - start;
        Assert.Equal(QuoteState.Lapsed, (await stores.Quotes.FindAsync(small.Id, 1))!.State);
        Assert.IsNotType<SaveResult<QuoteEvent>.Saved>(await stores.Shared.ReplyAsync(ada, SmallQuote.AgreeTo(quote)));
        clock.Ahead = zone.EndOf(lastDay).AddHours(-2) - start;
        Assert.IsType<SaveResult<QuoteEvent>.Saved>(await stores.Shared.ReplyAsync(ada, SmallQuote.AgreeTo(quote)));
    }

    // A press moves to another server, or its host sets another zone.
    [Theory]
    [InlineData("America/Los_Angeles", "Pacific/Kiritimati", QuoteState.Agreed)]
    [InlineData("Pacific/Kiritimati", "America/Los_Angeles", QuoteState.Lapsed)]
    public async Task Whether_somebody_was_released_in_time_stays_as_it_was_wherever_the_server_stands_later(string first, string later, QuoteState stands)
    {
        var (here, start) = (TimeZoneInfo.FindSystemTimeZoneById(first), TimeProvider.System.GetUtcNow());
        var lastDay = here.DayOf(start).AddDays(3);
        var clock = new AheadClock { Zone = here };
        await using var stores = await Stores.NewAsync(postgres, time: clock);
        var small = await SmallPress.CreateAsync(stores);
        var quote = await SmallQuote.FreezeAsync(stores, small, terms: SmallQuote.Terms with { Until = lastDay });
        var ada = (await SmallQuote.LookAsync(stores, SmallPress.Saved(await stores.Quotes.LinkAsync(small.Id, quote.Id, SmallQuote.ForAda, "Press")).Secret))!;
        var bo = SmallPress.Saved(await stores.Quotes.LinkAsync(small.Id, quote.Id, SmallQuote.ForAda with { Name = "Bo", Part = null }, "Press"));
        Assert.IsType<SaveResult<QuoteEvent>.Saved>(await stores.Shared.ReplyAsync(ada, SmallQuote.AgreeTo(quote)));

        // An hour before or after midnight here it is the other day there.
        clock.Ahead = here.EndOf(lastDay).AddHours(stands == QuoteState.Agreed ? -1 : 1) - start;
        SmallPress.Saved(await stores.Quotes.EndAsync(small.Id, quote.Id, bo.Link.Id, "Press"));
        Assert.Equal(stands, (await stores.Quotes.FindAsync(small.Id, 1))!.State);
        (clock.Zone, clock.Ahead) = (TimeZoneInfo.FindSystemTimeZoneById(later), clock.Ahead + TimeSpan.FromDays(2));

        Assert.Equal(stands, (await stores.Quotes.FindAsync(small.Id, 1))!.State);
        Assert.Equal(stands, Assert.Single(await stores.Quotes.ListAsync(small.Id)).State);
    }

    private sealed class AheadClock : TimeProvider
    {
        public TimeZoneInfo Zone { get; set; } = TimeZoneInfo.Local;

        public override TimeZoneInfo LocalTimeZone => Zone;

        public TimeSpan Ahead { get; set; }

        public override DateTimeOffset GetUtcNow() => base.GetUtcNow() + Ahead;
    }
}
