using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Blocks;

/// <summary>Checks of ids: written well, used once, and known where they are referred to.</summary>
public static class Keys
{
    /// <summary>Refuses a key that cannot be an id.</summary>
    public static void CheckId(string id, JsonPath path, ProblemList problems)
    {
        if (!JobRules.Id.Holds(id))
        {
            problems.Add(path, id, JobRules.Id.Sentence);
        }
    }

    /// <summary>Refuses an id that is already taken.</summary>
    public static void CheckOnce<T>(HashSet<T> taken, T key, JsonPath path, string value, string rule, ProblemList problems)
    {
        if (!taken.Add(key))
        {
            problems.Add(path, value, rule);
        }
    }

    /// <summary>Refuses an id that nothing has.</summary>
    /// <param name="id">The id referred to; null where there was a problem with it already.</param>
    /// <param name="known">The ids there are; null where that cannot be told.</param>
    /// <param name="path">Where it is referred to.</param>
    /// <param name="what">What it should be the id of: <c>stock</c>.</param>
    /// <param name="problems">Where problems go.</param>
    public static void CheckKnown(string? id, IReadOnlySet<string>? known, JsonPath path, string what, ProblemList problems)
    {
        if (id is null || known is null || known.Contains(id))
        {
            return;
        }

        var meant = !problems.IsFull && Nearest.To(id, known) is { } near ? $" Did you mean \"{near}\"?" : string.Empty;
        problems.Add(path, id, $"There is no {what} with this id.{meant}");
    }
}
