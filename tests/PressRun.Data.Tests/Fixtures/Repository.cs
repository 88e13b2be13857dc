namespace PressRun.Data.Tests.Fixtures;

/// <summary>Files of the repository that the tests look at.</summary>
internal static class Repository
{
    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = Find();

    /// <summary>The sample press.</summary>
    public static string SamplePress => Path.Combine(Root, "seed-data");

    private static string Find()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "PressRun.sln")))
        {
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The tests do not run inside the repository.");
        }

        return folder;
    }
}
