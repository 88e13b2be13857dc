using PressRun.Engine.Comparing;
using PressRun.Web.Papers;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Papers;

public sealed class PaperNamesTests
{
    private static readonly PapersView View = APost.View();

    [Fact]
    public void Of_several_parts_a_name_says_which_is_on_which_paper()
    {
        var rows = Rows((0, ["g150"]), (1, ["g150", "g70"]));

        Assert.Equal("Heron 150 for cover and inside", Name(rows, "g150", "g150"));
        Assert.Equal("Heron 150 for cover + Heron 70 for inside", Name(rows, "g150", "g70"));
        Assert.Equal("Heron 150 + Heron 70", PaperNames.Short(View, [0, 1], Row(rows, "g150", "g70")));
    }

    [Fact]
    public void Where_papers_of_one_part_alone_are_tried_its_paper_is_the_name() =>
        Assert.Equal("Heron 70", PaperNames.Of(View, [1], Rows((1, ["g70"]))[0]));

    private static string Name(IReadOnlyList<PaperRow> rows, string cover, string inside) => PaperNames.Of(View, [1, 0], Row(rows, cover, inside));

    private static PaperRow Row(IReadOnlyList<PaperRow> rows, string cover, string inside) => rows.Single(row => row.StockIds[0] == cover && row.StockIds[1] == inside);

    private static IReadOnlyList<PaperRow> Rows(params (int Part, IReadOnlyList<string> Ids)[] tried)
    {
        var choice = new PaperChoice(tried.ToDictionary(part => part.Part, part => part.Ids), [100], "post") { Without = tried.Select(part => part.Part).ToHashSet() };
        return PapersAnswer.Of(View.Through("post"), choice).Readings[100]!.Rows;
    }
}
