using System.Text.Json;
using PressRun.Data.Conversions;
using PressRun.Engine.Measures;
using PressRun.Engine.Reprint;
using PressRun.JobFile.Blocks;
using PressRun.JobFile.Reading;
using PressRun.JobFile.Writing;

namespace PressRun.Data.RunPlans;

/// <summary>A plan's reprint as two members: <c>reprint</c> as in a job file, and <c>outlook</c>, how its figures were come by.</summary>
internal static class ReprintShape
{
    private const string Rule = "Write the outlook of a reprint as { \"horizon\", \"unit\", \"seenOn\" } and, where there are any, event and opinion.";
    private const string EventRule = "Write an event as { \"times\", \"days\" } and its first day where it is known.";
    private const string OpinionRule = "Write an opinion as { \"low\", \"likely\", \"high\" }.";

    private static readonly NumberRule Length = new("Write a horizon from 1 to 120.", 1m, Horizon.Most, IsWhole: true);
    private static readonly NumberRule Times = new("Write a number above 0, at most 1,000,000.", 0m, 1_000_000m, WithoutLeast: true);
    private static readonly NumberRule Days = new("Write a number of days from 1 to 366.", 1m, EventAhead.MostDays, IsWhole: true);
    private static readonly NumberRule Copies = new("Write a number of copies from -1,000,000 to 1,000,000.", -1_000_000m, 1_000_000m);
    private static readonly Words<HorizonUnit> Units = new(("weeks", HorizonUnit.Weeks), ("months", HorizonUnit.Months));

    /// <summary>As it is kept in the database.</summary>
    public static JobFileShape<PlanReprint> Document { get; } = new(
        reprint => Contract.Text(json => WriteMembers(json, reprint, Contract.NoCurrency)), text => Contract.Read(text, Read));

    public static void WriteMembers(Utf8JsonWriter json, PlanReprint reprint, Currency currency)
    {
        RequestWriter.WriteReprint(json, reprint.Request, currency);
        json.WriteStartObject("outlook");
        json.WriteNumber("horizon", reprint.Horizon.Length);
        json.WriteString("unit", Units.Of(reprint.Horizon.Unit));
        WriteDay(json, "seenOn", reprint.SeenOn);
        if (reprint.Event is { } ahead)
        {
            json.WriteStartObject("event");
            if (ahead.Day is { } day)
            {
                WriteDay(json, "day", day);
            }

            json.WriteNumber("times", ahead.Times);
            json.WriteNumber("days", ahead.Days);
            json.WriteEndObject();
        }

        if (reprint.Opinion is { } opinion)
        {
            json.WriteStartObject("opinion");
            json.WriteNumber("low", opinion.Low);
            json.WriteNumber("likely", opinion.Likely);
            json.WriteNumber("high", opinion.High);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    /// <summary>Reads the two members; null where there are none, or they cannot be read.</summary>
    public static PlanReprint? ReadMembers(JsonBlock block)
    {
        var request = ReprintBlock.ReadMember(block);
        if (block.Block("outlook", request is null ? Need.May : Need.Must, Rule) is not { } outlook)
        {
            return null;
        }

        var reprint = new Horizon(outlook.Count("horizon", Length, Need.Must) ?? 1, outlook.Choice("unit", Units, Need.Must) ?? HorizonUnit.Months);
        var seen = outlook.Day("seenOn", Need.Must) ?? default;
        var (ahead, opinion) = (ReadEvent(outlook), ReadOpinion(outlook));
        outlook.Close();
        return request is null ? null : new PlanReprint(request, reprint, seen, ahead, opinion);
    }

    public static PlanReprint? Read(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var reprint = ReadMembers(block);
        block.Close();
        return reprint;
    }

    private static EventAhead? ReadEvent(JsonBlock outlook)
    {
        if (outlook.Block("event", Need.May, EventRule) is not { } block)
        {
            return null;
        }

        var ahead = new EventAhead(block.Day("day", Need.May), block.Number("times", Times, Need.Must) ?? 1m, block.Count("days", Days) ?? 1);
        block.Close();
        return ahead;
    }

    private static OpinionDemand? ReadOpinion(JsonBlock outlook)
    {
        if (outlook.Block("opinion", Need.May, OpinionRule) is not { } block)
        {
            return null;
        }

        var opinion = new OpinionDemand(Must("low"), Must("likely"), Must("high"), 0);
        block.Close();
        return opinion;

        decimal Must(string name) => block.Number(name, Copies, Need.Must) ?? 0m;
    }

    private static void WriteDay(Utf8JsonWriter json, string name, DateOnly day) => json.WriteString(name, FormattableString.Invariant($"{day:yyyy-MM-dd}"));
}
