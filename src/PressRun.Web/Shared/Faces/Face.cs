using System.Globalization;
using System.Text;
using PdfSharp.Drawing;

namespace PressRun.Web.Shared.Faces;

/// <summary>A face in a size. A letter that it lacks is set in another that has it; where none has it, and for scripts that this file cannot join or turn
/// around, a mark stands in its place, and never an empty box.</summary>
public sealed class Face
{
    /// <summary>What stands for letters that no face has.</summary>
    public const string Missing = "[…]";

    private readonly string family;
    private readonly double size;
    private readonly bool strong;

    internal Face(string family, double size, bool strong) => (this.family, this.size, this.strong) = (family, size, strong);

    /// <summary>True where some of the words would be told by <see cref="Missing"/>.</summary>
    public static bool Lacks(string words) => Plain(words).EnumerateRunes().Any(letter => PaperFonts.FamilyOf(letter, PaperFonts.Book) is null);

    /// <summary>How wide words are, in points.</summary>
    public double Width(XGraphics graphics, string words)
    {
        ArgumentNullException.ThrowIfNull(graphics);
        return Runs(words).Sum(run => graphics.MeasureString(run.Words, run.Font).Width);
    }

    /// <summary>Sets words from a point of their base line on.</summary>
    public void Draw(XGraphics graphics, string words, XBrush brush, double x, double y)
    {
        ArgumentNullException.ThrowIfNull(graphics);
        foreach (var (part, font) in Runs(words))
        {
            graphics.DrawString(part, font, brush, x, y);
            x += graphics.MeasureString(part, font).Width;
        }
    }

    // Signs that only direct text (UAX #9) have no shape. What stands between digits in French, Arabic and Adlam is in none of the faces, and a figure with a mark within it is none:
    // it is told as Unicode CLDR tells it with these digits.
    private static string Plain(string words) => string.Concat(words.EnumerateRunes().Where(letter => Rune.GetUnicodeCategory(letter) != UnicodeCategory.Format).Select(letter => letter.Value switch
    {
        '\u202f' => new Rune('\u00a0'),
        '\u066b' => new Rune('.'),
        '\u066c' or '\u2e41' => new Rune(','),
        _ => letter,
    }));

    private List<(string Words, XFont Font)> Runs(string words)
    {
        var runs = new List<(string Words, string Family)>();
        var missed = false;
        foreach (var letter in Plain(words).EnumerateRunes())
        {
            var found = PaperFonts.FamilyOf(letter, family);
            if (found is null && missed)
            {
                continue;
            }

            missed = found is null;
            var (next, of) = (missed ? Missing : letter.ToString(), found ?? family);
            if (runs is [.., var last] && last.Family == of)
            {
                runs[^1] = (last.Words + next, of);
            }
            else
            {
                runs.Add((next, of));
            }
        }

        return runs.ConvertAll(run => (run.Words, new XFont(run.Family, size, strong ? XFontStyleEx.Bold : XFontStyleEx.Regular)));
    }
}
