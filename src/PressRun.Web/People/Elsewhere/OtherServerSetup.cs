using System.Security.Claims;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.OpenIdConnect;
using Microsoft.IdentityModel.Protocols.OpenIdConnect;
using Microsoft.IdentityModel.Tokens;

namespace PressRun.Web.People.Elsewhere;

/// <summary>Asks another server who somebody is: by code, with a proof key (RFC 7636), and nothing of it is kept but who they are there.</summary>
internal static class OtherServerSetup
{
    /// <summary>The scheme by which it is asked.</summary>
    public const string Scheme = "elsewhere";

    private static readonly string[] AddressClaims = [Arrival.EmailClaim, Arrival.VerifiedClaim];
    private static readonly string[] NameClaims = [Arrival.NameClaim];

    public static AuthenticationBuilder AddOtherServer(this AuthenticationBuilder builder, OtherServer server) => builder.AddOpenIdConnect(Scheme, options =>
    {
        options.Authority = server.Key;
        (options.ClientId, options.ClientSecret) = (server.ClientId, server.ClientSecret.Length == 0 ? null : server.ClientSecret);
        options.RequireHttpsMetadata = !server.Address.IsLoopback;
        options.CallbackPath = OtherServer.ComesBackTo;
        options.SignInScheme = SignInSetup.People;

        // The answer comes as an address that is opened, so that cookies need not be sent with other sites' forms.
        (options.ResponseType, options.ResponseMode, options.UsePkce) = (OpenIdConnectResponseType.Code, OpenIdConnectResponseMode.Query, true);
        options.CorrelationCookie.SameSite = options.NonceCookie.SameSite = SameSiteMode.Lax;
        options.CorrelationCookie.SecurePolicy = options.NonceCookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        options.Scope.Clear();
        options.Scope.Add("openid");
        options.Scope.Add("profile");
        options.Scope.Add("email");

        (options.MapInboundClaims, options.SaveTokens, options.GetClaimsFromUserInfoEndpoint) = (false, false, true);
        options.ClaimActions.Clear();
        options.Events = new OpenIdConnectEvents { OnTokenValidated = Demand, OnUserInformationReceived = Fill, OnTicketReceived = ReceiveAsync, OnRemoteFailure = Fail, OnAccessDenied = Fail };
    });

    // The handler takes a token without a signature where it comes straight from the server (OpenID Connect Core 1.0, 3.1.3.7); a proxy between the two
    // would then be believed.
    private static Task Demand(TokenValidatedContext context)
    {
        if (context.SecurityToken.SignatureAlgorithm is null or SecurityAlgorithms.None)
        {
            context.Fail("The token is not signed.");
        }

        return Task.CompletedTask;
    }

    // What the token left out. An address is taken together with what is said of it, or not at all.
    private static Task Fill(UserInformationReceivedContext context)
    {
        var (who, told) = ((ClaimsIdentity)context.Principal!.Identity!, context.User.RootElement);
        foreach (var names in new[] { AddressClaims, NameClaims }.Where(names => !who.HasClaim(claim => claim.Type == names[0])))
        {
            who.AddClaims(names.Where(name => told.TryGetProperty(name, out _)).Select(name => new Claim(name, told.GetProperty(name).ToString())));
        }

        return Task.CompletedTask;
    }

    // After everything about the answer was checked, the nonce too.
    private static async Task ReceiveAsync(TicketReceivedContext context)
    {
        context.HandleResponse();
        var services = context.HttpContext.RequestServices;
        var (arrivals, arrival, to) = (services.GetRequiredService<Arrivals>(), Arrival.Of(context.Principal!), OwnAddress.Of(context.ReturnUri));
        if (await arrivals.WhoseAsync(arrival) is { } user)
        {
            await services.GetRequiredService<SignIns>().BeginAsync(user);
            context.Response.Redirect(to.Length == 0 ? context.Request.PathBase + "/" : to);
        }
        else
        {
            context.Response.Redirect(await arrivals.KeepAsync(arrival, to));
        }
    }

    private static Task Fail(HandleRequestContext<RemoteAuthenticationOptions> context)
    {
        context.HandleResponse();
        context.Response.Redirect($"{context.Request.PathBase}/sign-in?said={Arrivals.Failed}");
        return Task.CompletedTask;
    }
}
