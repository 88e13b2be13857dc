using System.Globalization;
using PressRun.Data.Presses;
using PressRun.Engine.Measures;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Tests.Shared;

/// <summary>What is shown in a field is read there: figures as every region of the world writes them, and as its keyboards do.</summary>
public sealed class TypedTests
{
    private static readonly decimal[] Figures =
        [0m, 1m, 7.5m, 12.34m, 0.12m, 0.004m, 99.99m, 100m, 999.9m, 1000m, 1200m, 1234.5m, 12345.67m, 123456.78m, 1234567.89m, 12345678m];

    private static IEnumerable<CultureInfo> Everywhere => CultureInfo.GetCultures(CultureTypes.AllCultures);

    [Fact]
    public void What_is_shown_is_read_back_as_the_same_figure_in_every_region()
    {
        Assert.True(Everywhere.Count() > 300, "The regions are known.");
        var lost = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var culture in Everywhere)
        {
            foreach (var units in new[] { UnitSystem.Metric, UnitSystem.Imperial })
            {
                foreach (var format in new[] { "EUR", "JPY", "KWD" }.Select(code => new PressFormat(Currency.Find(code)!, units, culture)))
                {
                    foreach (var figure in Figures.Concat(Figures.Select(figure => -figure)))
                    {
                        Held(format.Currency.Round(figure), format.Money(figure), text => Typed.Number(text, culture));
                        Held(figure, format.Price(figure), text => Typed.Number(text, culture));
                        Held(figure, format.Number(figure, 4), text => Typed.Number(text, culture));
                        Held(decimal.Round(figure, 2) / 100m, format.Percent(figure / 100m), text => Typed.Percent(text, culture));
                        if (figure >= 0m)
                        {
                            Held((int)figure, format.Count(decimal.Truncate(figure)), text => Typed.Count(text, culture));
                            var length = Length.FromMillimetres(decimal.Round(figure, 1));
                            Held(format.Length(length).ToString(), format.Length(length).ToString(), text => Typed.Length(text, units, culture) is { } read ? format.Length(read).ToString() : null);
                            Held(format.Gauged(length), format.Gauged(length), text => Typed.Length(text, units, culture) is { } read ? format.Gauged(read) : null);
                            var mass = Mass.FromGrams(decimal.Truncate(figure));
                            Held(format.Mass(mass).ToString(), format.Mass(mass).ToString(), text => Typed.Mass(text, units, culture) is { } read ? format.Mass(read).ToString() : null);
                        }
                    }
                }
            }

            void Held(object meant, string shown, Func<string, object?> read)
            {
                if (!Equals(read(shown), meant))
                {
                    lost.Add($"{culture.Name}: {shown}");
                }
            }
        }

        Assert.True(lost.Count == 0, string.Join("; ", lost.Take(40)));
    }

    [Theory]
    [InlineData("ar-EG", "١٢٫٥", "12.5")]
    [InlineData("ar-EG", "١٬٢٣٤٫٥", "1234.5")]
    [InlineData("fa-IR", "۱۲۳۴٫۵", "1234.5")]
    [InlineData("en-GB", "1٬234٫5", "1234.5")]
    [InlineData("de-DE", "1٬234", "1234")]
    [InlineData("ar-EG", "12.5", "12.5")]
    [InlineData("ar-EG", "\u061C-١٢", "-12")]
    [InlineData("bn-BD", "১২.৫", "12.5")]
    [InlineData("hi-IN", "12,34,567.50", "1234567.50")]
    public void Figures_of_the_readers_own_keyboard_are_read(string culture, string typed, string meant) =>
        Assert.Equal(decimal.Parse(meant, CultureInfo.InvariantCulture), Typed.Number(typed, CultureInfo.GetCultureInfo(culture)));

    [Fact]
    public void So_are_counts_percentages_measures_and_days()
    {
        var egypt = CultureInfo.GetCultureInfo("ar-EG");

        Assert.Equal(1200, Typed.Count("١٬٢٠٠", egypt));
        Assert.Equal(0.125m, Typed.Percent("١٢٫٥٪", egypt));
        Assert.Equal(Length.FromMillimetres(148.5m), Typed.Length("١٤٨٫٥ mm", UnitSystem.Metric, egypt));
        Assert.Equal(Length.FromInches(5.5m), Typed.Length("٥ ١/٢ in", UnitSystem.Metric, egypt));
        Assert.Equal(new DateOnly(2026, 3, 9), Typed.Day("٢٠٢٦-٠٣-٠٩", CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData("1٬23")]
    [InlineData("1٫2٫3")]
    [InlineData("٫")]
    [InlineData("٬234")]
    public void What_no_region_writes_so_is_refused(string typed) => Assert.Null(Typed.Number(typed, CultureInfo.GetCultureInfo("ar-EG")));
}
