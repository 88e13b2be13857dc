namespace PressRun.Web.Tests.Support;

/// <summary>A clock that passes by hand.</summary>
public sealed class HandClock : TimeProvider
{
    private TimeSpan passed;

    /// <summary>Lets time pass.</summary>
    public void Pass(TimeSpan time) => passed += time;

    /// <inheritdoc/>
    public override long GetTimestamp() => passed.Ticks;

    /// <inheritdoc/>
    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow() => DateTimeOffset.UnixEpoch + passed;
}
