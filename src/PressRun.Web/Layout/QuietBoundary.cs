using System.Collections.Concurrent;
using Microsoft.AspNetCore.Components.Web;
using PressRun.Data.Running;

namespace PressRun.Web.Layout;

/// <summary>Tells the log what a page could not do, except that the database is away: that is told once for all pages. One fault is told with its trace once a minute and in a
/// line otherwise, so that nobody fills the log by opening a broken page again and again.</summary>
public sealed partial class QuietBoundary(ILogger<QuietBoundary> logger, TimeProvider time) : IErrorBoundaryLogger
{
    private static readonly TimeSpan Between = TimeSpan.FromMinutes(1);

    // By kind and by the place in the program that threw it: there are only so many.
    private readonly ConcurrentDictionary<(Type Kind, string? Place), DateTimeOffset> told = new();

    /// <inheritdoc/>
    public ValueTask LogErrorAsync(Exception exception)
    {
        ArgumentNullException.ThrowIfNull(exception);
        if (DatabaseAway.IsWhy(exception))
        {
            return ValueTask.CompletedTask;
        }

        var now = time.GetUtcNow();
        var (fault, isNew) = ((exception.GetType(), exception.TargetSite?.ToString()), true);
        told.AddOrUpdate(fault, now, (_, last) => (isNew = now - last >= Between) ? now : last);
        if (isNew)
        {
            LogFault(logger, exception);
        }
        else
        {
            LogAgain(logger, exception.GetType().Name);
        }

        return ValueTask.CompletedTask;
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "A page could not be shown")]
    private static partial void LogFault(ILogger logger, Exception fault);

    [LoggerMessage(Level = LogLevel.Error, Message = "A page could not be shown, for the reason told a moment ago: {Kind}")]
    private static partial void LogAgain(ILogger logger, string kind);
}
