using System.Collections.Concurrent;
using System.Diagnostics;
using System.Runtime.InteropServices;
using Microsoft.Extensions.Logging;

namespace PressRun.Data.PrivatePostgres;

/// <summary>
/// Keeps one server process running: a thread of its own starts it, waits for its exit and starts it again where nobody asked it to stop.
/// The thread must be one that lives as long as the server, because the kernel's death signal follows the thread and not the process.
/// </summary>
internal sealed partial class PostgresProcess(Func<ProcessStartInfo> command, ILogger logger) : IDisposable
{
    private const int Interrupt = 2;
    private const int Quit = 3;
    private const int LinesKept = 20;
    private static readonly TimeSpan LongestStop = TimeSpan.FromSeconds(30);

    private readonly ConcurrentQueue<string> lastLines = new();
    private readonly ManualResetEventSlim stopping = new();
    private Thread? keeper;
    private Process? process;
    private int failures;

    /// <summary>How often it ended by itself since it was last seen to answer.</summary>
    public int Failures => Volatile.Read(ref failures);

    /// <summary>What it last wrote.</summary>
    public string LastLines => string.Join(Environment.NewLine, lastLines);

    /// <summary>Starts the thread.</summary>
    public void Start()
    {
        keeper = new Thread(Run) { IsBackground = true, Name = "PostgreSQL" };
        keeper.Start();
    }

    /// <summary>Tells that the server answers.</summary>
    public void Answers() => Volatile.Write(ref failures, 0);

    /// <summary>Asks the server to stop, and waits: SIGINT ends sessions and writes everything down; SIGQUIT, where that takes too long, leaves
    /// it to the next start to recover.</summary>
    public void Dispose()
    {
        stopping.Set();
        Signal(Interrupt);
        if (keeper?.Join(LongestStop) == false)
        {
            Signal(Quit);
            keeper.Join(LongestStop);
        }
    }

    private void Run()
    {
        while (!stopping.IsSet)
        {
            try
            {
                RunOnce();
            }
            catch (System.ComponentModel.Win32Exception exception)
            {
                Keep(exception.Message);
            }

            if (!stopping.IsSet)
            {
                var count = Interlocked.Increment(ref failures);
                LogEnded(logger, count, LastWords(lastLines));

                // After a kill its children need a moment to leave.
                stopping.Wait(TimeSpan.FromMilliseconds(Math.Min(100 << Math.Min(count, 6), 5000)));
            }
        }
    }

    private void RunOnce()
    {
        using var started = Process.Start(command());
        if (started is null)
        {
            return;
        }

        Volatile.Write(ref process, started);
        started.StandardInput.Close();
        started.OutputDataReceived += (_, line) => Keep(line.Data);
        started.ErrorDataReceived += (_, line) => Keep(line.Data);
        started.BeginOutputReadLine();
        started.BeginErrorReadLine();
        if (stopping.IsSet)
        {
            Signal(Interrupt);
        }

        started.WaitForExit();
        Volatile.Write(ref process, null);
    }

    private void Keep(string? line)
    {
        if (string.IsNullOrWhiteSpace(line))
        {
            return;
        }

        LogLine(logger, line);
        lastLines.Enqueue(line);
        while (lastLines.Count > LinesKept)
        {
            lastLines.TryDequeue(out _);
        }
    }

    /// <summary>Why a server ended, as far as it said: the last line that it ended by, or else its last.</summary>
    internal static string LastWords(IReadOnlyCollection<string> lines) =>
        lines.LastOrDefault(line => line.Contains("PANIC:", StringComparison.Ordinal)) ?? lines.LastOrDefault(line => line.Contains("FATAL:", StringComparison.Ordinal)) ?? lines.LastOrDefault("nothing");

    private void Signal(int signal)
    {
        if (Volatile.Read(ref process) is { } running)
        {
            _ = Kill(running.Id, signal);
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The private PostgreSQL ended by itself (time {Count}) and is started again. Its last words: {Words}")]
    private static partial void LogEnded(ILogger logger, int count, string words);

    [LoggerMessage(Level = LogLevel.Debug, Message = "PostgreSQL: {Line}")]
    private static partial void LogLine(ILogger logger, string line);

    [LibraryImport("libc", EntryPoint = "kill")]
    private static partial int Kill(int process, int signal);
}
