using System.Text.Json;
using Microsoft.JSInterop;
using PressRun.Data.Presses;

namespace PressRun.Web.Shared;

/// <summary>How a draft came about.</summary>
public enum DraftOrigin
{
    /// <summary>On another page or visit, or on another device: its person decides anew.</summary>
    Earlier,

    /// <summary>On this page before it answered, and its person has left the field or pressed Enter: it is to be saved.</summary>
    LeftBeforeLive,

    /// <summary>On this page before it answered, and its person is still in the field.</summary>
    BeingTyped,
}

/// <summary>
/// What was typed in fields and is not saved. The browser keeps it at every key stroke; when the typing pauses the server keeps it too. The
/// browser's is the later one, so it is asked first. One per circuit; asks the browser once and the server once for each subject.
/// </summary>
public sealed class Drafts(IJSRuntime js, IServerDrafts server) : IAsyncDisposable
{
    private readonly Dictionary<(string Kind, string Id), Task<IReadOnlyDictionary<string, string>>> kept = [];
    private Task<IJSObjectReference>? module;
    private Task<Dictionary<string, string>>? held;
    private DotNetObjectReference<Drafts>? self;

    /// <summary>The press whose fields are edited; without one only the browser keeps drafts.</summary>
    public PressId? Press { get; set; }

    /// <summary>Lets the browser tell of pauses in the typing.</summary>
    public async Task ListenAsync()
    {
        self ??= DotNetObjectReference.Create(this);
        await (await ModuleAsync()).InvokeVoidAsync("listen", self);
    }

    /// <summary>Called by the browser when the typing in a field pauses.</summary>
    [JSInvokable]
    public async Task Paused(string key, string text)
    {
        if (Press is { } press && DraftKey.Read(key) is { } field)
        {
            await server.KeepAsync(press, field, text);
        }
    }

    /// <summary>What was typed in the field of this key and not saved, or null.</summary>
    public async Task<string?> RecallAsync(string key)
    {
        held ??= ReadAsync();
        if ((await held).GetValueOrDefault(key) is { } here)
        {
            return here;
        }

        if (Press is not { } press || DraftKey.Read(key) is not { } field)
        {
            return null;
        }

        if (!kept.TryGetValue((field.Kind, field.SubjectId), out var ofSubject))
        {
            kept[(field.Kind, field.SubjectId)] = ofSubject = server.OfSubjectAsync(press, field);
        }

        return (await ofSubject).GetValueOrDefault(field.Field);
    }

    /// <summary>How what <see cref="RecallAsync"/> answered for a key came about. It is told once: a page that asks again hears of an earlier draft.</summary>
    public async Task<DraftOrigin> OriginAsync(string key) => await (await ModuleAsync()).InvokeAsync<string>("origin", key) switch
    {
        "left" => DraftOrigin.LeftBeforeLive,
        "typing" => DraftOrigin.BeingTyped,
        _ => DraftOrigin.Earlier,
    };

    /// <summary>Puts the cursor back into the field of a key, in which one was typing when the page was drawn anew; leaving it then saves.</summary>
    public async Task GoOnAsync(string key) => await (await ModuleAsync()).InvokeVoidAsync("goOn", key);

    /// <summary>Keeps what was done to a list of fields by a button, as the browser keeps what is typed into it.</summary>
    public async Task KeepAsync(string key, string text)
    {
        if (held is not null)
        {
            (await held)[key] = text;
        }

        await (await ModuleAsync()).InvokeVoidAsync("keep", key, text);
        await Paused(key, text);
    }

    /// <summary>It is saved, or thrown away: nobody need keep it.</summary>
    public async Task ForgetAsync(string key)
    {
        if (held is not null)
        {
            (await held).Remove(key);
        }

        await (await ModuleAsync()).InvokeVoidAsync("forget", key);
        if (Press is { } press && DraftKey.Read(key) is { } field)
        {
            kept.Remove((field.Kind, field.SubjectId));
            await server.DropAsync(press, field);
        }
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

        self?.Dispose();
    }

    private async Task<Dictionary<string, string>> ReadAsync()
    {
        try
        {
            return await (await ModuleAsync()).InvokeAsync<Dictionary<string, string>>("recall") ?? [];
        }
        catch (JsonException)
        {
            // What cannot be read is no draft that could be shown; the page goes on without.
            return [];
        }
    }

    private Task<IJSObjectReference> ModuleAsync() => module ??= js.InvokeAsync<IJSObjectReference>("import", "./js/drafts.js").AsTask();
}
