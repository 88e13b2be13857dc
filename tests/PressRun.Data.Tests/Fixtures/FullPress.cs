using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using PressRun.Data.Access;
using PressRun.Data.Copies;
using PressRun.Data.Fixes;
using PressRun.Data.Payouts;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Data.RunPlans;
using PressRun.Data.Shops;
using PressRun.Data.Tallies;
using PressRun.Data.Tests.People;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;
using PressRun.Engine.Copies;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Engine.Quoting;
using PressRun.Engine.Reprint;
using PressRun.Engine.Selling;

namespace PressRun.Data.Tests.Fixtures;

/// <summary>The archive of a press in which something of everything has happened.</summary>
internal static class FullPress
{
    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The small press with a ledger, a tally, a reprint, a fix, payouts, and two quotes of which one replaces the other.</summary>
    public static async Task<SmallPress> CreateAsync(Stores stores)
    {
        var small = await SmallPress.CreateAsync(stores);
        await PlanAsync(stores, small);
        await WriteLedgerAsync(stores, small);
        var second = SmallPress.Saved(await stores.Editions.CopyForwardAsync(small.Id, small.Edition.Id));
        SmallPress.Saved(await stores.Fixes.AddAsync(small.Id, FixNote.Noticed(small.Edition.Id, "a smudge", 3) with { MendedIn = second.Printing }));
        SmallPress.Saved(await stores.Payouts.SaveAsync(
            small.Id,
            new EditionClaims(small.Edition.Id, [new Claim.PerCopy("Ada", 0.25m), new Claim.OfReceipts("Bo", 0.1m), new Claim.OfPrice("Bo", 0.05m), new Claim.OfProfit("Ada", 1m)], 0)));
        SmallPress.Saved(await stores.Payouts.PayAsync(small.Id, new NewPayment(Guid.NewGuid(), small.Edition.Id, new PaidOut("Ada", SmallQuote.Today, 5m)), "Press"));
        await QuoteAsync(stores, small);
        var limits = await stores.BenchLimits.LoadAsync(small.Id);
        SmallPress.Saved(await stores.BenchLimits.SaveAsync(small.Id, limits with { Item = limits.Item with { Clinch = Length.FromMillimetres(1m) } }));
        return small;
    }

    /// <summary>Such a press as an archive.</summary>
    public static async Task<JsonNode> ArchiveAsync(Stores stores) =>
        JsonNode.Parse((await stores.Archives.ExportAsync((await CreateAsync(stores)).Id))!)!;

    /// <summary>The same press with more beside it, so that each column that is its own has somewhere another value than a new row has.</summary>
    public static async Task<PressId> FilledAsync(Stores stores)
    {
        var small = await CreateAsync(stores);
        var id = small.Id;
        SmallPress.Saved(await stores.Presses.SaveAsync(small.Press with { ReclaimsTax = true }));
        await FillLibrariesAsync(stores, id);
        var plan = SmallPress.Saved(await stores.Plans.DuplicateAsync(id, small.Plan.Id, "Half on cards"));
        var inside = small.Edition.Parts[1].Id;
        SmallPress.Saved(await stores.Plans.SaveAsync(id, plan with
        {
            Stocks = new Dictionary<Guid, string>(plan.Stocks) { [inside] = SmallPress.Text.Id },
            SecondHalf = new PlanHalf(inside, SmallPress.Cover.Id),
        }));
        SmallPress.Saved(await stores.Fixes.AddAsync(id, FixNote.Noticed(small.Edition.Id, "a widow", null) with { CarriedPast = 2 }));
        await stores.Quotes.SeeAsync(id, (await stores.Quotes.FindAsync(id, 1))!.Quote.Id, 2);
        await EndWithMakerAsync(stores, id);
        await FillTitleAsync(stores, id);
        // Planned, and without a plan.
        SmallPress.Saved(await stores.Editions.AddAsync(id, SmallPress.NewEdition(small.Title.Id, printing: 3)));
        return id;
    }

