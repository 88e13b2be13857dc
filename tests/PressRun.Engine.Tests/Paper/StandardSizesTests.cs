using PressRun.Engine.Paper;

namespace PressRun.Engine.Tests.Paper;

public sealed class StandardSizesTests
{
    [Theory]
    [InlineData("A4", 210, 297)] // SIZ-01. ISO 216, table of the A series.
    [InlineData("A5", 148, 210)] // SIZ-02. The same table.
    [InlineData("A1", 594, 841)] // SIZ-04. The same table: 594.5 is rounded down.
    [InlineData("B4", 250, 353)] // SIZ-06. ISO 216, table of the B series.
    [InlineData("SRA3", 320, 450)] // SIZ-07. ISO 217, table of the SRA series.
    [InlineData("SRA0", 900, 1280)] // ISO 479:1975, extract: 90 × 128 cm.
    [InlineData("SRA1", 640, 900)] // The same: 64 × 90 cm.
    [InlineData("A10", 26, 37)] // ISO 216, from memory.
    [InlineData("B10", 31, 44)] // ISO 216, from memory.
    [InlineData("RA4", 215, 305)] // ISO 217, from memory.
    public void Iso_sizes_are_those_of_the_standard(string name, int width, int height)
    {
        var size = StandardSizes.Find(name)!.Size;
        Assert.Equal((width, height), (size.Width.Millimetres, size.Height.Millimetres));
    }

    [Theory]
    [InlineData("letter", 8.5, 11)] // Common practice.
    [InlineData("Half Letter", 5.5, 8.5)] // Common practice.
    [InlineData("Tabloid", 11, 17)] // Common practice.
    public void Trade_sizes_are_found_whatever_the_case(string name, double width, double height)
    {
        var size = StandardSizes.Find(name)!.Size;
        Assert.Equal(((decimal)width, (decimal)height), (size.Width.Inches, size.Height.Inches));
    }

    [Fact]
    public void A_name_that_means_nothing_is_not_found() => Assert.Null(StandardSizes.Find("A11"));

    [Fact]
    public void Names_are_unique_and_sizes_stand_upright()
    {
        Assert.Equal(StandardSizes.All.Count, StandardSizes.All.Select(size => size.Name.ToUpperInvariant()).Distinct().Count());
        Assert.All(StandardSizes.All, size => Assert.True(size.Size.Width <= size.Size.Height, size.Name));
    }

    [Theory]
    [InlineData(PaperRegion.Iso, "A4", "A3")]
    [InlineData(PaperRegion.Us, "Letter", "Tabloid")]
    public void Common_sizes_of_both_regions_can_be_had_in_either_the_own_ones_first(PaperRegion region, string page, string sheet)
    {
        var (pages, sheets) = (StandardSizes.Pages(region), StandardSizes.Sheets(region));

        Assert.Equal((page, sheet), (pages[0].Name, sheets[0].Name));
        Assert.Superset(new HashSet<string> { "A4", "A5", "A6", "B5", "Letter", "Half letter", "Quarter letter" }, pages.Select(size => size.Name).ToHashSet());
        Assert.Superset(new HashSet<string> { "A3", "SRA3", "A4", "Tabloid", "12 × 18", "Letter" }, sheets.Select(size => size.Name).ToHashSet());
        Assert.Equal(pages.Count, pages.Distinct().Count());
    }
}
