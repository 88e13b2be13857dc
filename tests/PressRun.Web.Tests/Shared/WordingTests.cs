using System.Globalization;
using PressRun.Data.Presses;
using PressRun.Engine.Measures;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Faces;
using PressRun.Web.Shared.Wording;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Shared;

public class WordingTests
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-US");
    private static readonly CultureInfo German = CultureInfo.GetCultureInfo("de-DE");

    [Theory]
    [InlineData(139.7, "5½ in")]
    [InlineData(215.9, "8½ in")]
    [InlineData(3.175, "1/8 in")]
    [InlineData(55.5625, "2 3/16 in")]
    [InlineData(140, "5.512 in")]
    [InlineData(25.4, "1 in")]
    public void Inches_are_read_off_a_ruler_where_they_lie_on_a_mark(double millimetres, string written) =>
        Assert.Equal(written, Written.Imperial.Length(Length.FromMillimetres((decimal)millimetres)).ToString());

    // Unicode CLDR: where each locale puts the sign of a currency.
    [Theory]
    [InlineData("EUR", "en-IE", "1305.8", "€1,305.80")]
    [InlineData("EUR", "de-DE", "1305.8", "1.305,80\u00a0€")]
    [InlineData("USD", "en-US", "-2.5", "\u2212$2.50")]
    [InlineData("CAD", "en-US", "2.5", "CAD\u00a02.50")]
    [InlineData("CHF", "de-DE", "2.5", "2,50\u00a0CHF")]
    [InlineData("JPY", "en-GB", "250", "JPY\u00a0250")]
    [InlineData("GBP", "de-DE", "2.5", "2,50\u00a0£")]
    [InlineData("BRL", "pt-BR", "2.5", "R$\u00a02,50")]
    [InlineData("PLN", "pl-PL", "2.5", "2,50\u00a0zł")]
    [InlineData("ILS", "en-IL", "2.5", "ILS\u00a02.50")]
    [InlineData("AED", "en-AE", "2.5", "AED\u00a02.50")]
    public void A_sum_that_stands_by_itself_carries_its_currency_as_the_locale_writes_it(string currency, string culture, string amount, string written) =>
        Assert.Equal(written, new PressFormat(Currency.Find(currency)!, UnitSystem.Metric, CultureInfo.GetCultureInfo(culture)).Sum(decimal.Parse(amount, CultureInfo.InvariantCulture)));

    // The faces have no letter that runs from the right: what they have turns nothing around. Figures are as the locale writes them.
    [Fact]
    public void A_currency_is_told_in_every_locale_by_what_sentences_and_documents_can_set()
    {
        foreach (var culture in CultureInfo.GetCultures(CultureTypes.SpecificCultures))
        {
            foreach (var currency in Currency.All)
            {
                var format = new PressFormat(currency, UnitSystem.Metric, culture);
                var sign = format.Sum(250m).Replace(format.Money(250m), "", StringComparison.Ordinal);
                Assert.False(Face.Lacks(sign) || sign.Any(letter => char.GetUnicodeCategory(letter) == UnicodeCategory.Format || letter is >= '\u0590' and <= '\u08ff' or >= '\ufb1d' and <= '\ufefc'), $"{culture.Name} writes {currency.Code} as {sign}");
            }
        }
    }

    [Fact]
    public void A_figure_below_zero_is_whole_in_documents_and_runs_one_way_in_every_locale()
    {
        foreach (var culture in CultureInfo.GetCultures(CultureTypes.AllCultures))
        {
            var format = new PressFormat(Currency.Find("EUR")!, UnitSystem.Metric, culture);
            var (shown, filed) = (format.Money(-1234.5m), format.ForFile(-1234.5m));

            Assert.False(Face.Lacks(shown) || shown.Any(letter => char.GetUnicodeCategory(letter) == UnicodeCategory.Format), $"{culture.Name} writes {shown}");
            Assert.True(filed.StartsWith('-'), $"{culture.Name} files {filed}");
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("Ada", "Ada")]
    [InlineData("Ada and Bo", "Ada", "Bo")]
    [InlineData("Ada, Bo and Cy", "Ada", "Bo", "Cy")]
    public void Names_stand_in_a_sentence(string sentence, params string[] names) => Assert.Equal(sentence, Words.Together(names));

    [Fact]
    public void Metric_lengths_have_at_most_one_decimal_and_thin_ones_two()
    {
        Assert.Equal("139.7 mm", Written.Metric.Length(Length.FromInches(5.5m)).ToString());
        Assert.Equal("0.74 mm", Written.Metric.Thickness(Length.FromMillimetres(0.742m)).ToString());
        Assert.Equal("2.4 mm", Written.Metric.Thickness(Length.FromMillimetres(2.4163m)).ToString());
        Assert.Equal("17.0 mm", Written.Metric.Thickness(Length.FromMillimetres(17m)).ToString());
        Assert.Equal("585 mm", Written.Metric.Thickness(Length.FromMillimetres(585.4m)).ToString());
    }

    [Fact]
    public void What_was_weighed_and_gauged_is_shown_as_it_was_typed()
    {
        Assert.Equal("56.25", Written.Metric.Weighed(Mass.FromGrams(56.25m)));
        Assert.Equal("1,234", Written.Metric.Weighed(Mass.FromGrams(1234m)));
        Assert.Equal("7", Written.Metric.Gauged(Length.FromMillimetres(7m)));
        Assert.Equal("6.85", Written.Metric.Gauged(Length.FromMillimetres(6.85m)));
        Assert.Equal("0.276", Written.Imperial.Gauged(Length.FromInches(0.276m)));
    }

    [Fact]
    public void Masses_take_the_unit_that_suits_them()
    {
        Assert.Equal("56 g", Written.Metric.Mass(Mass.FromGrams(56.2m)).ToString());
        Assert.Equal("9.7 kg", Written.Metric.Mass(Mass.FromGrams(9712m)).ToString());
        Assert.Equal("1.98 oz", Written.Imperial.Mass(Mass.FromGrams(56.2m)).ToString());
        Assert.Equal("2.2 lb", Written.Imperial.Mass(Mass.FromKilograms(1m)).ToString());
    }

    [Fact]
    public void Amounts_follow_the_viewers_locale_and_the_currencys_minor_unit()
    {
        Assert.Equal("1,305.83", Written.Imperial.Money(1305.825m));
        Assert.Equal("1.305,83", Written.German.Money(1305.83m));
        Assert.Equal("1,306", new PressFormat(Currency.Find("JPY")!, UnitSystem.Metric, English).Money(1305.5m));
        Assert.Equal("0.004", Written.Imperial.Price(0.0040m));
        Assert.Equal("9.00", Written.Imperial.Price(9m));
    }

    // ISO 80000-1 sets numbers below zero with a minus sign (from memory), which Unicode has at U+2212; a keyboard's hyphen is for files and for typing.
    [Fact]
    public void Figures_below_zero_are_shown_with_a_minus_sign_read_with_either_and_written_into_files_with_a_hyphen()
    {
        var format = Written.Imperial;

        Assert.Equal(("\u2212400", "\u22123.00", "\u22120.004"), (format.Count(-400), format.Money(-3m), format.Price(-0.004m)));
        Assert.Equal(("\u22121.5", "\u22125\u00a0%"), (format.Number(-1.5m, 1), format.Percent(-0.05m)));
        Assert.Equal(("-1305.80", "-0.125"), (format.ForFile(-1305.8m), format.ForFile(-0.125m)));
        Assert.Equal("-3,00", Written.German.ForFile(-3m));
        Assert.All(new[] { "-3.5", format.Number(-3.5m, 1) }, typed => Assert.Equal(-3.5m, Typed.Number(typed, format.Culture)));
    }

    // A month is a word of the sentence that it stands in, and the sentences are English.
    [Theory]
    [InlineData("de-DE")]
    [InlineData("fa-IR")]
    [InlineData("th-TH")]
    public void Days_are_written_in_the_language_of_the_sentences_whatever_the_viewers_numbers_look_like(string viewer)
    {
        var format = new PressFormat(Currency.Find("EUR")!, UnitSystem.Metric, CultureInfo.GetCultureInfo(viewer));
        var day = new DateOnly(2026, 1, 5);

        Assert.Equal("5 January 2026", format.Day(day));
        Assert.Equal(("5 Jan 2026", "5 Jan"), (format.ShortDay(day), format.DayOfYear(day)));
        Assert.Equal(("January 2026", "Jan 2026", "2026", "Feb"), (format.Month(day), format.ShortMonth(day), format.MonthOfAxis(day), format.MonthOfAxis(day.AddMonths(1))));
    }

    [Theory]
    [InlineData("Etc/UTC", "5 Jan, 23:05 UTC", 5)]
    [InlineData("Europe/Berlin", "6 Jan, 00:05 UTC+1", 6)]
    [InlineData("America/St_Johns", "5 Jan, 19:35 UTC−3:30", 5)]
    [InlineData("Asia/Kathmandu", "6 Jan, 04:50 UTC+5:45", 6)]
    public void A_moment_is_told_by_the_clock_where_days_are_counted_and_how_far_that_is_from_universal_time(string zone, string told, int day)
    {
        var format = new PressFormat(Currency.Find("EUR")!, UnitSystem.Metric, CultureInfo.GetCultureInfo("en"), TimeZoneInfo.FindSystemTimeZoneById(zone));
        var at = new DateTimeOffset(2026, 1, 5, 23, 5, 0, TimeSpan.Zero);

        Assert.Equal(told, format.Moment(at));
        Assert.Equal(new DateOnly(2026, 1, day), format.DayOf(at));
    }

    [Theory]
    [InlineData("5 1/2", 139.7)]
    [InlineData("5½", 139.7)]
    [InlineData("5 1/2 in", 139.7)]
    [InlineData("5.5\"", 139.7)]
    [InlineData("140 mm", 140)]
    [InlineData("14 cm", 140)]
    [InlineData("1/8", 3.175)]
    [InlineData("0", 0)]
    public void A_length_is_read_with_fractions_and_any_unit(string typed, double millimetres) =>
        Assert.Equal((decimal)millimetres, Typed.Length(typed, UnitSystem.Imperial, English)!.Value.Millimetres, 6);

    [Theory]
    [InlineData("")]
    [InlineData("wide")]
    [InlineData("5 1/0")]
    [InlineData("5 miles")]
    [InlineData("5 5")]
    public void What_is_no_length_is_not_read_as_one(string typed) => Assert.Null(Typed.Length(typed, UnitSystem.Imperial, English));

    [Theory]
    [InlineData("21,5 cm", 215)]
    [InlineData("21.5 cm", 215)]
    [InlineData("148", 148)]
    public void A_comma_is_a_decimal_sign_where_the_viewer_writes_one_and_a_lone_point_is_understood(string typed, double millimetres) =>
        Assert.Equal((decimal)millimetres, Typed.Length(typed, UnitSystem.Metric, German)!.Value.Millimetres);

    [Theory]
    [InlineData("1.250", 1250)]
    [InlineData("1.250,50", 1250.5)]
    [InlineData("4,5", 4.5)]
    [InlineData("4.5", 4.5)]
    public void German_amounts_keep_their_grouping_points(string typed, double amount) => Assert.Equal((decimal)amount, Typed.Number(typed, German));

    [Theory]
    [InlineData("1,250", 1250)]
    [InlineData("1 250", 1250)]
    [InlineData("150", 150)]
    public void Counts_may_be_grouped(string typed, int count) => Assert.Equal(count, Typed.Count(typed, English));

    [Theory]
    [InlineData("-5")]
    [InlineData("1.5")]
    [InlineData("12 copies")]
    [InlineData("1,5")]
    [InlineData(",500")]
    [InlineData("1,20,0")]
    [InlineData("1000,5")]
    [InlineData("99999999999")]
    public void What_is_no_count_is_not_read_as_one(string typed) => Assert.Null(Typed.Count(typed, English));

    [Fact]
    public void What_is_shown_in_a_field_can_be_typed_back()
    {
        foreach (var millimetres in new[] { 139.7m, 3.175m, 55.5625m, 215.9m, 101.6m })
        {
            var shown = Written.Imperial.Length(Length.FromMillimetres(millimetres)).NumberText;
            Assert.Equal(millimetres, Typed.Length(shown, UnitSystem.Imperial, English)!.Value.Millimetres, 4);
        }
    }

    [Theory]
    [InlineData("0,049", 0.049)]
    [InlineData("0.049", 0.049)]
    [InlineData("1,234", 1234)]
    [InlineData("12,5", 12.5)]
    public void A_comma_after_a_zero_groups_nothing(string typed, double number) => Assert.Equal((decimal)number, Typed.Number(typed, English));

    [Fact]
    public void A_range_of_one_number_is_told_as_that_number() =>
        Assert.Equal(
            ["45 copies cost", "1 copy costs", "45 to 60 copies cost"],
            new[] { (45, 45), (1, 1), (45, 60) }.Select(range => Words.CopiesCost(range.Item1, range.Item2, count => count.ToString(CultureInfo.InvariantCulture))));

    [Theory]
    [InlineData(128.42, "21.5 g", "128.4 g")]
    [InlineData(62.4, "87.6 g", "62.4 g")]
    [InlineData(50, "100 g", "50 g")]
    [InlineData(149.96, "0 g", "150 g")]
    [InlineData(9.97, "140 g", "10 g")]
    public void What_is_to_spare_is_never_told_as_more_than_it_is(double grams, string spare, string beside)
    {
        var (format, mass) = (ALedger.Press.Format, Mass.FromGrams((decimal)grams));
        var headroom = Mass.FromGrams(150m - (decimal)grams);
        Assert.Equal((spare, beside), (format.Spare(headroom).ToString().Replace('\u00a0', ' '), format.MassBeside(mass, headroom).ToString().Replace('\u00a0', ' ')));
    }

    [Theory]
    [InlineData(1.99, "1.9 mm")]
    [InlineData(0.038, "0.03 mm")]
    [InlineData(589.9, "589 mm")]
    public void So_is_thickness(double millimetres, string spare) =>
        Assert.Equal(spare, ALedger.Press.Format.Spare(Length.FromMillimetres((decimal)millimetres)).ToString().Replace('\u00a0', ' '));
}
