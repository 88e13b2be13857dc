using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;
using PressRun.Engine.Imposing;
using PressRun.Engine.Measures;
using PressRun.Web.Bindery;
using UglyToad.PdfPig;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

/// <summary>From a run to the binding table: the bench sheet, its sheets to scale, and counting.</summary>
public sealed class BenchJourney(Chromium chromium, OwnApp own) : IClassFixture<OwnApp>
{
    private const double MillimetresPerPoint = 25.4 / 72;
    private readonly AppProcess app = own.App;

    [Fact]
    public async Task A_run_leads_to_its_bench_sheet_to_files_that_measure_what_they_show_and_to_the_tally()
    {
        await using var stored = await Stored.OpenAsync(app);
        var book = await stored.BookAsync("Eleven Knots for Nervous People", 3);
        var view = await ViewAsync(stored, book);
        var sheet = view.Sheet!;
        await using var visit = await Visit.BeginAsync(chromium.Browser, app.Address);
        await visit.OpenAsync(book.Path + "/run");
        var page = visit.Page;
        await GoAsync(visit, "Bench sheet", "**/run/bench?plan=*");
        await Expect(page.Locator(".sentence").First).ToContainTextAsync(BenchSentence.Copies(view, stored.Format));
        await Expect(page.Locator(".work .ordinal")).ToHaveTextAsync([.. sheet.Steps.Select(step => $"{step.Number}")]);
        await Expect(page.Locator(".work h2 bdi")).ToHaveTextAsync([.. sheet.Steps.Select(BenchWords.TitleOf)]);
        await Expect(page.GetByText($"stop {stored.Format.Length(sheet.Imposition.StaplerStop!.Value)} behind")).ToBeVisibleAsync();
        await Expect(page.Locator("table.fences tbody .num")).ToHaveTextAsync(
            [.. sheet.Imposition.Cuts.Select(cut => new Regex($"^{Comes.Loose(stored.Format.Length(cut.Fence).ToString())}$"))]);

        var paper = await DownloadAsync(page, "Save as a PDF");
        using (var document = PdfDocument.Open(paper))
        {
            Assert.InRange(document.NumberOfPages, 1, 2);
        }

        await GoAsync(visit, "Imposition and folding dummy", "**/run/imposition?plan=*");
        await Expect(page.Locator(".dummy > li")).ToHaveCountAsync(sheet.Book.Sides.Count);
        await Expect(page.Locator(".dummy .amiss")).ToHaveCountAsync(0);
        await IsTrueToScaleAsync(page, sheet.Sheets[0]);
        var all = await DownloadAsync(page, "All sheets as a PDF at true size");
        using (var document = PdfDocument.Open(all))
        {
            Assert.Equal(2 * sheet.Sheets.Count, document.NumberOfPages);
            Assert.All(sheet.Sheets.Index(), one =>
            {
                var face = document.GetPage((2 * one.Index) + 1);
                Assert.Equal((Mm(one.Item.Sheet.Width), Mm(one.Item.Sheet.Height)), (Math.Round(face.Width * MillimetresPerPoint), Math.Round(face.Height * MillimetresPerPoint)));
            });
        }

        await GoAsync(visit, "bench sheet", "**/run/bench?plan=*");
        await page.GetByRole(AriaRole.Link, new() { Name = "Tally at the table" }).ClickAsync();
        await page.WaitForURLAsync("**/tally?plan=*");
        await Expect(visit.Field("Copies on the table")).ToHaveValueAsync(stored.Format.Count(sheet.Steps[0].Copies));
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin the tally" }).ClickAsync();
        await page.Locator("[data-tally]").WaitForAsync();
        await visit.AnswersAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "+1 done" }).ClickAsync();
        await Expect(page.Locator("[data-tally-left]")).ToHaveTextAsync(stored.Format.Count(sheet.Steps[0].Copies - 1));
        await Expect(page.Locator("[data-tally-state]")).ToHaveTextAsync("All of it is in the tally.");
        visit.WasQuiet();
    }

    [Fact]
    public async Task Sheets_that_nobody_cut_are_cut_apart_by_the_list_and_its_pages_keep_nobody_out()
    {
        await using var stored = await Stored.OpenAsync(app);
        var book = await stored.BookAsync("Fog Manners", 3);
        var plans = stored.Services.GetRequiredService<PlanStore>();
        var drumlatch = (await stored.PlansAsync(book.Edition.Id)).Single(source => source.Plan.ShopId == "drumlatch-stencil").Plan;
        Assert.IsType<Data.SaveResult<PlanRecord>.Saved>(await plans.SaveAsync(stored.Press.Id, drumlatch with { Finishing = [] }));
        var view = await ViewAsync(stored, book, drumlatch.Id);
        var (sheet, format) = (view.Sheet!, stored.Format);
        Assert.Contains(sheet.Sheets, one => one.Layout == Engine.Sheets.Layout.CutAndStack);
        await using var visit = await Visit.BeginAsync(chromium.Browser, app.Address);
        var page = visit.Page;
        await visit.OpenAsync($"{book.Path}/run/bench?plan={drumlatch.Id}");
        await Expect(page.Locator(".arrives")).ToHaveTextAsync("Flat sheets come from the shop.");
        var cut = page.Locator(".work").Filter(new() { Has = page.GetByRole(AriaRole.Heading, new() { Name = "Cut apart" }) });
        await Expect(cut.Locator(".apart")).ToHaveCountAsync(sheet.Apart.Count);
        await Expect(cut.Locator(".apart tbody tr td:nth-child(2)")).ToHaveTextAsync([.. sheet.Apart.SelectMany(plan => plan.Cuts).Select(one => BenchWords.Of(one, format))]);
        await Expect(cut.Locator(".apart tbody .num")).ToHaveTextAsync(
            [.. sheet.Apart.SelectMany(plan => plan.Cuts).Select(one => new Regex($"^{Comes.Loose(format.Length(one.Fence).ToString())}$"))]);
        await Expect(cut.Locator(".stacks tbody td:nth-child(3)")).ToHaveTextAsync([.. sheet.Sheets.Select(BenchWords.FrontShows)]);
        await Expect(cut.Locator(".stacks tbody td:nth-child(4)")).ToHaveTextAsync([.. sheet.Sheets.Select(BenchWords.Stacks)]);
        await Expect(cut.Locator(".danger")).ToContainTextAsync("never reach under a raised blade");
        Assert.Empty(await Barriers.OfAsync(page));

        await visit.OpenAsync($"{book.Path}/run/imposition?plan={drumlatch.Id}");
        await Expect(page.GetByText("Cut and stack: every place carries another piece.").Or(page.GetByText("Step and repeat: every place"))).ToBeVisibleAsync();
        Assert.Empty(await Barriers.OfAsync(page));
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_long_row_of_leaves_is_told_once_opened_by_the_keyboard_and_its_sheets_are_turned_by_it()
    {
        await using var stored = await Stored.OpenAsync(app);
        var book = await stored.BookAsync("The Bilge Reader No. 2", 1);
        var view = await ViewAsync(stored, book);
        var run = PileRun.Of(view.Sheet!.Piles).Single(PileWords.IsLong);
        await using var visit = await Visit.BeginAsync(chromium.Browser, app.Address);
        var page = visit.Page;
        await visit.OpenAsync(book.Path + "/run");
        await Keys.FollowAsync(page, page.GetByRole(AriaRole.Link, new() { Name = "Bench sheet", Exact = true }));
        await page.WaitForURLAsync("**/run/bench?plan=*");
        await visit.AnswersAsync();
        await Expect(page.Locator(".piles > li")).ToHaveCountAsync(view.Sheet.Piles.Count - run.Piles.Count + PileWords.Drawn(run).Count);
        await Expect(page.Locator(".goes-on")).ToHaveTextAsync(PileWords.GoesOn(run, BenchWords.HasPiles(view), stored.Format));
        await Keys.FollowAsync(page, page.Locator(".pile-runs summary"));
        await Expect(page.Locator(".every-pile tbody tr")).ToHaveCountAsync(run.Piles.Count);
        Assert.Empty(await Barriers.OfAsync(page));
        await page.SetViewportSizeAsync(390, 844);
        Assert.Empty(await TooSmallAsync(page));

        await page.Locator("h1").FocusAsync();
        await Keys.FollowAsync(page, page.GetByRole(AriaRole.Link, new() { Name = "Imposition and folding dummy" }));
        await page.WaitForURLAsync("**/run/imposition?plan=*");
        await visit.AnswersAsync();
        Assert.Empty(await TooSmallAsync(page));
        await Keys.FollowAsync(page, page.GetByRole(AriaRole.Navigation, new() { Name = "Sheets" }).GetByRole(AriaRole.Link, new() { Name = "2", Exact = true }));
        await Expect(page.Locator("#sheet-heading")).ToContainTextAsync("Sheet 2,");
        var other = view.Sheet.Sheets[1].Turn == TurnEdge.Long ? "short" : "long";
        await Keys.TabToAsync(page, visit.Field("Both sides turned"));
        await page.Keyboard.TypeAsync($"all on the {other}");
        await page.WaitForURLAsync($"**turn={other}*");
        await Expect(page.Locator(".dummy .amiss").First).ToContainTextAsync("on its head");
        Assert.Empty(await Barriers.OfAsync(page));
        visit.WasQuiet();
    }

    [Theory]
    [InlineData("Fog Manners", 2)]
    [InlineData("Eleven Knots for Nervous People", 2)]
    [InlineData("The Bilge Reader No. 3", 1)]
    [InlineData("What the Harbour Pilot Hums", 1)]
    public async Task The_page_prints_on_a_page_or_two_whole_and_without_what_is_clicked(string title, int printing)
    {
        await using var stored = await Stored.OpenAsync(app);
        var book = await stored.BookAsync(title, printing);
        var view = await ViewAsync(stored, book);
        await using var visit = await Visit.BeginAsync(chromium.Browser, app.Address);
        await visit.OpenAsync(book.Path + "/run/bench");
        using var document = PdfDocument.Open(await visit.Page.PdfAsync(new() { Format = "A4", PreferCSSPageSize = true }));
        var words = document.GetPages().SelectMany(page => page.GetWords().Select(word => (page, word))).ToList();
        Assert.InRange(document.NumberOfPages, 1, 2);
        // Nothing is cut off: a printer's margin of 5 mm stays free (common practice).
        Assert.All(words, placed =>
        {
            const double margin = 5 / MillimetresPerPoint;
            Assert.InRange(placed.word.BoundingBox.Left, margin, placed.page.Width - margin);
            Assert.InRange(placed.word.BoundingBox.Right, margin, placed.page.Width - margin);
            Assert.InRange(placed.word.BoundingBox.Bottom, margin, placed.page.Height - margin);
        });
        var text = string.Join(' ', words.Select(placed => placed.word.Text));
        Assert.All(view.Sheet!.Steps.Select(BenchWords.TitleOf), step => Assert.Contains(step, text, StringComparison.Ordinal));
        Assert.All(PileRun.Of(view.Sheet.Piles).SelectMany(PileWords.Drawn), pile => Assert.Contains($"{PileWords.Outside(pile)} outside", text, StringComparison.Ordinal));
        Assert.Contains("Went wrong:", text, StringComparison.Ordinal);
        Assert.All(["Shelf", "Dark table", "Save as a PDF", "Tally at the table", "Every pile from"], clicked => Assert.DoesNotContain(clicked, text, StringComparison.Ordinal));
    }

    private static async Task<BinderyView> ViewAsync(Stored stored, Book book, Guid? plan = null) =>
        (await new BinderyService(
            stored.Services.GetRequiredService<TitleStore>(), stored.Services.GetRequiredService<EditionStore>(), stored.Services.GetRequiredService<PlanStore>(),
            stored.Services.GetRequiredService<Data.Bench.BenchLimitsStore>()).LoadAsync(stored.Press.Id, book.Slug, book.Edition.Printing, plan))!;

    private static async Task GoAsync(Visit visit, string link, string address)
    {
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = link, Exact = true }).ClickAsync();
        await visit.Page.WaitForURLAsync(address);
        await visit.AnswersAsync();
    }

    private static async Task<byte[]> DownloadAsync(IPage page, string link)
    {
        var file = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new() { Name = link }).First.ClickAsync());
        return await File.ReadAllBytesAsync((await file.PathAsync())!);
    }

    // The file says its size in millimetres, and the pages lie in it where they are imposed.
    private static async Task IsTrueToScaleAsync(IPage page, ImposedSheet sheet)
    {
        using var svg = new MemoryStream(await DownloadAsync(page, "Save as an SVG"));
        var root = XDocument.Load(svg).Root!;
        Assert.Equal(($"{Mm(sheet.Sheet.Width)}mm", $"{Mm(sheet.Sheet.Height)}mm"), ((string)root.Attribute("width")!, (string)root.Attribute("height")!));
        var boxes = root.Descendants().Where(element => element.Name.LocalName == "rect").ToList();
        Assert.All(sheet.Front.Pages, placed => Assert.Contains(boxes, box =>
            Near(box, "x", placed.Area.Left) && Near(box, "y", placed.Area.Top) && Near(box, "width", placed.Area.Width) && Near(box, "height", placed.Area.Height)));

        static bool Near(XElement box, string name, Length wanted) => Math.Abs((double)box.Attribute(name)! - (double)wanted.Millimetres) < 0.01;
    }

    private static double Mm(Length length) => Math.Round((double)length.Millimetres);

    // What is pressed at the table; the masthead is not.
    private static async Task<IReadOnlyList<string>> TooSmallAsync(IPage page) => await page.EvaluateAsync<string[]>(
        "() => [...document.querySelectorAll('.places a, .for-the-table a, .bench-sheet summary, .imposition :is(a, select)')].filter(e => e.getBoundingClientRect().height < 44).map(e => e.outerHTML.slice(0, 120))");
}
