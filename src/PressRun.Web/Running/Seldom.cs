namespace PressRun.Web.Running;

/// <summary>Lets something be told now and then, however often it happens: strangers can make it happen, and would fill the log.</summary>
/// <param name="time">The clock.</param>
/// <param name="pause">Time from one telling to the next.</param>
internal sealed class Seldom(TimeProvider time, TimeSpan pause)
{
    private long? told;

    private readonly Lock turn = new();

    /// <summary>True where it may be told now; that counts as a telling.</summary>
    public bool May()
    {
        lock (turn)
        {
            if (told is { } last && time.GetElapsedTime(last) < pause)
            {
                return false;
            }

            told = time.GetTimestamp();
            return true;
        }
    }
}
