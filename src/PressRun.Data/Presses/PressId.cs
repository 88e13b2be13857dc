namespace PressRun.Data.Presses;

/// <summary>Which press a row belongs to. A type of its own, so that it cannot be mixed up with the id of a title, an edition or a plan.
/// The default is no press at all and finds nothing.</summary>
/// <param name="Value">The id as the database holds it.</param>
public readonly record struct PressId(Guid Value)
{
    /// <summary>An id for a new press; ids rise with time, so that new rows lie beside each other.</summary>
    public static PressId New() => new(Guid.CreateVersion7());

    /// <summary>The id as it stands in an address.</summary>
    public override string ToString() => Value.ToString();
}
