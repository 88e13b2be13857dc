using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace PressRun.Web.Tests.Support;

/// <summary>Hears what is written to the log.</summary>
public sealed class HeardLines : ILoggerProvider, ILogger
{
    private readonly ConcurrentQueue<string> lines = new();

    /// <summary>What was written so far.</summary>
    public IReadOnlyCollection<string> Lines => lines;

    /// <inheritdoc/>
    public ILogger CreateLogger(string categoryName) => this;

    /// <inheritdoc/>
    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    /// <inheritdoc/>
    public bool IsEnabled(LogLevel logLevel) => true;

    /// <inheritdoc/>
    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
        lines.Enqueue(formatter(state, exception));

    /// <inheritdoc/>
    public void Dispose() => lines.Clear();
}
