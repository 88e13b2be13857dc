using PressRun.Data.People;
using PressRun.Data.Quotes;
using PressRun.Data.Running;
using PressRun.Engine.Quoting;

namespace PressRun.Data.Tests.Fixtures;

/// <summary>A quote of the small press's plan, frozen today and open for a month, its bill shared by two.</summary>
internal static class SmallQuote
{
    public static DateOnly Today => TimeProvider.System.Today();

    public static QuoteTerms Terms => new(Today.AddDays(30), QuoteShows.Lines, "Paper is from the old list.", [new BillPart.Share("Ada", 2m), new BillPart.Share("Press", 1m)]);

    public static LinkRights AllRights => new(50, 300, Remark: true, Agree: true);

    public static NewLink ForAda => new("Ada", AllRights, TimeProvider.System.GetUtcNow().AddDays(30), 0);

    public static async Task<NewQuote> NewAsync(Stores stores, SmallPress small, Guid? replaces = null, QuoteTerms? terms = null)
    {
        var source = (await stores.Plans.SourceAsync(small.Id, small.Plan.Id))!;
        return QuoteFreezing.Of(Guid.NewGuid(), source, source.Build(), small.Title, terms ?? Terms, Today, "Low Tide Press", replaces).Value;
    }

    public static async Task<QuoteRecord> FreezeAsync(Stores stores, SmallPress small, Guid? replaces = null, QuoteTerms? terms = null) =>
        SmallPress.Saved(await stores.Quotes.FreezeAsync(small.Id, await NewAsync(stores, small, replaces, terms)));

    public static async Task<(QuoteRecord Quote, MadeLink Link, SharedLook Look)> SharedAsync(Stores stores, SmallPress small, NewLink? link = null)
    {
        var quote = await FreezeAsync(stores, small);
        var made = SmallPress.Saved(await stores.Quotes.LinkAsync(small.Id, quote.Id, link ?? ForAda, "Low Tide Press"));
        return (quote, made, (await LookAsync(stores, made.Secret))!);
    }

    public static Task<SharedLook?> LookAsync(Stores stores, string secret) =>
        stores.Shared.LookAsync(Secret.Hash(secret));

    public static Reply.Agree AgreeTo(QuoteRecord quote, string name = "Ada Reed") => new(name, quote.Quantity, quote.Fingerprint);
}
