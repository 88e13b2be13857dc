using PressRun.Web.Papers;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Papers;

public class PapersUsedTests
{
    private static readonly UsedPapers Now = new(APost.View().Source.Plan, true, Guid.NewGuid(), Guid.NewGuid());

    [Fact]
    public async Task What_was_done_to_a_printing_is_there_when_one_comes_back_and_taken_back_once()
    {
        var (used, edition) = (new PapersUsed(), Guid.NewGuid());
        used.Of(edition, null).Add(Now, "going by it", () => Task.FromResult<string?>(null));

        var again = used.Of(edition, Now.Plan.Id);
        Assert.Equal((Now, "going by it"), (again.Last, again.Edits.Next));
        Assert.Null(used.Of(Guid.NewGuid(), Now.Plan.Id).Last);

        Assert.Null(await again.Edits.TakeBackAsync());
        Assert.Equal((null, Now, null), (again.Last, again.TakenBack, again.Edits.Next));
    }

    [Fact]
    public async Task Where_the_printing_goes_by_another_plan_since_nothing_is_offered_and_what_cannot_be_taken_back_stays()
    {
        var (used, edition) = (new PapersUsed(), Guid.NewGuid());
        used.Of(edition, null).Add(Now, "going by it", () => Task.FromResult<string?>("Not now."));

        Assert.Equal("Not now.", await used.Of(edition, Now.Plan.Id).Edits.TakeBackAsync());
        Assert.Equal(Now, used.Of(edition, Now.Plan.Id).Last);
        Assert.Null(used.Of(edition, Guid.NewGuid()).Edits.Next);
    }
}
