using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using PressRun.Web.People;
using PressRun.Web.Running;

namespace PressRun.Browser.Tests.People;

/// <summary>An endpoint of the app as it is mapped.</summary>
/// <param name="Route">Its pattern.</param>
/// <param name="Methods">The methods it answers.</param>
/// <param name="Public">Why anybody may have it; null for whoever signed in only.</param>
/// <param name="IsPage">True for a page.</param>
internal sealed record MappedEndpoint(string Route, IReadOnlyList<string> Methods, string? Public, bool IsPage);

/// <summary>Every endpoint of the app, asked of the app itself, so that a new one is tried without being listed.</summary>
internal static partial class EveryEndpoint
{
    // The framework's own, for files that are added while developing; the published app has none.
    private const string FilesInTheMaking = "{**path:file}";

    private const string Assets = "Styles, scripts and fonts are the same for everybody.";

    /// <summary>All but the files that are the same for everybody, those of the page that describes the HTTP interface among them.</summary>
    public static IReadOnlyList<MappedEndpoint> All()
    {
        var folder = Path.Combine(AppContext.BaseDirectory, "app");
        var app = PressRunApp.Build([$"--contentRoot={folder}", "--applicationName=PressRun.Web", "--PressRun:SignIn=on", $"--webroot={Path.Combine(folder, "wwwroot")}"]);
        return [.. ((IEndpointRouteBuilder)app).DataSources.SelectMany(source => source.Endpoints).OfType<RouteEndpoint>()
            .Select(endpoint => new MappedEndpoint(
                endpoint.RoutePattern.RawText ?? "",
                endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? ["GET", "POST"],
                endpoint.Metadata.GetMetadata<IAllowAnonymous>() is { } open ? (open as PublicAttribute)?.Why ?? "" : null,
                endpoint.Metadata.Any(metadata => metadata.GetType().Name == "ComponentTypeMetadata")))
            .Where(endpoint => endpoint.Public != Assets && endpoint.Route != FilesInTheMaking && !FileOfTheApiPage().IsMatch(endpoint.Route))];
    }

    /// <summary>An address of a route, with what stands for its parameters; for others something of the kind that the route asks for.</summary>
    public static string Address(string route, IReadOnlyDictionary<string, string> parameters) => Parameter().Replace(
        route, match => parameters.TryGetValue(match.Groups["name"].Value.ToLowerInvariant(), out var known) ? known : match.Groups["kind"].Value switch
        {
            "int" => "1",
            "guid" => Guid.AllBitsSet.ToString(),
            _ => "anything",
        });

    [GeneratedRegex(@"^/?api/[\w.]+\.(js|svg)$")]
    private static partial Regex FileOfTheApiPage();

    [GeneratedRegex(@"\{\**(?<name>\w+)(:(?<kind>\w+))*\??\}")]
    private static partial Regex Parameter();
}
