using Microsoft.AspNetCore.Authorization;

namespace PressRun.Web.People;

/// <summary>Opens a page or an endpoint to people who have not signed in. Whatever does not say so asks for a sign-in; a test lists all that do.</summary>
/// <param name="why">Why anybody may have it.</param>
[AttributeUsage(AttributeTargets.Class)]
public sealed class PublicAttribute(string why) : Attribute, IAllowAnonymous
{
    /// <summary>Why anybody may have it.</summary>
    public string Why { get; } = why;

    /// <summary>True where the page also wants to know who is visiting, if somebody is; it costs a look into the database.</summary>
    public bool AsksWho { get; init; }
}

/// <summary>The same for endpoints that are no pages.</summary>
public static class PublicEndpoints
{
    /// <summary>Opens an endpoint to people who have not signed in.</summary>
    public static T Public<T>(this T endpoint, string why)
        where T : IEndpointConventionBuilder => endpoint.WithMetadata(new PublicAttribute(why));
}
