using System.Text.Json;
using System.Text.RegularExpressions;
using PressRun.Data.Fixes;
using PressRun.Data.Payouts;
using PressRun.Data.Titles;
using PressRun.Engine.Editions;
using PressRun.JobFile;
using PressRun.JobFile.Blocks;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Archive;

/// <summary>Reads titles with their editions.</summary>
internal static partial class TitleReader
{
    private const string Rule = "Write a title as { \"id\", \"title\", \"by\", \"colour\", \"about\", \"editions\" }.";
    private const string EditionRule = "Write an edition with its printing, copies, price and the fields of a job file's edition.";
    private const string PlansRule = "Write plans as a list of { \"name\", \"shop\", \"date\", \"quantity\" } and the like.";
    private const string FixRule = "Write a note of what is to be mended as { \"noticedOn\", \"text\", \"page\", \"mendedIn\", \"carriedPast\" }.";
    private const string PaymentRule = "Write a payment as { \"day\", \"name\", \"amount\", \"by\" }.";
    private const string ColourRule = "Write a colour as # and six hexadecimal digits, such as \"#8a3b2e\".";
    private const string SlugRule = "Write a title's id in small letters without accents, digits and hyphens, at most 200 characters: it stands in addresses.";

    private static readonly NumberRule Paid = new("Write the amount that was paid, below 0 for what was paid back.", -1_000_000_000m, 1_000_000_000m);
    private static readonly TextRule FixText = new($"Write what is to be mended on one line, at most {FixNoteStore.MostText} characters.", FixNoteStore.MostText, false);

    public static ArchivedTitle? Read(
        JsonElement element, JsonPath path, IReadOnlySet<string>? stockIds, IReadOnlySet<string> channelIds, PlanReader plans, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var id = Matching(block, "id", SearchText.IsSlug, SlugRule);
        var words = block.Text("title", Need.Must, ArchiveWords.Name) ?? "";
        var by = block.Text("by", Need.May, ArchiveWords.Text) ?? "";
        var colour = Matching(block, "colour", Colour().IsMatch, ColourRule);
        var about = block.Text("about", Need.May, ArchiveWords.Text) ?? "";
        var archived = block.Flag("archived") ?? false;
        var printings = new HashSet<int>();
        var editions = block.List("editions", Need.May, EditionRule, (item, place) =>
        {
            var edition = ReadEdition(item, place, words, stockIds, channelIds, plans, problems);
            if (edition is not null)
            {
                Keys.CheckOnce(
                    printings, edition.Edition.Printing, place.Member("printing"), $"{edition.Edition.Printing}", "The title has this printing already.", problems);
            }

            return edition;
        });
        block.Close();
        return new ArchivedTitle(id, words, by, colour, about, archived, editions);
    }

    private static ArchivedEdition? ReadEdition(
        JsonElement element, JsonPath path, string title, IReadOnlySet<string>? stockIds, IReadOnlySet<string> channelIds, PlanReader plans, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, EditionRule) is not { } block)
        {
            return null;
        }

        var printing = block.Count("printing", JobRules.Printing, Need.Must) ?? 0;
        var printedOn = Moments.Day(block, "printedOn", Need.May);
        var printed = block.Count("copiesPrinted", MovementReader.Copies);
        var edition = EditionBlock.Read(block, title, printing, stockIds);
        var read = new ArchivedEdition(
            edition,
            printedOn,
            printed,
            MovementReader.Read(block, channelIds, printedOn, printed),
            block.Number("price", JobRules.Amount, Need.Must) ?? 0m,
            block.Count("freeCopies", JobRules.CopiesOrNone) ?? 0,
            block.Flag("archived") ?? false,
            block.List("plans", Need.May, PlansRule, (item, place) => plans.Read(item, place, edition.Parts, problems)),
            block.List("fixes", Need.May, FixRule, (item, place) => ReadFix(item, place, printing, problems)),
            ClaimShape.ReadList(block),
            block.List("payments", Need.May, PaymentRule, (item, place) => ReadPayment(item, place, problems)));
        read = read with { Tallies = new TallyReader(read.Movements.Count, problems).ReadAll(block) };
        CheckOneChosen(read.Plans, path.Member("plans"), problems);
        block.Close();
        return read;
    }

    private static ArchivedPayment? ReadPayment(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, PaymentRule) is not { } block)
        {
            return null;
        }

        var payment = new ArchivedPayment(
            Moments.Day(block, "day", Need.Must) ?? default,
            block.Text("name", Need.Must, ArchiveWords.Name) ?? "",
            block.Number("amount", Paid, Need.Must) ?? 0m,
            block.Text("by", Need.Must, ArchiveWords.Text) ?? "");
        block.Close();
        return payment;
    }

    private static ArchivedFix? ReadFix(JsonElement element, JsonPath path, int printing, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, FixRule) is not { } block)
        {
            return null;
        }

        var later = new NumberRule("Write the number of a later printing than this one.", printing + 1m, int.MaxValue, IsWhole: true);
        var fix = new ArchivedFix(
            Moments.Day(block, "noticedOn", Need.Must) ?? default,
            block.Text("text", Need.Must, FixText) ?? "",
            block.Count("page", JobRules.Pages),
            block.Count("mendedIn", later),
            block.Count("carriedPast", later) ?? 0);
        block.Close();
        return fix;
    }

    private static void CheckOneChosen(IReadOnlyList<ArchivedPlan> plans, JsonPath path, ProblemList problems)
    {
        if (plans.Count(plan => plan.Chosen) > 1)
        {
            problems.Add(path, (string?)null, "An edition goes by one plan: mark one of them as chosen.");
        }
    }

    private static string Matching(JsonBlock block, string name, Func<string, bool> matches, string rule)
    {
        var text = block.Text(name, Need.Must, new TextRule(rule, 200, false));
        if (text is not null && !matches(text))
        {
            block.Problems.Add(block.Path.Member(name), text, rule);
        }

        return text ?? "";
    }

    [GeneratedRegex(@"\A#[0-9a-fA-F]{6}\z")]
    private static partial Regex Colour();
}
