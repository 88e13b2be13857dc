using System.Collections.Concurrent;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using PressRun.Data.Access;
using PressRun.Data.Copies;
using PressRun.Data.Presses;
using PressRun.Data.Running;
using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Web.Shelf;
using PressRun.Web.Start;

namespace PressRun.Web.Tests.Shelf;

/// <summary>Tests that go by one sample press, one after the other.</summary>
[CollectionDefinition]
public sealed class OnSample : ICollectionFixture<StoredShelf>;

/// <summary>The sample press on a private PostgreSQL, with the shelf's services as the app has them and an ear for what they ask the database.</summary>
public sealed class StoredShelf : IAsyncLifetime
{
    private readonly string folder = ShortFolder.New("shelf");
    private readonly Statements statements = new();
    private IHost host = null!;

    /// <summary>The sample press.</summary>
    public PressRecord Press { get; private set; } = null!;

    /// <summary>The shelf as the app asks it, with all that it remembers.</summary>
    public ShelfService Service => Of<ShelfService>();

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        var builder = Host.CreateEmptyApplicationBuilder(null);
        builder.Configuration.AddInMemoryCollection([new("PressRun:DataFolder", folder), new("PressRun:Sample", "true")]);
        builder.Logging.AddProvider(statements).AddFilter(Statements.Category, LogLevel.Information);
        builder.Services.AddPressRunData(builder.Configuration).AddShelf();
        host = builder.Build();
        await host.StartAsync(TestContext.Current.CancellationToken);
        using var program = Visiting.As(new Visitor.Program());
        Press = (await Of<PressStore>().ListAsync(TestContext.Current.CancellationToken)).Single();
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await host.StopAsync();
        host.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>A store or service of the app.</summary>
    public T Of<T>()
        where T : notnull => host.Services.GetRequiredService<T>();

    /// <summary>What a shelf answers that remembers nothing.</summary>
    public async Task<ShelfView> AfreshAsync(ShelfFilter filter)
    {
        var query = Of<ShelfQuery>();
        using var costs = new ShelfCosts(Of<PlanStore>());
        using var needed = ActivatorUtilities.CreateInstance<StillNeededService>(host.Services);
        var outlooks = new ShelfOutlooks(Of<OutlookStore>(), TimeProvider.System);
        using var judging = new ShelfJudging(query, costs, outlooks, needed);
        return await new ShelfService(query, judging, costs, outlooks).ShowAsync(Press.Id, filter);
    }

    /// <summary>What is asked of the database while something is done.</summary>
    public async Task<IReadOnlyList<string>> AskedAsync(Func<Task> work)
    {
        statements.Heard.Clear();
        await work();
        return [.. statements.Heard];
    }

    private sealed class Statements : ILoggerProvider, ILogger
    {
        public const string Category = "Microsoft.EntityFrameworkCore.Database.Command";

        public ConcurrentQueue<string> Heard { get; } = [];

        public ILogger CreateLogger(string categoryName) => this;

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            if (eventId.Name == Category + ".CommandExecuted")
            {
                Heard.Enqueue(formatter(state, exception));
            }
        }

        public void Dispose()
        {
        }
    }
}
