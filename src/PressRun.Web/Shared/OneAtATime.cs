namespace PressRun.Web.Shared;

/// <summary>Lets the saves of one page follow each other, each on what the one before stored: who tabs quickly through fields is no second
/// person. It lives and goes with the page.</summary>
public sealed class OneAtATime : IDisposable
{
    private readonly SemaphoreSlim gate = new(1, 1);

    /// <summary>Does the work when all earlier work is done.</summary>
    public async Task<T> DoAsync<T>(Func<Task<T>> work)
    {
        await gate.WaitAsync();
        try
        {
            return await work();
        }
        finally
        {
            gate.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => gate.Dispose();
}
