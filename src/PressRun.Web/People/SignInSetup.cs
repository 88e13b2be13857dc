using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Components.Server.Circuits;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;
using PressRun.Data.Access;
using PressRun.Data.People;
using PressRun.Data.Running;
using PressRun.Web.Layout;
using PressRun.Web.People.Elsewhere;

namespace PressRun.Web.People;

/// <summary>Sign-in: who is asked for one, how it is kept, and on whose behalf each request and each circuit works.</summary>
public static class SignInSetup
{
    /// <summary>The scheme of people's cookies.</summary>
    public const string People = "people";

    /// <summary>The scheme of programs' keys.</summary>
    public const string Keys = "keys";

    private const string Either = "either";
    private const string Bearer = "Bearer ";

    /// <summary>Adds it. In single-user mode nobody is asked.</summary>
    /// <exception cref="StartRefusedException">The settings of another server do not fit together.</exception>
    public static IServiceCollection AddPressRunSignIn(this IServiceCollection services, IConfiguration configuration)
    {
        var server = OtherServer.Of(configuration.GetSection(PressRunOptions.Section).Get<PressRunOptions>() ?? new PressRunOptions());
        var schemes = services.AddAuthentication(Either)
            .AddPolicyScheme(Either, null, options => options.ForwardDefaultSelector = context => ShowsKey(context.Request) ? Keys : People)
            .AddScheme<AuthenticationSchemeOptions, KeyHandler>(Keys, null)
            .AddCookie(People, Configure);
        if (server is not null)
        {
            schemes.AddOtherServer(server);
        }

        services.AddScoped(provider => new Arrivals(
            server, provider.GetRequiredService<OtherServerAway>(), provider.GetRequiredService<Accounts>(), provider.GetRequiredService<WaysInStore>(), provider.GetRequiredService<IDataProtectionProvider>(), provider.GetRequiredService<IHttpContextAccessor>()));
        services.AddAuthorization();
        services.AddOptions<AuthorizationOptions>().Configure<IOptions<PressRunOptions>>((authorization, options) =>
            authorization.FallbackPolicy = options.Value.AsksToSignIn() ? new AuthorizationPolicyBuilder().RequireAuthenticatedUser().Build() : null);
        services.AddSingleton<LiveSessions>();
        services.AddSingleton<OwnerCode>();
        services.AddSingleton<HostsCode>();
        services.AddSingleton<HostsRemovals>();
        services.AddSingleton<OtherServerAway>();
        services.AddSingleton<KnownDevices>();
        services.AddScoped<IPasskeyHandler<User>, PasskeyHandler<User>>();
        services.Configure<IdentityPasskeyOptions>(passkeys =>
        {
            // A passkey stands for the address as well as for the password, so the device must keep the one and ask for its holder.
            (passkeys.ResidentKeyRequirement, passkeys.UserVerificationRequirement) = ("required", "required");
            passkeys.AuthenticatorTimeout = PasskeyRounds.Lasts;
        });
        services.AddScoped<PasskeyRounds>();
        services.AddSingleton<Refusals>();
        services.AddScoped<SignIns>();
        services.AddScoped<CircuitHandler, VisitorOfCircuit>();
        services.AddHttpContextAccessor();
        return services;
    }

    /// <summary>Asks who is there, refuses who may not, and lets the rest work on their visitor's behalf.</summary>
    public static WebApplication UsePressRunSignIn(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.UseAuthentication();
        app.UseAuthorization();
        app.UseNotTooManyLines();
        app.Use(async (context, next) =>
        {
            using var visiting = Visiting.As(WhoClaims.Visitor(context.User));
            try
            {
                await next(context);
            }
            catch (AccessRefusedException) when (!context.Response.HasStarted)
            {
                context.Response.Clear();
                context.Response.StatusCode = StatusCodes.Status403Forbidden;
            }
        });
        return app;
    }

    /// <summary>True where this server asks people to sign in.</summary>
    public static bool AsksToSignIn(this IServiceProvider services) => services.GetRequiredService<IOptions<PressRunOptions>>().Value.AsksToSignIn();

