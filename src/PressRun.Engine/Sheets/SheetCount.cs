namespace PressRun.Engine.Sheets;

/// <summary>Sheets that a number of copies takes.</summary>
public static class SheetCount
{
    /// <summary>Sheets for <paramref name="copies"/> copies and the layout they lie in, never <see cref="Layout.Best"/>.</summary>
    /// <param name="layout">Layout wanted.</param>
    /// <param name="piecesPerCopy">Pieces of the part in a copy, at least 1.</param>
    /// <param name="piecesPerSheet">Pieces out of a sheet, at least 1.</param>
    /// <param name="copies">Copies started.</param>
    public static (long Sheets, Layout Layout) Of(Layout layout, int piecesPerCopy, int piecesPerSheet, long copies)
    {
        var repeats = CeilingDivision(copies, piecesPerSheet);
        var stepAndRepeat = piecesPerCopy * repeats;
        var cutAndStack = CeilingDivision(piecesPerCopy, piecesPerSheet) * copies;
        var combined = (piecesPerCopy / piecesPerSheet * copies) + (piecesPerCopy % piecesPerSheet * repeats);
        return layout switch
        {
            Layout.StepAndRepeat => (stepAndRepeat, layout),
            Layout.CutAndStack => (cutAndStack, layout),
            Layout.Combined => (combined, layout),
            _ when stepAndRepeat <= cutAndStack && stepAndRepeat <= combined => (stepAndRepeat, Layout.StepAndRepeat),
            _ when cutAndStack <= combined => (cutAndStack, Layout.CutAndStack),
            _ => (combined, Layout.Combined),
        };
    }

    private static long CeilingDivision(long amount, long unit) => (amount + unit - 1) / unit;
}
