using System.Text;
using System.Text.Json;
using PressRun.Data.Quotes;
using PressRun.Engine.Costing;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Archive;

/// <summary>Reads the quotes of an archive. One whose words were changed after it was frozen is refused by its fingerprint.</summary>
internal sealed class QuoteReader(IReadOnlyList<ArchivedTitle> titles, ProblemList problems)
{
    /// <summary>What a list of quotes is.</summary>
    public const string Rule = "Write quotes as a list of { \"number\", \"title\", \"printing\", \"facts\", \"job\", \"result\", \"fingerprint\" } as PressRun exports them.";

    private const string HexRule = "Write the 64 hexadecimal digits of a SHA-256.";
    private const int HashBytes = 32;

    private static readonly NumberRule Number = new("Write a whole number from 1.", 1m, int.MaxValue, IsWhole: true);

    // The next quote counts on from the highest.
    private static readonly NumberRule QuoteNumber = new("Write a whole number from 1.", 1m, 1_000_000_000m, IsWhole: true);
    private static readonly NumberRule Place = new("Write a place in the list, the first being 0.", 0m, int.MaxValue, IsWhole: true);
    private static readonly NumberRule Money = new("Write an amount of money.", -1_000_000_000_000m, 1_000_000_000_000m);
    private static readonly TextRule Hex = new(HexRule, 2 * HashBytes, false);

    private readonly HashSet<int> numbers = [];
    private readonly HashSet<string> hashes = new(StringComparer.Ordinal);

    public ArchivedQuote? Read(JsonElement element, JsonPath path)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var links = block.List("links", Need.Must, Rule, ReadLink);
        var quote = new ArchivedQuote(
            block.Count("number", QuoteNumber, Need.Must) ?? 0,
            block.Text("title", Need.Must, JobRules.Id) ?? "",
            block.Count("printing", JobRules.Printing, Need.Must) ?? 0,
            Moments.Read(block, "madeAt"),
            block.Text("by", Need.Must, ArchiveWords.Text) ?? "",
            block.Count("quantity", Number, Need.Must) ?? 1,
            block.Number("landed", Money, Need.Must) ?? 0m,
            Document(block, "facts"),
            Document(block, "job"),
            Document(block, "result"),
            block.Count("replaces", Number),
            block.Count("seen", Place, Need.Must) ?? 0,
            links,
            block.List("events", Need.Must, Rule, (item, at) => ReadEvent(item, at, links.Count)));
        var said = Hash(block, "fingerprint");
        block.Close();
        if (problems.IsEmpty)
        {
            Check(quote, said, path);
        }

        return quote;
    }

    private void Check(ArchivedQuote quote, byte[] said, JsonPath path)
    {
        if (!said.AsSpan().SequenceEqual(QuoteShape.Fingerprint(quote.Facts, quote.Job, quote.Result)))
        {
            problems.Add(path.Member("fingerprint"), Convert.ToHexStringLower(said), "What is frozen here is not what this fingerprint is of: the quote was changed.");
        }
        else if (!CanBeRead(quote.Facts))
        {
            problems.Add(path.Member("facts"), (string?)null, "Write the facts of a quote as PressRun exports them.");
        }

        if (!titles.Any(title => title.Id == quote.TitleId && title.Editions.Any(edition => edition.Edition.Printing == quote.Printing)))
        {
            problems.Add(path.Member("title"), quote.TitleId, "Name a title and a printing of this archive.");
        }

        if (quote.Replaces is { } replaced && !numbers.Contains(replaced))
        {
            problems.Add(path.Member("replaces"), $"{replaced}", "Name an earlier quote of the list by its number.");
        }

        if (!numbers.Add(quote.Number))
        {
            problems.Add(path.Member("number"), $"{quote.Number}", "Another quote has this number already.");
        }
    }

    private static bool CanBeRead(string facts)
    {
        try
        {
            QuoteShape.Read(facts);
            return true;
        }
        catch (Exception exception) when (exception is InvalidOperationException or JsonException)
        {
            return false;
        }
    }

    private ArchivedLink? ReadLink(JsonElement element, JsonPath path)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var link = new QuoteLink(
            Guid.Empty,
            block.Text("name", Need.Must, ArchiveWords.Name) ?? "",
            new LinkRights(block.Count("tryFrom", Number), block.Count("tryTo", Number), block.Flag("remark", Need.Must) ?? false, block.Flag("agree", Need.Must) ?? false),
            Moments.Read(block, "endsAt"),
            block.Has("endedAt") ? Moments.Read(block, "endedAt") : null,
            block.Count("part", Place),
            block.Choice("answer", ArchiveWords.Answers, Need.Must) ?? default,
            Moments.Read(block, "madeAt"))
        {
            EndedOn = Moments.Day(block, "endedOn", Need.May),
            MakerGoneAt = block.Has("makerGoneAt") ? Moments.Read(block, "makerGoneAt") : null,
        };
        // No place on earth is a whole day away from universal time.
        if (link.EndedOn is { } day && Math.Abs(day.DayNumber - DateOnly.FromDateTime((link.EndedAt ?? default).UtcDateTime).DayNumber) > 1)
        {
            problems.Add(path.Member("endedOn"), $"{day:yyyy-MM-dd}", "Write the day of endedAt, or of the day before or after it where the server stood far from universal time.");
        }

        var hash = Hash(block, "secretHash");
        if (!hashes.Add(Convert.ToHexStringLower(hash)))
        {
            problems.Add(path.Member("secretHash"), (string?)null, "Another link has this hash already; no two links are the same.");
        }

        block.Take("endedAt", Need.May, Moments.Rule);
        block.Take("makerGoneAt", Need.May, Moments.Rule);
        block.Close();
        return new ArchivedLink(link, hash);
    }

    private ArchivedEvent? ReadEvent(JsonElement element, JsonPath path, int links)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var link = block.Count("link", Place);
        if (link >= links)
        {
            problems.Add(path.Member("link"), $"{link}", Place.Sentence);
        }

        var happened = new QuoteEvent(
            0,
            Moments.Read(block, "at"),
            block.Choice("kind", ArchiveWords.QuoteEvents, Need.Must) ?? default,
            null,
            block.Text("by", Need.Must, ArchiveWords.Text) ?? "",
            Document(block, "words", Need.May),
            block.Count("quantity", Number),
            block.Number("amount", Money),
            block.Count("part", Place),
            Moments.Day(block, "day", Need.May),
            block.Has("fingerprint") ? Hash(block, "fingerprint") : null);
        block.Take("fingerprint", Need.May, HexRule);
        block.Close();
        return new ArchivedEvent(happened, link);
    }

    // A text of several lines, as it stands.
    private string Document(JsonBlock block, string name, Need need = Need.Must)
    {
        if (block.Take(name, need, "Write a text.") is not { } element)
        {
            return "";
        }

        if (element.ValueKind == JsonValueKind.String && element.GetString() is { } text && !text.Contains('\0', StringComparison.Ordinal) && Encoding.UTF8.GetByteCount(text) > 0)
        {
            return text;
        }

        problems.Add(block.Path.Member(name), element, "Write a text.");
        return "";
    }

    private byte[] Hash(JsonBlock block, string name)
    {
        if (block.Text(name, Need.Must, Hex) is not { } text)
        {
            return [];
        }

        if (text.Length == 2 * HashBytes && text.All(char.IsAsciiHexDigitLower))
        {
            return Convert.FromHexString(text);
        }

        problems.Add(block.Path.Member(name), text, HexRule);
        return [];
    }
}
