using System.Net;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace PressRun.Browser.Tests.Running;

/// <summary>A page as it is fetched: what it hands to its server again when it opens a line to it.</summary>
internal sealed partial class ServedPage
{
    private ServedPage(string text)
    {
        State = StateMark().Match(text).Groups[1].Value;
        var operations = Markers().Matches(text).Select(JsonNode (marker, index) =>
            new JsonObject { ["type"] = "add", ["ssrComponentId"] = index + 1, ["marker"] = JsonNode.Parse(marker.Groups[1].Value) });
        Additions = new JsonObject { ["batchId"] = 1, ["operations"] = new JsonArray([.. operations]) }.ToJsonString();
    }

    /// <summary>What was worked out for the page and need not be worked out again, sealed by the server.</summary>
    public string State { get; }

    /// <summary>The components that the server is to go on with, as the framework's script asks for them.</summary>
    public string Additions { get; }

    /// <summary>Fetches a page.</summary>
    /// <param name="cookies">The cookies of its browser.</param>
    /// <param name="page">Its address.</param>
    public static async Task<ServedPage> FetchAsync(CookieContainer cookies, Uri page)
    {
        using var http = new HttpClient(new HttpClientHandler { CookieContainer = cookies });
        http.DefaultRequestHeaders.AcceptLanguage.ParseAdd("en-IE");
        return new ServedPage(await http.GetStringAsync(page));
    }

    // Only the comment that opens a component says its type; the one that closes it does not.
    [GeneratedRegex("""<!--Blazor:(\{"type":"server".*?\})-->""")]
    private static partial Regex Markers();

    [GeneratedRegex("<!--Blazor-Server-Component-State:(.*?)-->")]
    private static partial Regex StateMark();
}
