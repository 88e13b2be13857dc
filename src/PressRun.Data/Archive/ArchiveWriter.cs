using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using PressRun.Data.Bench;
using PressRun.Data.Copies;
using PressRun.Data.Payouts;
using PressRun.Data.RunPlans;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.JobFile.Writing;

namespace PressRun.Data.Archive;

/// <summary>Writes a press archive as one document, in one form only: the same press is always the same bytes.</summary>
internal static class ArchiveWriter
{
    private static readonly JsonWriterOptions Options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, Indented = true, NewLine = "\n" };

    public static byte[] Write(PressArchive archive)
    {
        var bytes = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(bytes, Options))
        {
            Write(json, archive, Currency.Find(archive.Press.Currency)!);
        }

        return bytes.WrittenSpan.ToArray();
    }

    private static void Write(Utf8JsonWriter json, PressArchive archive, Currency currency)
    {
        json.WriteStartObject();
        json.WriteString("schema", PressArchive.Schema);
        WritePress(json, archive.Press);
        json.WriteStartObject("stocks");
        foreach (var stock in archive.Stocks)
        {
            json.WriteStartObject(stock.Item.Id);
            StockWriter.WriteMembers(json, stock.Item);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        List(json, "shops", archive.Shops, shop => WriteShop(json, shop, currency));
        List(json, "mailers", archive.Mailers, mailer => MailWriter.WriteMembers(json, mailer.Item, currency));
        List(json, "postage", archive.Postage, service => MailWriter.WriteMembers(json, service.Item, currency));
        List(json, "channels", archive.Channels, channel => ChannelWriter.WriteMembers(json, channel.Item, currency));
        json.WriteStartObject("bench");
        BenchWriter.WriteMembers(json, archive.Bench, currency);
        json.WriteEndObject();
        if (archive.Limits != BenchLimits.Usual)
        {
            json.WriteStartObject(BenchLimitsShape.Name);
            BenchLimitsShape.WriteMembers(json, archive.Limits);
            json.WriteEndObject();
        }

        WriteArchived(json, archive);
        List(json, "titles", archive.Titles, title => WriteTitle(json, title, archive.Shops, currency));
        List(json, "quotes", archive.Quotes, quote => QuoteWriter.WriteMembers(json, quote, currency));
        json.WriteEndObject();
    }

    private static void WritePress(Utf8JsonWriter json, ArchivedPress press)
    {
        json.WriteStartObject("press");
        json.WriteString("name", press.Name);
        json.WriteString("currency", press.Currency);
        json.WriteString("units", ArchiveWords.Units.Of(press.Units));
        json.WriteString("paperRegion", ArchiveWords.PaperRegions.Of(press.PaperRegion));
        json.WriteBoolean("reclaimTax", press.ReclaimsTax);
        json.WriteEndObject();
    }

    private static void WriteShop(Utf8JsonWriter json, ArchivedShop shop, Currency currency)
    {
        json.WriteString("id", shop.Id);
        json.WriteString("name", shop.Name);
        WriteArchived(json, shop.Archived);
        List(json, "priceLists", shop.PriceLists, list => ShopWriter.WritePriceListMembers(json, list, currency));
    }

    private static void WriteArchived(Utf8JsonWriter json, PressArchive archive)
    {
        json.WriteStartObject("archived");
        Names(json, "stocks", Archived(archive.Stocks, stock => stock.Id));
        Names(json, "mailers", Archived(archive.Mailers, mailer => mailer.Id));
        Names(json, "channels", Archived(archive.Channels, channel => channel.Id));
        Names(json, "postage", Archived(archive.Postage, ArchiveReader.ServiceKey));
        json.WriteEndObject();
    }

    private static void WriteTitle(Utf8JsonWriter json, ArchivedTitle title, IReadOnlyList<ArchivedShop> shops, Currency currency)
    {
        json.WriteString("id", title.Id);
        json.WriteString("title", title.Title);
        json.WriteString("by", title.By);
        json.WriteString("colour", title.Colour);
        json.WriteString("about", title.About);
        WriteArchived(json, title.Archived);
        List(json, "editions", title.Editions, edition => WriteEdition(json, edition, shops, currency));
    }

    private static void WriteEdition(Utf8JsonWriter json, ArchivedEdition edition, IReadOnlyList<ArchivedShop> shops, Currency currency)
    {
        json.WriteNumber("printing", edition.Edition.Printing);
        if (edition.PrintedOn is { } day)
        {
            Day(json, "printedOn", day);
        }

        if (edition.CopiesPrinted is { } printed)
        {
            json.WriteNumber("copiesPrinted", printed);
        }

        // Where more went than came there is nothing on hand to say; the movements say it.
        if (edition.Movements.Sum(movement => (long)movement.Change) is >= 0 and var onHand)
        {
            json.WriteNumber("copiesOnHand", onHand);
        }

        json.WriteString("price", Amounts.AtLeastMinorDigits(edition.Price, currency));
        json.WriteNumber("freeCopies", edition.FreeCopies);
        WriteArchived(json, edition.Archived);
        EditionWriter.WriteMembers(json, edition.Edition, currency);
        List(json, "plans", edition.Plans, plan => WritePlan(json, plan, shops, currency));
        List(json, "movements", edition.Movements, movement => WriteMovement(json, movement, currency));
        if (edition.Fixes.Count > 0)
        {
            List(json, "fixes", edition.Fixes, fix => WriteFix(json, fix));
        }

        if (edition.Claims.Count > 0)
        {
            ClaimShape.WriteList(json, edition.Claims);
        }

        if (edition.Payments.Count > 0)
        {
            List(json, "payments", edition.Payments, payment => WritePayment(json, payment, currency));
        }

        if (edition.Tallies.Count > 0)
        {
            List(json, "tallies", edition.Tallies, tally => TallyWriter.WriteMembers(json, tally));
        }
    }

    private static void WritePayment(Utf8JsonWriter json, ArchivedPayment payment, Currency currency)
    {
        Day(json, "day", payment.Day);
        json.WriteString("name", payment.Name);
        json.WriteString("amount", Amounts.AtLeastMinorDigits(payment.Amount, currency));
        json.WriteString("by", payment.By);
    }

    private static void WriteFix(Utf8JsonWriter json, ArchivedFix fix)
    {
        Day(json, "noticedOn", fix.NoticedOn);
        json.WriteString("text", fix.Text);
        WritePlace(json, "page", fix.Page);
        WritePlace(json, "mendedIn", fix.MendedIn);
        WritePlace(json, "carriedPast", fix.CarriedPast == 0 ? null : fix.CarriedPast);
    }

    private static void WriteMovement(Utf8JsonWriter json, ArchivedMovement movement, Currency currency)
    {
        Day(json, "day", movement.Day);
        json.WriteString("kind", ArchiveWords.Movements.Of(movement.Kind));
        json.WriteNumber("change", movement.Change);
        if (movement.Amount != 0m)
        {
            json.WriteString("amount", Amounts.AtLeastMinorDigits(movement.Amount, currency));
        }

        WriteWord(json, "channel", movement.Channel);
        WriteWord(json, "note", movement.Note.Length == 0 ? null : movement.Note);
        WritePlace(json, "takesBack", movement.TakesBack);
        WritePlace(json, "settledBy", movement.SettledBy);
        if (movement.Printing is { } printing)
        {
            json.WriteStartObject("printing");
            PrintingShape.WriteMembers(json, printing, currency);
            json.WriteEndObject();
        }
    }

    private static void WriteWord(Utf8JsonWriter json, string name, string? word)
    {
        if (word is not null)
        {
            json.WriteString(name, word);
        }
    }

    private static void WritePlace(Utf8JsonWriter json, string name, int? place)
    {
        if (place is { } number)
        {
            json.WriteNumber(name, number);
        }
    }

    private static void WritePlan(Utf8JsonWriter json, ArchivedPlan plan, IReadOnlyList<ArchivedShop> shops, Currency currency)
    {
        json.WriteString("name", plan.Name);
        json.WriteString("shop", plan.ShopId);
        Day(json, "date", plan.Date);
        if (InForce(plan, shops) != plan.ListFrom)
        {
            Day(json, "priceList", plan.ListFrom);
        }

        json.WriteNumber("quantity", plan.Quantity);
        if (plan.Ladder is { } ladder)
        {
            json.WriteStartObject("ladder");
            json.WriteNumber("from", ladder.From);
            json.WriteNumber("to", ladder.To);
            json.WriteNumber("step", ladder.Step);
            json.WriteEndObject();
        }

        json.WriteBoolean("chosen", plan.Chosen);
        json.WriteStartObject("stocks");
        foreach (var (part, stock) in plan.Stocks.OrderBy(stock => stock.Key, StringComparer.Ordinal))
        {
            json.WriteString(part, stock);
        }

        json.WriteEndObject();
        if (plan.SecondHalf is { } half)
        {
            RequestWriter.WriteHalves(json, half.Part, half.StockId);
        }

        Names(json, "finishing", plan.Finishing);
        Names(json, "benchSteps", plan.BenchSteps);
        if (plan.Reprint is { } reprint)
        {
            ReprintShape.WriteMembers(json, reprint, currency);
        }
    }

    private static DateOnly? InForce(ArchivedPlan plan, IReadOnlyList<ArchivedShop> shops)
    {
        var begun = shops.First(shop => shop.Id == plan.ShopId).PriceLists.Where(list => list.ValidFrom <= plan.Date).ToList();
        return begun.Count == 0 ? null : begun.Max(list => list.ValidFrom);
    }

    private static IReadOnlyList<string> Archived<T>(IReadOnlyList<Kept<T>> things, Func<T, string> id) =>
        [.. things.Where(thing => thing.Archived).Select(thing => id(thing.Item))];

    private static void WriteArchived(Utf8JsonWriter json, bool archived)
    {
        if (archived)
        {
            json.WriteBoolean("archived", true);
        }
    }

    private static void Day(Utf8JsonWriter json, string name, DateOnly day) => json.WriteString(name, FormattableString.Invariant($"{day:yyyy-MM-dd}"));

    // Null means "all", an empty list "none of them"; so they are told apart.
    private static void Names(Utf8JsonWriter json, string name, IReadOnlyList<string>? names)
    {
        if (names is null)
        {
            return;
        }

        json.WriteStartArray(name);
        foreach (var word in names)
        {
            json.WriteStringValue(word);
        }

        json.WriteEndArray();
    }

    private static void List<T>(Utf8JsonWriter json, string name, IReadOnlyList<T> items, Action<T> writeMembers)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            writeMembers(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
