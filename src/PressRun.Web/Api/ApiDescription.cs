using System.Text.Json.Nodes;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;
using PressRun.JobFile;
using PressRun.JobFile.Results;

namespace PressRun.Web.Api;

/// <summary>Marks an endpoint as one that answers a question about a job file.</summary>
internal sealed record JobQuestionMetadata(JobQuestion Question);

/// <summary>Describes the interface as an OpenAPI document: the job file by its own schema, the answers by the sample's.</summary>
internal static class ApiDescription
{
    private const string Json = "application/json";

    /// <summary>Sets up the document.</summary>
    public static void Configure(OpenApiOptions options)
    {
        options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
        options.ShouldInclude = description => description.RelativePath?.StartsWith("api/v1/", StringComparison.Ordinal) == true;
        options.AddDocumentTransformer((document, _, _) =>
        {
            Describe(document);
            return Task.CompletedTask;
        });
        options.AddOperationTransformer((operation, context, _) =>
        {
            var metadata = context.Description.ActionDescriptor.EndpointMetadata;
            if (metadata.OfType<JobQuestionMetadata>().FirstOrDefault() is { } asked)
            {
                Describe(operation, asked.Question, context.Document!);
            }
            else if (metadata.OfType<PressCall>().FirstOrDefault() is { } call)
            {
                Describe(operation, call, context.Document!);
            }
            else
            {
                operation.Responses = new OpenApiResponses { ["200"] = Response("The schema.", "application/schema+json", new OpenApiSchema { Type = JsonSchemaType.Object }, null) };
            }

            return Task.CompletedTask;
        });
    }

    private static void Describe(OpenApiDocument document)
    {
        document.Info = new OpenApiInfo
        {
            Title = "PressRun",
            Version = "1",
            Description =
                "Send a job file, get its costing. A job file holds all that one costing needs, nothing is looked up elsewhere and nothing is stored. "
                + "What stands under A press is of the press whose key is sent. "
                + "Lengths, masses and paper weights carry their unit, money is a decimal string in the job's currency, rates are fractions. "
                + "A job file that is refused comes back with every problem at once: its path, its value and the rule. "
                + "Where people sign in, send a key of your press as Authorization: Bearer KEY; its owner makes keys on the page People. "
                + "Taxes and postage are the figures in the job file; check them with the carrier and a licensed adviser.",
        };
        document.Components ??= new OpenApiComponents();
        document.Components.Schemas ??= new Dictionary<string, IOpenApiSchema>();
        foreach (var (name, schema) in JobSchemas.Read())
        {
            document.Components.Schemas[name] = schema;
        }

        document.Components.Schemas["Problem"] = ProblemSchema();
    }

    private static void Describe(OpenApiOperation operation, JobQuestion question, OpenApiDocument document)
    {
        operation.Parameters = null;
        operation.RequestBody = new OpenApiRequestBody
        {
            Required = true,
            Description = "A job file.",
            Content = new Dictionary<string, OpenApiMediaType>
            {
                [Json] = new()
                {
                    Schema = new OpenApiSchemaReference(JobSchemas.JobName, document),
                    Examples = new Dictionary<string, IOpenApiExample>
                    {
                        ["sample"] = new OpenApiExample { Summary = "A stapled book of 24 pages", Value = JsonNode.Parse(JobResources.SampleJob) },
                    },
                },
            },
        };
        var problem = new OpenApiSchemaReference("Problem", document);
        operation.Responses = new OpenApiResponses
        {
            ["200"] = Response("The answer.", Json, new OpenApiSchema { Type = JsonSchemaType.Object }, Answer(question)),
            ["401"] = Response("No key is sent, or one that holds no more.", ApiProblem.MediaType, problem, null),
            ["400"] = Response("The body is no JSON.", ApiProblem.MediaType, problem, null),
            ["413"] = Response("The body is larger than a job file may be.", ApiProblem.MediaType, problem, null),
            ["415"] = Response("The body is of another kind than JSON.", ApiProblem.MediaType, problem, null),
            ["422"] = Response("The job file is refused; all its problems are listed.", ApiProblem.MediaType, problem, RefusedExample()),
            ["503"] = Response("The server is busy, or the job takes too long.", ApiProblem.MediaType, problem, null),
        };
    }

