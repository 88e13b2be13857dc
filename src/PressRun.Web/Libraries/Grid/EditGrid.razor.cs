using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using PressRun.Data.Import.Tables;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Libraries.Grid;

/// <summary>An editable table. The page owns the document and what its text means.</summary>
public sealed partial class EditGrid
{
    // A table of fewer columns is no wider than they need.
    private const int WideFrom = 6;

    // So many do not fit beside each other on a tablet.
    private const int ManyFrom = 10;

    private readonly string id = "g" + Guid.NewGuid().ToString("N")[..8];
    private ElementReference root;
    private string? said;

    [Inject]
    private Drafts Drafts { get; set; } = default!;

    /// <summary>The text and its edits.</summary>
    [Parameter, EditorRequired]
    public GridDocument Document { get; set; } = default!;

    /// <summary>The columns of the text; those that are only kept are not shown.</summary>
    [Parameter, EditorRequired]
    public IReadOnlyList<Column> Columns { get; set; } = [];

    /// <summary>What was found out about the text.</summary>
    [Parameter]
    public GridState State { get; set; } = GridState.Clean;

    /// <summary>The viewer's decimal mark and units.</summary>
    [Parameter, EditorRequired]
    public CellManners Manners { get; set; } = default!;

    /// <summary>Names the table.</summary>
    [Parameter, EditorRequired]
    public string Label { get; set; } = "";

    /// <summary>What adds a row: <c>Add a paper</c>.</summary>
    [Parameter, EditorRequired]
    public string AddLabel { get; set; } = "";

    /// <summary>Names the table in the browser's store.</summary>
    [Parameter, EditorRequired]
    public string DraftKey { get; set; } = "";

    /// <summary>True where the table is stored whole, so that one wrong row holds up all.</summary>
    [Parameter]
    public bool Whole { get; set; }

    /// <summary>True where nothing can be changed.</summary>
    [Parameter]
    public bool ReadOnly { get; set; }

    /// <summary>True where a row stands on two lines on a phone, its name above the rest, each cell under its head.</summary>
    [Parameter]
    public bool Folds { get; set; }

    /// <summary>Worked out beside the cells.</summary>
    [Parameter]
    public IReadOnlyList<GridExtra> Extras { get; set; } = [];

    /// <summary>What can be done with the chosen rows.</summary>
    [Parameter]
    public IReadOnlyList<(string Word, Func<string[], Task> Do)> RowActions { get; set; } = [];

    /// <summary>More to do with the table.</summary>
    [Parameter]
    public RenderFragment? Tools { get; set; }

    /// <summary>Asked after each edit: looks at the text, stores what is right and sets <see cref="State"/>.</summary>
    [Parameter, EditorRequired]
    public Func<Task> Changed { get; set; } = default!;

    [CascadingParameter]
    private PressView? Press { get; set; }

    private bool IsReadOnly => ReadOnly || Press is { MayEdit: false };

    private IReadOnlyList<int> Shown { get; set; } = [];

    private string UnderOf(Column column) => CellWords.Unit(column.Kind, Manners) is { } unit ? $"{CellWords.Head(column)} {unit}" : CellWords.Head(column);

    private string Says
    {
        get
        {
            var wrong = State.Problems.Count;
            var unsaved = State.Unsaved.Count;
            return wrong switch
            {
                0 when unsaved > 0 => said ?? Say(unsaved, $"One row is not saved yet.", $"{unsaved} rows are not saved yet."),
                0 => said ?? Say($"All is saved."),
                _ when Whole => Say(wrong, $"Not saved: one cell waits to be mended.", $"Not saved: {wrong} cells wait to be mended."),
                _ => Say(wrong, $"One cell waits to be mended; the other rows are saved.", $"{wrong} cells wait to be mended; the other rows are saved."),
            };
        }
    }

    /// <summary>Takes a typed cell.</summary>
    [JSInvokable]
    public Task Commit(string row, int column, string text) => IsReadOnly || !Shown.Contains(column)
        ? Task.CompletedTask
        : ApplyAsync(() => Document.Set(row, column, Meant(column, text.Trim()), Say($"{CellWords.Head(Columns[column])} of {NameOf(row)}")));

    /// <summary>Empties a block of cells.</summary>
    [JSInvokable]
    public Task ClearCells(string[] rows, int firstShown, int lastShown) => IsReadOnly
        ? Task.CompletedTask
        : ApplyAsync(() => Document.Clear(rows, [.. Shown.Skip(firstShown).Take(lastShown - firstShown + 1)], Say($"cleared cells")));

