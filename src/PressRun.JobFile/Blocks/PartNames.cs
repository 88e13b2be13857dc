using PressRun.Engine.Editions;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Blocks;

/// <summary>Parts by their names.</summary>
internal static class PartNames
{
    /// <summary>Place of the part of a name; null where there is not one such part, which is noted.</summary>
    public static int? Find(string name, IReadOnlyList<Part> parts, JsonPath path, ProblemList problems)
    {
        var found = Enumerable.Range(0, parts.Count).Where(index => parts[index].Name == name).ToList();
        if (found.Count == 1)
        {
            return found[0];
        }

        problems.Add(path, name, found.Count == 0
            ? "The edition has no part of this name."
            : "Several parts have this name; give each its own to choose papers for it.");
        return null;
    }
}
