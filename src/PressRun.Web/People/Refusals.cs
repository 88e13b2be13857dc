using System.Net;
using PressRun.Web.Running;

namespace PressRun.Web.People;

/// <summary>
/// Tells the log whom it did not let in: from which address and why, in words that stay the same, so that a program may read them and bar an address that tries too
/// often, and of each place and reason, and of all together, only so many times, so that nobody fills the log. Nothing that was typed is told; of a mail address its first letter and its host, and only where its account is closed to strangers for a while.
/// </summary>
public sealed partial class Refusals(ILogger<Refusals> logger, TimeProvider time)
{
    /// <summary>Most lines of one address and reason within <see cref="Within"/>: twice as many as bar an address by the filter in docs/operating.md.</summary>
    public const int MostOfAddress = 20;

    /// <summary>Most lines of one household and reason: so many that several of its addresses, tried in turn, each have enough to be barred.</summary>
    public const int MostOfHousehold = 100;

    /// <summary>After so long all lines are counted anew.</summary>
    public static readonly TimeSpan Within = TimeSpan.FromMinutes(15);

    /// <summary>Most lines together of what costs nothing to get wrong.</summary>
    public const int MostOfSecrets = 8_000;

    /// <summary>Most lines together of passwords: whatever else is tried from whole networks takes none of them.</summary>
    public const int MostOfPasswords = 10_000;

    /// <summary>Most accounts of which it is told, whatever else there was, that they are closed.</summary>
    public const int MostClosed = 2_000;

    // By reason, so that what costs nothing to get wrong hides nothing else.
    private readonly FewOfEach secrets = new(time, MostOfAddress, MostOfHousehold, MostOfSecrets, Within);

    private readonly FewOfEach passwords = new(time, MostOfAddress, MostOfHousehold, MostOfPasswords, Within);

    private readonly FewOfEach closed = new(time, 1, 1, MostClosed, Within);

    /// <summary>An address and a password that do not belong together, whether or not somebody has the address.</summary>
    public const string Password = "wrong address or password";

    /// <summary>A code, an invitation or a passkey that opens nothing.</summary>
    public const string Secret = "wrong code, invitation or passkey";

    /// <summary>A program's key that opens nothing.</summary>
    public const string Key = "wrong key";

    /// <summary>Somebody's own password, asked for again, was wrong too often.</summary>
    public const string Change = "too many tries of a password by somebody signed in";

    /// <summary>More tries from one place than it has.</summary>
    public const string Place = "too many tries from this place";

    /// <summary>More tries of one account than one device or place has.</summary>
    public const string AccountHere = "too many tries of one account from this place";

    /// <summary>An account was tried too often on the devices together that it knows.</summary>
    public const string AccountOnDevices = "too many tries of one account on all devices that it knows";

    /// <summary>An account was tried too often from everywhere, and is closed to devices that are not known.</summary>
    public static string AccountEverywhere(string address) => $"too many tries of the account {Masked(address)}, which is closed to new devices for up to an hour";

    /// <summary>Writes a line, unless there are enough of that address, of its household or of all for this reason.</summary>
    public void Tell(HttpContext http, string reason)
    {
        ArgumentNullException.ThrowIfNull(http);
        if (reason is Secret or Key or Place)
        {
            Tell(http, reason, secrets, "codes, invitations, passkeys and keys");
        }
        else
        {
            Tell(http, reason, passwords, "passwords");
        }
    }

    /// <summary>Writes that an account was tried too often from everywhere, and is closed to devices that are not known: once whatever else its place has been told of, and else as any other line.</summary>
    /// <param name="http">The request that is refused.</param>
    /// <param name="account">The account's mail address.</param>
    public void TellClosed(HttpContext http, string account)
    {
        ArgumentNullException.ThrowIfNull(http);
        var reason = AccountEverywhere(account);
        switch (closed.Count(reason, reason))
        {
            case Telling.Yes:
                LogRefused(logger, AddressOf(http), reason);
                break;
            case Telling.LeftOut:
                LogLeftOut(logger, "closed accounts");
                break;
            default:
                Tell(http, reason, passwords, "passwords");
                break;
        }
    }

    /// <summary>An address by its first letter and the server behind it, which is all that the log has of one.</summary>
    public static string Masked(string address) =>
        address.IndexOf('@', StringComparison.Ordinal) is var at and > 0 ? $"{address[0]}...{address[at..].ToLowerInvariant()}" : "of no address";

    private static IPAddress? AddressOf(HttpContext http) =>
        http.Connection.RemoteIpAddress is { IsIPv4MappedToIPv6: true } mapped ? mapped.MapToIPv4() : http.Connection.RemoteIpAddress;

    private void Tell(HttpContext http, string reason, FewOfEach few, string what)
    {
        var address = AddressOf(http);
        switch (few.Count($"{People.Place.Of(address)} {reason}", $"{address} {reason}"))
        {
            case Telling.Yes:
                LogRefused(logger, address, reason);
                break;
            case Telling.LeftOut:
                LogLeftOut(logger, what);
                break;
            default:
                break;
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "Refused sign-in from {Client}: {Reason}")]
    private static partial void LogRefused(ILogger logger, IPAddress? client, string reason);

    [LoggerMessage(Level = LogLevel.Warning, Message = "More was refused than is told here: further lines of {What} are left out for up to a quarter of an hour")]
    private static partial void LogLeftOut(ILogger logger, string what);
}
