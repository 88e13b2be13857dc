using Microsoft.JSInterop;

namespace PressRun.Web.Shared;

/// <summary>What this browser still holds of fields that were typed in and not saved. One per circuit; asks the browser once.</summary>
public sealed class Drafts(IJSRuntime js) : IAsyncDisposable
{
    private Task<IJSObjectReference>? module;
    private Task<Dictionary<string, string>>? held;

    /// <summary>What was typed in the field of this key, or null.</summary>
    public async Task<string?> RecallAsync(string key)
    {
        held ??= ReadAsync();
        return (await held).GetValueOrDefault(key);
    }

    /// <summary>The server has it now: the browser need not keep it.</summary>
    public async Task ForgetAsync(string key)
    {
        if (held is not null)
        {
            (await held).Remove(key);
        }

        await (await ModuleAsync()).InvokeVoidAsync("forget", key);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        try
        {
            if (module is not null)
            {
                await (await module).DisposeAsync();
            }
        }
        catch (JSDisconnectedException)
        {
            // The browser went first, and took the module with it.
        }
    }

    private async Task<Dictionary<string, string>> ReadAsync() =>
        await (await ModuleAsync()).InvokeAsync<Dictionary<string, string>>("recall") ?? [];

    private Task<IJSObjectReference> ModuleAsync() => module ??= js.InvokeAsync<IJSObjectReference>("import", "./js/drafts.js").AsTask();
}
