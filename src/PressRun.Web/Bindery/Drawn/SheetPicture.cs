using PressRun.Engine.Editions;
using PressRun.Engine.Imposing;
using PressRun.Engine.Measures;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Bindery.Drawn;

/// <summary>Drawings of sheets in millimetres, so that they can be printed at their true size.</summary>
public static class SheetPicture
{
    private const double Letters = 0.34;
    private const double LargestLetters = 40;

    /// <summary>The front of a sheet as it is cut apart: places by their letters, and pages with their heads, by which a print is known and turned.</summary>
    public static Picture Places(ImposedSheet sheet)
    {
        var marks = new List<Mark> { Paper(sheet) };
        marks.AddRange(sheet.Front.Pages.SelectMany(page => Number(page)));
        foreach (var (letter, box) in sheet.Front.Places)
        {
            var size = Math.Min(LargestLetters, Smaller(box) * Letters / 2);
            marks.Add(Box(Pen.Piece, box));
            marks.Add(new TextMark(letter, Mm(box.Left) + (size * 0.8), Mm(box.Top) + (size * 0.8), size));
        }

        return new Picture(
            Mm(sheet.Sheet.Width), Mm(sheet.Sheet.Height), marks,
            Say($"The front of sheet {sheet.Number}: {string.Join(", ", sheet.Front.Places.Select(place => OnPlace(sheet, place.Letter)))}"));
    }

    private static string OnPlace(ImposedSheet sheet, string letter) =>
        Say($"{letter} pages {PileWords.Pages([.. sheet.Front.Pages.Where(page => page.Letter == letter).Select(page => page.Page)])}");

    /// <summary>A face with its pages, folds, trims, bleed and creep.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="back">True for the side with the inner faces.</param>
    /// <param name="bleed">True where the edition bleeds.</param>
    /// <param name="format">How figures are written.</param>
    public static Picture Face(ImposedSheet sheet, bool back, bool bleed, PressFormat format)
    {
        var face = back ? sheet.Back : sheet.Front;
        var marks = new List<Mark> { Paper(sheet) };
        if (bleed && face.Ink != Ink.None)
        {
            marks.AddRange(face.Pages.Select(page => Box(Pen.Bleed, page.Bleed)));
        }

        marks.AddRange(face.Pages.Select(page => Box(Pen.Page, page.Area)));
        marks.AddRange(face.Places.Select(place => Box(Pen.Piece, place.Box)));
        marks.AddRange(face.Folds.Select(line => Drawn(Pen.Fold, line)));
        marks.AddRange(face.Trims.Select(line => Drawn(Pen.Trim, line)));
        foreach (var page in face.Pages)
        {
            marks.AddRange(Page(page, face.Ink == Ink.None, format));
        }

        foreach (var stack in sheet.Stacks)
        {
            var box = face.Places.First(place => place.Letter == stack.Place.Letter).Box;
            marks.Add(new TextMark(
                stack.Pile is null ? Say($"{stack.Place.Letter} stays blank") : BenchWords.To(stack),
                Mm(box.Middle.Across), Mm(box.Bottom) - Math.Max(5, Smaller(box) * 0.07), Math.Min(9, Smaller(box) * 0.08), Room: Mm(box.Width)));
        }

        var pages = string.Join(", ", face.Pages.Select(page => page.Page));
        return new Picture(
            Mm(sheet.Sheet.Width), Mm(sheet.Sheet.Height), marks,
            back ? Say($"Sheet {sheet.Number}, back: pages {pages}") : Say($"Sheet {sheet.Number}, front: pages {pages}"));
    }

    private static IEnumerable<Mark> Page(PlacedPage page, bool unprinted, PressFormat format)
    {
        var note = unprinted ? Words.Of(Ink.None) : page.Shift > Length.Zero ? Say($"{format.Thickness(page.Shift)} to the spine") : "";
        if (note.Length == 0)
        {
            return Number(page);
        }

        var (x, y, size, up, across) = Stands(page);
        return Number(page).Append(new TextMark(note, x - (across * size * 0.85), y - (up * size * 0.85), size * 0.22, page.QuarterTurns, Room: Mm(page.QuarterTurns % 2 == 0 ? page.Area.Width : page.Area.Height)));
    }

    // Its number in its middle, and over it the triangle that points to its head.
    private static IEnumerable<Mark> Number(PlacedPage page)
    {
        var (x, y, size, up, across) = Stands(page);
        return [new TextMark($"{page.Page}", x, y, size, page.QuarterTurns, Strong: true), new HeadMark(x + (across * size), y + (up * size), size * 0.3, page.QuarterTurns)];
    }

    private static (double X, double Y, double Size, int Up, int Across) Stands(PlacedPage page)
    {
        var (up, across) = page.QuarterTurns switch { 0 => (-1, 0), 1 => (0, 1), 2 => (1, 0), _ => (0, -1) };
        return (Mm(page.Area.Middle.Across), Mm(page.Area.Middle.Down), Math.Min(LargestLetters, Smaller(page.Area) * Letters), up, across);
    }

    private static BoxMark Paper(ImposedSheet sheet) => new(Pen.Paper, 0, 0, Mm(sheet.Sheet.Width), Mm(sheet.Sheet.Height));

    private static BoxMark Box(Pen pen, Box box) => new(pen, Mm(box.Left), Mm(box.Top), Mm(box.Width), Mm(box.Height));

    private static LineMark Drawn(Pen pen, Line line) => new(pen, Mm(line.From.Across), Mm(line.From.Down), Mm(line.To.Across), Mm(line.To.Down));

    private static double Smaller(Box box) => Math.Min(Mm(box.Width), Mm(box.Height));

    private static double Mm(Length length) => (double)length.Millimetres;
}
