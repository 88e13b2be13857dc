using System.Globalization;
using MailKit.Security;
using MimeKit;
using PressRun.Data.Mail;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Data.Running;
using PressRun.Web.Mail;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Mail;

public sealed class MailTests
{
    private const string Hostile = "Nets\" <b>&\u202Eevil";

    [Fact]
    public async Task A_mail_arrives_at_a_server_as_it_was_written()
    {
        await using var sink = new MailSink();
        var mail = Mail(new QuoteEvent(7, default, QuoteEventKind.Remarked, null, "Ada", "Two lines:\nthe second\n.\n"));

        Assert.Equal(new MailOutcome(MailFate.Sent), await new MailPost(At(sink.Port)).SendAsync(mail, TestContext.Current.CancellationToken));

        var taken = Assert.Single(sink.Taken);
        Assert.Equal(mail.Subject, taken.Subject);
        Assert.Equal(mail.MessageId, taken.MessageId);
        Assert.Equal("maker@example.org", taken.To.Mailboxes.Single().Address);
        Assert.Contains("> Two lines:\n> the second\n> .", taken.TextBody!.ReplaceLineEndings("\n"), StringComparison.Ordinal);
    }

    // Reply codes of RFC 5321, section 4.2.1: the first digit says whether to try again.
    [Theory]
    [InlineData(451, MailFate.Later)]
    [InlineData(452, MailFate.Later)]
    [InlineData(550, MailFate.Never)]
    [InlineData(554, MailFate.Never)]
    public async Task What_a_server_answers_says_whether_it_is_tried_again(int code, MailFate fate)
    {
        await using var sink = new MailSink(code);
        var post = new MailPost(At(sink.Port));
        var mail = Mail(new QuoteEvent(7, default, QuoteEventKind.Remarked, null, "Ada", "Hello"));

        Assert.Equal(new MailOutcome(fate, $"code {code}"), await post.SendAsync(mail, TestContext.Current.CancellationToken));
        Assert.Equal(MailFate.Sent, (await post.SendAsync(mail, TestContext.Current.CancellationToken)).Fate);
        Assert.Single(sink.Taken);
    }

    [Fact]
    public async Task A_server_that_is_away_or_gives_no_tls_is_tried_later_and_nothing_secret_is_said()
    {
        int port;
        await using (var sink = new MailSink())
        {
            port = sink.Port;
            var asked = new MailSettings("127.0.0.1", port, SecureSocketOptions.StartTls, ("maker", "hush-hush"), "press@example.org");
            var outcome = await new MailPost(asked).SendAsync(Mail(new QuoteEvent(7, default, QuoteEventKind.Remarked, null, "Ada", "Hello")), TestContext.Current.CancellationToken);
            Assert.Equal((MailFate.Later, "it offers no STARTTLS (PressRun__MailSecurity)"), (outcome.Fate, outcome.Why));
            Assert.DoesNotContain("hush", outcome.Why, StringComparison.Ordinal);
            Assert.Empty(sink.Taken);
        }

        var away = await new MailPost(At(port)).SendAsync(Mail(new QuoteEvent(7, default, QuoteEventKind.Remarked, null, "Ada", "Hello")), TestContext.Current.CancellationToken);
        Assert.Equal(new MailOutcome(MailFate.Later, "nobody listens at PressRun__MailServer and PressRun__MailPort"), away);
    }

