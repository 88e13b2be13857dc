namespace PressRun.Browser.Tests.Running;

/// <summary>An app of a class's own, where one of its journeys kills it.</summary>
public sealed class OwnApp : IAsyncLifetime
{
    /// <summary>The app.</summary>
    public AppProcess App { get; private set; } = null!;

    /// <inheritdoc/>
    public async ValueTask InitializeAsync() => App = await AppProcess.StartAsync(sample: true);

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => App.DisposeAsync();
}
