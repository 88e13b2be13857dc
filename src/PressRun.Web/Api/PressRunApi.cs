using Microsoft.Extensions.Options;
using PressRun.JobFile.Results;
using Scalar.AspNetCore;

namespace PressRun.Web.Api;

/// <summary>The HTTP interface: questions about a job file, its schema, what a key opens of a press, and a page that describes them.</summary>
public static class PressRunApi
{
    private const string Document = "v1";

    private static readonly (string Path, JobQuestion Question, string Summary, string Description)[] Questions =
    [
        ("/estimate", JobQuestion.Estimate, "What the run costs", "The full costing at the job's quantity: parts on sheets, cost lines, post, channels, break-even and warnings."),
        ("/ladder", JobQuestion.Ladder, "What each quantity costs", "Landed and unit cost at every quantity of the job's ladder, the quantity of the lowest unit cost, and every better buy."),
        ("/impose", JobQuestion.Impose, "What the one who binds needs", "Pages on each sheet or leaf, creep, the stapler's stop, staple places and cuts in their order."),
        ("/compare", JobQuestion.Compare, "Papers side by side", "The edition on every combination of the papers that the job's compare names: cost, mass, thickness, freight, postage and headroom."),
        ("/reprint", JobQuestion.Reprint, "How many to print", "Expected profit at every quantity on the real staircase of costs, the best quantity, the best within the cash, and the odds."),
    ];

    /// <summary>Adds what the interface needs. <see cref="ApiLimits"/> come from the section <c>PressRun:Api</c> of the configuration.</summary>
    public static IServiceCollection AddPressRunApi(this IServiceCollection services)
    {
        services.AddOptions<ApiLimits>().BindConfiguration(ApiLimits.Section).ValidateOnStart();
        services.AddSingleton<IValidateOptions<ApiLimits>, ApiLimitsCheck>();
        services.AddSingleton(TimeProvider.System);
        services.AddSingleton<JobDesk>();
        services.AddOpenApi(Document, ApiDescription.Configure);
        return services;
    }

    /// <summary>Maps <c>/api/v1/…</c> and the page <c>/api</c>.</summary>
    public static void MapPressRunApi(this IEndpointRouteBuilder routes)
    {
        // What a browser sends by itself is held against its origin (OwnOrigin), and a key is sent by no browser by itself.
        var group = routes.MapGroup("/api/v1").DisableAntiforgery();
        foreach (var (path, question, summary, description) in Questions)
        {
            // As a delegate with parameters, since a bare request delegate is left out of the description.
            group.MapPost(path, (Delegate)((HttpContext context) => JobEndpoints.Answer(context, question)))
                .WithName(question.ToString().ToLowerInvariant())
                .WithSummary(summary)
                .WithDescription(description)
                .WithTags("Job files")
                .WithMetadata(new JobQuestionMetadata(question));
            group.MapMethods(path, [HttpMethods.Get, HttpMethods.Put, HttpMethods.Patch, HttpMethods.Delete], ApiProblem.WrongMethod).ExcludeFromDescription();
        }

        group.MapGet("/job.schema.json", (Delegate)((HttpContext context) => JobEndpoints.Schema(context)))
            .WithName("jobSchema")
            .WithSummary("The JSON Schema of the job file")
            .WithDescription("Draft 2020-12. An editor that is given it checks a job file as it is typed.")
            .WithTags("Job files");
        PressEndpoints.Map(group);
        group.Map("/{**rest}", ApiProblem.NotFound).ExcludeFromDescription();
        routes.MapOpenApi("/api/v1/openapi.json");
        MapPage(routes);
    }

    private static void MapPage(IEndpointRouteBuilder routes)
    {
        var page = routes.MapScalarApiReference("/api", (options, context) =>
        {
            options.Title = "PressRun over HTTP";
            options.OpenApiRoutePattern = "/api/v1/openapi.json";
            options.Favicon = context.Request.PathBase + "/mark.svg";
            options.DefaultFonts = false;
            options.Telemetry = false;
            options.HideClientButton = true;
            options.PersistentAuthentication = false;
            options.ShowDeveloperTools = DeveloperToolsVisibility.Never;
            options.Theme = ScalarTheme.None;
            options.WithNonce(ApiPagePolicy.Nonce(context));
            options.DisableAgent();
            options.DisableMcp();
            options.AddDocument(Document);
        });
        page.Add(ApiPagePolicy.Apply);
    }
}
