using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace PressRun.Web.Charts;

/// <summary>A chart over quantities that one can point at, with a marker that can be dragged. The script adds only the pointing.</summary>
public abstract class PointedChart : ComponentBase, IAsyncDisposable
{
    private IJSObjectReference? attached;
    private DotNetObjectReference<PointedChart>? self;
    private bool left;
    private bool untold = true;

    [Inject]
    private IJSRuntime Js { get; set; } = default!;

    /// <summary>Told while the marker is dragged.</summary>
    [Parameter]
    public EventCallback<int> Look { get; set; }

    /// <summary>Told where the marker was put down; without it the marker stays where it is.</summary>
    [Parameter]
    public EventCallback<int> Move { get; set; }

    /// <summary>The figure that the script listens on.</summary>
    protected ElementReference Root { get; set; }

    /// <summary>First and last quantity of the chart.</summary>
    protected abstract (int From, int To) Range { get; }

    /// <summary>
    /// What the script says where one points, a row a quantity: the quantity, the height of its mark and the words for it. The script is told and keeps it; were it an
    /// attribute, the server would keep a hundred thousand letters for each page that is open.
    /// </summary>
    protected abstract string Readings();

    /// <summary>Has the script told anew after this drawing: it is one of other figures.</summary>
    protected void ReadAnew() => untold = true;

    /// <summary>Called by the script while the marker is dragged.</summary>
    [JSInvokable]
    public Task LookAt(int quantity) => InvokeAsync(() => Look.InvokeAsync(Math.Clamp(quantity, Range.From, Range.To)));

    /// <summary>Called by the script where the marker is put down.</summary>
    [JSInvokable]
    public Task MoveTo(int quantity) => InvokeAsync(() => Move.InvokeAsync(Math.Clamp(quantity, Range.From, Range.To)));

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        left = true;
        try
        {
            if (attached is not null)
            {
                await attached.InvokeVoidAsync("stop");
                await attached.DisposeAsync();
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
        try
        {
            if (firstRender && Move.HasDelegate)
            {
                await AttachAsync();
            }

            // What is drawn while the script is still fetched is told afterwards.
            if (untold && attached is not null && !left)
            {
                untold = false;
                await attached.InvokeVoidAsync("know", Readings());
            }
        }
        catch (JSDisconnectedException)
        {
            // The browser went before the page was ready.
        }
    }

    private async Task AttachAsync()
    {
        await using var module = await Js.InvokeAsync<IJSObjectReference>("import", "./js/staircase.js");
        if (!left)
        {
            self = DotNetObjectReference.Create(this);
            untold = false;
            attached = await module.InvokeAsync<IJSObjectReference>("attach", Root, self, Readings());
        }
    }
}
