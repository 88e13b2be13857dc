using System.Net;
using System.Reflection;
using Microsoft.AspNetCore.HostFiltering;
using Microsoft.AspNetCore.HttpOverrides;
using PressRun.Data.Running;
using PressRun.Web.Layout;
using PressRun.Web.People;

namespace PressRun.Web.Running;

/// <summary>How the host runs PressRun: address, proxies, secrets from files, and a refusal to start said in one sentence.</summary>
public static partial class HostSetup
{
    private const string HostLog = "Microsoft.Extensions.Hosting.Internal.Host";

    /// <summary>Takes secrets from files and the usual address where no other is named, and keeps the framework from
    /// telling a refused start with a stack trace.</summary>
    public static void AddPressRunHost(this WebApplicationBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        SecretFiles.AddTo(builder.Configuration);
        builder.Configuration.AddInMemoryCollection(SettingsReading.Emptied(builder.Configuration));
        if (!Listening.IsSaid(builder.Configuration))
        {
            builder.WebHost.UseUrls(Listening.UsualAddress);
        }

        LogLines.AddTo(builder);

        // What serves the pages is nobody's business.
        builder.WebHost.ConfigureKestrel(server => server.AddServerHeader = false);
        builder.Logging.AddFilter(HostLog, LogLevel.None);
        builder.Services.KeepAddressesOutOfLogs();
        // Names are looked at by KnownHosts, which lets a supervisor ask and says what is wrong.
        builder.Services.PostConfigure<HostFilteringOptions>(options => options.AllowedHosts = ["*"]);
        builder.Services.Configure<ForwardedHeadersOptions>(options =>
        {
            // The framework believes whoever is on this machine, or with one of its settings everybody. Here only proxies that are named are believed.
            options.KnownProxies.Clear();
            options.KnownIPNetworks.Clear();
            foreach (var proxies in Proxies(builder.Configuration))
            {
                options.KnownIPNetworks.Add(proxies);
            }

            options.ForwardedHeaders = options.KnownIPNetworks.Count == 0
                ? ForwardedHeaders.None
                : ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto | ForwardedHeaders.XForwardedHost;

            // A forwarded host stands in for the request's own and so must be one that the app answers to.
            foreach (var host in KnownHosts.Of(builder.Configuration))
            {
                options.AllowedHosts.Add(host);
            }
        });
    }

    /// <summary>Honours a proxy's headers and the path that the app is served under.</summary>
    public static void UsePressRunHost(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.UseHeadersOfRefusals();
        app.UseKnownHosts();
        app.UseWordOfUnnamedProxies();
        app.UseForwardedHeaders();
        var pathBase = PathBase(app.Configuration);
        app.UseBrokenRequestAnswers(pathBase);
        app.UseHostCookies();
        app.UsePathBase(pathBase);
    }

    /// <summary>What runs: the version, and the commit that it was built from where the builder knew it.</summary>
    public static string Version { get; } = $"PressRun {typeof(HostSetup).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion}";

    /// <summary>The path that the app is served under; empty for none.</summary>
    public static PathString PathBase(IConfiguration configuration)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        var path = (configuration["PathBase"] ?? "").Trim().Trim('/');
        return path.Length == 0 ? PathString.Empty : new PathString("/" + path);
    }

    /// <summary>Runs until it is stopped.</summary>
    /// <exception cref="StartRefusedException">It does not start; the sentence says why.</exception>
    public static async Task RunPressRunAsync(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        await using var running = app;
        var logger = app.Services.GetRequiredService<ILoggerFactory>().CreateLogger(typeof(HostSetup).FullName!);
        foreach (var (variable, nearest) in SettingsReading.Unknown(app.Configuration))
        {
            LogUnknown(logger, variable, nearest);
        }

        if (app.Configuration["TZ"] is { } zone && Days.IsUnknownZone(zone))
        {
            LogUnknownZone(logger, zone);
        }

        var signIn = app.Services.AsksToSignIn();
        Listening.Check(app.Configuration, loopbackOnly: !signIn);
        var path = PathBase(app.Configuration).ToUriComponent();
        Console.WriteLine(Version);
        app.Lifetime.ApplicationStarted.Register(() => Console.WriteLine($"PressRun is at {Listening.Told(app.Urls, path)}"));
        await app.StartAsync();
        await app.Services.GetRequiredService<HostsRemovals>().DeleteAsync();
        if (signIn)
        {
            var address = PublicAddress.Of(app.Configuration) ?? Listening.ToOpen(app.Urls.First()) + path;
            await app.Services.GetRequiredService<OwnerCode>().PrintAsync(address);
            await app.Services.GetRequiredService<HostsCode>().PrintAsync(address);
        }

        await app.WaitForShutdownAsync();
    }

    // A single address is a network of one.
    private static IEnumerable<System.Net.IPNetwork> Proxies(ConfigurationManager configuration) =>
        (configuration[$"{PressRunOptions.Section}:{nameof(PressRunOptions.TrustedProxies)}"] ?? "")
        .Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        .Select(text => IPAddress.TryParse(text, out var proxy) ? new System.Net.IPNetwork(proxy, proxy.GetAddressBytes().Length * 8)
            : System.Net.IPNetwork.TryParse(text, out var network) ? network
            : throw new StartRefusedException($"PressRun__TrustedProxies holds {text}, which is neither an address nor a network such as 172.18.0.0/16."));

    [LoggerMessage(Level = LogLevel.Warning, Message = "{Variable} is no setting of PressRun, and nothing is done by it. The nearest that there is: {Nearest}")]
    private static partial void LogUnknown(ILogger logger, string variable, string nearest);

    [LoggerMessage(Level = LogLevel.Warning, Message = "TZ is {Zone}, which is no time zone that this machine knows: days are counted in UTC. Names are such as Europe/Vienna.")]
    private static partial void LogUnknownZone(ILogger logger, string zone);
}
