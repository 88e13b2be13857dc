namespace PressRun.Web.Running;

/// <summary>Lets something be told a few times of each of many, however often it happens: so that a program may count it, and strangers don't fill the log.</summary>
/// <param name="time">The clock.</param>
/// <param name="most">How often of one.</param>
/// <param name="within">Within this time; then all are counted anew.</param>
/// <param name="mostKept">Of how many it is known how often; all that come when there are more count as one.</param>
internal sealed class FewOfEach(TimeProvider time, int most, TimeSpan within, int mostKept)
{
    private readonly Dictionary<string, int> times = [];

    private readonly Lock turn = new();

    private long since = time.GetTimestamp();

    /// <summary>True where it may be told now of this one; that counts as a telling.</summary>
    public bool May(string of)
    {
        lock (turn)
        {
            if (time.GetElapsedTime(since) >= within)
            {
                times.Clear();
                since = time.GetTimestamp();
            }

            var counted = times.Count < mostKept || times.ContainsKey(of) ? of : "";
            var before = times.GetValueOrDefault(counted);
            times[counted] = Math.Min(before, most) + 1;
            return before < most;
        }
    }
}
