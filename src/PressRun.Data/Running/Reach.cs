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
    private int full;
    private long fullSince;
    private volatile bool isAway;

    /// <summary>True while the database has not answered for longer than <see cref="Grace"/>.</summary>
    public bool IsAway => isAway;

    /// <summary>True from the moment that the database had no room to write until it has again.</summary>
    public bool IsFull => Volatile.Read(ref full) != 0;

    /// <summary>The database had no room to write something down.</summary>
    /// <param name="reason">Its own words.</param>
    public void HasNoRoom(string reason)
    {
        if (Interlocked.Exchange(ref full, 1) == 0)
        {
            Volatile.Write(ref fullSince, time.GetTimestamp());
            LogFull(logger, reason);
        }
    }

    /// <summary>The database has written something down.</summary>
    public void HasRoom()
    {
        if (Interlocked.Exchange(ref full, 0) != 0)
        {
            LogRoom(logger, (long)time.GetElapsedTime(Volatile.Read(ref fullSince)).TotalSeconds);
        }
    }

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

    [LoggerMessage(Level = LogLevel.Error, Message = "The disk of the database is full, so that nothing can be saved ({Reason}). Make room; PressRun looks for it all the time, and need not be started anew.")]
    private static partial void LogFull(ILogger logger, string reason);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The disk of the database has room again, after {Seconds} s.")]
    private static partial void LogRoom(ILogger logger, long seconds);

    [LoggerMessage(Level = LogLevel.Error, Message = "The database does not answer: {Reason}. Pages say so until it does; it is looked for all the time.")]
    private static partial void LogAway(ILogger logger, string reason);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The database answers again, after {Seconds} s.")]
    private static partial void LogBack(ILogger logger, long seconds);
}
