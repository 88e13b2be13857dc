namespace PressRun.Web.Shared;

/// <summary>
/// Of questions asked one after another only the last is answered: an answer that was slower to come than a later question never takes the place
/// of the later answer. For one circuit's thread; not for several at once.
/// </summary>
public sealed class LastAsked : IDisposable
{
    private CancellationTokenSource? asking;

    /// <summary>Asks, and lets go whatever was asked before.</summary>
    /// <param name="ask">Given a token that ends when something else is asked, or when nobody looks any more.</param>
    /// <returns>The answer, where nothing was asked since.</returns>
    /// <exception cref="OperationCanceledException">Something was asked since. A component that lets it pass is not drawn again for it.</exception>
    public async Task<T> AnswerAsync<T>(Func<CancellationToken, Task<T>> ask)
    {
        ArgumentNullException.ThrowIfNull(ask);
        var mine = new CancellationTokenSource();
        var overtaken = mine.Token;
        var before = asking;
        asking = mine;
        await LetGoAsync(before);
        try
        {
            var answer = await ask(overtaken);
            overtaken.ThrowIfCancellationRequested();
            return answer;
        }
        catch (Exception exception) when (exception is not OperationCanceledException && overtaken.IsCancellationRequested)
        {
            throw new OperationCanceledException("Something was asked since.", exception, overtaken);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        asking?.Cancel();
        asking?.Dispose();
        asking = null;
    }

    private static async Task LetGoAsync(CancellationTokenSource? before)
    {
        if (before is not null)
        {
            await before.CancelAsync();
            before.Dispose();
        }
    }
}
