using Microsoft.AspNetCore.SignalR;

namespace PressRun.Web.People;

/// <summary>Cuts a line that sends what no page of ours would. Only whoever made it by hand is disturbed; without this, the framework writes a trace of the server's code into the
/// log for each, and whoever may sign in could fill it.</summary>
internal sealed partial class HandmadeFrames(ILogger<HandmadeFrames> logger) : IHubFilter
{
    // Those that tell where a page is.
    private static readonly HashSet<string> Places = ["StartCircuit", "ResumeCircuit", "OnLocationChanged", "OnLocationChanging"];

    public async ValueTask<object?> InvokeMethodAsync(HubInvocationContext context, Func<HubInvocationContext, ValueTask<object?>> next)
    {
        // No address that was asked for by a request can hold it: the web server refuses it.
        if (Places.Contains(context.HubMethodName) && context.HubMethodArguments.OfType<string>().Any(text => text.Contains("%00", StringComparison.Ordinal)))
        {
            return Cut(context, "address");
        }

        try
        {
            return await next(context);
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            return Cut(context, fault.GetType().Name);
        }
    }

    private object? Cut(HubInvocationContext context, string why)
    {
        LogCut(logger, context.HubMethodName, why);
        context.Context.Abort();
        return null;
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "A line was cut that sent what no page sends: {Method}, {Why}")]
    private static partial void LogCut(ILogger logger, string method, string why);
}
