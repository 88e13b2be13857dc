namespace PressRun.Data.Tests.Fixtures;

/// <summary>How often tests that search by repetition repeat: a little each time, and at length where <c>PRESSRUN_LONG</c> is 1.</summary>
internal static class LongRuns
{
    public static int Count(int usual, int atLength) => Environment.GetEnvironmentVariable("PRESSRUN_LONG") == "1" ? atLength : usual;
}
