using System.Net.Mime;
using Microsoft.AspNetCore.Mvc;
using PressRun.Data.Access;
using PressRun.Data.People;
using PressRun.Data.Presses;
using PressRun.Web.Layout;
using PressRun.Web.People.Elsewhere;

namespace PressRun.Web.People;

/// <summary>What the buttons on the pages about accounts and people send. Every form carries a token that only its page has.</summary>
public static class AccountEndpoints
{
    /// <summary>Maps them.</summary>
    public static void Map(IEndpointRouteBuilder app)
    {
        // A form is what is sent, so its token is asked for (UseAntiforgery); the parameters say so to the framework.
        var account = app.MapGroup("/account").ExcludeFromDescription();
        // Whoever is let through here has been seen, as with every page (see SignInSetup).
        account.MapGet("/here", () => Results.NoContent());
        account.MapPost("/sign-out", async (HttpContext http, SignIns signIns, [FromForm] string? _) =>
        {
            await signIns.EndAsync();
            return Back(http, "sign-in");
        });
        account.MapPost("/end", async (HttpContext http, SessionStore sessions, [FromForm] Guid session) =>
        {
            await sessions.EndAsync(Person(http).UserId, session);
            return Back(http, "account");
        });
        account.MapPost("/end-others", async (HttpContext http, SessionStore sessions, [FromForm] string? _) =>
        {
            var person = Person(http);
            await sessions.EndOthersAsync(person.UserId, person.SessionId);
            return Back(http, "account");
        });
        account.MapPost("/passkey", async (HttpContext http, Accounts accounts, SignIns signIns, PasskeyRounds rounds, [FromForm] string? password) =>
        {
            var person = Person(http);
            return await accounts.FindAsync(person.UserId) is not { } user ? Results.Unauthorized()
                : await signIns.ProblemOfOwnAsync(user, person.SessionId, password ?? "") is { } problem ? Says(http, problem)
                : Results.Content(await rounds.AskForNewAsync(user, person.SessionId), MediaTypeNames.Application.Json);
        });
        account.MapPost("/passkey/remove", async (HttpContext http, Arrivals arrivals, [FromForm] string passkey) =>
            await arrivals.RemovePasskeyAsync(Person(http).UserId, Person(http).SessionId, passkey) ? Back(http, "account") : Results.BadRequest());
        app.MapPost("/sign-in/passkey", async (PasskeyRounds rounds, [FromForm] string? _) =>
            Results.Content(await rounds.AskForAnyAsync(), MediaTypeNames.Application.Json))
            .ExcludeFromDescription().Public("Whoever signs in by a passkey has not signed in yet.");
        app.MapGet("/sign-in/elsewhere", (HttpContext http, Arrivals arrivals, string? to) => arrivals.GoAsync(http, to))
            .ExcludeFromDescription().Public("Whoever signs in by another server has not signed in here yet.");
        account.MapPost("/unlink", async (HttpContext http, Arrivals arrivals, [FromForm] string? _) =>
            await arrivals.UnlinkAsync(Person(http).UserId, Person(http).SessionId) ? Back(http, "account") : Results.BadRequest());
        account.MapPost("/mail", async (HttpContext http, PeopleStore people, [FromForm] Guid press, [FromForm] bool without) =>
        {
            await people.SetMailAsync(new PressId(press), without);
            return Back(http, "account");
        });
        account.MapPost("/leave", async (HttpContext http, PeopleStore people, [FromForm] Guid press) =>
            Back(http, "account", await people.LeaveAsync(new PressId(press))));

        var press = app.MapGroup("/people").ExcludeFromDescription();
        press.MapPost("/role", async (HttpContext http, PeopleStore people, [FromForm] Guid press, [FromForm] Guid user, [FromForm] PressRole role) =>
            Enum.IsDefined(role) ? Back(http, "people", await people.ChangeAsync(new PressId(press), user, role)) : Results.BadRequest());
        press.MapPost("/remove", async (HttpContext http, PeopleStore people, [FromForm] Guid press, [FromForm] Guid user) =>
            Back(http, "people", await people.RemoveAsync(new PressId(press), user)));
        press.MapPost("/withdraw", async (HttpContext http, InvitationStore invitations, [FromForm] Guid press, [FromForm] Guid invitation) =>
        {
            await invitations.WithdrawAsync(new PressId(press), invitation);
            return Back(http, "people");
        });
        press.MapPost("/revoke", async (HttpContext http, ApiKeyStore keys, [FromForm] Guid press, [FromForm] Guid key) =>
        {
            await keys.RevokeAsync(new PressId(press), key);
            return Back(http, "people");
        });
    }

    // In single-user mode nobody has signed in, and so nobody has anything to end here.
    private static Visitor.Person Person(HttpContext http) => WhoClaims.Person(http.User) ?? throw new AccessRefusedException();

    private static IResult Says(HttpContext http, string problem) => Results.Json(
        new { says = problem },
        statusCode: http.Response.StatusCode == StatusCodes.Status429TooManyRequests ? StatusCodes.Status429TooManyRequests : StatusCodes.Status422UnprocessableEntity);

    private static IResult Back(HttpContext http, string page, PeopleResult result = PeopleResult.Done) =>
        Results.LocalRedirect($"{http.Request.PathBase}/{page}{(result == PeopleResult.Done ? "" : "?said=" + result)}");
}
