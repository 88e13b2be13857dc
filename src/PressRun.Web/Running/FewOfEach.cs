namespace PressRun.Web.Running;

/// <summary>What to do with something that is counted.</summary>
internal enum Telling
{
    /// <summary>Not to tell of it.</summary>
    No,

    /// <summary>To tell of it.</summary>
    Yes,

    /// <summary>To tell that more of all is left out from now on; said once.</summary>
    LeftOut,
}

/// <summary>Lets something be told a few times of each of many, of several that belong together not much more often, and of all together only so often, however often it happens: so that a program may count it, and
/// strangers don't fill the log.</summary>
/// <param name="time">The clock.</param>
/// <param name="most">How often of one.</param>
/// <param name="mostTogether">How often of all that belong together.</param>
/// <param name="mostOfAll">How often in all; of no more it is known how often.</param>
/// <param name="within">Within this time; then all are counted anew.</param>
internal sealed class FewOfEach(TimeProvider time, int most, int mostTogether, int mostOfAll, TimeSpan within)
{
    private readonly Dictionary<string, int> groups = [];

    private readonly Dictionary<string, int> members = [];

    private readonly Lock turn = new();

    private long since = time.GetTimestamp();

    private int all;

    /// <summary>What to do now with this one; it is counted where it is told.</summary>
    /// <param name="group">What it belongs to.</param>
    /// <param name="member">Itself.</param>
    public Telling Count(string group, string member)
    {
        lock (turn)
        {
            if (time.GetElapsedTime(since) >= within)
            {
                groups.Clear();
                members.Clear();
                (all, since) = (0, time.GetTimestamp());
            }

            // Only who was told of is kept: whoever takes one address after another of a household uses up no more than its lines.
            var together = groups.GetValueOrDefault(group);
            var alone = member == group ? together : members.GetValueOrDefault(member);
            if (alone >= most || together >= mostTogether || all > mostOfAll)
            {
                return Telling.No;
            }

            if (all++ == mostOfAll)
            {
                return Telling.LeftOut;
            }

            groups[group] = together + 1;
            if (member != group)
            {
                members[member] = alone + 1;
            }

            return Telling.Yes;
        }
    }
}
