using MailKit.Security;
using MimeKit;
using PressRun.Data.Running;

namespace PressRun.Web.Mail;

/// <summary>How mail is sent, read from the host's settings.</summary>
/// <param name="Host">The mail server.</param>
/// <param name="Port">Its port.</param>
/// <param name="Security">TLS is demanded, or not used at all.</param>
/// <param name="SignIn">Name and password; null to not sign in.</param>
/// <param name="From">Address that mail comes from.</param>
/// <param name="Home">Where PressRun is found; null where nobody said.</param>
public sealed record MailSettings(string Host, int Port, SecureSocketOptions Security, (string User, string Password)? SignIn, string From, string? Home = null)
{
    /// <summary>Reads the settings; null where no mail is sent.</summary>
    /// <exception cref="StartRefusedException">They do not fit together; the sentence says what would.</exception>
    public static MailSettings? Of(PressRunOptions options)
    {
        if (options.MailServer.Length == 0)
        {
            return null;
        }

        var security = options.MailSecurity switch
        {
            "starttls" => SecureSocketOptions.StartTls,
            "tls" => SecureSocketOptions.SslOnConnect,
            "none" => SecureSocketOptions.None,
            var word => throw new StartRefusedException($"PressRun__MailSecurity is {word}; write starttls, tls or none."),
        };
        Demand(
            Uri.CheckHostName(options.MailServer) != UriHostNameType.Unknown,
            $"PressRun__MailServer is {options.MailServer}; write the host name alone, such as mail.example.org, and its port in PressRun__MailPort.");
        Demand(options.MailPort is > 0 and <= ushort.MaxValue, "PressRun__MailPort is a number from 1 to 65535.");
        Demand(IsAddress(options.MailFrom), "PressRun__MailServer is set, so PressRun__MailFrom must be the address that mail comes from, such as press@example.org.");
        Demand(options.MailTo.Length == 0 || IsAddress(options.MailTo), "PressRun__MailTo is no mail address; write one such as maker@example.org.");
        Demand(
            options.AsksToSignIn() || options.MailTo.Length > 0, "PressRun__MailServer is set and nobody signs in, so PressRun__MailTo must be the address of whoever is told.");
        Demand(
            security != SecureSocketOptions.None || options.MailUser.Length == 0, "PressRun__MailSecurity is none, which would send PressRun__MailUser's password in the clear; write starttls or tls.");
        return new MailSettings(
            options.MailServer, options.MailPort, security, options.MailUser.Length == 0 ? null : (options.MailUser, options.MailPassword), options.MailFrom);
    }

    // A name alone is read as an address without a host.
    private static bool IsAddress(string text) => MailboxAddress.TryParse(text, out var read) && read.LocalPart.Length > 0 && read.Domain.Length > 0;

    private static void Demand(bool holds, string sentence)
    {
        if (!holds)
        {
            throw new StartRefusedException(sentence);
        }
    }
}
