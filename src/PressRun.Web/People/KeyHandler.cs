using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;
using PressRun.Data.People;

namespace PressRun.Web.People;

/// <summary>Lets programs in by a key of a press, sent as a bearer token (RFC 6750). That one was refused is told by <see cref="Refusals"/> in one line; what the framework would say beside it, whoever guesses fills the log with.</summary>
internal sealed class KeyHandler(IOptionsMonitor<AuthenticationSchemeOptions> options, UrlEncoder encoder, ApiKeyStore keys, Refusals refusals)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, NullLoggerFactory.Instance, encoder)
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
