using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Options;
using PressRun.Data.People;

namespace PressRun.Web.People;

/// <summary>Lets programs in by a key of a press, sent as a bearer token (RFC 6750).</summary>
internal sealed class KeyHandler(IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logging, UrlEncoder encoder, ApiKeyStore keys, Refusals refusals)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, logging, encoder)
{
    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        if (SignInSetup.ShownKey(Request) is { } secret && await keys.FindAsync(secret, Context.RequestAborted) is { } found)
        {
            return AuthenticateResult.Success(new AuthenticationTicket(WhoClaims.Of(found.Visitor, Scheme.Name), Scheme.Name));
        }

        refusals.Tell(Context, Refusals.Key);
        return AuthenticateResult.Fail("No such key.");
    }

    protected override Task HandleChallengeAsync(AuthenticationProperties properties) => Api.ApiProblem.NotSignedIn(Context);
}