    /// <summary>Takes rows out.</summary>
    [JSInvokable]
    public Task TakeOut(string[] rows) => IsReadOnly
        ? Task.CompletedTask
        : ApplyAsync(() => Document.Remove(rows, rows is [var only] ? Say($"{NameOf(only)} taken out") : Say($"{rows.Length} rows taken out")));

    /// <summary>Does one of <see cref="RowActions"/>.</summary>
    [JSInvokable]
    public async Task Act(int action, string[] rows)
    {
        if (IsReadOnly || action < 0 || action >= RowActions.Count)
        {
            return;
        }

        await RowActions[action].Do([.. rows.Where(key => Document.Rows.Any(row => row.Key == key && !row.IsBlank))]);
        said = null;
        StateHasChanged();
        await KeepAsync();
    }

    /// <summary>Ctrl+Z.</summary>
    [JSInvokable]
    public Task UndoFromKey() => UndoAsync();

    /// <summary>Ctrl+Y.</summary>
    [JSInvokable]
    public Task RedoFromKey() => RedoAsync();

    /// <inheritdoc/>
    protected override void OnParametersSet() =>
        Shown = [.. Enumerable.Range(0, Columns.Count).Where(column => Columns[column].Role == ColumnRole.Shown)];

    private async Task UndoAsync()
    {
        if (Document.Undoable is { } what && !IsReadOnly)
        {
            await ApplyAsync(Document.Undo, Say($"Taken back: {what}."));
        }
    }

    private async Task RedoAsync()
    {
        if (Document.Redoable is { } what && !IsReadOnly)
        {
            await ApplyAsync(Document.Redo, Say($"Done again: {what}."));
        }
    }

    private async Task ApplyAsync(Func<bool> edit, string? after = null)
    {
        if (!edit())
        {
            return;
        }

        await Changed();
        said = after;
        StateHasChanged();
        await KeepAsync();
    }

    private async Task RecallAsync()
    {
        var draft = Parse<GridDraft>(await Drafts.RecallAsync(DraftKey));
        var typing = Parse<GridTyping>(await Drafts.RecallAsync(DraftKey + ".typing"));
        typing = typing is { Text: not null } && Shown.Contains(typing.Column) ? typing with { Text = Meant(typing.Column, typing.Text) } : typing;
        // Who may only read any more keeps what they typed as an editor where it is.
        if ((draft is null && typing is null) || IsReadOnly)
        {
            return;
        }

        await ApplyAsync(
            () => Document.Edit(Say($"what was typed here earlier"), rows => GridRecall.Merge(rows, draft, typing, Columns)),
            Say($"What was typed here earlier and not saved yet is back."));
        await Drafts.ForgetAsync(DraftKey + ".typing");
        if (State.Unsaved.Count == 0)
        {
            await Drafts.ForgetAsync(DraftKey);
        }
    }

    private List<(int? Column, string Text)> MessagesOf(GridRow row)
    {
        var messages = Shown.Where(column => State.Problems.ContainsKey((row.Key, column)))
            .Select(column => ((int?)column, SayWhole(State.Problems[(row.Key, column)]))).ToList();
        if (State.Notes.TryGetValue(row.Key, out var note))
        {
            messages.Add((null, note));
        }

        return messages;
    }

    private string? RowClass(GridRow row) => row.IsBlank ? "blank" : State.Unsaved.Contains(row.Key) ? "unsaved" : null;

    // A thing's own columns are repeated on each of its steps; only the first time do they stand in full ink.
    private bool Repeats(GridRow row, GridRow? above, int column) =>
        Columns[column].OfThing
        && above is not null
        && row.Cells[column].Length > 0
        && Columns.Any(step => step.Step != StepPart.None)
        && Shown.Where(shown => shown <= column && Columns[shown].OfThing).All(shown => above.Cells[shown] == row.Cells[shown]);

    private string Meant(int column, string typed) => CellWords.Meant(Columns[column].Kind, typed);

    private string NameOf(string row) => Document.Rows.FirstOrDefault(candidate => candidate.Key == row) is { } found ? NameOf(found, 0) : "";

    private string NameOf(GridRow row, int at) => row.Cells[Shown[0]] is { Length: > 0 } name ? name : row.IsBlank ? Say($"new row") : Say($"row {at + 1}");
}
