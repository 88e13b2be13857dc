using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using PressRun.JobFile;

namespace PressRun.Web.Api;

/// <summary>The job file's JSON Schema as components of an OpenAPI 3.1 document, which speaks the same dialect.</summary>
internal static class JobSchemas
{
    /// <summary>Name of the component that is the job file itself.</summary>
    public const string JobName = "Job";

    /// <summary>The schemas by name.</summary>
    public static IEnumerable<KeyValuePair<string, IOpenApiSchema>> Read()
    {
        var job = JsonNode.Parse(JobResources.Schema)!.AsObject();
        var schemas = job["$defs"]!.DeepClone().AsObject();
        foreach (var own in new[] { "$defs", "$schema", "$id" })
        {
            job.Remove(own);
        }

        schemas[JobName] = job;
        var document = new JsonObject
        {
            ["openapi"] = "3.1.0",
            ["info"] = new JsonObject { ["title"] = "job file", ["version"] = "1" },
            ["paths"] = new JsonObject(),
            ["components"] = new JsonObject { ["schemas"] = schemas },
        };
        var text = document.ToJsonString().Replace("#/$defs/", "#/components/schemas/", StringComparison.Ordinal);
        return OpenApiDocument.Parse(text, "json").Document?.Components?.Schemas ?? new Dictionary<string, IOpenApiSchema>();
    }
}
