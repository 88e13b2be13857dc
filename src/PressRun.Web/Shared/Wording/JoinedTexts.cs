using System.Text.RegularExpressions;

namespace PressRun.Web.Shared.Wording;

/// <summary>Sentences with gaps that other projects put together, so that they can be told in another language: each is known again by what stands between its gaps.</summary>
public static class JoinedTexts
{
    private static readonly Joined[] All =
    [
        // The run and its list.
        new(gap => $"The run would cost more than {gap[0]}; look for a price, a time or a mass that is too large."),
        new(gap => $"A run has 1 to {gap[0]} good copies."),
        new(gap => $"{gap[0]} copies would have to be started and the shop sells {gap[1]} at most."),
        new(gap => $"The price list must be in force on the job's date, {gap[0]}."),
        new(gap => $"Parts times sheet sizes are at most {gap[0]}; leave out the sheets that this edition does not use."),
        new(gap => $"A ladder rises by at least 1 and has 1 to {gap[0]} quantities."),
        new(gap => $"The range ends at or after its start, {gap[0]}."),
        new(gap => $"Pieces of part '{gap[0]}' are too small for exact mixed layouts on sheets this large and many; set mixedLayout to false."),
        new(gap => $"No sheet of the shop takes this part: {Each(gap[0], "; ")}."),
        new(gap => $"on '{gap[0]}' there is no price for {Each(gap[1], " and ", Say("between the last two of a list", $" and "))}"),
        new(gap => $"for '{gap[0]}' the piece is too large by {Told(gap[1])}"),
        new(gap => $"{gap[0]} across and {gap[1]} along"),
        new(gap => $"{gap[0]} across"),
        new(gap => $"{gap[0]} along"),
        new(gap => $"paper '{gap[0]}'"),
        new(_ => $"colour print"),
        new(_ => $"black print"),
        new(gap => $"The freight would weigh more than {gap[0]}; look for a mass or a size that is too large."),
        new(gap => $"The freight weighs {gap[0]}, more than the last step's {gap[1]}, and there is no price for further kilograms."),
        new(gap => $"These choices make more rows than {gap[0]}; try fewer stocks or quantities."),

        new(gap => $"So many pieces of {gap[0]} lie on one sheet that they cannot be drawn; a sheet is laid out for at most {gap[1]}."),
        new(gap => $"The sheets of this run have more than {gap[0]} places together, too many to be laid out piece by piece."),

        // The book.
        new(gap => $"All parts together have at most {gap[0]} pages."),
        new(gap => $"Folded and stapled parts take a multiple of 4 pages; the nearest are {Or(gap[0])}."),
        new(gap => $"The cover of a perfect-bound book has {Or(gap[0])} pages."),
        new(gap => $"Leaves take a multiple of 2 pages; the nearest are {Or(gap[0])}."),

        // What sells.
        new(gap => $"Copies on hand are 0 to {gap[0]}."),
        new(gap => $"Quantities are 0 to {gap[0]}."),
        new(gap => $"The last quantity is not below the first and at most {gap[0]}."),
        new(gap => $"A plan looks at no more than {gap[0]} quantities."),
        new(gap => $"Copies promised are 0 to {gap[0]}."),
        new(gap => $"At most {gap[0]} copies."),
        new(gap => $"The mean is 0 to {gap[0]} copies."),
        new(gap => $"Sales of a period are 0 to {gap[0]}."),
        new(gap => $"That expects {gap[0]} copies, more than {gap[1]}."),

        // Who pays and who gets what.
        new(gap => $"The fixed parts come to {gap[0]} more than the bill. Lower one of them."),
        new(gap => $"{gap[0]} of the bill is nobody's. Let someone carry a share of the rest."),
        new(gap => $"A bill is shared by at most {gap[0]}."),
        new(gap => $"At most {gap[0]} lines say who gets what."),
        new(gap => $"{gap[0]} has agreed by this link already; one answer by a link counts."),
        new(gap => $"{gap[0]} has turned it down by this link already; one answer by a link counts."),

        // Names and notes.
        new(gap => $"Write a plan's name on one line, at most {gap[0]} characters."),
        new(gap => $"Write the press's name on one line, at most {gap[0]} characters."),
        new(gap => $"Write a text on one line, at most {gap[0]} characters."),
        new(gap => $"Write a note on one line, at most {gap[0]} characters."),
        new(gap => $"Write what is to be mended on one line, at most {gap[0]} characters."),
        new(gap => $"Write the number of the page, from 1 to {gap[0]}, or leave it empty."),
        new(gap => $"Write the name of whoever counts on one line, at most {gap[0]} characters."),
        new(gap => $"Write the name that others are to read, of at most {gap[0]} characters."),

        // Signing in.
        new(gap => $"You have {gap[0]} passkeys. Take one out first."),
        new(gap => $"A password has at most {gap[0]} characters."),
        new(gap => $"A password has at least {gap[0]} characters; this one has {gap[1]}. Four or five words that do not belong together are easy to remember."),

        // Files.
        new(gap => $"This press reckons in {gap[0]}; its prices and those of the file cannot stand beside each other."),
        new(gap => $"Rows {gap[0]} and {gap[1]} say {gap[2]} and {gap[3]} for the same. Keep one of them, or write under {Told(gap[4])} what sets them apart."),
        new(gap => $"A row above and this one say {gap[0]} and {gap[1]} for the same. Keep one of them, or write under {Told(gap[2])} what sets them apart."),
        new(gap => $"Rows {gap[0]} and {gap[1]} say the same but for {Told(gap[2])}: {gap[3]} and {gap[4]}. Keep one of them."),
        new(gap => $"A row above and this one say the same but for {Told(gap[0])}: {gap[1]} and {gap[2]}. Keep one of them."),
        new(gap => $"Several have this name; write the id: {Or(gap[0])}."),
        new(gap => $"There is no {gap[0]} of this name. Did you mean {gap[1]}?"),
        new(gap => $"There is no {gap[0]} of this name. Add it first, or write one that there is."),
        new(gap => $"{gap[0]}: {Told(gap[1])} Part several by a plus sign, the outermost first."),
        new(gap => $"Write what the row is: {gap[0]}, or one of {gap[1]}."),
        new(gap => $"{Told(gap[0])} is needed. {Told(gap[1])}"),
        new(gap => $"{Told(gap[0])} is needed."),
        new(gap => $"The file cannot be read as JSON past line {gap[0]}, column {gap[1]}: look for a comma, quote or bracket too many or too few there (or more than {gap[2]} levels)."),
        new(gap => $"The file is larger than {gap[0]} bytes."),
        new(gap => $"The key \"{gap[0]}\" stands twice in one object; keep one of them."),
        new(gap => $"The key \"{gap[0]}\" is not known here. Did you mean \"{gap[1]}\"?"),
        new(gap => $"The key \"{gap[0]}\" is not known here."),
        new(gap => $"There is no {gap[0]} with this id. Did you mean \"{gap[1]}\"?"),
        new(gap => $"There is no {gap[0]} with this id."),
        new(gap => $"Write at most {gap[0]} entries here."),
        new(gap => $"This is required for {gap[0]} and is missing. Write it as {gap[1]}."),
        new(gap => $"This is required and is missing. {Told(gap[0])}"),
        new(gap => $"Steps must rise: write more than {gap[0]}, where the step before stands."),
        new(gap => $"A ladder ends where it begins, at {gap[0]}, or above."),
        new(gap => $"A ladder has at most 10,000 quantities and this one {gap[0]}; write a larger step."),
        new(gap => $"{gap[0]} more problems are not listed here; mend these first."),

        // Where something is in use.
        new(gap => $"printing {gap[0]}: lines in its copies ledger"),
        new(gap => $"printing {gap[0]}: a tally of its table"),
        new(gap => $"printing {gap[0]}: quote {gap[1]}"),
        new(gap => $"printing {gap[0]}: payments out of its sales"),
        new(gap => $"{gap[0]}, printing {gap[1]}: plan {gap[2]}"),
        new(gap => $"{gap[0]}, printing {gap[1]}: sales"),
        new(gap => $"{gap[0]}, printing {gap[1]}: {gap[2]}"),
        new(gap => $"{gap[0]}: prices from {gap[1]}"),
    ];

