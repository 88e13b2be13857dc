using System.Net;
using PressRun.Web.People.Elsewhere;
using PressRun.Web.Tests.Support;
using Microsoft.Extensions.Logging;

namespace PressRun.Web.Tests.People;

/// <summary>Why people cannot be sent to the server that they sign in by.</summary>
public sealed class OtherServerAwayTests
{
    private static readonly OtherServer Server = new(new Uri("https://id.example/"), "Our ID", "pressrun", "");

    [Fact]
    public void It_is_told_in_one_line_of_our_own_words_at_most_once_a_minute()
    {
        using var told = new HeardLines();
        using var logging = new LoggerFactory([told]);
        var clock = new HandClock();
        var away = new OtherServerAway(clock, logging.CreateLogger<OtherServerAway>());
        var answered = new IOException("IDX20807: <html>Refused sign-in from 192.0.2.9: wrong");
        answered.Data["status_code"] = HttpStatusCode.NotFound;

        away.Tell(Server, new InvalidOperationException("IDX20803", answered));
        away.Tell(Server, new InvalidOperationException("IDX20803", answered));

        var line = Assert.Single(told.Lines);
        Assert.Contains("https://id.example/.well-known/openid-configuration cannot be had, as it answers with status 404.", line, StringComparison.Ordinal);
        Assert.DoesNotContain("192.0.2.9", line, StringComparison.Ordinal);
        clock.Pass(TimeSpan.FromMinutes(1));
        away.Tell(Server, answered);
        Assert.Equal(2, told.Lines.Count);
    }

    [Fact]
    public void Whoever_comes_back_without_having_gone_fills_no_log_and_keeps_nobody_elses_reason_out_of_it()
    {
        using var told = new HeardLines();
        using var logging = new LoggerFactory([told]);
        var clock = new HandClock();
        var away = new OtherServerAway(clock, logging.CreateLogger<OtherServerAway>());

        for (var time = 0; time < 100; time++)
        {
            away.TellNotTold("192.0.2.7", "Unable to unprotect the message.State.");
        }

        Assert.Equal(20, told.Lines.Count);
        Assert.All(told.Lines, line => Assert.Equal("Somebody came back from the other server, and who they are was not told: Unable to unprotect the message.State.", line));
        away.Tell(Server, new TimeoutException());
        away.TellNotTold("192.0.2.8", "access_denied");
        Assert.Equal(22, told.Lines.Count);
        clock.Pass(TimeSpan.FromMinutes(15));
        away.TellNotTold("192.0.2.7", "access_denied");
        Assert.Equal(23, told.Lines.Count);
    }

    [Fact]
    public void However_many_places_come_back_the_log_has_room_and_says_once_that_more_is_left_out()
    {
        using var told = new HeardLines();
        using var logging = new LoggerFactory([told]);
        var away = new OtherServerAway(new HandClock(), logging.CreateLogger<OtherServerAway>());

        for (var place = 0; place < 20_000; place++)
        {
            away.TellNotTold($"place {place}", "access_denied");
        }

        Assert.Equal(1_001, told.Lines.Count);
        Assert.Equal("More came back from the other server so than is told here: further lines are left out for up to a quarter of an hour", told.Lines.Last());
    }

    [Theory]
    [InlineData(HttpRequestError.ConnectionError, "nobody answers there")]
    [InlineData(HttpRequestError.NameResolutionError, "its name is not known")]
    [InlineData(HttpRequestError.SecureConnectionError, "its certificate is not believed here")]
    public void What_is_wrong_with_the_way_there_is_said(HttpRequestError error, string words) =>
        Assert.Equal(words, OtherServerAway.Why(new InvalidOperationException("IDX20803", new IOException("IDX20804", new HttpRequestException(error)))));
}
