using System.Globalization;
using System.Text.RegularExpressions;
using PressRun.Data.Import.Tables;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Import.Notes;

/// <summary>Reads a shop's terms out of the notes of a price list. What it reads is offered with the words it was read from, and never taken by itself.</summary>
public static partial class NoteTerms
{
    // A longer line is no note about a price, and no pattern takes long over so few letters.
    private const int Longest = 400;

    private const decimal Hundred = 100m;

    private static readonly CultureInfo[] Languages = [.. new[] { "en-GB", "de-DE", "fr-FR", "nl-NL", "es-ES", "it-IT" }.Select(CultureInfo.GetCultureInfo)];

    /// <summary>The terms in notes, in their order. All that is said of delivery is one of them.</summary>
    /// <param name="lines">The notes.</param>
    /// <param name="manners">How the file's numbers and days are understood.</param>
    public static IReadOnlyList<NotedTerm> Of(IEnumerable<NoteLine> lines, CellManners manners)
    {
        var terms = new List<NotedTerm>();
        foreach (var term in lines.Where(line => line.Text.Length <= Longest).SelectMany(line => Of(line, manners)))
        {
            var at = term is NotedDelivery ? terms.FindIndex(other => other is NotedDelivery) : -1;
            if (at >= 0)
            {
                terms[at] = ((NotedDelivery)terms[at]).With((NotedDelivery)term);
            }
            else
            {
                terms.Add(term);
            }
        }

        // Most shops tax delivery as they tax goods, and few say so (common practice).
        if (terms.OfType<NotedTax>().FirstOrDefault() is { } tax && terms.Any(term => term is NotedDelivery { Steps.Count: > 0 } or NotedDelivery { Flat: not null }))
        {
            terms.Insert(terms.IndexOf(tax) + 1, new NotedTaxOnDelivery(tax.Line));
        }

        return terms;
    }

    private static IEnumerable<NotedTerm> Of(NoteLine line, CellManners manners)
    {
        foreach (var term in new[] { Day(line, manners), Tax(line, manners), Minimum(line, manners), SetUp(line, manners), Discount(line, manners), Delivery(line, manners) })
        {
            if (term is not null)
            {
                yield return term;
            }
        }
    }

    private static NotedTerm? Tax(NoteLine line, CellManners manners)
    {
        var found = NoteWords.TaxRate().Match(line.Text);
        if (!found.Success || Rate(found, "amount", manners) is not { } rate)
        {
            return null;
        }

        // The nearest word in front of the number says whether it is in the prices, else the first one behind it; without any it comes on top.
        var at = found.Groups["amount"].Index;
        var places = NoteWords.TaxPlace().Matches(line.Text);
        var place = places.LastOrDefault(word => word.Index < at) ?? places.FirstOrDefault();
        return place?.Groups["inside"].Success == true && !NoteWords.TaxNotInside().IsMatch(line.Text) ? new NotedTaxInside(line, rate) : new NotedTax(line, rate);
    }

    private static NotedMinimum? Minimum(NoteLine line, CellManners manners) =>
        Amount(NoteWords.Minimum().Match(line.Text), manners) is { } amount ? new NotedMinimum(line, amount) : null;

    private static NotedSetUp? SetUp(NoteLine line, CellManners manners) =>
        Amount(NoteWords.SetUp().Match(line.Text), manners) is { } amount ? new NotedSetUp(line, amount) : null;

    private static NotedDiscount? Discount(NoteLine line, CellManners manners)
    {
        var found = NoteWords.Discount().Match(line.Text);
        return Amount(found, manners) is { } amount && Rate(found, "rate", manners) is { } rate ? new NotedDiscount(line, new DiscountStep(amount, rate)) : null;
    }

    private static NotedDelivery? Delivery(NoteLine line, CellManners manners)
    {
        if (!NoteWords.AboutDelivery().IsMatch(line.Text))
        {
            return null;
        }

        var free = NoteWords.FreeFrom().Match(line.Text);
        var rest = free.Success ? line.Text.Remove(free.Index, free.Length) : line.Text;
        var steps = NoteWords.DeliveryStep().Matches(rest).Select(step => Step(step, manners)).OfType<MassStep>().ToList();
        var flat = steps.Count == 0 ? Amount(NoteWords.DeliveryPrice().Match(rest), manners) : null;
        return steps.Count == 0 && flat is null && !free.Success ? null
            : new NotedDelivery(line, [.. steps.DistinctBy(step => step.Most).OrderBy(step => step.Most)], flat, Amount(free, manners));
    }

    private static MassStep? Step(Match found, CellManners manners) =>
        Number(found, "mass", manners) is { } mass && Amount(found, manners) is { } price
        && MeasureText.TryParseMass($"{NumberText.Plain(mass)} {found.Groups["unit"].Value.ToLowerInvariant()}", CultureInfo.InvariantCulture, out var most) && JobRules.MassAboveNone.Holds(most)
            ? new MassStep(most, price)
            : null;

    private static NotedDay? Day(NoteLine line, CellManners manners)
    {
        var found = NoteWords.Day().Match(line.Text);
        if (!found.Success || !NoteWords.AboutPrices().IsMatch(line.Text))
        {
            return null;
        }

        var text = found.Groups["day"].Value;
        return new DayCell().Read(text, manners) is { Value: DateOnly day } || InWords(text, out day) ? new NotedDay(line, day) : null;
    }

    private static bool InWords(string text, out DateOnly day)
    {
        day = default;
        var plain = Endings().Replace(text, "$1");
        foreach (var language in Languages)
        {
            if (plain.Any(char.IsLetter) && DateOnly.TryParse(plain, language, DateTimeStyles.AllowWhiteSpaces, out day))
            {
                return true;
            }
        }

        return false;
    }

    private static decimal? Rate(Match found, string group, CellManners manners) =>
        Number(found, group, manners) is { } hundredths && JobRules.Rate.Holds(hundredths / Hundred) ? NumberText.Trimmed(hundredths / Hundred) : null;

    private static decimal? Amount(Match found, CellManners manners) => Number(found, "amount", manners) is { } amount && JobRules.Amount.Holds(amount) ? amount : null;

    private static decimal? Number(Match found, string group, CellManners manners) =>
        found.Success && NumberCells.TryParse(found.Groups[group].Value, manners.Culture, out var number) ? number : null;

    // 1st, 1er: the ending of a number that counts days.
    [GeneratedRegex(@"(\d)(?:st|nd|rd|th|er|\.)(?=\s)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Endings();
}
