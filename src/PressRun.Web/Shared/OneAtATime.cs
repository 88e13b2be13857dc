namespace PressRun.Web.Shared;

/// <summary>Lets the saves of one page follow each other, each on what the one before stored: who tabs quickly through fields is no second
/// person. What waits is done also where the page has gone meanwhile.</summary>
public sealed class OneAtATime
{
    private Task last = Task.CompletedTask;

    /// <summary>Does the work when all earlier work is done.</summary>
    public async Task<T> DoAsync<T>(Func<Task<T>> work)
    {
        var done = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var before = Interlocked.Exchange(ref last, done.Task);
        await before;
        try
        {
            return await work();
        }
        finally
        {
            done.SetResult();
        }
    }
}
