using System.Net.Sockets;
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

/// <summary>Hands single mails to the mail server. Whoever answers there, before TLS perhaps somebody else, is listened to for so long and so much only.</summary>
/// <param name="settings">How mail is sent.</param>
/// <param name="longest">Longest that one mail takes from the connection to the good-bye; two minutes where nothing is said.</param>
public sealed class MailPost(MailSettings settings, TimeSpan? longest = null)
{
    private const int PatienceMilliseconds = 30_000;

    // The answers to one mail, a certificate's chain among them, come to a few kilobytes.
    private const int MostAnswered = 256 * 1024;

    private const int FirstPermanentCode = 500;

    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(2);

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
        using var inTime = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        inTime.CancelAfter(longest ?? Longest);
        using var socket = new TcpClient();
        using var client = new SmtpClient { Timeout = PatienceMilliseconds };
        try
        {
            await socket.ConnectAsync(settings.Host, settings.Port, inTime.Token);
            await client.ConnectAsync(new MeteredStream(socket.GetStream(), MostAnswered), settings.Host, settings.Port, settings.Security, inTime.Token);
            if (settings.SignIn is var (user, password))
            {
                await client.AuthenticateAsync(user, password, inTime.Token);
            }

            await client.SendAsync(message, inTime.Token);
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

        await LeaveAsync(client, inTime.Token);
        return new MailOutcome(MailFate.Sent);
    }

    // What the server says after it took the mail changes nothing any more.
    private static async Task LeaveAsync(SmtpClient client, CancellationToken inTime)
    {
        try
        {
            await client.DisconnectAsync(quit: true, inTime);
        }
        catch (Exception)
        {
            return;
        }
    }
}
