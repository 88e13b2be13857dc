using System.Text.Json;
using Microsoft.Playwright;

namespace PressRun.Browser.Tests.Running;

/// <summary>A device that keeps passkeys, played by Chromium itself (Chrome DevTools Protocol, domain WebAuthn): it follows the standard by other
/// people's code than the app's.</summary>
internal sealed class Authenticator
{
    private readonly ICDPSession chromium;
    private string id = "";

    private Authenticator(ICDPSession chromium) => this.chromium = chromium;

    /// <summary>Puts one into a page's browser; its holder is always there and always shows who they are.</summary>
    public static async Task<Authenticator> IntoAsync(IPage page)
    {
        var made = new Authenticator(await page.Context.NewCDPSessionAsync(page));
        await made.chromium.SendAsync("WebAuthn.enable");
        var answer = await made.chromium.SendAsync("WebAuthn.addVirtualAuthenticator", new()
        {
            ["options"] = new Dictionary<string, object>
            {
                ["protocol"] = "ctap2", ["transport"] = "internal", ["hasResidentKey"] = true, ["hasUserVerification"] = true, ["isUserVerified"] = true, ["automaticPresenceSimulation"] = true,
            },
        });
        made.id = answer!.Value.GetProperty("authenticatorId").GetString()!;
        return made;
    }

    /// <summary>How many passkeys it keeps.</summary>
    public async Task<int> CountAsync() => (await KeptAsync()).GetArrayLength();

    /// <summary>Sets the count of uses of all passkeys back to one, as in a copy that somebody took early on.</summary>
    public async Task TurnBackAsync()
    {
        foreach (var kept in (await KeptAsync()).EnumerateArray())
        {
            var copy = kept.Deserialize<Dictionary<string, object>>()!;
            copy["signCount"] = 0;
            await SendAsync("WebAuthn.removeCredential", "credentialId", copy["credentialId"]);
            await SendAsync("WebAuthn.addCredential", "credential", copy);
        }
    }

    private async Task<JsonElement> KeptAsync() =>
        (await chromium.SendAsync("WebAuthn.getCredentials", new() { ["authenticatorId"] = id }))!.Value.GetProperty("credentials");

    private Task<JsonElement?> SendAsync(string command, string name, object value) => chromium.SendAsync(command, new() { ["authenticatorId"] = id, [name] = value });
}
