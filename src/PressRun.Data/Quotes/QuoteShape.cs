using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using PressRun.Data.Archive;
using PressRun.Data.Conversions;
using PressRun.Engine.Measures;
using PressRun.Engine.Quoting;
using PressRun.JobFile.Reading;
using PressRun.JobFile.Writing;

namespace PressRun.Data.Quotes;

/// <summary>What a quote says, as the text that is frozen, and the fingerprint of all of it.</summary>
internal static class QuoteShape
{
    private const string Rule = "Write what a quote says as { \"press\", \"currency\", \"units\", \"title\", \"printing\", \"plan\", \"lists\", \"frozenOn\", \"until\", \"shows\", \"bill\" }.";
    private const string ListRule = "Write a list in force as { \"name\", \"from\" }.";
    private const string PartRule = "Write a part of the bill as { \"name\", \"weight\" } or { \"name\", \"amount\" }.";

    private static readonly NumberRule Printing = new("Write which printing, from 1.", 1m, 100_000m, IsWhole: true);
    private static readonly NumberRule Weight = new("Write a share above 0, at most 1,000,000.", 0m, BillSplit.MostShares, WithoutLeast: true);
    private static readonly NumberRule Amount = new("Write an amount of 0 or more.", 0m, 1_000_000_000_000m);
    private static readonly Words<QuoteShows> Shows = new(("lines", QuoteShows.Lines), ("totals", QuoteShows.Totals));
    private static readonly TextRule Code = new("Write a code of ISO 4217.", 3, false);
    private static readonly TextRule Colour = new("Write a colour as #rrggbb, or nothing.", 7, true);

    public static string Text(QuoteFacts facts) => Contract.Text(json => WriteMembers(json, facts));

    public static QuoteFacts Read(string text) => Contract.Read<QuoteFacts>(text, Read);

    /// <summary>SHA-256 (FIPS 180-4) of the three texts, each ended by a byte that none of them holds.</summary>
    public static byte[] Fingerprint(string facts, string job, string result) => SHA256.HashData(Encoding.UTF8.GetBytes($"{facts}\0{job}\0{result}\0"));

    public static void WriteMembers(Utf8JsonWriter json, QuoteFacts facts)
    {
        json.WriteString("press", facts.Press);
        json.WriteString("currency", facts.Currency);
        json.WriteString("units", ArchiveWords.Units.Of(facts.Units));
        json.WriteString("title", facts.Title);
        json.WriteString("by", facts.By);
        json.WriteString("colour", facts.Colour);
        json.WriteNumber("printing", facts.Printing);
        json.WriteString("plan", facts.Plan);
        json.WriteStartArray("lists");
        foreach (var list in facts.Lists)
        {
            json.WriteStartObject();
            json.WriteString("name", list.Name);
            WriteDay(json, "from", list.From);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        WriteDay(json, "frozenOn", facts.FrozenOn);
        WriteDay(json, "until", facts.Until);
        json.WriteString("shows", Shows.Of(facts.Shows));
        json.WriteString("note", facts.Note);
        json.WriteStartArray("bill");
        foreach (var part in facts.Bill)
        {
            WritePart(json, part, Currency.Find(facts.Currency)!);
        }

        json.WriteEndArray();
    }

    public static QuoteFacts? Read(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var facts = new QuoteFacts(
            block.Text("press", Need.Must, ArchiveWords.Name) ?? "",
            block.Text("currency", Need.Must, Code) ?? "",
            block.Choice("units", ArchiveWords.Units, Need.Must) ?? default,
            block.Text("title", Need.Must, ArchiveWords.Name) ?? "",
            block.Text("by", Need.Must, ArchiveWords.Text) ?? "",
            block.Text("colour", Need.Must, Colour) ?? "",
            block.Count("printing", Printing, Need.Must) ?? 1,
            block.Text("plan", Need.Must, ArchiveWords.Text) ?? "",
            block.List("lists", Need.Must, ListRule, (item, at) => ReadList(item, at, problems)),
            block.Day("frozenOn", Need.Must) ?? default,
            block.Day("until", Need.Must) ?? default,
            block.Choice("shows", Shows, Need.Must) ?? default,
            block.Text("note", Need.Must, ArchiveWords.Text) ?? "",
            block.List("bill", Need.Must, PartRule, (item, at) => ReadPart(item, at, problems), BillSplit.MostParts));
        block.Close();
        return facts;
    }

    private static void WritePart(Utf8JsonWriter json, BillPart part, Currency currency)
    {
        json.WriteStartObject();
        json.WriteString("name", part.Name);
        switch (part)
        {
            case BillPart.Share share:
                json.WriteNumber("weight", share.Weight);
                break;
            case BillPart.Fixed given:
                json.WriteString("amount", Amounts.AtLeastMinorDigits(given.Amount, currency));
                break;
        }

        json.WriteEndObject();
    }

    private static ListInForce? ReadList(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, ListRule) is not { } block)
        {
            return null;
        }

        var list = new ListInForce(block.Text("name", Need.Must, ArchiveWords.Name) ?? "", block.Day("from", Need.Must) ?? default);
        block.Close();
        return list;
    }

    private static BillPart? ReadPart(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, PartRule) is not { } block)
        {
            return null;
        }

        var name = block.Text("name", Need.Must, ArchiveWords.Name) ?? "";
        var amount = block.Number("amount", Amount);
        var weight = block.Number("weight", Weight, amount is null ? Need.Must : Need.May);
        block.Close();
        return amount is { } given ? new BillPart.Fixed(name, given) : new BillPart.Share(name, weight ?? 1m);
    }

    private static void WriteDay(Utf8JsonWriter json, string name, DateOnly day) => json.WriteString(name, FormattableString.Invariant($"{day:yyyy-MM-dd}"));
}
