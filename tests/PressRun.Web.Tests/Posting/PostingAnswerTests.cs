using PressRun.Engine.Measures;
using PressRun.Engine.Postage;
using PressRun.Web.Papers;
using PressRun.Web.Posting;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Posting;

public class PostingAnswerTests
{
    private static readonly Length Millimetre = Length.FromMillimetres(1m);

    private static readonly PapersView View = APost.View();

    [Fact]
    public void One_two_and_five_copies_are_posted_in_every_mailer()
    {
        var answer = PostingAnswer.Of(View, "post", Millimetre);

        Assert.Equal([1, 1, 2, 2, 5, 5], answer.Table.Select(row => row.Copies));
        Assert.All(answer.Table.Where(row => row.Mailer == APost.Note), row => Assert.False(row.Lies));
    }

    [Fact]
    public void Every_limit_that_a_service_breaks_is_said_in_words()
    {
        // By hand: the piece is 240 mm long, 3.04 mm thick and weighs 65.9 g; the service takes 230, 2 and 60.
        var one = PostingAnswer.Of(View, "post", Millimetre).Table[0];

        Assert.Equal(["10 mm too long", "1.0 mm too thick", "5.9 g too heavy"], one.Choice.Refused.Select(refused => PostWords.Of(refused, Written.Metric)));
        Assert.Equal("2.0 mm too thin", PostWords.Of(new RefusedService("slim", PostageLimit.Thickness, 2m) { TooLittle = true }, Written.Metric));
    }

    [Fact]
    public void What_would_lower_the_postage_is_said_as_a_thing_to_do()
    {
        // With a lighter step just below, a little of everything is enough.
        var source = View.Source;
        var steps = source.Postage[0].Steps;
        var nearer = View with
        {
            Source = source with { Postage = [source.Postage[0] with { Steps = [steps[0] with { Most = Mass.FromGrams(65m), Price = 1.10m }, .. steps] }] },
        };

        var words = PostingAnswer.Of(nearer, "post", Millimetre).Lower!.Ways.Select(way => PostWords.Of(way, nearer, Written.Metric)).ToList();

        Assert.Equal(
            ["Trim 3 mm more off the fore-edge", "Trim 5 mm more off the foot", "Drop 4 pages of the inside", "Print the cover on Heron 150", "Print the inside on Heron 70", "Print the centre on Heron 70"],
            words);
    }

    [Fact]
    public void A_way_of_selling_that_posts_nothing_has_nothing_to_lower() =>
        Assert.Null(PostingAnswer.Of(View, "fair", Millimetre).Lower);

    [Fact]
    public void A_mailer_and_a_region_can_be_looked_at_without_a_way_of_selling()
    {
        var none = View with { Source = View.Source with { Channels = [] } };

        Assert.Equal(PostingAnswer.Of(View, "post", Millimetre).Lower!.Now.Price, PostingAnswer.Of(none, "board~home", Millimetre).Lower!.Now.Price);
    }
}
