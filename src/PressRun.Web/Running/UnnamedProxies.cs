using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.Extensions.Options;

namespace PressRun.Web.Running;

/// <summary>Says in the log that somebody forwards what is not believed. With a proxy that is not named everything seems to work, over http and as if from one place.</summary>
internal static partial class UnnamedProxies
{
    private static readonly TimeSpan Pause = TimeSpan.FromHours(1);

    // What a proxy says; whoever asks for a page directly sends none of it.
    private static readonly string[] Headers = [ForwardedHeadersDefaults.XForwardedForHeaderName, ForwardedHeadersDefaults.XForwardedProtoHeaderName, ForwardedHeadersDefaults.XForwardedHostHeaderName];

    /// <summary>Watches for them; before the headers of those that are named are taken.</summary>
    public static void UseWordOfUnnamedProxies(this WebApplication app)
    {
        var named = app.Services.GetRequiredService<IOptions<ForwardedHeadersOptions>>().Value.KnownIPNetworks;
        var logger = app.Services.GetRequiredService<ILoggerFactory>().CreateLogger(typeof(UnnamedProxies).FullName!);
        var seldom = new Seldom(app.Services.GetRequiredService<TimeProvider>(), Pause);
        app.Use((context, next) =>
        {
            if (Headers.Any(context.Request.Headers.ContainsKey) && context.Connection.RemoteIpAddress is { } from)
            {
                var address = from.IsIPv4MappedToIPv6 ? from.MapToIPv4() : from;
                if (!named.Any(network => network.Contains(address)) && seldom.May())
                {
                    LogUnnamed(logger, address.ToString());
                }
            }

            return next(context);
        });
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "{Address} forwards headers of a proxy (X-Forwarded-...) and is not in PressRun__TrustedProxies, so they are not believed: sign-ins go by http, and all visitors count as one place. If it is your proxy, name it there. This is said at most once an hour.")]
    private static partial void LogUnnamed(ILogger logger, string address);
}
