using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PressRun.Web.Shared.Faces;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Pdf;

/// <summary>Sets text down a page, and on the next where one is full. Lengths are in points, from the upper left.</summary>
public sealed class PdfSheet : IDisposable
{
    private const double Margin = 56;
    private const double Foot = 40;

    // Lines to write on: how long, how far from each other, and how large their words.
    private const double Written = 34;
    private const double WrittenGap = 10;
    private const double WordSize = 8;

    private static readonly XColor Ink = XColor.FromArgb(0x24, 0x21, 0x1d);
    private static readonly XColor Quiet = XColor.FromArgb(0x5d, 0x57, 0x4d);
    private static readonly XPen Hairline = new(XColor.FromArgb(0xb8, 0xb0, 0xa0), 0.5);
    private static readonly XPen Rule = new(Ink, 0.8);

    private readonly PdfDocument document = new();
    private readonly bool letter;
    private XGraphics graphics = null!;
    private double at;
    private bool lacking;
    private double baseline;
    private double aside;
    private double asideEnds;

    /// <summary>Begins a document.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="author">Who made it.</param>
    /// <param name="madeAt">When.</param>
    /// <param name="letter">True for US letter pages, false for A4.</param>
    public PdfSheet(string title, string author, DateTimeOffset madeAt, bool letter)
    {
        PaperFonts.Provide();
        this.letter = letter;
        document.Info.Title = title;
        document.Info.Author = author;
        document.Info.CreationDate = madeAt.UtcDateTime;
        document.Language = Texts.Language.Name;
        NewPage();
    }

    private static double Left => Margin;

    private double Right => document.Pages[^1].Width.Point - Margin - aside;

    private double Bottom => document.Pages[^1].Height.Point - Margin - Foot;

    /// <summary>A heading, kept with what follows it.</summary>
    /// <param name="words">The heading.</param>
    /// <param name="size">In points.</param>
    /// <param name="beside">Said quietly on the same line, where the heading takes one.</param>
    public void Heading(string words, double size, string beside = "") => Heading(words, size, beside, []);

    private void Heading(string words, double size, string beside, ReadOnlySpan<string> toWrite)
    {
        Room(size * 4);
        at += size * 0.9;
        var font = PaperFonts.Serif(size, strong: true);
        Lines(words, font, Ink, size * 1.2);
        if (beside.Length > 0)
        {
            const double gap = 8, line = 11;
            var small = PaperFonts.Sans(beside, 8.5);
            var left = Left + font.Width(graphics, words) + gap;
            if (left + small.Width(graphics, beside) + gap > Right - RoomToWrite(toWrite))
            {
                (left, at) = (Left, at + line);
            }

            small.Draw(graphics, beside, new XSolidBrush(Quiet), left, at);
        }

        at += size * 0.3;
    }

    /// <summary>Sets something on one page, where it fits on one.</summary>
    public void Whole(Action<PdfSheet> set)
    {
        ArgumentNullException.ThrowIfNull(set);
        using var trial = new PdfSheet("", "", DateTimeOffset.UnixEpoch, letter);
        set(trial);
        if (trial.document.PageCount == 1)
        {
            Room(trial.at - Margin);
        }

        set(this);
    }

    /// <summary>Something drawn at the right margin, beside what is set next.</summary>
    /// <param name="width">What it takes across.</param>
    /// <param name="height">What it takes down the page.</param>
    /// <param name="draw">Draws it: it is told its left and its upper edge.</param>
    /// <param name="set">Sets what stands beside it.</param>
    public void Beside(double width, double height, Action<XGraphics, double, double> draw, Action set)
    {
        ArgumentNullException.ThrowIfNull(draw);
        ArgumentNullException.ThrowIfNull(set);
        Room(height);
        draw(graphics, Right - width, at);
        (aside, asideEnds) = (width + 14, at + height);
        set();
        (aside, at) = (0, Math.Max(at, asideEnds));
    }

    /// <summary>A sentence in the book face.</summary>
    public void Sentence(string words, double size = 13) => Lines(words, PaperFonts.Serif(size), Ink, size * 1.45);

    /// <summary>A quiet note.</summary>
    public void Note(string words) => Lines(words, PaperFonts.Sans(words, 8.5), Quiet, 12);

    /// <summary>What one has to do, to be read from the table.</summary>
    public void Text(string words) => Lines(words, PaperFonts.Sans(words, 9.5), Ink, 13);

    /// <summary>Something to tick off.</summary>
    public void Check(string words)
    {
        const double line = 13, box = 6.5;
        Room(line);
        graphics.DrawRectangle(Rule, Left, at + line - box, box, box);
        Lines(words, PaperFonts.Sans(words, 9.5), Ink, line, indent: 2 * box);
    }

    /// <summary>A heading with short lines to write on at its right, each with its word before it, from the right.</summary>
    public void HeadingToWrite(string words, double size, string beside, params ReadOnlySpan<string> toWrite)
    {
        Heading(words, size, beside, toWrite);
        var right = Right;
        foreach (var word in toWrite)
        {
            var font = PaperFonts.Sans(word, WordSize);
            graphics.DrawLine(Hairline, right - Written, baseline, right, baseline);
            right -= Written + 4 + font.Width(graphics, word);
            font.Draw(graphics, word, new XSolidBrush(Quiet), right, baseline);
            right -= WrittenGap;
        }
    }

