using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Postage;

/// <summary>An envelope or box that copies are posted in.</summary>
/// <param name="Id">Its id in the job.</param>
/// <param name="Name">What the maker calls it.</param>
/// <param name="Length">One outer side.</param>
/// <param name="Width">The other outer side.</param>
/// <param name="Thickness">What it adds to the copies' thickness.</param>
/// <param name="Mass">Mass when empty.</param>
/// <param name="Price">Price of one.</param>
public sealed record Mailer(string Id, string Name, Length Length, Length Width, Length Thickness, Mass Mass, decimal Price)
{
    /// <summary>Whether a page lies in it, one way or the other.</summary>
    /// <param name="page">Finished page size.</param>
    public bool Holds(Size page)
    {
        var (shortPage, longPage) = page.Width > page.Height ? (page.Height, page.Width) : (page.Width, page.Height);
        var (shortMailer, longMailer) = Width > Length ? (Length, Width) : (Width, Length);
        return shortPage <= shortMailer && longPage <= longMailer;
    }

    /// <summary>Mailer and postage of a piece; null where no service takes it.</summary>
    /// <param name="posted">How it is posted; null where it is packed alone.</param>
    internal decimal? Piece(PostageChoice? posted) => posted is null ? Price : Price + posted.Price;

    /// <summary>A copy in the reader's hands, not rounded: its cost, and its share of the piece. Null where no service takes the piece.</summary>
    /// <param name="unitCost">Landed cost of a copy.</param>
    /// <param name="posted">How the piece is posted; null where it is packed alone.</param>
    /// <param name="copies">Copies of the piece, at least 1.</param>
    internal decimal? InHand(decimal unitCost, PostageChoice? posted, int copies) => unitCost + (Piece(posted) / copies);
}

/// <summary>A carrier's service by one of its dated tables. Limits that are null do not bind; a value equal to a limit fits.</summary>
/// <param name="Id">Its id; several tables of one id differ by date.</param>
/// <param name="Name">What the carrier calls it.</param>
/// <param name="Region">Where it goes.</param>
/// <param name="ValidFrom">First day of the table.</param>
/// <param name="MaxLength">Longest side.</param>
/// <param name="MaxWidth">Other side.</param>
/// <param name="MaxThickness">Thickest.</param>
/// <param name="MinLength">Least of the longest side.</param>
/// <param name="MinWidth">Least of the other side.</param>
/// <param name="MinThickness">Thinnest.</param>
/// <param name="Steps">Prices by mass, rising; the last one's mass is the limit.</param>
public sealed record PostageService(
    string Id,
    string Name,
    string Region,
    DateOnly ValidFrom,
    Length? MaxLength,
    Length? MaxWidth,
    Length? MaxThickness,
    Length? MinLength,
    Length? MinWidth,
    Length? MinThickness,
    IReadOnlyList<MassStep> Steps);