    /// <summary>An archive's bytes, its quotes with the fingerprints of what they say: whoever makes one up works them out too.</summary>
    public static byte[] Bytes(JsonNode archive)
    {
        foreach (var quote in (archive["quotes"] as JsonArray ?? []).OfType<JsonObject>())
        {
            var fingerprint = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{Text(quote["facts"])}\0{Text(quote["job"])}\0{Text(quote["result"])}\0")));
            quote["fingerprint"] = fingerprint;
            foreach (var agreed in (quote["events"] as JsonArray ?? []).OfType<JsonObject>().Where(happened => happened.ContainsKey("fingerprint")))
            {
                agreed["fingerprint"] = fingerprint;
            }
        }

        return Encoding.UTF8.GetBytes(archive.ToJsonString(Plain));
    }

    private static async Task FillLibrariesAsync(Stores stores, PressId id)
    {
        SmallPress.Saved(await stores.Stocks.SaveAsync(id, new LibraryItem<Stock>(SmallPress.Text with { Id = "old-text" }, true, 0)));
        SmallPress.Saved(await stores.Mailers.SaveAsync(id, new LibraryItem<Mailer>(SmallPress.BoardMailer with { Id = "bag" }, true, 0)));
        SmallPress.Saved(await stores.Services.SaveAsync(id, new LibraryItem<PostageService>(SmallPress.Letter with { Id = "parcel" }, true, 0)));
        SmallPress.Saved(await stores.Channels.SaveAsync(id, new LibraryItem<Channel>(SmallPress.Post with { Id = "shops", TradeDiscount = 0.4m, Mix = 0m }, true, 0)));
        SmallPress.Saved(await stores.Shops.SaveAsync(id, new ShopRecord("", "Sluice", true, [], 0)));
    }

    // A glued book of which more was sold than was printed, and which is no longer made.
    private static async Task FillTitleAsync(Stores stores, PressId id)
    {
        var title = SmallPress.Saved(await stores.Titles.AddAsync(id, new NewTitle("Ebb Tables", "B. Maker", "#2e6d8a", "")));
        var edition = SmallPress.Saved(await stores.Editions.AddAsync(id, SmallPress.NewEdition(title.Id) with
        {
            Binding = Binding.Perfect,
            Fold = FoldShape.Rounded,
            Trim = new Trim(Length.Zero, Length.Zero, Length.Zero, Length.FromMillimetres(2m)),
            Weighed = new Weighed(null, Length.FromMillimetres(4m)),
        }));
        SmallPress.Saved(await stores.Ledger.WriteAsync(id, new NewMovement(Guid.NewGuid(), edition.Id, SmallPress.ListDate, MovementKind.Sold, 2, 18m)));
        edition = (await stores.Editions.LoadAsync(id, edition.Id))!;
        SmallPress.Saved(await stores.Editions.SaveAsync(id, edition with { Archived = true }));
        SmallPress.Saved(await stores.Titles.SaveAsync(id, title with { Archived = true }));
    }

    // A link of an editor's who has gone.
    private static async Task EndWithMakerAsync(Stores stores, PressId id)
    {
        var editor = await Household.MemberAsync(stores, id, "Ed", PressRole.Editor);
        var quote = (await stores.Quotes.FindAsync(id, 2))!.Quote;
        SmallPress.Saved(await Household.AsAsync(editor, () => stores.Quotes.LinkAsync(id, quote.Id, SmallQuote.ForAda, "Press")));
        await stores.People.RemoveAsync(id, editor.UserId);
    }

    private static string Text(JsonNode? node) => node?.GetValueKind() == JsonValueKind.String ? node.GetValue<string>() : "";

    private static async Task PlanAsync(Stores stores, SmallPress small)
    {
        var reprint = new PlanReprint(
            new ReprintRequest(7, new HistoryDemand([9, 14], 6.0875m, 1.5m, 0.5m, 0m, 3), null, 0.5m, 0m, 0.05m, 400m, 0, 200, 1),
            new Horizon(26, HorizonUnit.Weeks), new DateOnly(2026, 11, 25), new EventAhead(new DateOnly(2026, 12, 5), 1.5m, 3), new OpinionDemand(20m, 40m, 90m, 0));
        SmallPress.Saved(await stores.Plans.SaveAsync(small.Id, small.Plan with { Reprint = reprint }));
    }