    private double RoomToWrite(ReadOnlySpan<string> words)
    {
        var room = 0d;
        foreach (var word in words)
        {
            room += Written + 4 + PaperFonts.Sans(word, WordSize).Width(graphics, word) + WrittenGap;
        }

        return room;
    }

    /// <summary>Room between the margins, in points.</summary>
    public double Width => Right - Left;

    /// <summary>Something drawn, kept whole: it is told its left edge, its upper edge and the room across.</summary>
    /// <param name="height">What it takes down the page.</param>
    /// <param name="draw">Draws it.</param>
    public void Drawing(double height, Action<XGraphics, double, double, double> draw)
    {
        Room(height);
        draw(graphics, Left, at, Width);
        at += height;
    }

    /// <summary>Some empty room.</summary>
    public void Space(double height) => at += height;

    /// <summary>A row of a table: words at the left, figures that end at the right edges of their columns.</summary>
    /// <param name="words">At the left; they take more lines where they are long.</param>
    /// <param name="figures">From left to right; the last ends at the margin.</param>
    /// <param name="width">Of a column of figures.</param>
    /// <param name="kind">How the row stands.</param>
    public void Row(string words, IReadOnlyList<string> figures, double width, RowKind kind = RowKind.Plain)
    {
        const double size = 9.5, line = 13;
        var strong = kind == RowKind.Sum;
        var colour = kind == RowKind.Head ? Quiet : Ink;
        var font = PaperFonts.Sans(words, kind == RowKind.Head ? 8.5 : size, strong);
        var parts = Wrapped(words, font, Right - Left - (figures.Count * width) - 8);
        Room((parts.Count * line) + 6);
        if (strong)
        {
            graphics.DrawLine(Rule, Left, at, Right, at);
        }

        var first = at + line;
        foreach (var (place, part) in parts.Index())
        {
            font.Draw(graphics, part, new XSolidBrush(colour), Left, first + (place * line));
        }

        foreach (var (place, figure) in figures.Index())
        {
            var face = PaperFonts.Sans(figure, kind == RowKind.Head ? 8.5 : size, strong);
            face.Draw(graphics, figure, new XSolidBrush(colour), Right - ((figures.Count - 1 - place) * width) - face.Width(graphics, figure), first);
        }

        at = first + ((parts.Count - 1) * line) + 5;
        if (!strong)
        {
            graphics.DrawLine(Hairline, Left, at, Right, at);
        }
    }

    /// <summary>A line to write on, with words under it.</summary>
    public void WriteOn(string words, double from, double width)
    {
        graphics.DrawLine(Rule, Left + from, at, Left + from + width, at);
        PaperFonts.Sans(words, 8).Draw(graphics, words, new XSolidBrush(Quiet), Left + from, at + 11);
    }

    /// <summary>Keeps so much together: goes to the next page where it does not fit on this one.</summary>
    public void Room(double height)
    {
        if (at + height > Bottom)
        {
            NewPage();
        }
    }

    /// <summary>Ends the document; every page gets its number.</summary>
    /// <param name="foot">What stands at the foot of each page.</param>
    /// <param name="numbered">Such as <c>page 1 of 2</c>.</param>
    public byte[] Done(string foot, Func<int, int, string> numbered)
    {
        if (lacking || Face.Lacks(foot))
        {
            Space(6);
            Note(Say($"{Face.Missing} stands for letters that this file has no face for; they are on the page that it was made from."));
        }

        graphics.Dispose();
        for (var index = 0; index < document.PageCount; index++)
        {
            using var over = XGraphics.FromPdfPage(document.Pages[index]);
            var (base1, width) = (document.Pages[index].Height.Point - Margin, document.Pages[index].Width.Point);
            var (font, brush) = (PaperFonts.Sans(foot, 8), new XSolidBrush(Quiet));
            over.DrawLine(Hairline, Margin, base1 - 12, width - Margin, base1 - 12);
            font.Draw(over, foot, brush, Margin, base1);
            var number = numbered(index + 1, document.PageCount);
            font.Draw(over, number, brush, width - Margin - font.Width(over, number), base1);
        }

        return PdfFile.Of(document);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        graphics.Dispose();
        document.Dispose();
    }

    private void NewPage()
    {
        graphics?.Dispose();
        var page = document.AddPage();
        page.Size = letter ? PdfSharp.PageSize.Letter : PdfSharp.PageSize.A4;
        graphics = XGraphics.FromPdfPage(page);
        (at, aside, asideEnds) = (Margin, 0, 0);
    }

    private void Lines(string words, Face font, XColor colour, double line, double indent = 0)
    {
        foreach (var part in Wrapped(words, font, Right - Left - indent))
        {
            Room(line);
            at += line;
            font.Draw(graphics, part, new XSolidBrush(colour), Left + indent, at);
            baseline = at;
        }
    }

    private List<string> Wrapped(string words, Face font, double width)
    {
        lacking |= Face.Lacks(words);
        return LineBreaks.Of(words, text => font.Width(graphics, text) <= width);
    }
}
