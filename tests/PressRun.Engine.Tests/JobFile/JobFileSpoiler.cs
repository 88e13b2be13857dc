using System.Text;
using System.Text.Json.Nodes;
using PressRun.JobFile;

namespace PressRun.Engine.Tests.JobFile;

/// <summary>Spoils job files at random, the same way for the same number: by their values, by their keys, and byte by byte.</summary>
internal sealed class JobFileSpoiler
{
    private static readonly string[] Values =
    [
        "null", "true", "false", "0", "-0", "1", "-1", "2", "3", "4", "0.5", "0.999999999999", "1e-20", "1e28", "1e300", "-1e300", "999999999999", "1000000", "1000001", "79228162514264337593543950335",
        "\"\"", "\" \"", "\"0\"", "\"1\"", "\"0.01\"", "\"-5\"", "\"1e12\"", "\"NaN\"", "\"Infinity\"", "\"0 mm\"", "\"1 mm\"", "\"10 m\"", "\"5.5 in\"", "\"1/3 in\"", "\"-1 mm\"", "\"1 um\"", "\"0.0000000001 mm\"",
        "\"1 g\"", "\"0.001 g\"", "\"999999999 kg\"", "\"1 gsm\"", "\"10000 gsm\"", "\"300 lb tag\"", "\"2026-03-02\"", "\"9999-12-31\"", "\"0001-01-01\"", "\"home\"", "\"board\"", "\"saddle\"", "\"side\"",
        "\"perfect\"", "\"loose\"", "\"colour\"", "\"black\"", "\"none\"", "\"assured\"", "\"always\"", "\"incremental\"", "\"rounded\"", "\"parallelToSpine\"", "\"flatSheets\"", "\"trimmedCopies\"", "\"combined\"",
        "\"cutAndStack\"", "\"piece\"", "\"silk-cover\"", "\"cream-text\"", "\"tabloid-plus\"", "\"JPY\"", "\"KWD\"", "\"\\u0000\"", "\"(half)\"", "\"=1+1\"", "[]", "{}", "[[]]", "[1]", "[null]",
    ];

    private static readonly byte[][] Scraps =
        [.. new[] { "{", "}", "[", "]", ",", ":", "\"", "\\", "null", "1", "-", "e9", "\u0000", "é", "//", "\uFEFF", "\"quantity\":7,", "\"bleed\":false," }.Select(Encoding.UTF8.GetBytes)];

    private readonly Random random;
    private readonly JsonObject[] originals;

    public JobFileSpoiler(int number)
    {
        random = new Random(number);
        var perfect = Example.With("edition.binding", "\"perfect\"");
        var books = Example.With("shop.bookPrices", """[ { "binding": "saddle", "pagesFrom": 8, "pagesTo": 64, "steps": [ { "from": 1, "each": "1.20", "perPage": "0.030" } ] } ]""");
        Example.Set(books, "shop.delivers", "\"trimmedCopies\"");
        Example.Set(books, "shop.finishing", "[]");
        Example.Set(books, "shop.quantities", "[25, 50, 100, 200, 500]");
        var mixed = Example.With("shop.sheets.tabloid-plus.mixedLayout", "true");
        Example.Set(mixed, "bench.overs.mode", "\"assured\"");
        originals = [Example.Job(), JsonNode.Parse(JobResources.SampleJob)!.AsObject(), perfect, books, mixed];
    }

    /// <summary>The next spoilt file.</summary>
    public byte[] Next()
    {
        var job = originals[random.Next(originals.Length)].DeepClone().AsObject();
        if (random.Next(3) == 0)
        {
            return SpoilBytes(Encoding.UTF8.GetBytes(job.ToJsonString()));
        }

        for (var times = random.Next(1, 4); times > 0; times--)
        {
            SpoilValue(job);
        }

        // Half of a surrogate pair, which no JSON library writes but any file may hold.
        return Encoding.UTF8.GetBytes(job.ToJsonString().Replace("(half)", "\\ud800", StringComparison.Ordinal));
    }

    private void SpoilValue(JsonObject job)
    {
        var places = new List<JsonNode>();
        Collect(job, places);
        var place = places[random.Next(places.Count)];
        var value = JsonNode.Parse(Values[random.Next(Values.Length)]);
        switch (place.Parent)
        {
            case JsonObject members:
                Spoil(members, place.GetPropertyName(), value);
                break;
            case JsonArray items:
                Spoil(items, place.GetElementIndex(), value);
                break;
        }
    }

    private void Spoil(JsonObject members, string name, JsonNode? value)
    {
        switch (random.Next(6))
        {
            case 0:
                members.Remove(name);
                break;
            case 1:
                members[name + "x"] = value;
                break;
            case 2:
                var other = members.ElementAt(random.Next(members.Count)).Value;
                members[name] = other?.DeepClone();
                break;
            default:
                members[name] = value;
                break;
        }
    }

    private void Spoil(JsonArray items, int index, JsonNode? value)
    {
        switch (random.Next(4))
        {
            case 0:
                items.RemoveAt(index);
                break;
            case 1:
                items.Add(items[index]?.DeepClone());
                break;
            case 2:
                items.Insert(0, items[^1]?.DeepClone());
                break;
            default:
                items[index] = value;
                break;
        }
    }

    private byte[] SpoilBytes(byte[] bytes)
    {
        var spoilt = bytes.ToList();
        for (var times = random.Next(1, 4); times > 0; times--)
        {
            var at = random.Next(spoilt.Count);
            switch (random.Next(6))
            {
                case 0:
                    spoilt[at] = (byte)random.Next(256);
                    break;
                case 1:
                    spoilt.RemoveAt(at);
                    break;
                case 2:
                    spoilt.InsertRange(at, Scraps[random.Next(Scraps.Length)]);
                    break;
                case 3:
                    spoilt.RemoveRange(at, Math.Min(random.Next(1, 40), spoilt.Count - at));
                    break;
                case 4:
                    spoilt.InsertRange(at, spoilt.GetRange(at, Math.Min(random.Next(1, 80), spoilt.Count - at)));
                    break;
                default:
                    ChangeDigit(spoilt, at);
                    break;
            }
        }

        return [.. spoilt];
    }

    // A digit for a digit: the kind of mistake that people make and that often reads as a job.
    private void ChangeDigit(List<byte> bytes, int from)
    {
        var at = bytes.FindIndex(from, letter => letter is >= (byte)'0' and <= (byte)'9');
        if (at >= 0)
        {
            bytes[at] = (byte)('0' + random.Next(10));
        }
    }

    private static void Collect(JsonNode node, List<JsonNode> places)
    {
        foreach (var child in node is JsonObject members ? members.Select(member => member.Value) : node is JsonArray items ? items : [])
        {
            if (child is not null)
            {
                places.Add(child);
                Collect(child, places);
            }
        }
    }
}
