using System.Collections.Concurrent;
using System.Security.Claims;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Extensions.Logging;
using Microsoft.IdentityModel.JsonWebTokens;
using Microsoft.IdentityModel.Tokens;

namespace PressRun.Browser.Tests.Running;

/// <summary>What a server that knows people says of somebody.</summary>
/// <param name="Subject">Who they are there.</param>
/// <param name="Email">Their address.</param>
/// <param name="IsVerified">True where it has seen that the address is theirs.</param>
/// <param name="Name">What they are called.</param>
public sealed record KnownElsewhere(string Subject, string Email, bool IsVerified, string Name);

/// <summary>
/// A small server that knows people (OpenID Connect Core 1.0, code flow, and RFC 7636), on this machine. Whoever comes is <see cref="Person"/>, without being asked.
/// Its tokens are made by a library; what is wrong with them, <see cref="Spoil"/> says.
/// </summary>
public sealed class IdentityServer : IAsyncDisposable
{
    /// <summary>The name that it knows the app by.</summary>
    public const string Client = "pressrun-under-test";

    /// <summary>What the app shows it.</summary>
    public const string Secret = "a secret of the two of them";

    private readonly RSA key = RSA.Create(2048);
    private readonly RSA otherKey = RSA.Create(2048);
    private readonly ConcurrentDictionary<string, (string Challenge, string Redirect, string Nonce)> codes = new();
    private readonly WebApplication app;

    private IdentityServer(WebApplication app) => this.app = app;

    /// <summary>Where it answers.</summary>
    public string Address => app.Urls.Single();

    /// <summary>Whoever comes.</summary>
    public KnownElsewhere Person { get; set; } = new("s-0", "nobody@example.org", true, "Nobody");

    /// <summary>What is wrong with its next tokens; empty for nothing.</summary>
    public string Spoil { get; set; } = "";

    /// <summary>False where the token names no address, though it says whether one is verified, and only the page about its holder names one.</summary>
    public bool TokenHasEmail { get; set; } = true;

    /// <summary>What the page about the token's holder says besides their subject.</summary>
    public Dictionary<string, object> Told { get; set; } = [];

    /// <summary>How often a code was changed for a token.</summary>
    public int Tokens { get; private set; }

    public static async Task<IdentityServer> StartAsync()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var server = new IdentityServer(builder.Build());
        server.Map();
        await server.app.StartAsync();
        return server;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await app.DisposeAsync();
        key.Dispose();
        otherKey.Dispose();
    }

    private void Map()
    {
        app.MapGet("/.well-known/openid-configuration", () => Results.Json(new Dictionary<string, object>
        {
            ["issuer"] = Address, ["authorization_endpoint"] = Address + "/authorize", ["token_endpoint"] = Address + "/token", ["jwks_uri"] = Address + "/keys",
            ["userinfo_endpoint"] = Address + "/userinfo",
            ["response_types_supported"] = new[] { "code" }, ["subject_types_supported"] = new[] { "public" }, ["id_token_signing_alg_values_supported"] = new[] { "RS256" },
        }));
        app.MapGet("/keys", () =>
        {
            var of = key.ExportParameters(includePrivateParameters: false);
            return Results.Json(new { keys = new[] { new { kty = "RSA", use = "sig", kid = "1", alg = "RS256", n = WebEncoders.Base64UrlEncode(of.Modulus!), e = WebEncoders.Base64UrlEncode(of.Exponent!) } } });
        });
        app.MapGet("/authorize", Authorize);
        app.MapPost("/token", TokenAsync);
        app.MapGet("/userinfo", () => Results.Json(new Dictionary<string, object>(Told) { ["sub"] = Person.Subject }));
    }

    private IResult Authorize(HttpRequest request)
    {
        var asked = request.Query;
        if (asked["client_id"] != Client || asked["response_type"] != "code" || asked["code_challenge_method"] != "S256" || asked["nonce"].Count == 0
            || !asked["scope"].ToString().Split(' ').Contains("openid"))
        {
            return Results.BadRequest();
        }

        if (Spoil == "refusal")
        {
            return Results.Redirect(QueryHelpers.AddQueryString(asked["redirect_uri"]!, new Dictionary<string, string?> { ["error"] = "access_denied", ["state"] = asked["state"] }));
        }

        var code = WebEncoders.Base64UrlEncode(RandomNumberGenerator.GetBytes(16));
        codes[code] = (asked["code_challenge"]!, asked["redirect_uri"]!, asked["nonce"]!);
        return Results.Redirect(QueryHelpers.AddQueryString(asked["redirect_uri"]!, new Dictionary<string, string?> { ["code"] = code, ["state"] = asked["state"] }));
    }

    private async Task<IResult> TokenAsync(HttpRequest request)
    {
        var form = await request.ReadFormAsync();
        if (!codes.TryRemove(form["code"].ToString(), out var code) || form["redirect_uri"] != code.Redirect || form["client_id"] != Client || form["client_secret"] != Secret
            || WebEncoders.Base64UrlEncode(SHA256.HashData(Encoding.ASCII.GetBytes(form["code_verifier"].ToString()))) != code.Challenge)
        {
            return Results.BadRequest(new { error = "invalid_grant" });
        }

        Tokens++;
        return Results.Json(new { access_token = "nothing", token_type = "Bearer", id_token = Token(code.Nonce) });
    }

    private string Token(string nonce)
    {
        var now = TimeProvider.System.GetUtcNow().UtcDateTime;
        var signing = Spoil switch
        {
            "no signature" => null,
            "another key" => new SigningCredentials(new RsaSecurityKey(otherKey) { KeyId = "1" }, SecurityAlgorithms.RsaSha256),
            _ => new SigningCredentials(new RsaSecurityKey(key) { KeyId = "1" }, SecurityAlgorithms.RsaSha256),
        };
        var token = new SecurityTokenDescriptor
        {
            Issuer = Spoil == "another issuer" ? "https://elsewhere.example" : Address,
            Audience = Spoil == "another audience" ? "somebody-else" : Client,
            IssuedAt = now.AddHours(-2),
            NotBefore = now.AddHours(-2),
            Expires = Spoil == "its age" ? now.AddHours(-1) : now.AddMinutes(5),
            SigningCredentials = signing,
            Subject = new ClaimsIdentity([new("sub", Person.Subject), new("name", Person.Name), new("nonce", Spoil == "another nonce" ? "0" : nonce), .. Email()]),
        };
        var made = new JsonWebTokenHandler().CreateToken(token);
        var unsigned = made[..(made.LastIndexOf('.') + 1)];
        return Spoil switch
        {
            "an empty signature" => unsigned,
            "an algorithm that is none" => WebEncoders.Base64UrlEncode("""{"alg":"nOnE","typ":"JWT"}"""u8) + unsigned[unsigned.IndexOf('.', StringComparison.Ordinal)..],
            _ => made,
        };
    }

    private IEnumerable<Claim> Email()
    {
        yield return new("email_verified", Person.IsVerified ? "true" : "false", ClaimValueTypes.Boolean);
        if (TokenHasEmail)
        {
            yield return new("email", Person.Email);
        }
    }
}
