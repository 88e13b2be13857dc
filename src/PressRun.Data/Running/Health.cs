using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace PressRun.Data.Running;

/// <summary>What a supervisor asks.</summary>
public static class Health
{
    private const int SecondsToAnswer = 2;

    private const string Lives = "/livez";
    private const string IsReady = "/readyz";

    private static readonly string[] Read = [HttpMethods.Get, HttpMethods.Head];

    /// <summary>True where a supervisor asks, with or without the path that the app is served under.</summary>
    public static bool IsAsked(PathString path, PathString pathBase) =>
        path.Value is Lives or IsReady || (path.StartsWithSegments(pathBase, out var inside) && inside.Value is Lives or IsReady);

    /// <summary>Maps <c>/livez</c>, which answers while the process lives, and <c>/readyz</c>, which answers 200 while the database does and has room to write, and 503
    /// otherwise.</summary>
    /// <returns>Both, to say who may ask.</returns>
    public static IEndpointConventionBuilder MapPressRunHealth(this IEndpointRouteBuilder endpoints)
    {
        ArgumentNullException.ThrowIfNull(endpoints);
        var database = endpoints.ServiceProvider.GetRequiredService<Database>();
        var both = endpoints.MapGroup("").ExcludeFromDescription();
        both.MapMethods(Lives, Read, () => "alive");
        both.MapMethods(IsReady, Read, (CancellationToken cancel) => AnswerAsync(database, cancel));
        return both;
    }

    private static async Task<IResult> AnswerAsync(Database database, CancellationToken cancel)
    {
        if (!database.Ready)
        {
            return Results.Text("starting", statusCode: StatusCodes.Status503ServiceUnavailable);
        }

        try
        {
            using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancel);
            patience.CancelAfter(TimeSpan.FromSeconds(SecondsToAnswer));
            await using var command = database.Source.CreateCommand("SELECT 1");
            await command.ExecuteScalarAsync(patience.Token);
            return database.Reach.IsFull ? Results.Text("the disk of the database is full", statusCode: StatusCodes.Status503ServiceUnavailable) : Results.Text("ready");
        }
        catch (Exception exception) when (exception is NpgsqlException or OperationCanceledException)
        {
            return Results.Text("the database does not answer", statusCode: StatusCodes.Status503ServiceUnavailable);
        }
    }
}
