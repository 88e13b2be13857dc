using System.Diagnostics.Tracing;
using Microsoft.Diagnostics.NETCore.Client;
using Microsoft.Diagnostics.Tracing;

namespace PressRun.Browser.Programs.Load;

/// <summary>What a process of .NET still holds after all garbage is collected, asked from outside.</summary>
internal static class Heap
{
    // Of the runtime's own event source: collections as they happen, and one that is begun for whoever listens.
    private const long Collections = 0x1;
    private const long CollectNow = 0x800000;

    /// <summary>Has a process collect twice, for what waits for a finalizer, and answers its managed heap in bytes.</summary>
    public static async Task<long> LeftAsync(int process)
    {
        await CollectAsync(process);
        return await CollectAsync(process);
    }

    private static async Task<long> CollectAsync(int process)
    {
        using var session = new DiagnosticsClient(process).StartEventPipeSession(
            [new EventPipeProvider("Microsoft-Windows-DotNETRuntime", EventLevel.Informational, Collections | CollectNow)], requestRundown: false);
        using var source = new EventPipeEventSource(session.EventStream);
        var left = new TaskCompletionSource<long>(TaskCreationOptions.RunContinuationsAsynchronously);
        source.Clr.GCHeapStats += stats => left.TrySetResult(stats.TotalHeapSize);
        var listening = Task.Run(source.Process);
        var bytes = await left.Task;
        await session.StopAsync(CancellationToken.None);
        await listening;
        return bytes;
    }
}
