using System.Diagnostics;

namespace PressRun.Browser.Tests.Running;

/// <summary>Waits for what becomes true a little later; how long it took is nobody's business here.</summary>
internal static class Eventually
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(100);

    /// <summary>Waits until it holds.</summary>
    public static async Task HoldsAsync(Func<Task<bool>> holds, string what)
    {
        var began = Stopwatch.StartNew();
        while (!await holds())
        {
            Assert.True(began.Elapsed < Patience, $"Waited in vain until {what}.");
            await Task.Delay(Pause);
        }
    }
}
