namespace PressRun.Browser.Programs;

/// <summary>Where the project lies.</summary>
internal static class Repository
{
    /// <summary>Its top folder: the first one above this program that holds the solution.</summary>
    public static string Root { get; } = Above(AppContext.BaseDirectory);

    private static string Above(string folder) => File.Exists(Path.Combine(folder, "PressRun.sln"))
        ? folder
        : Above(Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(folder)) ?? throw new InvalidOperationException("This program runs inside the project only."));
}
