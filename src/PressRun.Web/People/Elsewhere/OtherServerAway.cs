using PressRun.Web.Running;

namespace PressRun.Web.People.Elsewhere;

/// <summary>Tells the log why the other server cannot be asked, in words of our own: what it answers, it chose. And why it did not say who came back from it.</summary>
public sealed partial class OtherServerAway(TimeProvider time, ILogger<OtherServerAway> logger)
{
    private const int MostBack = 20;
    private const int MostOfAll = 1_000;
    private static readonly TimeSpan Pause = TimeSpan.FromMinutes(1);
    private static readonly TimeSpan Within = TimeSpan.FromMinutes(15);

    private readonly Seldom seldom = new(time, Pause);
    private readonly FewOfEach fewBack = new(time, MostBack, MostBack, MostOfAll, Within);

    /// <summary>Tells it, at most once a minute: anybody may press the button.</summary>
    /// <param name="server">The server.</param>
    /// <param name="fault">What came of asking it where people are sent.</param>
    public void Tell(OtherServer server, Exception fault)
    {
        ArgumentNullException.ThrowIfNull(server);
        if (seldom.May())
        {
            LogAway(logger, server.Key, Why(fault));
        }
    }

    /// <summary>Tells that somebody came back and who they are was not told, at most twenty times of one place and a thousand times in all within a quarter of an hour: anybody may open the address to which people come back.</summary>
    /// <param name="place">From where.</param>
    /// <param name="why">Why, in words that nobody but the standards and the framework chose.</param>
    public void TellNotTold(string place, string why)
    {
        switch (fewBack.Count(place, place))
        {
            case Telling.Yes:
                LogNotTold(logger, why);
                break;
            case Telling.LeftOut:
                LogLeftOut(logger);
                break;
            default:
                break;
        }
    }

    /// <summary>Why, as far as it can be told.</summary>
    public static string Why(Exception? fault) => fault switch
    {
        null => "it does not describe itself as OpenID Connect Discovery has it",
        HttpRequestException { HttpRequestError: HttpRequestError.NameResolutionError } => "its name is not known",
        HttpRequestException { HttpRequestError: HttpRequestError.SecureConnectionError } => "its certificate is not believed here",
        HttpRequestException { HttpRequestError: HttpRequestError.ConnectionError } => "nobody answers there",
        TaskCanceledException or TimeoutException => "it does not answer in time",
        { Data: var said } when said["status_code"] is { } status => $"it answers with status {(int)(System.Net.HttpStatusCode)status}",
        _ => Why(fault.InnerException),
    };

    [LoggerMessage(Level = LogLevel.Warning, Message = "People cannot sign in by the other server: {Address}/.well-known/openid-configuration cannot be had, as {Reason}. Look at PressRun__OpenIdServer, at the way there, and at the certificates that this machine believes.")]
    private static partial void LogAway(ILogger logger, string address, string reason);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Somebody came back from the other server, and who they are was not told: {Reason}")]
    private static partial void LogNotTold(ILogger logger, string reason);

    [LoggerMessage(Level = LogLevel.Warning, Message = "More came back from the other server so than is told here: further lines are left out for up to a quarter of an hour")]
    private static partial void LogLeftOut(ILogger logger);
}
