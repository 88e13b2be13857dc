using System.Text;
using System.Text.Json;
using PressRun.Data.Quotes;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Engine.Quoting;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Archive;

/// <summary>What frozen quotes must keep beside their shape and their fingerprint.</summary>
internal static class QuoteArchiveRules
{
    private const string ResultRule = "Write the costing of the quote's job as PressRun exports it, of the quote's quantity and landed cost.";
    private const string JobRule = "Write the job file of the quote as PressRun exports it.";

    /// <summary>Notes what is wrong.</summary>
    public static void Check(IReadOnlyList<ArchivedQuote> quotes, JsonPath at, ProblemList problems)
    {
        var successors = new Dictionary<int, int>();
        foreach (var (place, quote) in quotes.Index())
        {
            if (quote.Replaces is { } replaced && !successors.TryAdd(replaced, quote.Number))
            {
                problems.Add(at.Item(place).Member("replaces"), $"{replaced}", "Another quote replaces this one already; replace the latest.");
            }
        }

        foreach (var (place, quote) in quotes.Index())
        {
            Check(quote, successors.TryGetValue(quote.Number, out var successor) ? successor : null, at.Item(place), problems);
        }
    }

    private static void Check(ArchivedQuote quote, int? successor, JsonPath at, ProblemList problems)
    {
        var facts = QuoteShape.Read(quote.Facts);
        problems.AddAll(at, LibraryRules.Still("$.by", quote.By));
        problems.AddAll(at.Member("facts"), Problems(facts, quote));
        CheckStill(quote.Job, at.Member("job"), problems);
        CheckStill(quote.Result, at.Member("result"), problems);
        var figures = FrozenFigures.Read(Encoding.UTF8.GetBytes(quote.Result));
        if (figures is null || figures.Landed != quote.Landed || quote.Landed < 0m || !JobRules.Copies.Holds(quote.Quantity))
        {
            problems.Add(at.Member("result"), (string?)null, ResultRule);
        }

        // A job that a later version reads otherwise is kept as it is, and only its document looked at.
        if (!JsonText.Open(Encoding.UTF8.GetBytes(quote.Job), JobRules.MostBytes).Succeeded)
        {
            problems.Add(at.Member("job"), (string?)null, JobRule);
        }

        foreach (var (place, link) in quote.Links.Index())
        {
            problems.AddAll(at.Member("links").Item(place), QuoteRules.Check(link.Link, facts.Bill.Count));
        }

        new QuoteCourseRules(quote, facts, successor, at, problems).Check();
    }

    // Whatever a version makes of a frozen document: its pages show names out of it, and none that turns or hides what stands beside it.
    private static void CheckStill(string document, JsonPath at, ProblemList problems)
    {
        if (JsonText.Open(Encoding.UTF8.GetBytes(document), JobRules.MostBytes) is { Succeeded: true, Value: var open })
        {
            using (open)
            {
                if (!IsStill(open.RootElement))
                {
                    problems.Add(at, (string?)null, LibraryRules.StillRule);
                }
            }
        }
    }

    private static bool IsStill(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.String => PlainText.IsStill(element.GetString()!),
        JsonValueKind.Array => element.EnumerateArray().All(IsStill),
        JsonValueKind.Object => element.EnumerateObject().All(member => PlainText.IsStill(member.Name) && IsStill(member.Value)),
        _ => true,
    };

    private static List<Problem> Problems(QuoteFacts facts, ArchivedQuote quote)
    {
        var problems = QuoteRules.Check(facts, quote.Landed);
        if (facts.Lists.Count == 0)
        {
            problems.Add(new Problem("$.lists", null, "A quote names the price list that it goes by."));
        }

        problems.AddRange(TitleStore.Problems(new TitleRecord(
            Guid.Empty, "", facts.Title, facts.By, facts.Colour.Length == 0 ? "#000000" : facts.Colour, "", false, 0)));
        problems.AddRange(LibraryRules.Named(facts.Press).Select(problem => problem with { Path = "$.press" }));
        problems.AddRange(LibraryRules.Still("$.plan", facts.Plan));
        problems.AddRange(facts.Lists.SelectMany((list, index) => LibraryRules.Still($"$.lists[{index}].name", list.Name)));
        return problems;
    }
}
