using System.Security.Cryptography;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.Caching.Memory;

namespace PressRun.Web.Shared;

/// <summary>Where views lie for a few seconds between the page as first sent and its circuit, each under a random name that only that page
/// carries. A circuit on another node finds nothing and loads for itself.</summary>
public sealed class HandoverTable : IDisposable
{
    private const int MostViews = 500;
    private static readonly TimeSpan Lies = TimeSpan.FromSeconds(15);

    private readonly MemoryCache views = new(new MemoryCacheOptions { SizeLimit = MostViews });

    /// <summary>Lays a view down; answers its name.</summary>
    public string Lay(object view)
    {
        var name = Convert.ToHexString(RandomNumberGenerator.GetBytes(16));
        views.Set(name, view, new MemoryCacheEntryOptions { Size = 1, AbsoluteExpirationRelativeToNow = Lies });
        return name;
    }

    /// <summary>Takes a view up; null where it is not there (any more).</summary>
    public object? Take(string name)
    {
        var view = views.Get(name);
        views.Remove(name);
        return view;
    }

    /// <inheritdoc/>
    public void Dispose() => views.Dispose();
}

/// <summary>Hands what a page loaded for its first sending over to its circuit, so that the page neither loads twice nor goes blank between.</summary>
public sealed class Handover(PersistentComponentState state, HandoverTable table) : IDisposable
{
    private readonly List<PersistingComponentStateSubscription> subscriptions = [];

    /// <summary>What was handed over under this name, at once; else what is loaded.</summary>
    /// <param name="what">The same for the page as sent and for its circuit, such as <c>edition/slug/2</c>.</param>
    /// <param name="load">Loads it.</param>
    public async Task<T?> LoadAsync<T>(string what, Func<Task<T?>> load)
        where T : class
    {
        if (state.TryTakeFromJson<string>(what, out var name) && name is not null && table.Take(name) is T handed)
        {
            return handed;
        }

        var loaded = await load();
        if (loaded is not null)
        {
            subscriptions.Add(state.RegisterOnPersisting(
                () =>
                {
                    state.PersistAsJson(what, table.Lay(loaded));
                    return Task.CompletedTask;
                },
                RenderMode.InteractiveServer));
        }

        return loaded;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var subscription in subscriptions)
        {
            subscription.Dispose();
        }
    }
}