    [Fact]
    public void A_mail_says_where_PressRun_is_where_somebody_said()
    {
        var happened = new QuoteEvent(7, default, QuoteEventKind.Remarked, null, "Ada", "Hello");

        Assert.Contains("Open PressRun to answer;", Mail(happened).TextBody, StringComparison.Ordinal);
        Assert.Contains("Open PressRun at https://books.example/press to answer;", Mail(happened, home: "https://books.example/press").TextBody, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(QuoteEventKind.Agreed, "agreed", "agreed to 150 copies")]
    [InlineData(QuoteEventKind.TurnedDown, "turned down", "does not want it")]
    [InlineData(QuoteEventKind.AskedFor, "another quantity", "asks for 150 copies instead")]
    [InlineData(QuoteEventKind.Remarked, "a remark", "Ada")]
    public void Each_thing_a_reader_does_is_said_and_hostile_words_stay_words(QuoteEventKind kind, string word, string words)
    {
        var mail = Mail(new QuoteEvent(7, default, kind, null, "Ada", "", 150, 12m), Hostile);
        var text = mail.ToString();

        Assert.EndsWith(word, mail.Subject, StringComparison.Ordinal);
        Assert.Contains("Nets\" <b>&evil", mail.Subject, StringComparison.Ordinal);
        Assert.Contains(words, mail.TextBody, StringComparison.Ordinal);
        Assert.DoesNotContain("text/html", text, StringComparison.OrdinalIgnoreCase);
        Assert.Equal("auto-generated", mail.Headers["Auto-Submitted"]);
    }

    [Theory]
    [InlineData("MailSecurity", "maybe")]
    [InlineData("MailSecurity", "none")]
    [InlineData("MailFrom", "")]
    [InlineData("MailFrom", "PressRun")]
    [InlineData("MailServer", "mail.example.org:587")]
    [InlineData("MailServer", "smtp://mail.example.org")]
    [InlineData("MailTo", "")]
    [InlineData("MailTo", "nobody at all")]
    [InlineData("MailPort", "0")]
    public void Settings_that_do_not_fit_together_refuse_the_start_and_name_what_would(string name, string value)
    {
        var options = new PressRunOptions { SignIn = "off", MailServer = "mail.example.org", MailFrom = "press@example.org", MailTo = "maker@example.org", MailUser = "maker", MailPassword = "hush-hush" };
        Assert.NotNull(MailSettings.Of(options));
        var setting = typeof(PressRunOptions).GetProperty(name)!;
        setting.SetValue(options, Convert.ChangeType(value, setting.PropertyType, CultureInfo.InvariantCulture));

        var refused = Assert.Throws<StartRefusedException>(() => MailSettings.Of(options));

        Assert.Contains($"PressRun__{name}", refused.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("hush", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_server_no_mail_is_sent() => Assert.Null(MailSettings.Of(new PressRunOptions()));

    [Fact]
    public async Task A_server_that_greets_without_end_is_listened_to_for_so_much_only()
    {
        await using var server = new EndlessServer(TimeSpan.Zero);

        var outcome = await new MailPost(At(server.Port)).SendAsync(Mail(new QuoteEvent(7, default, QuoteEventKind.Remarked, null, "Ada", "Hello")), TestContext.Current.CancellationToken);

        Assert.Equal(new MailOutcome(MailFate.Later, "it answers without end, or what answers is no mail server"), outcome);
        Assert.True(server.Sent < EndlessServer.Most / 2, $"{server.Sent} bytes");
    }

    [Fact]
    public async Task A_server_that_greets_slowly_without_end_is_listened_to_for_so_long_only()
    {
        await using var server = new EndlessServer(TimeSpan.FromMilliseconds(20));

        var outcome = await new MailPost(At(server.Port), TimeSpan.FromSeconds(1))
            .SendAsync(Mail(new QuoteEvent(7, default, QuoteEventKind.Remarked, null, "Ada", "Hello")), TestContext.Current.CancellationToken);

        Assert.Equal(new MailOutcome(MailFate.Later, "it did not answer in time"), outcome);
    }

    private static MailSettings At(int port) => new("127.0.0.1", port, SecureSocketOptions.None, null, "press@example.org");

    // RFC 5321, section 4.1.2: a local part neither begins nor ends with a dot, and a domain is not empty.
    [Theory]
    [InlineData("a.@example.org")]
    [InlineData("a@[]")]
    public async Task A_mail_to_an_address_that_is_none_is_given_up_and_stops_nothing(string address)
    {
        await using var sink = new MailSink();
        var post = new MailPost(At(sink.Port));
        var happened = new QuoteEvent(7, default, QuoteEventKind.Remarked, null, "Ada", "Hello");

        Assert.Equal(MailFate.Never, (await post.SendAsync(Due(happened, to: address), DateTimeOffset.UnixEpoch, TestContext.Current.CancellationToken)).Fate);
        Assert.Equal(MailFate.Sent, (await post.SendAsync(Due(happened), DateTimeOffset.UnixEpoch, TestContext.Current.CancellationToken)).Fate);
        Assert.Single(sink.Taken);
    }

    private static MimeMessage Mail(QuoteEvent happened, string title = "Mending Nets", string? home = null) => QuoteMail.Of(Due(happened, title), "press@example.org", DateTimeOffset.UnixEpoch, home);

    private static DueMail Due(QuoteEvent happened, string title = "Mending Nets", string to = "maker@example.org") =>
        new(PressId.New(), Guid.NewGuid(), to, 1, AQuote.View(title, events: [happened]).Whole, happened);
}
