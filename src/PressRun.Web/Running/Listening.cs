using System.Net;
using Microsoft.AspNetCore.Http;
using PressRun.Data.Running;

namespace PressRun.Web.Running;

/// <summary>Where the app listens.</summary>
public static class Listening
{
    /// <summary>The address used where the host names none.</summary>
    public const string UsualAddress = "http://127.0.0.1:5080";

    private static readonly string[] Keys = ["urls", "http_ports", "https_ports"];

    /// <summary>True where the host names an address or a port.</summary>
    public static bool IsSaid(IConfiguration configuration) => Keys.Any(key => !string.IsNullOrEmpty(configuration[key]));

    /// <summary>Looks at the addresses before anything is started.</summary>
    /// <param name="configuration">The host's settings.</param>
    /// <param name="loopbackOnly">True in single-user mode: whoever reaches the address may change everything, so only this machine may.</param>
    /// <exception cref="StartRefusedException">One cannot be read, or is open to other machines and may not be.</exception>
    public static void Check(IConfiguration configuration, bool loopbackOnly)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        var addresses = (configuration["urls"] ?? UsualAddress).Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Concat(ServersOwn(configuration));
        var open = addresses.Where(address => !IsLoopback(address)).ToList();
        var isOpen = open.Count > 0 || !string.IsNullOrEmpty(configuration["http_ports"]) || !string.IsNullOrEmpty(configuration["https_ports"]);
        if (loopbackOnly && isOpen)
        {
            throw new StartRefusedException(
                $"{open.FirstOrDefault("ASPNETCORE_HTTP_PORTS")} can be reached from other machines, and PressRun__SignIn=off lets whoever reaches it do everything. "
                + $"Leave people to sign in (PressRun__SignIn=on), or name a loopback address such as {UsualAddress}.");
        }
    }

    /// <summary>An address as a browser on this machine opens it: one that stands for all that the machine has is none.</summary>
    public static string ToOpen(string address)
    {
        var read = BindingAddress.Parse(address);
        return IsEvery(read) ? $"{read.Scheme}://localhost:{read.Port}" : address;
    }

    /// <summary>Where PressRun is, for the host: where a browser here opens it, and whether other machines reach it there too.</summary>
    /// <param name="addresses">What the server listens on.</param>
    /// <param name="path">The path that the app is served under.</param>
    public static string Told(IEnumerable<string> addresses, string path) => string.Join(
        " and ",
        addresses.Select(address => BindingAddress.Parse(address) is var read && IsEvery(read)
            ? $"{ToOpen(address)}{path} (listening on port {read.Port} of every address of this machine)"
            : address + path));

    private static bool IsEvery(BindingAddress read) => read.Host is "*" or "+" or "0.0.0.0" or "[::]";

    // The server's own section of the configuration overrides the addresses named elsewhere.
    private static IEnumerable<string> ServersOwn(IConfiguration configuration) =>
        configuration.GetSection("Kestrel:Endpoints").GetChildren().Select(endpoint => endpoint["Url"]).OfType<string>();

    private static bool IsLoopback(string address)
    {
        var host = Read(address).Host;
        return string.Equals(host, "localhost", StringComparison.OrdinalIgnoreCase)
            || (IPAddress.TryParse(host, out var parsed) && IPAddress.IsLoopback(parsed));
    }

    private static BindingAddress Read(string address)
    {
        try
        {
            var read = BindingAddress.Parse(address);
            return read.PathBase.Length == 0 ? read
                : throw new StartRefusedException($"{address} names a path. Leave {read.PathBase} out of the address, and set PathBase={read.PathBase}.");
        }
        catch (FormatException exception)
        {
            throw new StartRefusedException($"{address} is no address to listen on. Write one such as {UsualAddress}.", exception);
        }
    }
}
