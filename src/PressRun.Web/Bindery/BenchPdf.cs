using PdfSharp.Drawing;
using PressRun.Data.Presses;
using PressRun.Engine.Bench;
using PressRun.Web.Bindery.Drawn;
using PressRun.Web.Pdf;
using PressRun.Web.RunPlans;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Faces;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Bindery;

/// <summary>A bench sheet on paper, on a page or two.</summary>
public static class BenchPdf
{
    private const int PilesInRow = 4;
    private const double Drawn = 92;
    private const int MostSheets = 48;
    private const double Column = 70;
    private const double Caption = 7;
    private const double CaptionLine = 8.5;

    /// <summary>Sets a bench sheet.</summary>
    /// <param name="view">A run that could be worked out.</param>
    /// <param name="format">How figures are written.</param>
    /// <param name="madeAt">When.</param>
    public static byte[] Of(BinderyView view, PressFormat format, DateTimeOffset madeAt)
    {
        var (sheet, edition) = (view.Sheet!, view.Source.Edition);
        var name = $"{view.Title.Title}, {Words.Printing(edition.Printing)}";
        using var page = new PdfSheet(Say($"Bench sheet, {name}"), view.Source.Press.Name, madeAt, view.Source.Press.Units == UnitSystem.Imperial);
        page.Heading(Say($"Bench sheet: {name}"), 15);
        page.Note($"{view.Source.Plan.Name} · {format.Size(edition.Page)} · {Words.Of(edition.Binding)}");
        page.Sentence(BenchSentence.Of(view, format), 10.5);
        if (BenchSentence.Arrives(view, format) is { } arrives)
        {
            page.Text(arrives);
        }

        if (HalvesWords.AtTheTable(view.Prepared!, sheet.Estimate, format) is { } kinds)
        {
            page.Text(kinds);
        }

        foreach (var caution in sheet.Cautions)
        {
            page.Note($"! {CautionWords.Of(caution, view.Limits, format)}");
        }

        page.Heading(Say($"One copy first"), 11, BenchWords.FirstOne(view));
        foreach (var line in BenchWords.FirstCopy(view, format))
        {
            page.Check(line);
        }

        if (DangerWords.OfCartons(view, format) is { } cartons)
        {
            page.Note($"! {cartons}");
        }

        if (sheet.Steps.All(step => step.Kind != WorkKind.Collate))
        {
            page.Heading(BenchWords.PiecesOfACopy(view), 11);
            Piles(page, view, format);
        }

        foreach (var step in sheet.Steps)
        {
            page.Whole(to => Step(to, view, step, format));
        }

        if (DangerWords.Any(view, format))
        {
            page.Space(8);
            page.Note(DangerWords.Above);
        }

        return page.Done($"{name} · {view.Source.Press.Name}", (number, of) => Say($"page {format.Count(number)} of {format.Count(of)}"));
    }

    private static void Step(PdfSheet page, BinderyView view, WorkStep step, PressFormat format)
    {
        page.HeadingToWrite($"{step.Number}  {BenchWords.TitleOf(step)}", 11, BenchSentence.Of(view, step, format), Say($"minutes"), Say($"went wrong"));
        if (PictureOf(view, step, format) is { } picture)
        {
            var scale = Drawn / Math.Max(picture.Width, picture.Height);
            page.Beside(
                Drawn, (picture.Height * scale) + 6, (graphics, left, top) => PdfPicture.Draw(graphics, picture, left + ((Drawn - (picture.Width * scale)) / 2), top, scale),
                () => Said(page, view, step, format));
        }
        else
        {
            Said(page, view, step, format);
        }

        switch (step.Kind)
        {
            case WorkKind.CutApart:
                CutApart(page, view, format);
                break;
            case WorkKind.Collate:
                Piles(page, view, format);
                break;
        }
    }

    private static Picture? PictureOf(BinderyView view, WorkStep step, PressFormat format) => step.Kind switch
    {
        WorkKind.Staple when view.Sheet!.Imposition.StaplerStop is { } stop =>
            BenchPictures.Staples(view.Sheet.Piles[0].Part.Piece, stop, view.Sheet.Imposition.StaplesFromHead, format),
        WorkKind.Trim or WorkKind.TrimSpine when BenchWords.CutsOf(view, step.Kind).ToList() is { Count: > 0 } cuts =>
            BenchPictures.Cuts(view.Sheet!.Untrimmed, cuts, view.Prepared!.Job.Edition.Trim, format),
        _ => null,
    };

    private static void Said(PdfSheet page, BinderyView view, WorkStep step, PressFormat format)
    {
        foreach (var line in StepWords.Of(view, step, format))
        {
            page.Text(line);
        }

        foreach (var (number, cut) in BenchWords.CutsOf(view, step.Kind))
        {
            page.Row(Say($"Cut {number}: {BenchWords.Against(cut.Edge)} at the fence, {BenchWords.Of(cut.Edge)} falls off"), [$"{format.Length(cut.Fence)}"], Column);
        }

        if (DangerWords.Of(view, step, format) is { } danger)
        {
            page.Note($"! {danger}");
        }
    }

