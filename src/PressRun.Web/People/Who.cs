using System.Security.Claims;
using PressRun.Data.Access;

namespace PressRun.Web.People;

/// <summary>Who is at a page.</summary>
/// <param name="SignIn">False in single-user mode.</param>
/// <param name="Name">What they are called; null for somebody who has not signed in.</param>
public sealed record Who(bool SignIn, string? Name)
{
    /// <summary>True for whoever may look behind the public pages.</summary>
    public bool Inside => !SignIn || Name is not null;
}

/// <summary>The sign-in that a request's cookie names, whether or not it lasts and whether or not the page asks.</summary>
/// <param name="Person">Null for none.</param>
internal sealed record ShownSignIn(Visitor.Person? Person);

/// <summary>What a cookie or a key says of its holder, as claims and as a visitor.</summary>
internal static class WhoClaims
{
    public const string Session = "pressrun:session";
    public const string Key = "pressrun:key";
    public const string Press = "pressrun:press";

    public static ClaimsPrincipal Of(Visitor.Person person, string name, string scheme) => new(new ClaimsIdentity(
        [
            new Claim(ClaimTypes.NameIdentifier, person.UserId.ToString()), new Claim(ClaimTypes.Name, name), new Claim(Session, person.SessionId.ToString()),
        ],
        scheme));

    public static ClaimsPrincipal Of(Visitor.Key key, string scheme) =>
        new(new ClaimsIdentity([new Claim(Key, key.KeyId.ToString()), new Claim(Press, key.Press.ToString())], scheme));

    public static Visitor Visitor(ClaimsPrincipal? who)
    {
        if (Person(who) is { } person)
        {
            return person;
        }

        return Id(who, Key) is { } key && Id(who, Press) is { } press
            ? new Visitor.Key(key, new Data.Presses.PressId(press))
            : new Visitor.Nobody();
    }

    public static Visitor.Person? Person(ClaimsPrincipal? who) =>
        Id(who, ClaimTypes.NameIdentifier) is { } user && Id(who, Session) is { } session ? new Visitor.Person(user, session) : null;

    private static Guid? Id(ClaimsPrincipal? who, string claim) => Guid.TryParse(who?.FindFirstValue(claim), out var id) ? id : null;
}
