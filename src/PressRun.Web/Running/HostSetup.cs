using System.Net;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.HttpOverrides;
using PressRun.Data.Running;
using PressRun.Web.Layout;
using PressRun.Web.People;

namespace PressRun.Web.Running;

/// <summary>How the host runs PressRun: address, proxies, secrets from files, and a refusal to start said in one sentence.</summary>
public static class HostSetup
{
    /// <summary>The address used where the host names none.</summary>
    public const string UsualAddress = "http://127.0.0.1:5080";

    private static readonly string[] AddressKeys = ["urls", "http_ports", "https_ports"];

    private const string HostLog = "Microsoft.Extensions.Hosting.Internal.Host";

    /// <summary>Takes secrets from files and the usual address where no other is named, and keeps the framework from
    /// telling a refused start with a stack trace.</summary>
    public static void AddPressRunHost(this WebApplicationBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        SecretFiles.AddTo(builder.Configuration);
        if (AddressKeys.All(key => string.IsNullOrEmpty(builder.Configuration[key])))
        {
            builder.WebHost.UseUrls(UsualAddress);
        }

        // What serves the pages is nobody's business.
        builder.WebHost.ConfigureKestrel(server => server.AddServerHeader = false);
        builder.Logging.AddFilter(HostLog, LogLevel.None);
        builder.Services.KeepAddressesOutOfLogs();
        builder.Services.AddHeadersToRefusals();
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
            foreach (var host in AllowedHosts(builder.Configuration))
            {
                options.AllowedHosts.Add(host);
            }
        });
    }

    /// <summary>Honours a proxy's headers and the path that the app is served under.</summary>
    public static void UsePressRunHost(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.UseForwardedHeaders();
        app.UseBrokenRequestAnswers();
        app.UseHostCookies();
        if (PathBase(app.Configuration) is { HasValue: true } pathBase)
        {
            app.UsePathBase(pathBase);
        }

        app.UseOwnOriginOnly();
    }

    /// <summary>The path that the app is served under, as the host set it.</summary>
    internal static PathString PathBase(IConfiguration configuration) =>
        configuration["PathBase"] is { Length: > 0 } path ? new PathString("/" + path.Trim('/')) : PathString.Empty;

    /// <summary>Runs until it is stopped.</summary>
    /// <exception cref="StartRefusedException">It does not start; the sentence says why.</exception>
    public static async Task RunPressRunAsync(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        await using var running = app;
        var signIn = app.Services.AsksToSignIn();
        if (!signIn)
        {
            RefuseOpenAddresses(app);
        }

        app.Lifetime.ApplicationStarted.Register(() => Console.WriteLine($"PressRun is at {string.Join(" and ", app.Urls)}"));
        try
        {
            await app.StartAsync();
            if (signIn)
            {
                await app.Services.GetRequiredService<OwnerCode>().PrintAsync(app.Urls.First());
                await app.Services.GetRequiredService<HostsCode>().PrintAsync(app.Urls.First());
            }

            await app.WaitForShutdownAsync();
        }
        catch (IOException exception) when (exception.InnerException is AddressInUseException)
        {
            throw new StartRefusedException($"{exception.Message} Stop what listens there, or name another address in ASPNETCORE_URLS.", exception);
        }
    }

    // In single-user mode whoever reaches the address may change everything, so it must be one that only this machine reaches.
    private static void RefuseOpenAddresses(WebApplication app)
    {
        var addresses = (app.Configuration["urls"] ?? UsualAddress).Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var open = addresses.Concat(ServersOwnAddresses(app.Configuration)).FirstOrDefault(address => !IsLoopback(address));
        if (open is not null || !string.IsNullOrEmpty(app.Configuration["http_ports"]) || !string.IsNullOrEmpty(app.Configuration["https_ports"]))
        {
            throw new StartRefusedException(
                $"{open ?? "ASPNETCORE_HTTP_PORTS"} can be reached from other machines, and PressRun__SignIn=off lets whoever reaches it do everything. "
                + $"Leave people to sign in (PressRun__SignIn=on), or name a loopback address such as {UsualAddress}.");
        }
    }

    // The server's own section of the configuration overrides the addresses named elsewhere.
    private static IEnumerable<string> ServersOwnAddresses(IConfiguration configuration) =>
        configuration.GetSection("Kestrel:Endpoints").GetChildren().Select(endpoint => endpoint["Url"]).OfType<string>();

    private static bool IsLoopback(string address)
    {
        string host;
        try
        {
            host = BindingAddress.Parse(address).Host;
        }
        catch (FormatException exception)
        {
            throw new StartRefusedException($"{address} is no address to listen on. Write one such as {UsualAddress}.", exception);
        }

        return string.Equals(host, "localhost", StringComparison.OrdinalIgnoreCase)
            || (IPAddress.TryParse(host, out var parsed) && IPAddress.IsLoopback(parsed));
    }

    private static string[] AllowedHosts(ConfigurationManager configuration) =>
        (configuration["AllowedHosts"] ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    // A single address is a network of one.
    private static IEnumerable<System.Net.IPNetwork> Proxies(ConfigurationManager configuration) =>
        (configuration[$"{PressRunOptions.Section}:{nameof(PressRunOptions.TrustedProxies)}"] ?? "")
        .Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        .Select(text => IPAddress.TryParse(text, out var proxy) ? new System.Net.IPNetwork(proxy, proxy.GetAddressBytes().Length * 8)
            : System.Net.IPNetwork.TryParse(text, out var network) ? network
            : throw new StartRefusedException($"PressRun__TrustedProxies holds {text}, which is neither an address nor a network such as 172.18.0.0/16."));
}
