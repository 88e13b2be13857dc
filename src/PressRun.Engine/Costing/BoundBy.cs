namespace PressRun.Engine.Costing;

/// <summary>Who makes copies of the printed sheets.</summary>
public enum BoundBy
{
    /// <summary>The press, by a step of its bench other than packing.</summary>
    Bench,

    /// <summary>
    /// The shop: it prices whole books, or the order takes an operation of its finishing. Operations have names that the shop chose, so any counts.
    /// Loose prints need no binding and come from it as they are.
    /// </summary>
    Shop,

    /// <summary>Nobody: a bound edition for which neither the bench nor the shop does anything after printing.</summary>
    NobodyYet,
}
