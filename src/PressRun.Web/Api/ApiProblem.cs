using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using PressRun.Engine.Costing;

namespace PressRun.Web.Api;

/// <summary>Problem details (RFC 9457) of the HTTP interface, with an <c>errors</c> member that lists path, value and rule.</summary>
internal static class ApiProblem
{
    /// <summary>The media type of problem details.</summary>
    public const string MediaType = "application/problem+json";

    private static readonly JsonWriterOptions Writing = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The job file breaks rules.</summary>
    public static Task Refused(HttpContext context, IReadOnlyList<Problem> problems) =>
        Write(context, StatusCodes.Status422UnprocessableEntity, "job-refused", "What was sent is refused", Count(problems), problems);

    /// <summary>The key may not do that.</summary>
    public static Task KeyReadsOnly(HttpContext context) => Write(
        context, StatusCodes.Status403Forbidden, "key-reads-only", "This key reads only", "Ask an owner of the press for a key that writes; owners make keys on the page People.");

    /// <summary>A browser sent it from a page of another origin.</summary>
    public static Task OtherSite(HttpContext context) => Write(
        context,
        StatusCodes.Status403Forbidden,
        "other-site",
        "This came from another site's page",
        "A browser sent it from a page whose host is not the one that it reached PressRun by. If a proxy stands in front, it has to pass on the host name and to be named in PressRun__TrustedProxies.");

    /// <summary>The database does not answer.</summary>
    public static Task DatabaseAway(HttpContext context) => Write(
        context, StatusCodes.Status503ServiceUnavailable, "database-away", "The database does not answer", "Try again after the seconds of Retry-After. What was being stored when it went away may be there: look before you send it again.");

    /// <summary>A line of another content has the id.</summary>
    public static Task IdTaken(HttpContext context) => Write(
        context, StatusCodes.Status409Conflict, "id-taken", "Another line has this id", "Give each line an id of its own; the line that has this one is left as it is.");

    /// <summary>The body is no JSON.</summary>
    public static Task Malformed(HttpContext context, IReadOnlyList<Problem> problems) =>
        Write(context, StatusCodes.Status400BadRequest, "not-json", "The request body cannot be read", problems[0].Rule, problems);

    /// <summary>The body is larger than is taken.</summary>
    public static Task TooLarge(HttpContext context, int mostBytes) => Write(
        context,
        StatusCodes.Status413PayloadTooLarge,
        "too-large",
        "The request body is too large",
        string.Create(CultureInfo.InvariantCulture, $"It has at most {mostBytes:N0} bytes."));

    /// <summary>The request broke off, came too slowly or is none: the web server has refused it while it was read.</summary>
    /// <param name="context">The request.</param>
    /// <param name="status">The status that the web server has for it.</param>
    public static Task Broken(HttpContext context, int status)
    {
        var (type, title, detail) = status switch
        {
            StatusCodes.Status413PayloadTooLarge => ("too-large", "The request body is too large", "Send less at once."),
            StatusCodes.Status408RequestTimeout => ("too-slow", "The request came too slowly", "Send it again, on a better line."),
            _ => ("broken", "The request is broken", "It broke off, or its head or the parts of its body are not what HTTP has them be. Nothing was done; send it again whole."),
        };
        return Write(context, status, type, title, detail);
    }

    /// <summary>The body is of another kind.</summary>
    public static Task WrongKind(HttpContext context) => Write(
        context,
        StatusCodes.Status415UnsupportedMediaType,
        "wrong-media-type",
        "The request body is not JSON",
        "Send it as application/json, in UTF-8 and not compressed.");

    /// <summary>The address takes another method.</summary>
    public static Task WrongMethod(HttpContext context)
    {
        context.Response.Headers.Allow = HttpMethods.Post;
        return Write(
            context, StatusCodes.Status405MethodNotAllowed, "wrong-method", "This address takes a job file by POST", "Send the job file as the body of a POST request.");
    }

    /// <summary>There is nothing at the address.</summary>
    public static Task NotFound(HttpContext context) =>
        Write(context, StatusCodes.Status404NotFound, "not-found", "There is nothing at this address", "The page /api lists the addresses there are.");

    /// <summary>Nobody is known to have sent the request.</summary>
    public static Task NotSignedIn(HttpContext context)
    {
        context.Response.Headers.WWWAuthenticate = "Bearer";
        return Write(
            context, StatusCodes.Status401Unauthorized, "not-signed-in", "A key is needed", "Send a key of your press as Authorization: Bearer KEY; owners make keys on the page People.");
    }

    /// <summary>The server has more work than it takes on.</summary>
    public static Task Busy(HttpContext context)
    {
        context.Response.Headers.RetryAfter = "5";
        return Write(
            context, StatusCodes.Status503ServiceUnavailable, "busy", "The server is busy", "Too many jobs are being worked out; try again in a few seconds.");
    }

    /// <summary>The job takes longer than is allowed.</summary>
    public static Task TookTooLong(HttpContext context) => Write(
        context,
        StatusCodes.Status503ServiceUnavailable,
        "took-too-long",
        "The job takes too long",
        "Ask for fewer quantities: a ladder looks at every whole quantity between its first and its last.");

    private static string Count(IReadOnlyList<Problem> problems) => problems.Count == 1
        ? problems[0].ToString()
        : string.Create(CultureInfo.InvariantCulture, $"{problems.Count} problems stand in the way; the first: {problems[0]}");

    private static async Task Write(HttpContext context, int status, string type, string title, string detail, IReadOnlyList<Problem>? problems = null)
    {
        var response = context.Response;
        response.StatusCode = status;
        response.ContentType = MediaType;
        response.Headers.CacheControl = "no-store";
        response.Headers.XContentTypeOptions = "nosniff";
        await using var json = new Utf8JsonWriter(response.BodyWriter, Writing);
        json.WriteStartObject();
        json.WriteString("type", "urn:pressrun:problem:" + type);
        json.WriteString("title", title);
        json.WriteNumber("status", status);
        json.WriteString("detail", detail);
        if (problems is not null)
        {
            json.WriteStartArray("errors");
            foreach (var problem in problems)
            {
                json.WriteStartObject();
                json.WriteString("path", problem.Path);
                json.WriteString("value", problem.Value);
                json.WriteString("rule", problem.Rule);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
        await json.FlushAsync(context.RequestAborted);
        await response.BodyWriter.FlushAsync(context.RequestAborted);
    }
}
