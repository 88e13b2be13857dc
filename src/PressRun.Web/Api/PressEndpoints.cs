using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using PressRun.Data;
using PressRun.Data.Access;
using PressRun.Data.Copies;
using PressRun.Data.Presses;
using PressRun.Engine.Copies;
using PressRun.Engine.Costing;
using PressRun.JobFile;
using PressRun.Web.Layout;
using PressRun.Web.People;
using PressRun.Web.RunPlans;

namespace PressRun.Web.Api;

/// <summary>Something to write into a printing's ledger, as it is sent.</summary>
/// <param name="Printing">Id of the printing.</param>
/// <param name="Day">The day on which it happened.</param>
/// <param name="Kind">What happened.</param>
/// <param name="Copies">How many; for a count, how many were found.</param>
/// <param name="Amount">Money, as a decimal string or a number.</param>
/// <param name="Channel">The way of selling; may be left out.</param>
/// <param name="Note">Words of one's own; may be left out.</param>
internal sealed record SentMovement(
    [property: JsonRequired] Guid Printing,
    [property: JsonRequired] DateOnly Day,
    [property: JsonRequired] MovementKind Kind,
    [property: JsonRequired] int Copies,
    [property: JsonNumberHandling(JsonNumberHandling.AllowReadingFromString)] decimal Amount = 0m,
    string? Channel = null,
    string? Note = null);

/// <summary>
/// What a program may see and write of the press whose key it shows. A key is sent in a header that no browser adds by itself, so that no page of
/// another site can make somebody's browser write; a sign-in's cookie opens none of this.
/// </summary>
internal static class PressEndpoints
{
    private const int MostMovementBytes = 16 * 1024;
    private const string Tag = "A press";

