using PressRun.Engine.Paper;

namespace PressRun.Data.Presses;

/// <summary>The units a press thinks in; what is stored does not depend on it.</summary>
public enum UnitSystem
{
    /// <summary>Millimetres and grams.</summary>
    Metric,

    /// <summary>Inches and ounces.</summary>
    Imperial,
}

/// <summary>A press and its settings.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What it calls itself.</param>
/// <param name="Currency">ISO 4217 code of all its amounts.</param>
/// <param name="Units">Units shown first.</param>
/// <param name="PaperRegion">Papers offered first.</param>
/// <param name="ReclaimsTax">True where the press gets back the tax that shops charge.</param>
/// <param name="Version">Row version that a save must carry.</param>
public sealed record PressRecord(PressId Id, string Name, string Currency, UnitSystem Units, PaperRegion PaperRegion, bool ReclaimsTax, uint Version)
{
    /// <summary>When it was made or taken in here; null of one that is not stored.</summary>
    public DateTimeOffset? CreatedAt { get; init; }
}

/// <summary>What a new press needs.</summary>
/// <param name="Name">What it calls itself.</param>
/// <param name="Currency">ISO 4217 code.</param>
/// <param name="Units">Units shown first.</param>
/// <param name="PaperRegion">Papers offered first.</param>
public sealed record NewPress(string Name, string Currency, UnitSystem Units, PaperRegion PaperRegion);
