using Microsoft.AspNetCore.Components.Web;
using PressRun.Data.Running;

namespace PressRun.Web.Layout;

/// <summary>Tells the log what a page could not do, except that the database is away: that is told once for all pages.</summary>
public sealed partial class QuietBoundary(ILogger<QuietBoundary> logger) : IErrorBoundaryLogger
{
    /// <inheritdoc/>
    public ValueTask LogErrorAsync(Exception exception)
    {
        if (!DatabaseAway.IsWhy(exception))
        {
            LogFault(logger, exception);
        }

        return ValueTask.CompletedTask;
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "A page could not be shown")]
    private static partial void LogFault(ILogger logger, Exception fault);
}
