using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Costing;

/// <summary>A part at one quantity.</summary>
/// <param name="Name">Its name.</param>
/// <param name="PiecesPerCopy">Folded sheets, leaves or covers of one copy.</param>
/// <param name="Piece">Size of a piece before trimming.</param>
/// <param name="OnSheets">How it lies on sheets; null where whole books are priced.</param>
/// <param name="MassPerCopy">Mass of its paper in one trimmed copy.</param>
/// <param name="Caliper">Thickness of one of its leaves.</param>
public sealed record PartEstimate(string Name, int PiecesPerCopy, Size Piece, PartSheets? OnSheets, Mass MassPerCopy, Length Caliper);

/// <summary>How a part lies on sheets.</summary>
/// <param name="SheetId">The sheet chosen.</param>
/// <param name="PiecesPerSheet">Pieces out of one sheet, at least 1.</param>
/// <param name="Sheets">Sheets for all copies started.</param>
/// <param name="SheetsPerCopy">Sheets over copies started, not rounded.</param>
/// <param name="Layout">How the pieces share sheets.</param>
/// <param name="Impressions">Printed sides by ink, in the order outside, inside; unprinted sides are left out.</param>
public sealed record PartSheets(
    string SheetId,
    int PiecesPerSheet,
    long Sheets,
    decimal SheetsPerCopy,
    Layout Layout,
    IReadOnlyList<(Ink Ink, long Count)> Impressions);