    private static void CutApart(PdfSheet page, BinderyView view, PressFormat format)
    {
        foreach (var plan in view.Sheet!.Apart)
        {
            var picture = SheetPicture.Places(plan.Sheet);
            var scale = 1.4 * Drawn / Math.Max(picture.Width, picture.Height);
            page.Space(6);
            page.Beside(
                picture.Width * scale, (picture.Height * scale) + 6, (graphics, left, top) => PdfPicture.Draw(graphics, picture, left, top, scale),
                () =>
                {
                    var (sheets, size) = (BenchWords.Capital(BenchWords.Sheets(plan.Sheets)), format.Size(new(plan.Sheet.Sheet.Width, plan.Sheet.Sheet.Height)));
                    page.Text(plan.Cuts.Count == 0
                        ? Say($"{sheets}, {size}; drawn is the front of sheet {plan.Sheet.Number}. Each is one piece: nothing to cut.")
                        : Say($"{sheets}, {size}; drawn is the front of sheet {plan.Sheet.Number}."));
                    foreach (var cut in plan.Cuts)
                    {
                        page.Row(Say($"Cut {cut.Number}: {BenchWords.Of(cut, format)}"), [$"{format.Length(cut.Fence)}"], Column);
                    }
                });
        }

        foreach (var sheet in view.Sheet.Sheets.Take(MostSheets))
        {
            var (part, front, stacks) = (Apart.Of(sheet.PartName), BenchWords.FrontShows(sheet), BenchWords.Stacks(sheet));
            var words = sheet.HalfOn is { } paper
                ? Say($"Sheet {sheet.Number}, {part} on {Apart.Of(paper)}, pages {front} on its front: {stacks}")
                : Say($"Sheet {sheet.Number}, {part}, pages {front} on its front: {stacks}");
            page.Row(words, [Say(sheet.Prints, $"{format.Count(sheet.Prints)} print", $"{format.Count(sheet.Prints)} prints")], Column);
        }

        if (view.Sheet.Sheets.Count > MostSheets)
        {
            page.Note(BenchWords.OtherSheets(view.Sheet.Sheets.Count - MostSheets, format));
        }
    }

    private static void Piles(PdfSheet page, BinderyView view, PressFormat format)
    {
        page.Space(4);
        var widest = view.Sheet!.Piles.Max(pile => pile.Part.Piece.Width);
        var runs = PileRun.Of(view.Sheet.Piles);
        foreach (var row in runs.SelectMany(PileWords.Drawn).Chunk(PilesInRow))
        {
            var pictures = row.Select(pile => BenchPictures.Pile(pile, view.SignOf(pile.PartIndex), widest)).ToList();
            page.Drawing(
                pictures.Max(picture => ScaleOf(page.Width, picture) * picture.Height) + (3 * CaptionLine) + 12,
                (graphics, left, top, width) =>
                {
                    foreach (var (place, pile) in row.Index())
                    {
                        var (at, scale) = (left + (place * width / PilesInRow), ScaleOf(width, pictures[place]));
                        PdfPicture.Draw(graphics, pictures[place], at, top + 3, scale);
                        Captions(
                            graphics,
                            [$"{pile.Number}  {Papers(pile)}", $"{pile.Part.Part.Name}, {BenchWords.Pieces(view, pile, format)}", Say($"{PileWords.Outside(pile)} out, {PileWords.Inside(pile)} in")],
                            at, top + 3 + (scale * pictures[place].Height), (width / PilesInRow) - 6);
                    }
                });
        }

        foreach (var run in runs.Where(PileWords.IsLong))
        {
            page.Text(PileWords.GoesOn(run, BenchWords.HasPiles(view), format));
            if (!PileWords.IsLeaves(run))
            {
                page.Note(PileWords.Every(run));
            }
        }

        page.Note(PileWords.Key);
    }

    private static string Papers(Pile pile) => pile.SecondHalf is { } second ? Say($"{pile.Part.Stock.Name}, or {second.Stock.Name}") : pile.Part.Stock.Name;

    // Two faces of the widest piece fill their column.
    private static double ScaleOf(double width, Picture picture) => Math.Min(1, ((width / PilesInRow) - 6) / Math.Max(picture.Width, 194));

    private static void Captions(XGraphics graphics, IReadOnlyList<string> lines, double left, double top, double room)
    {
        foreach (var (place, words) in lines.Index())
        {
            var font = PaperFonts.Sans(words, Caption, strong: place == 0);
            var shown = words;
            while (shown.Length > 1 && font.Width(graphics, shown) > room)
            {
                shown = shown.TrimEnd('…')[..^1] + "…";
            }

            font.Draw(graphics, shown, XBrushes.Black, left, top + ((place + 1) * CaptionLine));
        }
    }
}
