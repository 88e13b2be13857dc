using PressRun.Engine.Comparing;
using PressRun.Engine.Editions;
using PressRun.Engine.Paper;

namespace PressRun.Engine.Tests.Comparing;

public class PaperFitTests
{
    private static readonly Part[] Book = [Part("cover", 4), Part("inside", 48)];

    // Common practice: text papers of 80 to 170 g/m², covers from 150.
    [Theory]
    [InlineData(80, false, true)]
    [InlineData(160, true, true)]
    [InlineData(280, true, false)]
    public void A_cover_is_heavy_and_the_inside_light(int grammage, bool cover, bool inside)
    {
        var stock = new Stock("paper", "Paper", PaperWeight.FromGrammage(grammage), null, null, Finish.Uncoated);

        Assert.Equal((cover, inside), (PaperFit.Suits(Binding.Saddle, Book, 0, stock), PaperFit.Suits(Binding.Saddle, Book, 1, stock)));
        Assert.True(PaperFit.Suits(Binding.Saddle, [Part("all", 48)], 0, stock));
        Assert.True(PaperFit.Suits(Binding.Loose, Book, 1, stock));
    }

    private static Part Part(string name, int pages) => new(name, pages, "paper", Ink.Black, Ink.Black);
}
