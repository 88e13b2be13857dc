using System.Text.Json;
using PressRun.Data.Tallies;
using PressRun.Engine.Bench;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Archive;

/// <summary>Reads the tallies of a printing.</summary>
/// <param name="movements">Lines of its ledger.</param>
/// <param name="problems">What is wrong.</param>
internal sealed class TallyReader(int movements, ProblemList problems)
{
    private const string Rule = "Write tallies as a list of { \"plan\", \"begunAt\", \"copies\", \"wanted\", \"steps\", \"entries\" }.";
    private const string EntryRule = "Write what was written down at the table as { \"step\", \"kind\", \"copies\" or \"seconds\", \"by\", \"at\" }.";
    private const string PlaceRule = "Name an entry of the list by its place, the first being 0.";
    private const string LineRule = "Name a movement of this printing by its place, the first being 0.";

    private static readonly NumberRule Place = new(PlaceRule, 0m, int.MaxValue, IsWhole: true);
    private static readonly NumberRule Copies = Whole($"Write a whole number of copies, at most {TallyStore.MostCopies}, below 0 for what is taken back.", TallyStore.MostCopies);
    private static readonly NumberRule Seconds = Whole($"Write a whole number of seconds, at most {TallyStore.MostSeconds}, below 0 for what is taken back.", TallyStore.MostSeconds);
    private static readonly TextRule By = new($"Write a name on one line, at most {TallyStore.MostName} characters.", TallyStore.MostName, true);

    public IReadOnlyList<ArchivedTally> ReadAll(JsonBlock edition) => edition.List("tallies", Need.May, Rule, Read);

    private ArchivedTally? Read(JsonElement element, JsonPath path)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var steps = TallyShape.ReadSteps(block);
        var tally = new ArchivedTally(
            block.Text("plan", Need.May, JobRules.Name) ?? "",
            Moments.Read(block, "begunAt"),
            block.Count("copies", JobRules.Copies, Need.Must) ?? 1,
            block.Count("wanted", JobRules.Copies, Need.Must) ?? 1,
            steps,
            block.List("entries", Need.May, EntryRule, (item, at) => ReadEntry(item, at, steps.Count)),
            block.Count("writtenInto", Place),
            block.Count("writtenEntries", Place) ?? 0);
        foreach (var (place, entry) in tally.Entries.Index())
        {
            Check(entry.TakesBack, tally.Entries.Count, path.Member("entries").Item(place).Member("takesBack"), PlaceRule);
        }

        Check(tally.WrittenInto, movements, path.Member("writtenInto"), LineRule);
        block.Close();
        return tally;
    }

    private ArchivedTallyEntry? ReadEntry(JsonElement element, JsonPath path, int steps)
    {
        if (JsonBlock.Open(element, path, problems, EntryRule) is not { } block)
        {
            return null;
        }

        var entry = new TallyEntry(
            block.Count("step", Place, Need.Must) ?? 0,
            block.Choice("kind", ArchiveWords.TallyKinds, Need.Must) ?? default,
            block.Count("copies", Copies) ?? 0,
            block.Count("seconds", Seconds) ?? 0,
            block.Text("by", Need.May, By) ?? "");
        Check(entry.Step, steps, path.Member("step"), "Name a step of the tally by its place, the first being 0.");
        var archived = new ArchivedTallyEntry(entry, Moments.Read(block, "at"), block.Count("takesBack", Place));
        block.Close();
        return archived;
    }

    private void Check(int? place, int count, JsonPath at, string rule)
    {
        if (place >= count)
        {
            problems.Add(at, $"{place}", rule);
        }
    }

    private static NumberRule Whole(string sentence, int most) => new(sentence, -most, most, IsWhole: true);
}
