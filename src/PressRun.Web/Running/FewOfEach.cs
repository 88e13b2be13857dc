namespace PressRun.Web.Running;

/// <summary>Lets something be told a few times of each of many, and of several that belong together not much more often, however often it happens: so that a program may count it, and strangers don't fill the log.</summary>
/// <param name="time">The clock.</param>
/// <param name="most">How often of one.</param>
/// <param name="mostTogether">How often of all that belong together.</param>
/// <param name="within">Within this time; then all are counted anew.</param>
/// <param name="mostKept">Of how many it is known how often. Those of one group that come when there are more count as one, and so do all groups that come then.</param>
internal sealed class FewOfEach(TimeProvider time, int most, int mostTogether, TimeSpan within, int mostKept)
{
    private readonly Dictionary<string, int> groups = [];

    private readonly Dictionary<string, int> members = [];

    private readonly Lock turn = new();

    private long since = time.GetTimestamp();

    /// <summary>True where it may be told now of this one; that counts as a telling.</summary>
    /// <param name="group">What it belongs to.</param>
    /// <param name="member">Itself.</param>
    public bool May(string group, string member)
    {
        lock (turn)
        {
            if (time.GetElapsedTime(since) >= within)
            {
                groups.Clear();
                members.Clear();
                since = time.GetTimestamp();
            }

            var counted = IsKept(groups, group) ? group : "";
            var together = groups.GetValueOrDefault(counted);

            // Only who was told of is kept: whoever takes one address after another of a household uses up no more than its lines.
            var apart = counted.Length > 0 && member != group && IsKept(members, member);
            var alone = apart ? members.GetValueOrDefault(member) : together;
            if (alone >= most || together >= mostTogether)
            {
                return false;
            }

            groups[counted] = together + 1;
            if (apart)
            {
                members[member] = alone + 1;
            }

            return true;
        }
    }

    private bool IsKept(Dictionary<string, int> counts, string of) => counts.Count < mostKept || counts.ContainsKey(of);
}
