using PressRun.Engine.Costing;
using PressRun.JobFile;

namespace PressRun.Data;

/// <summary>A rule of the libraries beside the contract's own.</summary>
internal static class LibraryRules
{
    /// <summary>What a name must be that may be left out.</summary>
    public const string StillRule = "Write a name on one line, without signs that turn its direction or cannot be seen.";

    /// <summary>A job file may leave a name out; a person must see one to choose by.</summary>
    public static List<Problem> Named(string name) =>
        !PlainText.Shows(name) ? [new Problem("$.name", name, "It needs a name.")] : [.. Still("$.name", name)];

    /// <summary>What is wrong with the names of the things of a list, each of which may be left out.</summary>
    public static IEnumerable<Problem> Names(string list, IEnumerable<string> names) => names.SelectMany((name, at) => Still($"$.{list}[{at}].name", name));

    /// <summary>What is wrong with a name that may be left out.</summary>
    public static IEnumerable<Problem> Still(string path, string name) =>
        PlainText.IsStill(name) && name.Length <= JobRules.Name.Most ? [] : [new Problem(path, null, StillRule)];
}
