using System.Security.Claims;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.OpenIdConnect;
using Microsoft.IdentityModel.JsonWebTokens;
using Microsoft.IdentityModel.Protocols.OpenIdConnect;
using Microsoft.IdentityModel.Tokens;

namespace PressRun.Web.People.Elsewhere;

/// <summary>Asks another server who somebody is: by code, with a proof key (RFC 7636), and nothing of it is kept but who they are there.</summary>
internal static partial class OtherServerSetup
{
    /// <summary>The scheme by which it is asked.</summary>
    public const string Scheme = "elsewhere";

    private const int MostOfReason = 200;

    private static readonly string[] AddressClaims = [Arrival.EmailClaim, Arrival.VerifiedClaim];
    private static readonly string[] NameClaims = [Arrival.NameClaim];

    public static AuthenticationBuilder AddOtherServer(this AuthenticationBuilder builder, OtherServer server) => builder.AddOpenIdConnect(Scheme, options =>
    {
        options.Authority = server.Key;
        (options.ClientId, options.ClientSecret) = (server.ClientId, server.ClientSecret.Length == 0 ? null : server.ClientSecret);
        options.RequireHttpsMetadata = !server.Address.IsLoopback;
        options.CallbackPath = OtherServer.ComesBackTo;

        // Nobody is signed out at another server's word, nor by an address that anybody may have them open.
        options.RemoteSignOutPath = options.SignedOutCallbackPath = PathString.Empty;
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
        options.TokenHandler = new SignedTokens { MapInboundClaims = false };
        options.ClaimActions.Clear();
        options.Events = new OpenIdConnectEvents { OnUserInformationReceived = Fill, OnTicketReceived = ReceiveAsync, OnRemoteFailure = Fail, OnAccessDenied = Deny };
    });

    // What the token left out. An address is taken together with what is said of it there, or not at all.
    private static Task Fill(UserInformationReceivedContext context)
    {
        var (who, told) = ((ClaimsIdentity)context.Principal!.Identity!, context.User.RootElement);
        foreach (var names in new[] { AddressClaims, NameClaims }.Where(names => !who.HasClaim(claim => claim.Type == names[0])))
        {
            foreach (var claim in who.FindAll(claim => names.Contains(claim.Type)).ToList())
            {
                who.RemoveClaim(claim);
            }

            who.AddClaims(names.Where(name => told.TryGetProperty(name, out _)).Select(name => new Claim(name, told.GetProperty(name).ToString())));
        }

        return Task.CompletedTask;
    }

    // After everything about the answer was checked, the nonce too.
    private static async Task ReceiveAsync(TicketReceivedContext context)
    {
        context.HandleResponse();
        var services = context.HttpContext.RequestServices;
        var (arrivals, to) = (services.GetRequiredService<Arrivals>(), OwnAddress.Of(context.ReturnUri));
        context.Response.Redirect(
            Arrival.Of(context.Principal!) is not { } arrival ? NotTold(context.Request)
            : await arrivals.WhoseAsync(arrival) is not { } user ? await arrivals.KeepAsync(arrival, to)
            : !await services.GetRequiredService<SignIns>().BeginAsync(user) ? NotTold(context.Request)
            : to.Length == 0 ? context.Request.PathBase + "/"
            : to);
    }

    private static Task Fail(RemoteFailureContext context) => SendBack(context, Why(context.Failure));

    private static Task Deny(AccessDeniedContext context) => SendBack(context, "access_denied");

    // What somebody comes back with is written by whoever likes: of that nothing is told but a code as the standards have them. The rest are the framework's own words.
    private static string Why(Exception? failure) => failure switch
    {
        OpenIdConnectProtocolException { Data: var said } when said["error"] is string code => Code().IsMatch(code) ? code : "an error that is none of the standard's",
        null or OpenIdConnectProtocolException => "an answer that is none of the standard's",
        _ => new string([.. failure.Message.Take(MostOfReason).Select(sign => char.IsControl(sign) ? ' ' : sign)]),
    };

    private static Task SendBack(HandleRequestContext<RemoteAuthenticationOptions> context, string why)
    {
        context.HttpContext.RequestServices.GetRequiredService<OtherServerAway>().TellNotTold(Place.Of(context.HttpContext.Connection.RemoteIpAddress), why);
        context.HandleResponse();
        context.Response.Redirect(NotTold(context.Request));
        return Task.CompletedTask;
    }

    private static string NotTold(HttpRequest request) => $"{request.PathBase}/sign-in?said={Arrivals.Failed}";

    // RFC 6749, 4.1.2.1 and 5.2, and OpenID Connect Core 1.0, 3.1.2.6: all of their codes are such words.
    [GeneratedRegex("^[a-z_]{1,40}$")]
    private static partial Regex Code();

    // The framework takes a token without a signature where it comes straight from the server (OpenID Connect Core 1.0, 3.1.3.7); whoever stands between the
    // two would then be believed. Asked for is the signature itself: what the token's head calls it, its writer chose.
    private sealed class SignedTokens : JsonWebTokenHandler
    {
        public override Task<TokenValidationResult> ValidateTokenAsync(string token, TokenValidationParameters validationParameters)
        {
            validationParameters.RequireSignedTokens = true;
            return base.ValidateTokenAsync(token, validationParameters);
        }
    }
}
