using PressRun.Engine.Measures;

namespace PressRun.Engine.Paper;

/// <summary>How a paper's surface is made; it tells the usual bulk where nothing else does.</summary>
public enum Finish
{
    /// <summary>Coated: usual bulk 0.9 cm³/g (common practice).</summary>
    Coated,

    /// <summary>Uncoated: usual bulk 1.3 cm³/g (common practice).</summary>
    Uncoated,
}

/// <summary>A paper. At least one of caliper, bulk and finish must be known, for its thickness.</summary>
/// <param name="Id">The stock's id in the job.</param>
/// <param name="Name">What the maker calls it.</param>
/// <param name="Weight">Grammage or basis weight.</param>
/// <param name="StatedCaliper">Thickness of one sheet as measured or stated; null where unknown.</param>
/// <param name="Bulk">Specific volume in cm³/g (ISO 534); null where unknown.</param>
/// <param name="Finish">Surface; null where unknown.</param>
public sealed record Stock(string Id, string Name, PaperWeight Weight, Length? StatedCaliper, decimal? Bulk, Finish? Finish)
{
    /// <summary>Thickness of one sheet: as stated, else grammage × bulk, else grammage × the finish's usual bulk; zero where none is known.</summary>
    public Length Caliper => StatedCaliper
        ?? Length.FromMicrometres(Weight.GramsPerSquareMetre * (Bulk ?? UsualBulk(Finish)));

    /// <summary>True where the caliper rests on nothing but the finish's usual bulk.</summary>
    public bool CaliperIsEstimated => StatedCaliper is null && Bulk is null;

    private static decimal UsualBulk(Finish? finish) => finish switch
    {
        Paper.Finish.Coated => 0.9m,
        Paper.Finish.Uncoated => 1.3m,
        _ => 0m,
    };
}