    /// <summary>The sentence in the viewer's language; null where it is none of these.</summary>
    public static string? Find(string sentence)
    {
        ArgumentNullException.ThrowIfNull(sentence);
        foreach (var joined in sentence.Length == 0 ? [] : All)
        {
            if (joined.Read(sentence) is { } gaps)
            {
                return Say(joined.Text(gaps));
            }
        }

        return null;
    }

    /// <summary>What stands in the sentences, their gaps numbered.</summary>
    public static IEnumerable<string> Formats => All.Select(joined => joined.Format);

    private static string Told(string gap) => SayWhole(gap);

    private static string Or(string list) => Each(list, " or ", Say("between the last two of a list", $" or "));

    private static string Each(string list, string parting, string? told = null) => string.Join(told ?? parting, list.Split(parting).Select(SayWhole));

    private sealed class Joined(Func<string[], FormattableString> text)
    {
        private const int MostGaps = 5;

        // What people typed fills the gaps: looked through once, never again from the beginning.
        private readonly Lazy<Regex> form = new(() => new Regex(
            "^" + Regex.Replace(Regex.Escape(FormatOf(text)), @"\\\{[0-9]}", "(.+?)") + "$", RegexOptions.NonBacktracking | RegexOptions.Singleline));

        public Func<string[], FormattableString> Text => text;

        public string Format => FormatOf(text);

        public string[]? Read(string sentence) => form.Value.Match(sentence) is { Success: true } found
            ? [.. found.Groups.Values.Skip(1).Select(group => group.Value)]
            : null;

        private static string FormatOf(Func<string[], FormattableString> text) => text([.. Enumerable.Repeat(string.Empty, MostGaps)]).Format;
    }
}
