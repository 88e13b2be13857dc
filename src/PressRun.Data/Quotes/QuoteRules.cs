using System.Text;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Quoting;

namespace PressRun.Data.Quotes;

/// <summary>What a quote, a link and a remark must be.</summary>
public static class QuoteRules
{
    /// <summary>Most characters of a name.</summary>
    public const int LongestName = 120;

    /// <summary>Most characters of a remark.</summary>
    public const int LongestRemark = 2000;

    /// <summary>Most that may happen by one link within a day; more is a machine's doing.</summary>
    public const int MostADay = 40;

    /// <summary>Furthest that a quote or a link reaches ahead, in days.</summary>
    public const int LongestLife = 366;

    /// <summary>Most that is paid at once of a part of the bill.</summary>
    internal const decimal MostPaid = 1_000_000_000m;

    private static readonly CompositeFormat TryRange = CompositeFormat.Parse("Let them try from 1 to {0} copies, the fewest first.");

    internal static List<Problem> Check(NewQuote quote) => Check(quote.Facts, quote.Landed);

    internal static List<Problem> Check(QuoteFacts facts, decimal landed)
    {
        var problems = new List<Problem>();
        if (facts.Until < facts.FrozenOn || facts.Until.DayNumber - facts.FrozenOn.DayNumber > LongestLife)
        {
            problems.Add(new Problem("$.until", null, "A quote stands from today for at most a year."));
        }

        if (!PlainText.IsStill(facts.Note) || facts.Note.Length > LongestRemark)
        {
            problems.Add(new Problem("$.note", null, "Write a note on one line, at most 2,000 characters."));
        }

        foreach (var (index, part) in facts.Bill.Index())
        {
            if (part.Name.Length > LongestName || !PlainText.IsName(part.Name))
            {
                problems.Add(new Problem($"$.bill[{index}].name", part.Name, "Write a name on one line, at most 120 characters."));
            }
        }

        if (Currency.Find(facts.Currency) is not { } currency)
        {
            problems.Add(new Problem("$.currency", facts.Currency, "Use a code of ISO 4217 in capitals, such as EUR or USD."));
            return problems;
        }

        var split = BillSplit.Of(landed, facts.Bill, currency);
        problems.AddRange(split.Problems.Select(problem => problem with { Path = "$.bill" + problem.Path[1..] }));
        return problems;
    }

    internal static List<Problem> Check(NewLink link, QuoteRecord quote, DateTimeOffset now) =>
        Check(link.Name, link.Rights, link.Part, quote.Facts.Bill.Count, link.EndsAt, now);

    internal static List<Problem> Check(QuoteLink link, int parts) => Check(link.Name, link.Rights, link.Part, parts, link.EndsAt, link.MadeAt);

    private static List<Problem> Check(string name, LinkRights rights, int? part, int parts, DateTimeOffset endsAt, DateTimeOffset madeAt)
    {
        var problems = new List<Problem>();
        if (NameProblem(name) is { } rule)
        {
            problems.Add(new Problem("$.name", name, rule));
        }

        if (rights is { TryFrom: not null } or { TryTo: not null }
            && rights is not { TryFrom: >= 1, TryTo: <= Job.MostCopies })
        {
            problems.Add(new Problem("$.rights.tryFrom", null, string.Format(System.Globalization.CultureInfo.InvariantCulture, TryRange, Job.MostCopies)));
        }
        else if (rights.TryFrom > rights.TryTo)
        {
            problems.Add(new Problem("$.rights.tryTo", null, "Write the fewest copies that they may try first, and the most after it."));
        }

        if (endsAt <= madeAt || endsAt > madeAt.AddDays(LongestLife + 1))
        {
            problems.Add(new Problem("$.endsAt", null, "A link ends after today and within a year."));
        }

        if (part < 0 || part >= parts)
        {
            problems.Add(new Problem("$.part", null, "Name one of the parts of this quote's bill."));
        }

        return problems;
    }

    /// <summary>What is wrong with a person's name; null where nothing is.</summary>
    internal static string? NameProblem(string name) => !PlainText.Shows(name)
        ? "Write a name."
        : name.Length > LongestName || !PlainText.IsStill(name) ? "Write a name on one line, at most 120 characters." : null;

    /// <summary>What is wrong with a remark, whose lines end in <c>\n</c>; null where nothing is.</summary>
    internal static string? RemarkProblem(string words) => !PlainText.Shows(words)
        ? "Write something first."
        : words.Length > LongestRemark || !PlainText.Is(words.Replace("\n", "", StringComparison.Ordinal)) || PlainText.Piles(words) ? "Write at most 2,000 characters of plain text." : null;
}
