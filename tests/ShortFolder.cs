namespace PressRun.Tests;

/// <summary>Where tests keep a database: in a folder with a short path, as that of a socket must be. In memory where <c>TEST_DATABASES_IN</c> names such a place, as
/// nothing of it outlives the run and a slow disk would make up most of it.</summary>
internal static class ShortFolder
{
    /// <summary>Path of a folder that is not there yet.</summary>
    /// <param name="of">What it is for, in a word.</param>
    public static string New(string of) =>
        Path.Combine(Environment.GetEnvironmentVariable("TEST_DATABASES_IN") ?? "/tmp", $"pressrun-{of}-" + Guid.NewGuid().ToString("N")[..8]);
}
