using PressRun.Web.Kept;

namespace PressRun.Web.Tallies;

/// <summary>Words for the work at the table.</summary>
public static class TallyWords
{
    private const long SecondsPerMinute = 60;
    private const long MinutesPerHour = 60;

    // Gaps that the page's script fills.
    private const string Hours = "{hours}";
    private const string Minutes = "{minutes}";
    private const string Step = "{step}";
    private const string Steps = "{steps}";
    private const string Further = "{further}";
    private const string Worked = "{time}";
    private const string What = "{what}";
    private const string By = "{by}";
    private const string Done = "{done}";

    /// <summary>A time at the table, to the minute: <c>2 h 5 min</c>.</summary>
    public static string Time(long seconds)
    {
        var minutes = (seconds + (SecondsPerMinute / 2)) / SecondsPerMinute;
        var hours = minutes / MinutesPerHour;
        return hours > 0 ? Say($"{hours} h {minutes % MinutesPerHour} min") : Say($"{minutes} min");
    }

    /// <summary>What the script says that begins a tally.</summary>
    public static Dictionary<string, object> OfBeginning() => new(KeptWords.OfMessages(), StringComparer.Ordinal)
    {
        ["noAnswer"] = Say($"No answer came. It takes a connection to begin a tally; from then on it goes without."),
    };

    /// <summary>What the script says while one counts.</summary>
    public static Dictionary<string, object> OfCounting() => new(KeptWords.OfQueue(), StringComparer.Ordinal)
    {
        ["allIn"] = Say($"All of it is in the tally."),
        ["underWay"] = KeptWords.Turning($"{KeptWords.Number} entry is under way to the tally.", $"{KeptWords.Number} entries are under way to the tally."),
        ["arrived"] = Say("state of an entry", $"in the tally"),
        ["hours"] = Say($"{Hours} h {Minutes} min"),
        ["minutes"] = Say($"{Minutes} min"),
        ["done"] = Say($"{KeptWords.Number} done"),
        ["spoiled"] = Say($"{KeptWords.Number} spoiled"),
        ["ofWork"] = Say($"{Worked} of work"),
        ["counted"] = Say($"{Step}: {What}."),
        ["takenBack"] = Say($"{Step}, {What}: taken back."),
        ["undoThat"] = Say($"Undo {What}"),
        ["place"] = Say($"Step {Step} of {Steps}"),
        ["left"] = Say($"{KeptWords.Number} left"),
        ["allDone"] = Say($"all done"),
        ["noneLeft"] = Say($"none left"),
        ["over"] = KeptWords.Turning($"{KeptWords.Number} copy more was counted than there were.", $"{KeptWords.Number} copies more were counted than there were."),
        ["person"] = Say("who did how many copies", $"{By} {Done}"),
        ["personIn"] = Say("who did how many copies", $"{By} {Done} in {Worked}"),
        ["somebody"] = Say($"somebody"),
        ["stroke"] = Say($"One stroke is {KeptWords.Number} copies."),
        ["start"] = Say("a clock", $"Start"),
        ["pause"] = Say("a clock", $"Pause"),
        ["runs"] = Say($"The clock runs for you at this step."),
        ["clockStands"] = Say($"The clock stands: what is counted now has no minutes of yours."),
        ["asked"] = Say($"{Worked} at {Step} went by without a tap. Were you at it?"),
        ["tooFew"] = Say($"Too few are left: at most {KeptWords.Number} can still come out good."),
        ["noneMore"] = Say($"None may go wrong any more, and {Further} usually still do: it is close."),
        ["close"] = KeptWords.Turning(
            $"{KeptWords.Number} more copy may go wrong, and {Further} usually still do: it is close.", $"{KeptWords.Number} more copies may go wrong, and {Further} usually still do: it is close."),
        ["spare"] = KeptWords.Turning($"{KeptWords.Number} more copy may go wrong before it is too few.", $"{KeptWords.Number} more copies may go wrong before it is too few."),
        ["hasToArrive"] = Say($"What is kept on this phone has to arrive first."),
        ["pauseFirst"] = Say($"Pause your clock first, so that its minutes are in."),
        ["answerFirst"] = Say($"Answer first how long you were at it."),
        ["soFar"] = KeptWords.Turning(
            $"So far {KeptWords.Number} copy was spoiled, and {Worked} of work went into it, all people together.",
            $"So far {KeptWords.Number} copies were spoiled, and {Worked} of work went into it, all people together."),
    };
}
