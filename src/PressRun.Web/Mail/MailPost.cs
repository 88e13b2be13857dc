using MailKit.Net.Smtp;
using MimeKit;
using PressRun.Data.Mail;

namespace PressRun.Web.Mail;

/// <summary>What became of a mail.</summary>
public enum MailFate
{
    /// <summary>The server has it.</summary>
    Sent,

    /// <summary>The server was away, or asks to try later.</summary>
    Later,

    /// <summary>The server will never take it.</summary>
    Never,
}

/// <summary>What became of a mail, and why.</summary>
/// <param name="Fate">What became of it.</param>
/// <param name="Why">A code or what was wrong, without an address, a name or a password; empty where it was sent.</param>
public sealed record MailOutcome(MailFate Fate, string Why = "");

/// <summary>Hands single mails to the mail server.</summary>
public sealed class MailPost(MailSettings settings)
{
    private const int PatienceMilliseconds = 30_000;
    private const int FirstPermanentCode = 500;

    /// <summary>Writes a mail and sends it. One that cannot be written, as for an address that is none, will never be: it must not stop those behind it.</summary>
    public async Task<MailOutcome> SendAsync(DueMail due, DateTimeOffset now, CancellationToken cancel)
    {
        MimeMessage message;
        try
        {
            message = QuoteMail.Of(due, settings.From, now, settings.Home);
        }
        catch (Exception unwritten) when (unwritten is not OperationCanceledException)
        {
            return new MailOutcome(MailFate.Never, unwritten.GetType().Name);
        }

        return await SendAsync(message, cancel);
    }

    /// <summary>Sends a mail, with a connection of its own. Whatever goes wrong on the way, it is tried later, as often as the outbox allows.</summary>
    public async Task<MailOutcome> SendAsync(MimeMessage message, CancellationToken cancel)
    {
        using var client = new SmtpClient { Timeout = PatienceMilliseconds };
        try
        {
            await client.ConnectAsync(settings.Host, settings.Port, settings.Security, cancel);
            if (settings.SignIn is var (user, password))
            {
                await client.AuthenticateAsync(user, password, cancel);
            }

            await client.SendAsync(message, cancel);
        }
        catch (SmtpCommandException refused)
        {
            // The reply codes of RFC 5321, section 4.2.1: 4xx may be tried again, 5xx not. A refused sign-in is the host's to mend, and waits.
            var code = (int)refused.StatusCode;
            return new MailOutcome(code >= FirstPermanentCode ? MailFate.Never : MailFate.Later, $"code {code}");
        }
        catch (Exception away) when (!cancel.IsCancellationRequested)
        {
            return new MailOutcome(MailFate.Later, MailFaults.Words(away, client.IsConnected));
        }

        await LeaveAsync(client);
        return new MailOutcome(MailFate.Sent);
    }

    // What the server says after it took the mail changes nothing any more.
    private static async Task LeaveAsync(SmtpClient client)
    {
        try
        {
            await client.DisconnectAsync(quit: true, CancellationToken.None);
        }
        catch (Exception)
        {
            return;
        }
    }
}
