namespace PressRun.Tests;

/// <summary>A clock that stands until it is moved.</summary>
internal sealed class SetClock : TimeProvider
{
    private DateTimeOffset now = new(2026, 11, 2, 9, 0, 0, TimeSpan.Zero);

    public void Pass(TimeSpan time) => now += time;

    public override DateTimeOffset GetUtcNow() => now;
}
