using PdfSharp.Drawing;
using PressRun.Data.Presses;
using PressRun.Engine.Bench;
using PressRun.Web.Bindery.Drawn;
using PressRun.Web.Quotes.Pdf;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Bindery;

/// <summary>A bench sheet on paper, on a page or two.</summary>
public static class BenchPdf
{
    private const int PilesInRow = 6;
    private const int MostPiles = 48;
    private const double Column = 70;
    private const double Caption = 7;

    /// <summary>Sets a bench sheet.</summary>
    /// <param name="view">A run that could be worked out.</param>
    /// <param name="format">How figures are written.</param>
    /// <param name="madeAt">When.</param>
    public static byte[] Of(BinderyView view, PressFormat format, DateTimeOffset madeAt)
    {
        var (sheet, edition) = (view.Sheet!, view.Source.Edition);
        var name = $"{view.Title.Title}, {Words.Printing(edition.Printing)}";
        using var page = new PdfSheet($"Bench sheet, {name}", view.Source.Press.Name, madeAt, view.Source.Press.Units == UnitSystem.Imperial);
        page.Heading($"Bench sheet: {name}", 15);
        page.Note($"{view.Source.Plan.Name} · {format.Size(edition.Page)} · {Words.Of(edition.Binding)}");
        page.Sentence(BenchSentence.Copies(view, format) + BenchSentence.Rest(view, format), 10.5);
        foreach (var caution in sheet.Cautions)
        {
            page.Note($"! {CautionWords.Of(caution, view.Limits, format)}");
        }

        if (sheet.Steps.All(step => step.Kind != WorkKind.Collate))
        {
            page.Heading("The pieces of a copy, from the outside in", 11);
            Piles(page, view, format);
        }

        foreach (var step in sheet.Steps)
        {
            Step(page, view, step, format);
        }

        page.Heading("Make one copy first, and look at it", 11);
        foreach (var line in BenchWords.FirstCopy(view, format))
        {
            page.Note($"- {line}");
        }

        if (BenchWords.Dangers(view) is { Count: > 0 } dangers)
        {
            page.Heading("Mind your hands", 11);
            foreach (var line in dangers)
            {
                page.Note(line);
            }
        }

        return page.Done($"{name} · {view.Source.Press.Name}", (number, of) => $"page {format.Count(number)} of {format.Count(of)}");
    }

    private static void Step(PdfSheet page, BinderyView view, WorkStep step, PressFormat format)
    {
        page.Heading($"{step.Number}  {BenchWords.TitleOf(step)}: {Words.Many(format.Count(step.Copies), step.Copies, "copy", "copies")}", 11);
        foreach (var line in BenchWords.Lines(view, step, format))
        {
            page.Note(line);
        }

        var sheet = view.Sheet!;
        switch (step.Kind)
        {
            case WorkKind.CutApart:
                CutApart(page, view, format);
                break;
            case WorkKind.Collate:
                Piles(page, view, format);
                break;
            case WorkKind.Staple when sheet.Imposition.StaplerStop is { } stop:
                Small(page, BenchPictures.Staples(sheet.Piles[0].Part.Piece, stop, sheet.Imposition.StaplesFromHead, format));
                break;
            case WorkKind.Trim or WorkKind.TrimSpine:
                Small(page, BenchPictures.Cuts(sheet.Untrimmed, sheet.Imposition.Cuts, view.Prepared!.Job.Edition.Trim, format));
                foreach (var (number, cut) in BenchWords.CutsOf(view, step.Kind))
                {
                    page.Row($"Cut {number}: {BenchWords.Of(cut.Edge)} falls off, {BenchWords.Against(cut.Edge)} against the fence", [$"{format.Length(cut.Fence)}"], Column);
                }

                break;
        }
    }

    private static void CutApart(PdfSheet page, BinderyView view, PressFormat format)
    {
        foreach (var plan in view.Sheet!.Apart)
        {
            page.Note($"{BenchWords.Sheets(plan.Sheets)}, {format.Size(new(plan.Sheet.Sheet.Width, plan.Sheet.Sheet.Height))}{(plan.Cuts.Count == 0 ? ": each is one piece, nothing to cut" : "")}");
            foreach (var cut in plan.Cuts)
            {
                page.Row($"Cut {cut.Number}: {BenchWords.Of(cut, format)}", [$"{format.Length(cut.Fence)}"], Column);
            }

            Small(page, SheetPicture.Places(plan.Sheet));
        }

        page.Note(string.Join("; ", view.Sheet.Sheets.Take(MostPiles).Select(sheet => $"sheet {sheet.Number} ({format.Count(sheet.Prints)} prints): {BenchWords.Stacks(sheet)}")) + ".");
    }

    private static void Small(PdfSheet page, Picture picture)
    {
        const double most = 96;
        var scale = most / Math.Max(picture.Width, picture.Height);
        page.Drawing((picture.Height * scale) + 8, (graphics, left, top, _) => PdfPicture.Draw(graphics, picture, left, top + 4, scale));
    }

    private static void Piles(PdfSheet page, BinderyView view, PressFormat format)
    {
        var piles = view.Sheet!.Piles;
        var widest = piles.Max(pile => pile.Part.Piece.Width);
        foreach (var row in piles.Take(MostPiles).Chunk(PilesInRow))
        {
            var pictures = row.Select(pile => BenchPictures.Pile(pile, view.SignOf(pile.PartIndex), widest)).ToList();
            page.Drawing(
                pictures.Max(picture => ScaleOf(page.Width, picture) * picture.Height) + (4 * Caption) + 6,
                (graphics, left, top, width) =>
                {
                    foreach (var (place, pile) in row.Index())
                    {
                        var (at, scale) = (left + (place * width / PilesInRow), ScaleOf(width, pictures[place]));
                        PdfPicture.Draw(graphics, pictures[place], at, top + 3, scale);
                        Captions(graphics, [$"{pile.Number}  {pile.Part.Stock.Name}", $"{pile.Part.Part.Name}, {format.Count(pile.Pieces)} pieces"], at, top + 3 + (scale * pictures[place].Height), (width / PilesInRow) - 6);
                    }
                });
        }

        if (piles.Count > MostPiles)
        {
            page.Note($"Piles {format.Count(MostPiles + 1)} to {format.Count(piles.Count)} go on in the same way.");
        }
    }

    // Two faces of the widest piece fill their column.
    private static double ScaleOf(double width, Picture picture) => Math.Min(1, ((width / PilesInRow) - 6) / Math.Max(picture.Width, 194));

    private static void Captions(XGraphics graphics, IReadOnlyList<string> lines, double left, double top, double room)
    {
        foreach (var (place, words) in lines.Index())
        {
            var font = PaperFonts.Sans(words, Caption, strong: place == 0);
            var shown = words;
            while (shown.Length > 1 && graphics.MeasureString(shown, font).Width > room)
            {
                shown = shown.TrimEnd('…')[..^1] + "…";
            }

            graphics.DrawString(shown, font, XBrushes.Black, left, top + ((place + 1) * (Caption + 1.5)));
        }
    }
}
