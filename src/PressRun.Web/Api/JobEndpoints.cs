using Microsoft.AspNetCore.Http.Features;
using Microsoft.Net.Http.Headers;
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
        var request = context.Request;
        if (!IsPlainJson(request))
        {
            await ApiProblem.WrongKind(context);
            return;
        }

        if (request.ContentLength > JobRules.MostBytes || await ReadBody(context) is not { } body)
        {
            await ApiProblem.TooLarge(context, JobRules.MostBytes);
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

    // JSON is UTF-8 by its standard (RFC 8259), and a media type of JSON has no other parameter that matters. A caller who names none is believed.
    private static bool IsPlainJson(HttpRequest request)
    {
        if (request.Headers.ContentEncoding.Count > 0 && request.Headers.ContentEncoding != "identity")
        {
            return false;
        }

        if (string.IsNullOrEmpty(request.ContentType))
        {
            return true;
        }

        return MediaTypeHeaderValue.TryParse(request.ContentType, out var type)
            && (type.MediaType.Equals("application/json", StringComparison.OrdinalIgnoreCase) || type.Suffix.Equals("json", StringComparison.OrdinalIgnoreCase))
            && (!type.Charset.HasValue || type.Charset.Equals("utf-8", StringComparison.OrdinalIgnoreCase));
    }

    // Null where there is more than a job file may have; the rest of such a body is not read.
    private static async Task<ReadOnlyMemory<byte>?> ReadBody(HttpContext context)
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
        {
            size.MaxRequestBodySize = null;
        }

        var most = (int)(context.Request.ContentLength ?? JobRules.MostBytes + 1);
        using var body = new MemoryStream(Math.Min(most, 65_536));
        var buffer = new byte[16_384];
        int read;
        while ((read = await context.Request.Body.ReadAsync(buffer, context.RequestAborted)) > 0)
        {
            if (body.Length + read > JobRules.MostBytes)
            {
                return null;
            }

            body.Write(buffer, 0, read);
        }

        return body.GetBuffer().AsMemory(0, (int)body.Length);
    }

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
