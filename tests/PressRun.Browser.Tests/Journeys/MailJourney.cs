using PressRun.Browser.Tests.Running;
using PressRun.Web.Tests.Support;

namespace PressRun.Browser.Tests.Journeys;

public sealed class MailJourney
{
    [Fact]
    public async Task The_maker_is_told_by_mail_once_of_each_thing_and_the_log_names_nobody()
    {
        await using var sink = new MailSink();
        await using var app = await AppProcess.StartAsync(sample: true, settings: new Dictionary<string, string>
        {
            ["PressRun__MailServer"] = "127.0.0.1", ["PressRun__MailPort"] = $"{sink.Port}", ["PressRun__MailSecurity"] = "none",
            ["PressRun__MailFrom"] = "press@example.org", ["PressRun__MailTo"] = "maker@example.org",
        });
        await using var stored = await Stored.OpenAsync(app);
        var secret = await stored.ShareAsync(3, "Ivo Teal");
        using var http = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = app.Address };
        foreach (var words in new[] { "Is the cover laminated?", "And the spine?" })
        {
            using var said = await http.PostAsync(new Uri($"q/{secret}/remark", UriKind.Relative), new FormUrlEncodedContent(new Dictionary<string, string> { ["name"] = "Ivo Teal", ["words"] = words }));
        }

        await Eventually.HoldsAsync(() => Task.FromResult(sink.Taken.Count == 2), "both remarks have come by mail");

        await Eventually.HoldsAsync(() => Task.FromResult(app.Said.Split("Mail about quote 3 was taken by the mail server").Length == 3), "the log says so of both");

        Assert.Equal(2, sink.Taken.Select(mail => mail.MessageId).Distinct().Count());
        Assert.All(["Is the cover laminated?", "And the spine?"], words => Assert.Single(sink.Taken, mail => mail.TextBody!.Contains(words, StringComparison.Ordinal)));
        Assert.DoesNotContain("maker@example.org", app.Said, StringComparison.Ordinal);
    }
}
