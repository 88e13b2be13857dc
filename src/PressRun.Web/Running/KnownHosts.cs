using System.Net.Mime;
using Microsoft.Extensions.Primitives;
using PressRun.Data.Running;
using PressRun.JobFile.Reading;

namespace PressRun.Web.Running;

/// <summary>
/// Answers to the host names that are allowed and to no other, so that a page elsewhere whose name leads here reads nothing (DNS rebinding). Whether the server
/// lives may be asked by any name: those who ask, such as a load balancer, know an address only.
/// </summary>
public static partial class KnownHosts
{
    /// <summary>The setting that names more than this machine's own, which are always answered to, separated by semicolons.</summary>
    public const string Setting = "AllowedHosts";

    /// <summary>The names that are allowed. No page elsewhere can have one of this machine's own.</summary>
    /// <exception cref="StartRefusedException">One is no name; the sentence says what would be right.</exception>
    public static string[] Of(IConfiguration configuration) => [.. Read(Settings.UsualHosts), .. Named(configuration)];

    /// <summary>The names that the host allows beside this machine's own.</summary>
    /// <exception cref="StartRefusedException">One is no name; the sentence says what would be right.</exception>
    public static string[] Named(IConfiguration configuration)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        var names = Read(configuration[Setting] ?? "");
        return names.FirstOrDefault(name => Uri.CheckHostName(name) == UriHostNameType.Unknown) is { } wrong
            ? throw new StartRefusedException($"AllowedHosts holds {wrong}, which is no host name. Write the name alone, such as books.example.org, without https://, a port or a star; several are separated by semicolons.")
            : names;
    }

    /// <summary>Refuses other names with status 400 and a sentence, and tells the log of the first.</summary>
    public static void UseKnownHosts(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        var names = Of(app.Configuration);
        var known = names.Select(name => new StringSegment(new HostString(name).ToUriComponent())).ToList();
        var path = HostSetup.PathBase(app.Configuration);
        var logger = app.Services.GetRequiredService<ILoggerFactory>().CreateLogger(typeof(KnownHosts).FullName!);
        var refused = 0;
        app.Use((context, next) =>
        {
            var name = context.Request.Headers.Host.ToString();
            if (name.Length == 0 || IsAmong(known, name) || Health.IsAsked(context.Request.Path, path))
            {
                return next(context);
            }

            if (Interlocked.Exchange(ref refused, 1) == 0)
            {
                LogUnknown(logger, Excerpt.Of(name));
            }

            context.Response.StatusCode = StatusCodes.Status400BadRequest;
            context.Response.ContentType = MediaTypeNames.Text.Plain;
            return context.Response.WriteAsync(
                "PressRun does not answer to this host name. Whoever runs it adds the name to AllowedHosts, or has the proxy in front pass on one that is there.\n", context.RequestAborted);
        });
    }

    private static string[] Read(string names) => names.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static bool IsAmong(List<StringSegment> known, string name)
    {
        try
        {
            return HostString.MatchesAny(name, known);
        }
        catch (FormatException)
        {
            return false;
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "Refused a request to the host name {Name}, which is not in AllowedHosts. This is said once.")]
    private static partial void LogUnknown(ILogger logger, string name);
}
