using System.Globalization;
using PressRun.Engine.Paper;
using PressRun.JobFile;

namespace PressRun.Engine.Tests.JobFile;

public class MeasureTextTests
{
    [Theory]
    [InlineData("5.5 in", "139.7")]
    [InlineData("5 1/2 in", "139.7")]
    [InlineData("5-1/2 in", "139.7")]
    [InlineData("5½ in", "139.7")]
    [InlineData("½in", "12.7")]
    [InlineData("1/8 in", "3.175")]
    [InlineData(" 1 / 8 in ", "3.175")]
    [InlineData("11/2 in", "139.7")]
    [InlineData("140 mm", "140")]
    [InlineData("140mm", "140")]
    [InlineData("21 CM", "210")]
    [InlineData("0.21 m", "210")]
    [InlineData("120 um", "0.12")]
    [InlineData("120 \u00B5m", "0.12")]
    [InlineData("120 \u03BCm", "0.12")]
    [InlineData(".5 inch", "12.7")]
    [InlineData("5.5\"", "139.7")]
    [InlineData("0 in", "0")]
    public void Reads_lengths(string text, string millimetres)
    {
        Assert.True(MeasureText.TryParseLength(text, CultureInfo.InvariantCulture, out var length));
        Assert.Equal(decimal.Parse(millimetres, CultureInfo.InvariantCulture), length.Millimetres);
    }

    [Theory]
    [InlineData("")]
    [InlineData("in")]
    [InlineData("5")]
    [InlineData("5 5 in")]
    [InlineData("5 1/0 in")]
    [InlineData("1,5 in")]
    [InlineData("5.5.5 in")]
    [InlineData("1e3 mm")]
    [InlineData("NaN mm")]
    [InlineData("5 furlongs")]
    [InlineData("-2 mm")]
    [InlineData("-0 mm")]
    [InlineData("99999999999999999999999999999999999 mm")]
    [InlineData("1000000000000000001 mm")]
    [InlineData("5 99999999999/2 in")]
    public void Refuses_what_is_no_length(string text) => Assert.False(MeasureText.TryParseLength(text, CultureInfo.InvariantCulture, out _));

    [Theory]
    [InlineData("80 g", "80")]
    [InlineData("2.5 kg", "2500")]
    [InlineData("16 oz", "453.59237")]
    [InlineData("1.2 lb", "544.310844")]
    [InlineData("1 1/2 LBS", "680.388555")]
    [InlineData("500 mg", "0.5")]
    public void Reads_masses(string text, string grams)
    {
        Assert.True(MeasureText.TryParseMass(text, CultureInfo.InvariantCulture, out var mass));
        Assert.Equal(decimal.Parse(grams, CultureInfo.InvariantCulture), mass.Grams);
    }

    [Theory]
    [InlineData("120 gsm", "120", null)]
    [InlineData("120 g/m2", "120", null)]
    [InlineData("120 g/m²", "120", null)]
    [InlineData("80 lb text", "80", PaperCategory.Text)]
    [InlineData("80 LB Book", "80", PaperCategory.Text)]
    [InlineData("60 lb offset", "60", PaperCategory.Text)]
    [InlineData("65 lb cover", "65", PaperCategory.Cover)]
    [InlineData("65# cover", "65", PaperCategory.Cover)]
    [InlineData("20 lb bond", "20", PaperCategory.Bond)]
    [InlineData("20 lb writing", "20", PaperCategory.Bond)]
    [InlineData("20 lbs ledger", "20", PaperCategory.Bond)]
    [InlineData("110 lb index", "110", PaperCategory.Index)]
    [InlineData("100 lb tag", "100", PaperCategory.Tag)]
    [InlineData("67 lb bristol", "67", PaperCategory.Bristol)]
    public void Reads_paper_weights_as_they_are_stated(string text, string stated, PaperCategory? category)
    {
        Assert.True(MeasureText.TryParseWeight(text, CultureInfo.InvariantCulture, out var weight));
        Assert.Equal((decimal.Parse(stated, CultureInfo.InvariantCulture), category), (weight.Stated, weight.Category));
    }

    [Theory]
    [InlineData("80 lb")]
    [InlineData("80")]
    [InlineData("80 lb vellum")]
    [InlineData("80 g")]
    public void Refuses_what_is_no_paper_weight(string text) => Assert.False(MeasureText.TryParseWeight(text, CultureInfo.InvariantCulture, out _));

    [Fact]
    public void The_decimal_mark_is_the_cultures_and_nothing_else_is_guessed()
    {
        var german = CultureInfo.GetCultureInfo("de-DE");

        Assert.True(MeasureText.TryParseLength("5,5 cm", german, out var length));
        Assert.Equal(55m, length.Millimetres);
        Assert.False(MeasureText.TryParseMass("1.000 g", german, out _));
        Assert.False(MeasureText.TryParseMass("1,000 g", CultureInfo.InvariantCulture, out _));
    }
}