    // The IETF's draft of the header (draft-ietf-httpapi-idempotency-key-header; from memory).
    private const string Once = "Idempotency-Key";

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        MaxDepth = 4, AllowDuplicateProperties = false, UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow, Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false) },
    };

    /// <summary>Maps them.</summary>
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/printings", For(ListAsync)).WithName("printings").WithTags(Tag).WithMetadata(PressCall.Printings)
            .WithSummary("Every printing").WithDescription("The printings of the press with the ids by which movements name them. A key that reads is enough.");
        api.MapPost("/titles", For(TakeInAsync)).WithName("addTitle").WithTags(Tag).WithMetadata(PressCall.Title)
            .WithSummary("A title from a job file")
            .WithDescription("Makes a title with its first printing and a plan, and the papers and the shop that the press lacks: all of it, or nothing. It needs a key that writes. "
                + "With the header Idempotency-Key, a UUID made up once for each title, it is made once however often it is sent: 201 the first time, 200 with what it became after that. Without the header, sent twice it makes two titles.");
        api.MapPut("/movements/{id:guid}", For(WriteAsync)).WithName("writeMovement").WithTags(Tag).WithMetadata(PressCall.Movement)
            .WithSummary("A line of the copies ledger")
            .WithDescription("Whoever sends it makes up the id, a UUID, once for each line: sent again with the same id it is answered and not written again. It needs a key that writes.");
    }

    private static Delegate For(Func<HttpContext, PressId, Task> answer) => (HttpContext http) => AnswerAsync(http, answer);

    private static async Task AnswerAsync(HttpContext http, Func<HttpContext, PressId, Task> answer)
    {
        if (http.RequestServices.AsksToSignIn() && WhoClaims.Visitor(http.User) is not Visitor.Key)
        {
            await ApiProblem.NotSignedIn(http);
            return;
        }

        if (await http.RequestServices.GetRequiredService<CurrentPress>().FindAsync(null) is not { } press)
        {
            await ApiProblem.NotFound(http);
            return;
        }

        try
        {
            await answer(http, press.Record.Id);
        }
        catch (AccessRefusedException)
        {
            await ApiProblem.KeyReadsOnly(http);
        }
    }

    private static async Task ListAsync(HttpContext http, PressId press)
    {
        var names = await http.RequestServices.GetRequiredService<CopiesLedgerStore>().NamesAsync(press, http.RequestAborted);
        await SendAsync(http, StatusCodes.Status200OK, names.Select(name => new { name.Id, name.Title, name.Slug, name.Printing, name.PrintedOn }));
    }

    private static async Task TakeInAsync(HttpContext http, PressId press)
    {
        if (await ApiBody.ReadAsync(http, JobRules.MostBytes) is not { } body)
        {
            return;
        }

        Guid? once = Guid.TryParse(http.Request.Headers[Once], out var id) && id != Guid.Empty ? id : null;
        if (once is null && http.Request.Headers.ContainsKey(Once))
        {
            await ApiProblem.Malformed(http, [new Problem("$", null, $"{Once} is a UUID, made up once for each title.")]);
            return;
        }

        var taken = await http.RequestServices.GetRequiredService<RunFiles>().TakeInAsync(press, body, once);
        if (!taken.Succeeded)
        {
            await ApiProblem.Refused(http, taken.Problems);
            return;
        }

        var (slug, edition) = (taken.Value.Slug, taken.Value.Source.Edition);
        // Escaped: a header is ASCII, and an address holds a title's own letters.
        http.Response.Headers.Location = http.Request.PathBase.Add(string.Create(CultureInfo.InvariantCulture, $"/titles/{slug}/{edition.Printing}")).ToUriComponent();
        await SendAsync(http, taken.Value.NewTitle ? StatusCodes.Status201Created : StatusCodes.Status200OK, new { slug, printing = edition.Id, plan = taken.Value.Source.Plan.Id, taken.Value.NewStocks, taken.Value.NewShop });
    }

    private static async Task WriteAsync(HttpContext http, PressId press)
    {
        if (await ApiBody.ReadAsync(http, MostMovementBytes) is not { } body)
        {
            return;
        }

        SentMovement sent;
        try
        {
            sent = JsonSerializer.Deserialize<SentMovement>(body.Span, Json) ?? throw new JsonException();
        }
        catch (JsonException wrong)
        {
            await ApiProblem.Malformed(http, [new Problem(wrong.Path ?? "$", null, "Write printing, day, kind, copies, and where there are any amount, channel and note; the page /api has an example.")]);
            return;
        }

        var id = Guid.Parse((string)http.GetRouteValue("id")!);
        var movement = new NewMovement(id, sent.Printing, sent.Day, sent.Kind, sent.Copies, sent.Amount, sent.Channel, (sent.Note ?? "").Trim());
        await (await http.RequestServices.GetRequiredService<CopiesLedgerStore>().WriteAsync(press, movement, http.RequestAborted) switch
        {
            SaveResult<MovementRecord>.Saved saved when IsOf(saved.Now, movement) => SendAsync(http, StatusCodes.Status200OK, Shown(saved.Now)),
            SaveResult<MovementRecord>.Saved => ApiProblem.IdTaken(http),
            SaveResult<MovementRecord>.Refused refused => ApiProblem.Refused(http, refused.Problems),
            _ => ApiProblem.NotFound(http),
        });
    }

    // A count is kept as what it differed by, which says nothing of what was found.
    private static bool IsOf(MovementRecord line, NewMovement sent) =>
        (line.EditionId, line.Movement.Day, line.Movement.Kind, Math.Abs(line.Movement.Amount), line.ChannelId, line.Note)
            == (sent.EditionId, sent.Day, sent.Kind, sent.Amount, sent.ChannelId, sent.Note)
        && (sent.Kind == MovementKind.Counted || Math.Abs(line.Movement.Copies) == sent.Copies);

    private static object Shown(MovementRecord line) => new
    {
        line.Id, Printing = line.EditionId, line.Movement.Day, line.Movement.Kind, line.Movement.Copies, Amount = line.Movement.Amount.ToString(CultureInfo.InvariantCulture),
        Channel = line.ChannelId, line.Note, line.WrittenAt,
    };

    private static Task SendAsync(HttpContext http, int status, object answer)
    {
        http.Response.StatusCode = status;
        http.Response.Headers.CacheControl = "no-store";
        return http.Response.WriteAsJsonAsync(answer, Json, http.RequestAborted);
    }
}
