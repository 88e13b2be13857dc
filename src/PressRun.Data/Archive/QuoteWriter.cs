using System.Text.Json;
using PressRun.Data.Quotes;
using PressRun.Engine.Measures;
using PressRun.JobFile.Writing;

namespace PressRun.Data.Archive;

/// <summary>Writes quotes into an archive.</summary>
internal static class QuoteWriter
{
    public static void WriteMembers(Utf8JsonWriter json, ArchivedQuote quote, Currency currency)
    {
        json.WriteNumber("number", quote.Number);
        json.WriteString("title", quote.TitleId);
        json.WriteNumber("printing", quote.Printing);
        json.WriteString("madeAt", Moments.Written(quote.MadeAt));
        json.WriteString("by", quote.By);
        json.WriteNumber("quantity", quote.Quantity);
        json.WriteString("landed", Amounts.AtLeastMinorDigits(quote.Landed, currency));
        Maybe(json, "replaces", quote.Replaces);
        json.WriteNumber("seen", quote.Seen);
        json.WriteString("facts", quote.Facts);
        json.WriteString("job", quote.Job);
        json.WriteString("result", quote.Result);
        json.WriteString("fingerprint", Convert.ToHexStringLower(QuoteShape.Fingerprint(quote.Facts, quote.Job, quote.Result)));
        json.WriteStartArray("links");
        foreach (var link in quote.Links)
        {
            json.WriteStartObject();
            WriteLink(json, link);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("events");
        foreach (var happened in quote.Events)
        {
            json.WriteStartObject();
            WriteEvent(json, happened, currency);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteLink(Utf8JsonWriter json, ArchivedLink archived)
    {
        var link = archived.Link;
        json.WriteString("name", link.Name);
        json.WriteString("secretHash", Convert.ToHexStringLower(archived.SecretHash));
        json.WriteString("madeAt", Moments.Written(link.MadeAt));
        json.WriteString("endsAt", Moments.Written(link.EndsAt));
        if (link.EndedAt is { } ended)
        {
            json.WriteString("endedAt", Moments.Written(ended));
        }

        if (link.EndedOn is { } endedOn)
        {
            json.WriteString("endedOn", FormattableString.Invariant($"{endedOn:yyyy-MM-dd}"));
        }

        if (link.MakerGoneAt is { } gone)
        {
            json.WriteString("makerGoneAt", Moments.Written(gone));
        }

        Maybe(json, "tryFrom", link.Rights.TryFrom);
        Maybe(json, "tryTo", link.Rights.TryTo);
        json.WriteBoolean("remark", link.Rights.Remark);
        json.WriteBoolean("agree", link.Rights.Agree);
        Maybe(json, "part", link.Part);
        json.WriteString("answer", ArchiveWords.Answers.Of(link.Answer));
    }

    private static void WriteEvent(Utf8JsonWriter json, ArchivedEvent archived, Currency currency)
    {
        var happened = archived.Event;
        json.WriteString("at", Moments.Written(happened.At));
        json.WriteString("kind", ArchiveWords.QuoteEvents.Of(happened.Kind));
        Maybe(json, "link", archived.Link);
        json.WriteString("by", happened.By);
        if (happened.Words.Length > 0)
        {
            json.WriteString("words", happened.Words);
        }

        Maybe(json, "quantity", happened.Quantity);
        if (happened.Amount is { } amount)
        {
            json.WriteString("amount", Amounts.AtLeastMinorDigits(amount, currency));
        }

        Maybe(json, "part", happened.Part);
        if (happened.Day is { } day)
        {
            json.WriteString("day", FormattableString.Invariant($"{day:yyyy-MM-dd}"));
        }

        if (happened.Fingerprint is { } fingerprint)
        {
            json.WriteString("fingerprint", Convert.ToHexStringLower(fingerprint));
        }
    }

    private static void Maybe(Utf8JsonWriter json, string name, int? number)
    {
        if (number is { } known)
        {
            json.WriteNumber(name, known);
        }
    }
}
