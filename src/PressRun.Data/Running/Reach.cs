using Microsoft.Extensions.Logging;

namespace PressRun.Data.Running;

/// <summary>
/// Whether the database is reached, as the one line finds that always listens to it. A short absence, such as a restart, is waited for by whoever asks; one
/// that lasts is known here, told to the log once, and nobody waits for it any more.
/// </summary>
internal sealed partial class Reach(TimeProvider time, ILogger<Reach> logger)
{
    /// <summary>Absences up to this long are waited for.</summary>
    public static readonly TimeSpan Grace = TimeSpan.FromSeconds(5);

    private long? missedSince;
    private volatile bool isAway;

    /// <summary>True while the database has not answered for longer than <see cref="Grace"/>.</summary>
    public bool IsAway => isAway;

    /// <summary>The line is lost, or still not there. One caller at a time.</summary>
    public void Misses(string reason)
    {
        missedSince ??= time.GetTimestamp();
        if (!isAway && time.GetElapsedTime(missedSince.Value) >= Grace)
        {
            isAway = true;
            LogAway(logger, reason);
        }
    }

    /// <summary>The line is there. One caller at a time.</summary>
    public void Answers()
    {
        if (isAway)
        {
            isAway = false;
            LogBack(logger, (long)time.GetElapsedTime(missedSince!.Value).TotalSeconds);
        }

        missedSince = null;
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "The database does not answer: {Reason}. Pages say so until it does; it is looked for all the time.")]
    private static partial void LogAway(ILogger logger, string reason);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The database answers again, after {Seconds} s.")]
    private static partial void LogBack(ILogger logger, long seconds);
}
