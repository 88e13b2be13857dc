using System.Text.Json;
using PressRun.Data.Tallies;

namespace PressRun.Data.Archive;

/// <summary>Writes the tallies of a printing into an archive.</summary>
internal static class TallyWriter
{
    public static void WriteMembers(Utf8JsonWriter json, ArchivedTally tally)
    {
        json.WriteString("plan", tally.Plan);
        json.WriteString("begunAt", Moments.Written(tally.BegunAt));
        json.WriteNumber("copies", tally.Copies);
        json.WriteNumber("wanted", tally.Wanted);
        TallyShape.WriteSteps(json, tally.Steps);
        json.WriteStartArray("entries");
        foreach (var entry in tally.Entries)
        {
            json.WriteStartObject();
            WriteEntry(json, entry);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (tally.WrittenInto is { } line)
        {
            json.WriteNumber("writtenInto", line);
            json.WriteNumber("writtenEntries", tally.WrittenLines);
        }
    }

    private static void WriteEntry(Utf8JsonWriter json, ArchivedTallyEntry archived)
    {
        var entry = archived.Entry;
        json.WriteNumber("step", entry.Step);
        json.WriteString("kind", ArchiveWords.TallyKinds.Of(entry.Kind));
        if (entry.Copies != 0)
        {
            json.WriteNumber("copies", entry.Copies);
        }

        if (entry.Seconds != 0)
        {
            json.WriteNumber("seconds", entry.Seconds);
        }

        if (entry.By.Length > 0)
        {
            json.WriteString("by", entry.By);
        }

        json.WriteString("at", Moments.Written(archived.At));
        if (archived.TakesBack is { } taken)
        {
            json.WriteNumber("takesBack", taken);
        }
    }
}
