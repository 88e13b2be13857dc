using PressRun.Data.Running;

namespace PressRun.Web.People.Elsewhere;

/// <summary>A server elsewhere that knows people, and by which they may sign in here (OpenID Connect Core 1.0).</summary>
/// <param name="Address">Its issuer address, under which it describes itself.</param>
/// <param name="Name">What it is called on buttons.</param>
/// <param name="ClientId">The name that it knows this app by.</param>
/// <param name="ClientSecret">What this app shows it; empty for none.</param>
public sealed record OtherServer(Uri Address, string Name, string ClientId, string ClientSecret)
{
    /// <summary>Where it sends people back to; the host tells it this address.</summary>
    public const string ComesBackTo = "/sign-in/back";

    /// <summary>The name by which links of accounts to it are kept: another server's people are others, whatever they are called there.</summary>
    public string Key => Address.AbsoluteUri.TrimEnd('/');

    /// <summary>Reads the host's settings; null where nobody signs in by another server.</summary>
    /// <exception cref="StartRefusedException">They do not fit together; the sentence says what would.</exception>
    public static OtherServer? Of(PressRunOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        if (options.OpenIdServer.Length == 0)
        {
            return null;
        }

        Demand(options.AsksToSignIn(), "PressRun__OpenIdServer is set and nobody signs in; leave it out, or set PressRun__SignIn=on.");
        Demand(
            Uri.TryCreate(options.OpenIdServer, UriKind.Absolute, out var address) && (address.Scheme == Uri.UriSchemeHttps || (address.Scheme == Uri.UriSchemeHttp && address.IsLoopback)),
            "PressRun__OpenIdServer is the https address under which the server describes itself, without /.well-known/openid-configuration.");
        Demand(options.OpenIdClient.Length > 0, "PressRun__OpenIdServer is set, so PressRun__OpenIdClient must be the name that the server knows PressRun by.");
        Demand(options.OpenIdName.Trim() is { Length: > 0 and <= 40 }, "PressRun__OpenIdName is what the button calls the server, in at most 40 characters.");
        return new OtherServer(address!, options.OpenIdName.Trim(), options.OpenIdClient, options.OpenIdSecret);
    }

    private static void Demand(bool holds, string sentence)
    {
        if (!holds)
        {
            throw new StartRefusedException(sentence);
        }
    }
}
