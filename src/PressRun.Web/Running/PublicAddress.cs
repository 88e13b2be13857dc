using PressRun.Data.Running;

namespace PressRun.Web.Running;

/// <summary>Where visitors find the app, as far as the settings say.</summary>
public static class PublicAddress
{
    /// <summary>The https address of the first name that is allowed, where a proxy with TLS is named too; null where nobody said.</summary>
    public static string? Of(IConfiguration configuration) =>
        !string.IsNullOrWhiteSpace(configuration[$"{PressRunOptions.Section}:{nameof(PressRunOptions.TrustedProxies)}"]) && KnownHosts.Named(configuration) is [var name, ..]
            ? $"https://{name}{HostSetup.PathBase(configuration).ToUriComponent()}"
            : null;
}