    /// <summary>The key that a request shows, where it shows one.</summary>
    internal static string? ShownKey(HttpRequest request) => ShowsKey(request) ? request.Headers.Authorization.ToString()[Bearer.Length..].Trim() : null;

    private static bool ShowsKey(HttpRequest request) =>
        request.Path.StartsWithSegments("/api/v1") && request.Headers.Authorization.ToString().StartsWith(Bearer, StringComparison.OrdinalIgnoreCase);

    private static void Configure(CookieAuthenticationOptions options)
    {
        options.Cookie.Name = "pressrun";
        options.Cookie.HttpOnly = true;
        options.Cookie.IsEssential = true;
        // Links from elsewhere may open a page; what changes something is held by its form's token besides.
        options.Cookie.SameSite = SameSiteMode.Lax;
        options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        options.ExpireTimeSpan = SessionStore.Longest;
        options.SlidingExpiration = false;
        options.LoginPath = "/sign-in";
        options.ReturnUrlParameter = "to";
        options.Events = new CookieAuthenticationEvents
        {
            OnValidatePrincipal = ValidateAsync,
            OnRedirectToLogin = context => IsForPrograms(context.Request) ? RefuseAsync(context) : GoAsync(context),

            // Where one goes on to is the page's to look at; the framework would take it out of the address as it stands.
            OnRedirectToReturnUrl = _ => Task.CompletedTask,
        };
    }

    // A page for everybody asks no database who is there, unless it says that it wants to know.
    private static async Task ValidateAsync(CookieValidatePrincipalContext context)
    {
        var http = context.HttpContext;
        var metadata = http.GetEndpoint()?.Metadata;
        var asks = metadata?.GetMetadata<IAllowAnonymous>() is null || metadata.GetMetadata<PublicAttribute>() is { AsksWho: true };
        http.Features.Set(new ShownSignIn(WhoClaims.Person(context.Principal)));
        if (!asks || WhoClaims.Person(context.Principal) is not { } person || !await LastsAsync(http, person))
        {
            context.RejectPrincipal();
        }
    }

    // An open page takes its line up again by itself, with nobody there; all else is asked for by somebody.
    private static Task<bool> LastsAsync(HttpContext http, Visitor.Person person)
    {
        var sessions = http.RequestServices.GetRequiredService<SessionStore>();
        return http.Request.Path.StartsWithSegments("/_blazor")
            ? sessions.LastsAsync(person.UserId, person.SessionId, http.RequestAborted)
            : sessions.UseAsync(person.UserId, person.SessionId, http.RequestAborted);
    }

    private static bool IsForPrograms(HttpRequest request) =>
        request.Path.StartsWithSegments("/api/v1") || request.Path.StartsWithSegments("/_blazor") || !HttpMethods.IsGet(request.Method);

    private static async Task RefuseAsync(RedirectContext<CookieAuthenticationOptions> context)
    {
        if (context.Request.Path.StartsWithSegments("/api/v1"))
        {
            await Api.ApiProblem.NotSignedIn(context.HttpContext);
        }
        else
        {
            context.Response.StatusCode = StatusCodes.Status401Unauthorized;
        }
    }

    // Whoever asks for a page is sent to the door and then back. An address of nothing is told so at once: it may be a secret link, not quite as it was sent.
    private static Task GoAsync(RedirectContext<CookieAuthenticationOptions> context)
    {
        // In a page that needs no line to the server: whoever has not signed in gets none.
        var http = context.HttpContext;
        if (http.GetEndpoint() is null)
        {
            return PlainPage.SendAsync(http, StatusCodes.Status404NotFound, PlainPage.Of(
                http, Say($"Nothing lies here"), Say($"The address may be mistyped, or what stood here has been removed."),
                $"""<p class="next"><a class="button" href="">{Say($"Go to the shelf")}</a></p>""", masthead: true));
        }

        context.Response.Redirect(context.RedirectUri);
        return Task.CompletedTask;
    }
}
