using Bunit;
using PressRun.Web.Papers;
using PressRun.Web.Posting;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Posting;

public class MissingPostTests
{
    private static readonly PapersView View = APost.View();

    [Fact]
    public async Task Nothing_is_said_where_a_mailer_and_a_region_can_be_chosen()
    {
        await using var page = new BunitContext();
        Assert.Empty(Note(page, View).Markup.Trim());
    }

    [Fact]
    public async Task Papers_are_said_to_be_compared_on_cost_and_mass_alone_where_nothing_posts()
    {
        await using var page = new BunitContext();
        var said = Said(Note(page, View with { Mailers = [APost.Note], Source = View.Source with { Channels = [] } }));

        Assert.StartsWith("The page lies in none of your mailers. Until then papers are compared on cost and mass alone. Add it", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_way_of_selling_whose_mailer_is_archived_still_posts_and_is_said_to()
    {
        await using var page = new BunitContext();
        var archived = View with { Mailers = [] };

        Assert.Equal(
            "Only Own web shop posts, in a mailer that is archived; none that is offered holds the page. Add one on the page Post to look at other mailers and regions.",
            Said(Note(page, archived)));
        Assert.NotNull(PapersAnswer.Of(archived.Source, PaperChoice.Read(archived, null, null, null)).Readings[100]!.Now!.Postage!.Price);
    }

    [Fact]
    public async Task A_way_of_selling_that_no_service_of_the_day_serves_does_not_post()
    {
        await using var page = new BunitContext();
        var unserved = View with { Mailers = [], Source = View.Source with { Channels = [.. View.Source.Channels.Select(way => way with { PostageRegion = "far" })] } };

        Assert.Contains("on cost and mass alone", Said(Note(page, unserved)), StringComparison.Ordinal);
    }

    private static IRenderedComponent<MissingPost> Note(BunitContext page, PapersView view) => page.Render<MissingPost>(parameters => parameters.Add(note => note.View, view));

    private static string Said(IRenderedComponent<MissingPost> note) => string.Join(' ', note.Find("p").TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