    private static async Task WriteLedgerAsync(Stores stores, SmallPress small)
    {
        var tally = SmallPress.Saved(await stores.Tallies.BeginAsync(
            small.Id, new NewTally(Guid.NewGuid(), small.Edition.Id, "Millrace", 160, 150, [new TallyStep("stitch", WorkKind.Staple, 0.03m, 40m), new TallyStep("fold", WorkKind.Fold, 0m, null)])));
        await stores.Tallies.WriteAsync(small.Id, tally.Id,
        [
            Entry(0, TallyKind.Done, 150, 0, false), Entry(0, TallyKind.Spoiled, 6, 0, false), Entry(0, TallyKind.Worked, 0, 3000, false), Entry(1, TallyKind.Done, 20, 0, true),
        ]);
        var printing = new PrintingActual(150, 240.50m, 2m, 3m, 20m, 15m, [new("stitch", 50m, 156, 6)]) { Invoice = [new(InvoicePart.Paper, 40m), new(InvoicePart.Tax, 2m)] };
        await WriteAsync(1, MovementKind.Printed, 150, 260m, printing: printing, tally: new TallySeen(tally.Id, 4));
        await WriteAsync(5, MovementKind.Sold, 12, 90m, "post");
        await WriteAsync(6, MovementKind.Returned, 1, 7.5m, "post");
        await WriteAsync(7, MovementKind.GivenAway, 2, note: "to the library");
        await WriteAsync(20, MovementKind.Counted, 134);
        // Written late: the count had seen it.
        await WriteAsync(8, MovementKind.Spoiled, 1);
        SmallPress.Saved(await stores.Ledger.TakeBackAsync(small.Id, (await WriteAsync(21, MovementKind.Sold, 3, 27m)).Id));

        async Task<MovementRecord> WriteAsync(
            int day, MovementKind kind, int copies, decimal amount = 0m, string? channel = null, string note = "", PrintingActual? printing = null, TallySeen? tally = null) =>
            SmallPress.Saved(await stores.Ledger.WriteAsync(
                small.Id, new NewMovement(Guid.NewGuid(), small.Edition.Id, new DateOnly(2026, 3, day), kind, copies, amount, channel, note, printing, tally)));
    }

    private static NewTallyEntry Entry(int step, TallyKind kind, int copies, int seconds, bool takenBack) =>
        new(Guid.NewGuid(), new TallyEntry(step, kind, copies, seconds, "Ada"), TimeSpan.FromMinutes(5), takenBack);

    private static async Task QuoteAsync(Stores stores, SmallPress small)
    {
        var (quote, _, look) = await SmallQuote.SharedAsync(stores, small);
        SmallPress.Saved(await stores.Shared.ReplyAsync(look, new Reply.Remark("Ada", "Two lines,\nof plain text.")));
        SmallPress.Saved(await stores.Shared.ReplyAsync(look, new Reply.AskFor("Ada", 200, 400m)));
        SmallPress.Saved(await stores.Shared.ReplyAsync(look, SmallQuote.AgreeTo(quote)));
        var other = SmallPress.Saved(await stores.Quotes.LinkAsync(small.Id, quote.Id, SmallQuote.ForAda with { Name = "Bo", Part = null }, "Press"));
        SmallPress.Saved(await stores.Shared.ReplyAsync((await SmallQuote.LookAsync(stores, other.Secret))!, new Reply.TurnDown("Bo", "")));
        SmallPress.Saved(await stores.Quotes.EndAsync(small.Id, quote.Id, other.Link.Id, "Press"));
        SmallPress.Saved(await stores.Quotes.PayAsync(small.Id, quote.Id, 0, 12.5m, SmallQuote.Today, "Press"));
        await SmallQuote.FreezeAsync(stores, small, quote.Id, SmallQuote.Terms with { Shows = QuoteShows.Totals, Bill = [new BillPart.Fixed("Ada", 20m), new BillPart.Share("Press", 1m)] });
    }
}
