using System.Net.Sockets;
using MailKit;
using MailKit.Security;

namespace PressRun.Web.Mail;

/// <summary>What went wrong on the way to the mail server, in words for whoever runs PressRun: none of the server's, and no address, name or password.</summary>
internal static class MailFaults
{
    /// <summary>The words.</summary>
    /// <param name="fault">What was thrown.</param>
    /// <param name="connected">True where the server was reached and its line stands.</param>
    public static string Words(Exception fault, bool connected) => fault switch
    {
        SocketException { SocketErrorCode: SocketError.ConnectionRefused } => "nobody listens at PressRun__MailServer and PressRun__MailPort",
        SocketException { SocketErrorCode: SocketError.HostNotFound or SocketError.NoData or SocketError.TryAgain } => "the name in PressRun__MailServer is not known",
        SocketException { SocketErrorCode: SocketError.TimedOut } or TimeoutException or OperationCanceledException => "it did not answer in time",
        SocketException => "it cannot be reached from here",
        SslHandshakeException => "its certificate is not believed, or PressRun__MailSecurity does not fit its port",
        AuthenticationException => "it refused PressRun__MailUser or the password",
        NotSupportedException => connected ? "it offers no way to sign in" : "it offers no STARTTLS (PressRun__MailSecurity)",
        InvalidDataException => "it answers without end, or what answers is no mail server",
        ProtocolException or IOException => "the line broke off, or what answers is no mail server",
        _ => fault.GetType().Name,
    };
}
