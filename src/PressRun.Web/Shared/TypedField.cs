using Microsoft.AspNetCore.Components;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Shared;

/// <summary>A text that is changed where it stands: what was typed and is not saved stays in it, through an error, a lost connection and a restart.</summary>
public abstract class TypedField : ComponentBase
{
    /// <summary>What it is called.</summary>
    [Parameter, EditorRequired]
    public string Label { get; set; } = "";

    /// <summary>What the server holds, as text.</summary>
    [Parameter, EditorRequired]
    public string Value { get; set; } = "";

    /// <summary>Names the field in the browser's store; null where nothing is kept.</summary>
    [Parameter]
    public string? DraftKey { get; set; }

    /// <summary>Saves what was typed. Answers null when it is saved, otherwise a sentence that says what would be right.</summary>
    [Parameter, EditorRequired]
    public Func<string, Task<string?>> Save { get; set; } = default!;

    /// <summary>Told of every key stroke, where a page shows consequences while one types.</summary>
    [Parameter]
    public EventCallback<string> Typing { get; set; }

    /// <summary>The press that is open; null where there is none.</summary>
    [CascadingParameter]
    protected PressView? Press { get; set; }

    [Inject]
    private Drafts Drafts { get; set; } = default!;

    /// <summary>What was typed and is not saved; null where <see cref="Value"/> stands in the field.</summary>
    protected string? Unsaved { get; set; }

    /// <summary>What stands in the field.</summary>
    protected string Text => Unsaved ?? Value;

    /// <summary>More attributes of the field: without a listener no key stroke travels to the server.</summary>
    protected Dictionary<string, object>? Listening => Typing.HasDelegate
        ? new() { ["oninput"] = EventCallback.Factory.Create<ChangeEventArgs>(this, change => Typing.InvokeAsync(change.Value?.ToString() ?? "")) }
        : null;

    /// <summary>Takes what was typed, as on leaving the field.</summary>
    /// <param name="text">The text.</param>
    protected abstract Task LeaveAsync(string? text);

    /// <summary>Shows a text that was typed on another page or visit, and says so.</summary>
    /// <param name="draft">The text.</param>
    protected abstract void Recall(string draft);

    /// <summary>Forgets what the browser keeps of the field.</summary>
    protected async Task ForgetAsync()
    {
        Unsaved = null;
        if (DraftKey is not null)
        {
            await Drafts.ForgetAsync(DraftKey);
        }
    }

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (!firstRender || DraftKey is null || await Drafts.RecallAsync(DraftKey) is not { } draft || draft == Value || Unsaved is not null)
        {
            return;
        }

        switch (await Drafts.OriginAsync(DraftKey))
        {
            case DraftOrigin.LeftBeforeLive:
                await LeaveAsync(draft);
                break;
            case DraftOrigin.BeingTyped:
                Unsaved = draft;
                StateHasChanged();
                await Typing.InvokeAsync(draft);
                await Drafts.GoOnAsync(DraftKey);
                break;
            default:
                Recall(draft);
                break;
        }

        StateHasChanged();
    }
}
