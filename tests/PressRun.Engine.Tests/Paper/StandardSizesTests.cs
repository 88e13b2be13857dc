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
}
