using PressRun.Engine.Editions;

namespace PressRun.Engine.Tests.Editions;

public class PageCountTests
{
    [Fact]
    public void The_cover_is_the_first_of_several_bound_parts_with_four_pages()
    {
        Assert.Equal(new PageCount(52, 4), PageCount.Of(Binding.Saddle, [Part(4), Part(48)]));
        Assert.Equal(new PageCount(52, 4), PageCount.Of(Binding.Perfect, [Part(4), Part(48)]));
        Assert.Equal(new PageCount(48, 0), PageCount.Of(Binding.Saddle, [Part(48)]));
        Assert.Equal(new PageCount(56, 0), PageCount.Of(Binding.Saddle, [Part(8), Part(48)]));
        Assert.Equal(new PageCount(12, 0), PageCount.Of(Binding.Loose, [Part(4), Part(8)]));
    }

    private static Part Part(int pages) => new("part", pages, "paper", Ink.Black, Ink.Black);
}
