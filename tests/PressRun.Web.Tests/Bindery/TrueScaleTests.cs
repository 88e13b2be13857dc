using System.Globalization;
using System.Xml.Linq;
using PressRun.Engine.Bench;
using PressRun.Engine.Imposing;
using PressRun.Engine.Measures;
using PressRun.Web.Bindery;
using PressRun.Web.Bindery.Drawn;
using PressRun.Web.Tests.Support;
using UglyToad.PdfPig;

namespace PressRun.Web.Tests.Bindery;

public sealed class TrueScaleTests
{
    private const double MillimetresPerPoint = 25.4 / 72;
    private const double Near = 0.1;

    private static readonly BinderyView View = ABench.View(edition: book => book with
    {
        Bleed = true,
        Trim = new Engine.Editions.Trim(Length.FromMillimetres(3m), Length.FromMillimetres(2m), Length.FromMillimetres(4m), default),
    });

    [Fact]
    public void Pages_read_back_from_the_pdf_are_as_large_as_the_sheet_and_lie_where_they_are_imposed()
    {
        using var document = PdfDocument.Open(PdfPicture.AtTrueSize("Sheets", BinderyFiles.Sheets(View, ABench.Format, 1)));
        Assert.Equal(2 * View.Sheet!.Sheets.Count, document.NumberOfPages);
        foreach (var (index, sheet) in View.Sheet.Sheets.Index())
        {
            foreach (var (side, face) in new[] { sheet.Front, sheet.Back }.Index())
            {
                var page = document.GetPage((2 * index) + side + 1);
                // The run's only sheet is A3 (ISO 216): 297 by 420 mm.
                Assert.Equal(297, page.Width * MillimetresPerPoint, Near);
                Assert.Equal(420, page.Height * MillimetresPerPoint, Near);
                var boxes = page.Paths.Select(path => path.GetBoundingRectangle()).OfType<UglyToad.PdfPig.Core.PdfRectangle>()
                    .Select(box => (box.Left * MillimetresPerPoint, 420 - (box.Top * MillimetresPerPoint), box.Width * MillimetresPerPoint, box.Height * MillimetresPerPoint)).ToList();
                Assert.All(face.Pages, placed => Assert.Contains(boxes, box => IsAt(box, placed.Area)));
                Assert.All(face.Places, place => Assert.Contains(boxes, box => IsAt(box, place.Box)));
                Assert.All(face.Folds, fold => Assert.Contains(boxes, box => Math.Abs(box.Item1 - Mm(fold.From.Across)) < Near && Math.Abs(box.Item2 - Mm(fold.From.Down)) < Near));
                Assert.All(face.Pages, placed => Assert.Contains(placed.Page.ToString(CultureInfo.InvariantCulture), page.Text, StringComparison.Ordinal));
            }
        }
    }

    [Fact]
    public void The_svg_says_its_size_in_millimetres_and_holds_the_same_boxes()
    {
        var sheet = View.Sheet!.Sheets[1];
        var svg = XDocument.Parse(System.Text.Encoding.UTF8.GetString(SvgFile.Of(SheetPicture.Face(sheet, back: true, bleed: true, ABench.Format)))).Root!;
        Assert.Equal(("297mm", "420mm", "0 0 297 420"), ((string)svg.Attribute("width")!, (string)svg.Attribute("height")!, (string)svg.Attribute("viewBox")!));
        Assert.All(sheet.Back.Pages, page => Assert.Contains(svg.Descendants().Where(element => element.Name.LocalName == "rect"), rect =>
            IsAt(((double)rect.Attribute("x")!, (double)rect.Attribute("y")!, (double)rect.Attribute("width")!, (double)rect.Attribute("height")!), page.Area)));
    }

    [Fact]
    public void A_bench_sheet_is_a_page_or_two_and_says_stop_fence_and_every_pile()
    {
        using var document = PdfDocument.Open(BenchPdf.Of(View, ABench.Format, DateTimeOffset.UnixEpoch));
        Assert.InRange(document.NumberOfPages, 1, 2);
        var text = string.Join(' ', document.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text));
        Assert.Contains("stop 144 mm behind", text, StringComparison.Ordinal);
        Assert.Contains("spine at the fence, fore-edge falls off 140 mm", text, StringComparison.Ordinal);
        Assert.All(View.Sheet!.Piles, pile => Assert.Contains($"{pile.Outer[0]}", text, StringComparison.Ordinal));
        Assert.Contains("eye protection", text, StringComparison.Ordinal);
    }

    [Fact]
    public void No_words_of_a_bench_sheet_lie_on_each_other()
    {
        var view = ABench.View(bench => bench with { Steps = [new BenchStep("stitch with the long arm at the window", 5m, 12m, 0m, 0m, 1, 0.025m), new BenchStep("fold", 0m, 1m, 0m, 0m, 1, 0m)] });
        using var document = PdfDocument.Open(BenchPdf.Of(view, ABench.Format, DateTimeOffset.UnixEpoch));
        foreach (var page in document.GetPages())
        {
            var letters = page.Letters.Where(letter => letter.Value.Trim().Length > 0).OrderBy(letter => letter.StartBaseLine.Y).ThenBy(letter => letter.StartBaseLine.X).ToList();
            Assert.All(letters.Zip(letters.Skip(1)).Where(pair => Math.Abs(pair.First.StartBaseLine.Y - pair.Second.StartBaseLine.Y) < 0.01), pair =>
                Assert.True(pair.Second.StartBaseLine.X - pair.First.EndBaseLine.X > -1, $"“{pair.First.Value}” and “{pair.Second.Value}” of a line lie on each other."));
        }
    }

    private static bool IsAt((double Left, double Top, double Width, double Height) box, Box wanted) =>
        Math.Abs(box.Left - Mm(wanted.Left)) < Near && Math.Abs(box.Top - Mm(wanted.Top)) < Near
        && Math.Abs(box.Width - Mm(wanted.Width)) < Near && Math.Abs(box.Height - Mm(wanted.Height)) < Near;

    private static double Mm(Length length) => (double)length.Millimetres;
}
