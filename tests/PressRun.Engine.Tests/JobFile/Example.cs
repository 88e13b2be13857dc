using System.Text;
using System.Text.Json.Nodes;
using PressRun.Engine.Costing;
using PressRun.JobFile;

namespace PressRun.Engine.Tests.JobFile;

/// <summary>The worked example of the contract, and changes to it.</summary>
internal static class Example
{
    public static byte[] Bytes(string name) => File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "TestData", $"example-{name}.json"));

    public static JsonObject Job() => JsonNode.Parse(Bytes("job"))!.AsObject();

    public static Outcome<Job> Read(string json) => JobReader.Read(Encoding.UTF8.GetBytes(json));

    public static Outcome<Job> Read(JsonNode json) => Read(json.ToJsonString());

    /// <summary>The example with the value at a dotted place (<c>edition.parts.0.pages</c>) replaced; <c>(gone)</c> takes it away.</summary>
    public static JsonObject With(string place, string json)
    {
        var job = Job();
        Set(job, place, json);
        return job;
    }

    public static void Set(JsonObject job, string place, string json)
    {
        var steps = place.Split('.');
        JsonNode node = job;
        foreach (var step in steps[..^1])
        {
            node = node is JsonArray list ? list[Index(step)]! : node[step]!;
        }

        if (node is JsonArray array)
        {
            array[Index(steps[^1])] = JsonNode.Parse(json);
        }
        else if (json == "(gone)")
        {
            node.AsObject().Remove(steps[^1]);
        }
        else
        {
            node[steps[^1]] = JsonNode.Parse(json);
        }
    }

    private static int Index(string step) => int.Parse(step, System.Globalization.CultureInfo.InvariantCulture);
}
