using Microsoft.AspNetCore.SignalR;
using PressRun.Data.Access;

namespace PressRun.Web.People;

/// <summary>Counts the lines by which open pages reach the server, whatever carries them, and lets nobody have more than <see cref="LiveSessions.MostOfOne"/>: each holds a page in
/// memory, and a reader may open them too. In single-user mode nobody is counted: whoever reaches the server may do everything there anyway.</summary>
internal sealed class LinesOfPeople(LiveSessions live) : IHubFilter
{
    private const string Place = "pressrun:line";

    public async Task OnConnectedAsync(HubLifetimeContext context, Func<HubLifetimeContext, Task> next)
    {
        if (WhoClaims.Person(context.Context.User) is { } person)
        {
            if (live.Connect(person, context.Context.Abort) is not { } line)
            {
                // It was asked for together with others, before they were counted.
                context.Context.Abort();
                return;
            }

            context.Context.Items[Place] = line;
        }

        try
        {
            await next(context);
        }
        catch
        {
            // Of one that could not be opened nobody hears that it closes.
            Free(context.Context);
            throw;
        }
    }

    public Task OnDisconnectedAsync(HubLifetimeContext context, Exception? exception, Func<HubLifetimeContext, Exception?, Task> next)
    {
        Free(context.Context);
        return next(context, exception);
    }

    private static void Free(HubCallerContext line) => (line.Items[Place] as IDisposable)?.Dispose();
}

/// <summary>Says to a page that asks for a line that its reader has enough of them.</summary>
internal static class TooManyLines
{
    /// <summary>Refuses with 429 (RFC 6585), which reconnect.js puts into words.</summary>
    public static void UseNotTooManyLines(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        if (!context.Request.Path.StartsWithSegments("/_blazor/negotiate")
            || WhoClaims.Person(context.User) is not { } person || context.RequestServices.GetRequiredService<LiveSessions>().HasRoom(person))
        {
            return next(context);
        }

        context.Response.StatusCode = StatusCodes.Status429TooManyRequests;
        return Task.CompletedTask;
    });
}
