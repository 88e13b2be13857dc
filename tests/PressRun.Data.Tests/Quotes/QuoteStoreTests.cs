using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using PressRun.Data.Quotes;
using PressRun.Data.Tests.Fixtures;
using PressRun.Engine.Costing;
using PressRun.Engine.Quoting;
using PressRun.JobFile;

namespace PressRun.Data.Tests.Quotes;

public sealed class QuoteStoreTests(PostgresFixture postgres)
{
    [Fact]
    public async Task A_quote_is_the_plan_as_it_stood_and_stays_when_prices_move()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var frozen = await SmallQuote.FreezeAsync(stores, small);
        SmallPress.Saved(await stores.PriceLists.SaveAsync(small.Id, small.List with { Prices = small.List.Prices with { SetUp = new(99m, 0m, 0m) } }));

        var whole = (await stores.Quotes.FindAsync(small.Id, 1))!;

        Assert.Equivalent(frozen, whole.Quote, strict: true);
        Assert.Equal(QuoteState.Held, whole.State);
        var reckoned = PreparedJob.Prepare(JobReader.Read(whole.Quote.Job).Value).Value.Estimate(whole.Quote.Quantity).Value.Totals.LandedCost;
        Assert.Equal(whole.Quote.Landed, reckoned);
        Assert.NotEqual(reckoned, PreparedJob.Prepare((await stores.Plans.SourceAsync(small.Id, small.Plan.Id))!.Build()).Value.Estimate(150).Value.Totals.LandedCost);
        Assert.Equal([new ListInForce("Millrace", SmallPress.ListDate), new ListInForce("Letter", SmallPress.ListDate)], whole.Quote.Facts.Lists);
    }

    [Fact]
    public async Task Numbers_count_up_within_the_press_also_when_many_freeze_at_once_and_once_for_each()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var other = await SmallPress.CreateAsync(stores, "Other press");
        var quotes = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => SmallQuote.NewAsync(stores, small)));

        await Task.WhenAll(quotes.Concat(quotes).Select(quote => stores.Quotes.FreezeAsync(small.Id, quote)));

        Assert.Equal([8, 7, 6, 5, 4, 3, 2, 1], (await stores.Quotes.ListAsync(small.Id)).Select(quote => quote.Number));
        Assert.Equal(1, (await SmallQuote.FreezeAsync(stores, other)).Number);
    }

    [Theory]
    [InlineData("UPDATE quotes SET landed = 1")]
    [InlineData("DELETE FROM quotes")]
    [InlineData("UPDATE quote_events SET by = 'x'")]
    [InlineData("DELETE FROM quote_events")]
    [InlineData("TRUNCATE quotes CASCADE")]
    [InlineData("UPDATE quote_links SET try_to = 9")]
    [InlineData("UPDATE quote_links SET made_by = gen_random_uuid()")]
    [InlineData("UPDATE quote_links SET ended_on = now()")]
    [InlineData("UPDATE quote_links SET ended_at = now(), ended_on = now(); UPDATE quote_links SET ended_on = NULL")]
    [InlineData("UPDATE quote_links SET maker_gone_at = now(); UPDATE quote_links SET maker_gone_at = NULL")]
    public async Task The_database_itself_holds_what_is_frozen(string change)
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        await SmallQuote.SharedAsync(stores, small);
        await using var db = stores.Context(small.Id);

        var refused = await Assert.ThrowsAsync<PostgresException>(() => db.Database.ExecuteSqlRawAsync(change));

        Assert.Equal(PostgresErrorCodes.RestrictViolation, refused.SqlState);
    }

    [Fact]
    public async Task The_fingerprint_is_the_hash_of_all_that_is_frozen()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var quote = await SmallQuote.FreezeAsync(stores, small);
        await using var db = stores.Context(small.Id);
        var row = await db.Quotes.SingleAsync();

        var text = Encoding.UTF8.GetBytes(row.Facts + '\0' + row.Job + '\0' + row.Result + '\0');

        Assert.Equal(SHA256.HashData(text), quote.Fingerprint);
        Assert.NotEqual(quote.Fingerprint, (await SmallQuote.FreezeAsync(stores, small, terms: SmallQuote.Terms with { Note = "Other." })).Fingerprint);
    }

    [Fact]
    public async Task A_later_quote_takes_the_place_of_one_and_of_no_other()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var (first, link, _) = await SmallQuote.SharedAsync(stores, small);
        var second = await SmallQuote.FreezeAsync(stores, small, first.Id);

        var again = await stores.Quotes.FreezeAsync(small.Id, await SmallQuote.NewAsync(stores, small, first.Id));

        Assert.Equal(1, second.Replaces);
        var whole = (await stores.Quotes.FindAsync(small.Id, 1))!;
        Assert.Equal((QuoteState.Replaced, 2), (whole.State, whole.ReplacedBy));
        Assert.Equal("$.replaces", Assert.Single(Assert.IsType<SaveResult<QuoteRecord>.Refused>(again).Problems).Path);
        Assert.IsType<SaveResult<MadeLink>.Refused>(await stores.Quotes.LinkAsync(small.Id, first.Id, SmallQuote.ForAda, "Press"));
        Assert.NotNull(await SmallQuote.LookAsync(stores, link.Secret));
    }

    [Fact]
    public async Task A_quote_that_was_answered_since_its_maker_looked_is_not_replaced_before_they_looked_again()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var (first, _, look) = await SmallQuote.SharedAsync(stores, small);
        var looked = (await stores.Quotes.FindAsync(small.Id, 1))!.Changes;
        SmallPress.Saved(await stores.Shared.ReplyAsync(look, SmallQuote.AgreeTo(first)));
        var later = await SmallQuote.NewAsync(stores, small, first.Id);

        var refused = await stores.Quotes.FreezeAsync(small.Id, later with { Seen = looked });

        Assert.Equal("$.replaces", Assert.Single(Assert.IsType<SaveResult<QuoteRecord>.Refused>(refused).Problems).Path);
        Assert.Equal(QuoteState.Agreed, (await stores.Quotes.FindAsync(small.Id, 1))!.State);
        SmallPress.Saved(await stores.Quotes.FreezeAsync(small.Id, later with { Seen = looked + 1 }));
    }

    [Fact]
    public async Task What_other_makers_did_meanwhile_does_not_keep_a_quote_from_being_replaced()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var (first, _, _) = await SmallQuote.SharedAsync(stores, small);
        var looked = (await stores.Quotes.FindAsync(small.Id, 1))!.Changes;
        SmallPress.Saved(await stores.Quotes.LinkAsync(small.Id, first.Id, SmallQuote.ForAda with { Name = "Bo", Part = null }, "Press"));
        SmallPress.Saved(await stores.Quotes.RemarkAsync(small.Id, first.Id, "Press", "Soon."));

        SmallPress.Saved(await stores.Quotes.FreezeAsync(small.Id, await SmallQuote.NewAsync(stores, small, first.Id) with { Seen = looked }));
    }

    [Fact]
    public async Task Terms_that_cannot_be_are_refused_where_they_stand()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var terms = new QuoteTerms(SmallQuote.Today.AddDays(-1), QuoteShows.Lines, "a\u0001", [new BillPart.Fixed("Ada", 1m)]);

        var refused = Assert.IsType<SaveResult<QuoteRecord>.Refused>(await stores.Quotes.FreezeAsync(small.Id, await SmallQuote.NewAsync(stores, small, terms: terms)));

        Assert.Equal(["$.until", "$.note", "$.bill"], refused.Problems.Select(problem => problem.Path));
    }

    [Fact]
    public async Task What_was_paid_is_written_down_and_taken_back_by_a_line_below_zero()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var quote = await SmallQuote.FreezeAsync(stores, small);

        SmallPress.Saved(await stores.Quotes.PayAsync(small.Id, quote.Id, 0, 50m, SmallQuote.Today, "Press"));
        SmallPress.Saved(await stores.Quotes.PayAsync(small.Id, quote.Id, 0, -20m, SmallQuote.Today, "Press"));
        Assert.IsType<SaveResult<QuoteEvent>.Refused>(await stores.Quotes.PayAsync(small.Id, quote.Id, 2, 5m, SmallQuote.Today, "Press"));
        Assert.IsType<SaveResult<QuoteEvent>.Refused>(await stores.Quotes.PayAsync(small.Id, quote.Id, 0, 0.005m, SmallQuote.Today, "Press"));
        Assert.IsType<SaveResult<QuoteEvent>.Refused>(await stores.Quotes.PayAsync(small.Id, quote.Id, 0, 5m, SmallQuote.Today.AddDays(5), "Press"));

        var whole = (await stores.Quotes.FindAsync(small.Id, 1))!;
        Assert.Equal(30m, whole.Events.Where(happened => happened is { Kind: QuoteEventKind.Paid, Part: 0 }).Sum(happened => happened.Amount));
    }

    [Fact]
    public async Task An_edition_that_is_quoted_is_not_taken_out()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        await SmallQuote.FreezeAsync(stores, small);

        var kept = Assert.IsType<DeleteResult.InUse>(await stores.Editions.DeleteAsync(small.Id, small.Edition));
        Assert.Equal(["printing 1: quote 1"], kept.Where);
        Assert.IsType<DeleteResult.InUse>(await stores.Titles.DeleteAsync(small.Id, small.Title));
    }
}
