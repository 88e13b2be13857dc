using PressRun.Engine.Bench;

namespace PressRun.Web.Tallies;

/// <summary>Words for the work at the table.</summary>
public static class TallyWords
{
    private const long SecondsPerMinute = 60;
    private const long MinutesPerHour = 60;

    /// <summary>The trade's name of a step that the press's table has none for.</summary>
    public static string Of(WorkKind kind) => kind switch
    {
        WorkKind.CutApart => "cut apart",
        WorkKind.Score => "score",
        WorkKind.Collate => "collate",
        WorkKind.Jog => "jog",
        WorkKind.TrimSpine => "trim the spine",
        WorkKind.Staple => "staple",
        WorkKind.Glue => "glue",
        WorkKind.Fold => "fold",
        WorkKind.Press => "press under weight",
        WorkKind.Trim => "trim",
        WorkKind.Pack => "pack",
        _ => "other work",
    };

    /// <summary>A time at the table, to the minute: <c>2 h 5 min</c>.</summary>
    public static string Time(long seconds)
    {
        var minutes = (seconds + (SecondsPerMinute / 2)) / SecondsPerMinute;
        var hours = minutes / MinutesPerHour;
        return hours > 0 ? FormattableString.Invariant($"{hours} h {minutes % MinutesPerHour} min") : FormattableString.Invariant($"{minutes} min");
    }
}
