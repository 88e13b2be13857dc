namespace PressRun.Web.People;

/// <summary>A page that is there to change something and nothing else. Whoever may only read is told so in its place; the stores refuse what
/// comes all the same.</summary>
/// <param name="what">What it would do, as it ends the sentence "You may read this press, and not …".</param>
[AttributeUsage(AttributeTargets.Class)]
public sealed class EditsAttribute(string what) : Attribute
{
    /// <summary>What it would do.</summary>
    public string What { get; } = what;
}
