using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Engine.Bench;
using PressRun.Web.Libraries;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Libraries;

public class CommonStepsTests
{
    private static readonly BenchStepShape Shape = new();

    [Fact]
    public void Each_is_read_as_it_stands_and_the_sheet_knows_what_is_done()
    {
        var read = Shape.Read([.. CommonSteps.All.Select(Row)], LibraryManners.Of(ALedger.Press));

        Assert.Empty(read.Problems);
        var steps = read.Things.Select(thing => thing.Thing).ToList();
        Assert.Equal(CommonSteps.All.Count, steps.Count);
        Assert.All(steps, step => Assert.NotEqual(WorkKind.Other, Work.Named(step.Name)));
        Assert.All(steps, step => Assert.True(step.Spoilage is >= 0m and <= 0.02m && step.SecondsPerCopy + step.SecondsPerPiece + step.SecondsPerCut > 0m, step.Name));
        Assert.Equal(("collate", BenchStep.Pack), (steps[0].Name, steps[^1].Name));
    }

    private static IReadOnlyList<string> Row(IReadOnlyList<string> cells) =>
        [.. Shape.Columns.Select(column => CommonSteps.Columns.ToList().IndexOf(column.Key) is var at and >= 0 ? cells[at] : "")];
}
