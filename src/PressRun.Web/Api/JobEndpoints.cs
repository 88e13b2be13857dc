using PressRun.JobFile;
using PressRun.JobFile.Reading;
using PressRun.JobFile.Results;

namespace PressRun.Web.Api;

/// <summary>Takes a job file as a request body and answers a question about it; nothing is stored.</summary>
internal static class JobEndpoints
{
    /// <summary>Answers one request.</summary>
    public static async Task Answer(HttpContext context, JobQuestion question)
    {
        if (await ApiBody.ReadAsync(context, JobRules.MostBytes) is not { } body)
        {
            return;
        }

        var opened = JsonText.Open(body, JobRules.MostBytes);
        if (!opened.Succeeded)
        {
            await ApiProblem.Malformed(context, opened.Problems);
            return;
        }

        using var document = opened.Value;
        var desk = context.RequestServices.GetRequiredService<JobDesk>();
        var (reply, outcome) = await desk.Ask(question, document.RootElement, context.RequestAborted);
        await (reply switch
        {
            DeskReply.Busy => ApiProblem.Busy(context),
            DeskReply.TookTooLong => ApiProblem.TookTooLong(context),
            _ when !outcome!.Succeeded => ApiProblem.Refused(context, outcome.Problems),
            _ => Write(context, "application/json", outcome!.Value.ToJson(indented: false), "no-store"),
        });
    }

    /// <summary>Serves the JSON Schema of the job file.</summary>
    public static Task Schema(HttpContext context) => Write(context, "application/schema+json", JobResources.Schema, "public, max-age=3600");

    private static async Task Write(HttpContext context, string mediaType, byte[] bytes, string caching)
    {
        var response = context.Response;
        response.ContentType = mediaType;
        response.ContentLength = bytes.Length;
        response.Headers.CacheControl = caching;
        response.Headers.XContentTypeOptions = "nosniff";
        await response.Body.WriteAsync(bytes, context.RequestAborted);
    }
}
