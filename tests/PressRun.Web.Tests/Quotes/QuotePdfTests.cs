using System.Globalization;
using System.Text.RegularExpressions;
using PressRun.Data.Quotes;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Quoting;
using PressRun.Web.Bindery.Drawn;
using PressRun.Web.Quotes;
using PressRun.Web.Tests.Support;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Tokens;

namespace PressRun.Web.Tests.Quotes;

public sealed partial class QuotePdfTests
{
    [Fact]
    public void The_lines_on_paper_add_up_to_the_sum_under_them()
    {
        var view = AQuote.View();
        var text = Read(QuotePdf.Of(view, allLines: true));

        var from = text.IndexOf("amount", StringComparison.Ordinal);
        var to = text.IndexOf("all of it", from, StringComparison.Ordinal);
        var amounts = Amounts().Matches(text[from..to]).Select(match => decimal.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture)).ToList();
        Assert.Equal(view.Figures.Lines.Count, amounts.Count);
        Assert.Equal(view.Quote.Landed, amounts.Sum());
        Assert.Contains(view.Format.Money(view.Quote.Landed), text[to..], StringComparison.Ordinal);
        Assert.Contains("page 1 of 1", text, StringComparison.Ordinal);
        Assert.Contains(view.ShortFingerprint, text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_copy_of_a_run_on_two_papers_weighs_the_one_or_the_other()
    {
        var thin = ARun.Job.Edition.Parts.ToList().FindIndex(part => part.StockId == "thin");
        var view = AQuote.View(job: job => job with { SecondHalf = new SecondHalf(thin, "green") });
        var (first, second) = (view.Format.Mass(view.Figures.Mass), view.Format.Mass(view.Figures.SecondHalf!.Mass));

        Assert.Contains($"{first} or {second} a copy".Replace('\u00a0', ' '), Read(QuotePdf.Of(view, allLines: true)).Replace('\u00a0', ' '), StringComparison.Ordinal);
    }

    [Fact]
    public void A_word_that_no_line_holds_is_broken_and_none_of_it_is_lost()
    {
        var view = AQuote.View();
        var word = string.Concat(Enumerable.Range(0, 1_000).Select(place => (char)('a' + (place % 26))));
        var facts = view.Facts with { Note = word };

        var text = Read(QuotePdf.Of(AQuote.Again(view, view.Whole with { Quote = view.Quote with { Facts = facts } }), allLines: true));

        Assert.Contains(word, text.Replace(" ", "", StringComparison.Ordinal).Replace("\n", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void Only_the_totals_are_printed_where_only_they_are_shown_and_they_add_up()
    {
        var text = Read(QuotePdf.Of(AQuote.View(shows: QuoteShows.Totals), allLines: false));

        Assert.Contains("The print shop", text, StringComparison.Ordinal);
        Assert.DoesNotContain("set-up", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Whoever_has_not_answered_signs_for_the_whole_and_for_their_own_part_of_it()
    {
        var view = AQuote.View();
        var (landed, mine, theirs) = (Sum(view.Quote.Landed), Sum(view.Bill[1].Amount), Sum(view.Bill[0].Amount));
        var (bo, cy) = (AQuote.Link with { Id = Guid.NewGuid(), Name = "Bo", Part = 0 }, AQuote.Link with { Id = Guid.NewGuid(), Name = "Cy", Part = null });
        var three = AQuote.Again(view, view.Whole with { Links = [AQuote.Link, bo, cy with { Answer = QuoteAnswer.Agreed }] });

        var ofAda = Read(QuotePdf.Of(three, allLines: true, AQuote.Link));
        Assert.Contains($"I agree to 100 copies for {landed}, of which my part is {mine}.", ofAda, StringComparison.Ordinal);
        Assert.DoesNotContain($"my part is {theirs}.", ofAda, StringComparison.Ordinal);
        Assert.DoesNotContain("I agree", Read(QuotePdf.Of(three, allLines: true, cy with { Answer = QuoteAnswer.Agreed })), StringComparison.Ordinal);
        var ofAll = Read(QuotePdf.Of(three, allLines: true));
        Assert.Contains($"my part is {mine}.", ofAll, StringComparison.Ordinal);
        Assert.Contains($"my part is {theirs}.", ofAll, StringComparison.Ordinal);
        var unsent = Read(QuotePdf.Of(AQuote.Again(view, view.Whole with { Links = [], State = QuoteState.Held }), allLines: true));
        Assert.Equal(1, unsent.Split("I agree").Length - 1);
        Assert.Contains($"my part is {mine}.", unsent, StringComparison.Ordinal);

        string Sum(decimal amount) => view.Format.Sum(amount).Replace('\u00a0', ' ');
    }

    // PDF 2.0 (ISO 32000-2), 14.9.2: the catalogue's Lang is the language of all its text, by which it is read aloud.
    [Theory]
    [InlineData("en")]
    [InlineData("de")]
    public void A_file_says_in_which_language_it_is(string language)
    {
        var before = CultureInfo.CurrentUICulture;
        CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(language);
        try
        {
            using var document = PdfDocument.Open(QuotePdf.Of(AQuote.View(), allLines: true));

            Assert.Equal(language, Assert.IsType<StringToken>(document.Structure.Catalog.CatalogDictionary.Data["Lang"]).Data);
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }

    // PDF 2.0 (ISO 32000-2), 7.9.4: a date has the year of the Gregorian calendar first.
    [Theory]
    [InlineData("ar-SA")]
    [InlineData("fa-IR")]
    [InlineData("th-TH")]
    public void A_file_says_when_it_was_made_by_the_calendar_of_files_and_not_by_its_readers(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        try
        {
            using var quote = PdfDocument.Open(QuotePdf.Of(AQuote.View(culture: culture), allLines: true));
            using var picture = PdfDocument.Open(PdfPicture.AtTrueSize("A sheet", [new Picture(100, 100, [], "A sheet")]));

            Assert.StartsWith($"D:{AQuote.MadeAt.UtcDateTime.Year.ToString(CultureInfo.InvariantCulture)}", quote.Information.CreationDate, StringComparison.Ordinal);
            Assert.All(
                new[] { quote, picture }.SelectMany(document => new[] { document.Information.CreationDate, document.Information.ModifiedDate }).OfType<string>(),
                date => Assert.Matches(@"^D:20[0-9]{2}[0-9+Z\-']*$", date));
            Assert.Same(CultureInfo.GetCultureInfo(culture), CultureInfo.CurrentCulture);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData("Zażółć gęślą jaźń")]
    [InlineData("Жуки и мосты")]
    [InlineData("Το βιβλίο της θάλασσας")]
    public void Letters_of_other_alphabets_are_read_back(string title)
    {
        Assert.Contains(title, Read(QuotePdf.Of(AQuote.View(title), allLines: true)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("山田花子の本")]
    [InlineData("한국어 책, 第3版")]
    public void Letters_of_east_asia_are_set_in_a_face_that_has_them_and_read_back(string title)
    {
        var pdf = QuotePdf.Of(AQuote.View(title, culture: "ja-JP"), allLines: true);

        var text = Read(pdf);
        Assert.Contains(title.Split(' ')[0], text, StringComparison.Ordinal);
        Assert.DoesNotContain("[…]", text, StringComparison.Ordinal);
        // Only what is used of the large face is in the file.
        Assert.True(pdf.Length < 400_000, $"{pdf.Length} bytes");
    }

    [Theory]
    [InlineData("שלום מהים")]
    [InlineData("مرحبا بالبحر")]
    public void Letters_that_no_face_has_are_told_by_a_mark_that_is_explained(string name)
    {
        var view = AQuote.View($"{name} 7", events: [new QuoteEvent(1, AQuote.MadeAt, QuoteEventKind.Agreed, AQuote.Link.Id, name)]);
        var text = Read(QuotePdf.Of(view, allLines: true));

        Assert.Contains("[…] […] 7", text, StringComparison.Ordinal);
        Assert.Contains("[…] stands for letters that this file has no face for", text, StringComparison.Ordinal);
        Assert.DoesNotContain("[…]", Read(QuotePdf.Of(AQuote.View(), allLines: true)), StringComparison.Ordinal);
    }

    // ISO 4217 gives JPY no minor unit; CLDR's Japanese groups by a comma.
    [Fact]
    public void Yen_are_written_without_a_part_on_paper_and_add_up()
    {
        var view = AQuote.View(culture: "ja-JP", job: InYen);
        var text = Read(QuotePdf.Of(view, allLines: true));

        Assert.Equal(view.Quote.Landed, decimal.Truncate(view.Quote.Landed));
        Assert.Contains($"for ￥{view.Quote.Landed.ToString("#,0", CultureInfo.InvariantCulture)},", text, StringComparison.Ordinal);
        var to = text.LastIndexOf("all of it", StringComparison.Ordinal);
        var amounts = Whole().Matches(text[text.IndexOf("amount", StringComparison.Ordinal)..to]).Select(match => decimal.Parse(match.Groups[1].Value, NumberStyles.Number, CultureInfo.InvariantCulture));
        Assert.Equal(view.Quote.Landed, amounts.Sum());
    }

    private static Job InYen(Job job) => job with { Currency = Currency.Find("JPY")! };

    [Fact]
    public void A_long_costing_goes_on_over_numbered_pages_of_the_right_size_with_its_faces_embedded()
    {
        var many = Enumerable.Range(0, 60).Select(place => new PressRun.Engine.Editions.FixedCost($"cost number {place}", 1m)).ToList();
        var pdf = QuotePdf.Of(AQuote.View(job: job => job with { Edition = job.Edition with { FixedCosts = many } }), allLines: true);

        using var document = PdfDocument.Open(pdf);
        Assert.True(document.NumberOfPages > 1);
        Assert.All(document.GetPages(), page => Assert.Contains($"page {page.Number} of {document.NumberOfPages}", Words(page), StringComparison.Ordinal));
        // ISO 216: A4 is 210 by 297 mm; a point is 1/72 inch.
        Assert.Equal(210.0, document.GetPage(1).Width * 25.4 / 72, 0.1);
        Assert.Equal(297.0, document.GetPage(1).Height * 25.4 / 72, 0.1);
        Assert.All(document.GetPage(1).Letters, letter => Assert.Matches("^[A-Z]{6}\\+(Literata|PublicSans|Public Sans)", letter.FontName));
        Assert.All(document.GetPage(1).Letters, letter => Assert.InRange(letter.BoundingBox.Right, 0, document.GetPage(1).Width - 50));
    }

    private static string Read(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return string.Join("\n", document.GetPages().Select(Words));
    }

    // Lines from the top down, words from the left.
    private static string Words(UglyToad.PdfPig.Content.Page page) => string.Join("\n", page.GetWords()
        .GroupBy(word => Math.Round(word.BoundingBox.Bottom / 4)).OrderByDescending(line => line.Key)
        .Select(line => string.Join(" ", line.OrderBy(word => word.BoundingBox.Left).Select(word => word.Text))));

    [GeneratedRegex(@" (-?[\d,]+)$", RegexOptions.Multiline)]
    private static partial Regex Whole();

    [GeneratedRegex(@"(-?\d+\.\d\d)$", RegexOptions.Multiline)]
    private static partial Regex Amounts();
}