    private static void Describe(OpenApiOperation operation, PressCall call, OpenApiDocument document)
    {
        var problem = new OpenApiSchemaReference("Problem", document);
        operation.Responses = new OpenApiResponses
        {
            [call.Status] = Response("The answer.", Json, new OpenApiSchema { Type = call.Answers is JsonArray ? JsonSchemaType.Array : JsonSchemaType.Object }, call.Answers.DeepClone()),
            ["401"] = Response("No key is sent, or one that holds no more.", ApiProblem.MediaType, problem, null),
        };
        if (call.Sends is null)
        {
            return;
        }

        operation.RequestBody = new OpenApiRequestBody
        {
            Required = true,
            Content = new Dictionary<string, OpenApiMediaType>
            {
                [Json] = new()
                {
                    Schema = call.IsJob ? new OpenApiSchemaReference(JobSchemas.JobName, document) : new OpenApiSchema { Type = JsonSchemaType.Object },
                    Example = call.Sends.DeepClone(),
                },
            },
        };
        operation.Responses["403"] = Response("The key reads only.", ApiProblem.MediaType, problem, null);
        operation.Responses["400"] = Response("The body is no JSON, or not of this form.", ApiProblem.MediaType, problem, null);
        operation.Responses["422"] = Response("What was sent is refused; all its problems are listed.", ApiProblem.MediaType, problem, null);
        if (!call.IsJob)
        {
            operation.Parameters = [new OpenApiParameter { Name = "id", In = ParameterLocation.Path, Required = true, Schema = new OpenApiSchema { Type = JsonSchemaType.String, Format = "uuid" } }];
            operation.Responses["404"] = Response("The press has no such printing.", ApiProblem.MediaType, problem, null);
            operation.Responses["409"] = Response("A line of another content has this id.", ApiProblem.MediaType, problem, null);
        }
    }

    private static OpenApiResponse Response(string description, string mediaType, IOpenApiSchema schema, JsonNode? example) => new()
    {
        Description = description,
        Content = new Dictionary<string, OpenApiMediaType> { [mediaType] = new() { Schema = schema, Example = example } },
    };

    private static JsonNode? Answer(JobQuestion question)
    {
        using var sample = System.Text.Json.JsonDocument.Parse(JobResources.SampleJob);
        return JsonNode.Parse(JobAnswer.To(question, sample.RootElement).Value.ToJson(indented: false));
    }

    private static JsonObject RefusedExample() => new()
    {
        ["type"] = "urn:pressrun:problem:job-refused",
        ["title"] = "What was sent is refused",
        ["status"] = 422,
        ["detail"] = "$.quantity is 0: Write a whole number of copies from 1 to 1,000,000.",
        ["errors"] = new JsonArray(new JsonObject
        {
            ["path"] = "$.quantity",
            ["value"] = "0",
            ["rule"] = "Write a whole number of copies from 1 to 1,000,000.",
        }),
    };

    private static OpenApiSchema ProblemSchema() => new()
    {
        Description = "Problem details (RFC 9457).",
        Type = JsonSchemaType.Object,
        Properties = new Dictionary<string, IOpenApiSchema>
        {
            ["type"] = Text("What kind of problem, as a URI."),
            ["title"] = Text("The kind in words."),
            ["status"] = new OpenApiSchema { Type = JsonSchemaType.Integer },
            ["detail"] = Text("A sentence."),
            ["errors"] = new OpenApiSchema
            {
                Type = JsonSchemaType.Array,
                Items = new OpenApiSchema
                {
                    Type = JsonSchemaType.Object,
                    Properties = new Dictionary<string, IOpenApiSchema>
                    {
                        ["path"] = Text("Where, as a JSONPath (RFC 9535)."),
                        ["value"] = new OpenApiSchema { Description = "What stands there; null where nothing does.", Type = JsonSchemaType.String | JsonSchemaType.Null },
                        ["rule"] = Text("What would be right."),
                    },
                },
            },
        },
    };

    private static OpenApiSchema Text(string description) => new() { Description = description, Type = JsonSchemaType.String };
}
