namespace PressRun.Web.Libraries;

/// <summary>Where something is used, in words.</summary>
internal static class UseWords
{
    private const int Most = 4;

    /// <summary>The first of the places, and how many more there are.</summary>
    public static string Of(IReadOnlyList<string> where)
    {
        var first = string.Join("; ", where.Take(Most));
        return where.Count > Most ? Say($"{first}; and {where.Count - Most} more") : first;
    }
}
