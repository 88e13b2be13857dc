using PressRun.Web.Shared;

namespace PressRun.Web.Tests.Shared;

public class HandoverTests
{
    [Fact]
    public void A_view_is_taken_once_by_the_name_it_was_laid_down_under()
    {
        using var table = new HandoverTable();
        var name = table.Lay("a view");
        Assert.Equal("a view", table.Take(name));
        Assert.Null(table.Take(name));
    }

    [Fact]
    public void Names_cannot_be_guessed_from_one_another()
    {
        using var table = new HandoverTable();
        var names = Enumerable.Range(0, 100).Select(_ => table.Lay("a view")).ToHashSet();
        Assert.Equal(100, names.Count);
        Assert.All(names, name => Assert.Equal(32, name.Length));
    }
}
