using Bunit;
using PressRun.Web.Libraries;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Libraries;

public class PostageStandingTests
{
    [Theory]
    [InlineData(-1, "None of the postage below is in force yet; the first prices hold from 2 March 2026.")]
    [InlineData(0, "2 services to 1 region are in force, the latest from 2 March 2026.")]
    public async Task It_says_what_is_in_force_and_of_postage_that_is_not_yet_from_when_it_is(int days, string said)
    {
        await using var page = new BunitContext();
        var standing = page.Render<PostageStanding>(parameters => parameters
            .Add(part => part.Services, APost.Source().Postage).Add(part => part.Today, ARun.Day.AddDays(days)).Add(part => part.Format, Written.Metric));

        Assert.Equal(said, standing.Nodes.Select(node => node.TextContent).Aggregate("", string.Concat).Trim());
    }
}
