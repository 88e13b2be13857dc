using PressRun.Engine.Costing;

namespace PressRun.Data;

/// <summary>A rule of the libraries beside the contract's own.</summary>
internal static class LibraryRules
{
    /// <summary>A job file may leave a name out; a person must see one to choose by.</summary>
    public static List<Problem> Named(string name) =>
        string.IsNullOrWhiteSpace(name) ? [new Problem("$.name", name, "It needs a name.")] : [];
}
