using System.Text.Json;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace PressRun.Web.Libraries.Grid;

/// <content>The table's script in the browser: attached to it, told of changes, and handed what is not stored yet.</content>
public sealed partial class EditGrid : IAsyncDisposable
{
    // The browser's script writes names in its own manner, with a small letter first.
    private static readonly JsonSerializerOptions Kept = new() { PropertyNameCaseInsensitive = true };

    private DotNetObjectReference<EditGrid>? self;
    private IJSObjectReference? module;
    private IJSObjectReference? attached;
    private string? kept;

    [Inject]
    private IJSRuntime Js { get; set; } = default!;

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        try
        {
            if (attached is not null)
            {
                await attached.InvokeVoidAsync("detach");
                await attached.DisposeAsync();
            }

            if (module is not null)
            {
                await module.DisposeAsync();
            }
        }
        catch (JSDisconnectedException)
        {
            // The browser went first, and took its listeners with it.
        }

        self?.Dispose();
    }

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
        {
            self = DotNetObjectReference.Create(this);
            module = await Js.InvokeAsync<IJSObjectReference>("import", "./js/editgrid.js");
            attached = await module.InvokeAsync<IJSObjectReference>("attach", root, self, DraftKey);
            await RecallAsync();
        }
        else if (attached is not null)
        {
            await attached.InvokeVoidAsync("settle");
        }
    }

    // What is not stored stays in the browser, so that neither a lost line nor a new start of the server loses it.
    private async Task KeepAsync()
    {
        var unsaved = Whole && State.Unsaved.Count > 0 ? Document.Rows : [.. Document.Rows.Where(row => State.Unsaved.Contains(row.Key) && !row.IsBlank)];
        var text = unsaved.Count == 0 ? "" : JsonSerializer.Serialize(new GridDraft(Whole, unsaved));
        if (module is not null && text != (kept ?? ""))
        {
            kept = text;
            await module.InvokeVoidAsync("keep", DraftKey, text);
        }
    }

    private static T? Parse<T>(string? text)
        where T : class
    {
        try
        {
            return text is null ? null : JsonSerializer.Deserialize<T>(text, Kept);
        }
        catch (JsonException)
        {
            // Written by another version of the page: it is no draft that can be shown here.
            return null;
        }
    }
}
