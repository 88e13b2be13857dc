using PressRun.Web.Running;

namespace PressRun.Web.People;

/// <summary>
/// Tells the log whom it did not let in: from which address and why, in words that stay the same, so that a program may read them and bar an address that tries too
/// often, and of each place and reason only so many times, so that nobody fills the log. Nothing that was typed is told; of a mail address its first letter and its host, and only where its account is closed to strangers for a while.
/// </summary>
public sealed partial class Refusals(ILogger<Refusals> logger, TimeProvider time)
{
    /// <summary>Most lines of one address and reason within <see cref="Within"/>: twice as many as bar an address by the filter in docs/operating.md.</summary>
    public const int MostOfAddress = 20;

    /// <summary>Most lines of one household and reason: so many that several of its addresses, tried in turn, each have enough to be barred.</summary>
    public const int MostOfHousehold = 100;

    /// <summary>After so long all lines are counted anew.</summary>
    public static readonly TimeSpan Within = TimeSpan.FromMinutes(15);

    private const string OfAccount = "too many tries of the account ";

    // So many try together only where somebody has whole networks, against which barring one address after another does not help.
    private const int MostKept = 50_000;

    // By reason, so that what costs nothing to get wrong hides nothing else.
    private readonly FewOfEach few = new(time, MostOfAddress, MostOfHousehold, Within, MostKept);

    private readonly FewOfEach closed = new(time, 1, 1, Within, MostKept);

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
    public static string AccountEverywhere(string address) => $"{OfAccount}{Masked(address)}, which is closed to new devices for up to an hour";

    /// <summary>Writes a line, unless there are enough of that address or household for this reason. That an account is closed is told whatever else its place has been told of.</summary>
    public void Tell(HttpContext http, string reason)
    {
        ArgumentNullException.ThrowIfNull(http);
        var address = http.Connection.RemoteIpAddress is { IsIPv4MappedToIPv6: true } mapped ? mapped.MapToIPv4() : http.Connection.RemoteIpAddress;
        var isNews = reason.StartsWith(OfAccount, StringComparison.Ordinal) && closed.May(reason, reason);
        if (few.May($"{People.Place.Of(address)} {reason}", $"{address} {reason}") || isNews)
        {
            LogRefused(logger, address, reason);
        }
    }

    /// <summary>An address by its first letter and the server behind it, which is all that the log has of one.</summary>
    public static string Masked(string address) =>
        address.IndexOf('@', StringComparison.Ordinal) is var at and > 0 ? $"{address[0]}...{address[at..].ToLowerInvariant()}" : "of no address";

    [LoggerMessage(Level = LogLevel.Warning, Message = "Refused sign-in from {Client}: {Reason}")]
    private static partial void LogRefused(ILogger logger, System.Net.IPAddress? client, string reason);
}
