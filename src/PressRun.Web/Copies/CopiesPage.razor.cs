using Microsoft.AspNetCore.Components;
using PressRun.Data.Copies;
using PressRun.Engine.Copies;
using PressRun.Web.Editions;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Copies;

public sealed partial class CopiesPage
{
    private readonly UndoStack edits = new();
    private readonly OneAtATime saves = new();
    private LedgerEntry entry = default!;
    private bool loaded;
    private bool recalled;
    private bool recalling;
    private string? said;
    private string? problem;
    private Guid? asked;

    /// <summary>A tally of the table whose figures are to be written down; null for none.</summary>
    [SupplyParameterFromQuery(Name = "tally")]
    public string? TallyIdAsked { get; set; }

    private Guid? TallyId => FromAddress.Id(TallyIdAsked);

    [Inject]
    private CopiesService Service { get; set; } = default!;

    [Inject]
    private Drafts Drafts { get; set; } = default!;

    private CopiesView? View { get; set; }

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (Press is not null && (View is null || View.Title.Slug != Slug || View.Edition.Printing != Printing || asked != TallyId))
        {
            (View, loaded, said, problem, recalled, asked) = (null, false, null, null, false, TallyId);
            edits.Clear();
            View = await LoadAsync($"copies/{Slug}/{Printing}/{TallyId}", () => Service.LoadAsync(Press.Record.Id, Slug, Printing, TallyId));
            if (View is not null)
            {
                entry = new LedgerEntry(View, Format);
                recalling = true;
            }
        }

        loaded = true;
        if (Press is not null && View is null)
        {
            Navigation.NotFound();
        }
    }

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (View is not null && recalling)
        {
            recalling = false;
            await RecallAsync();
        }
    }

    // The kind comes first: it says which other fields there are.
    private async Task RecallAsync()
    {
        foreach (var field in new[] { LedgerEntry.Kind }.Concat(entry.Printing.Fields).Concat([LedgerEntry.Day, LedgerEntry.Copies, LedgerEntry.Channel, LedgerEntry.Amount, LedgerEntry.Note]))
        {
            if (!entry.Typed.Contains(field) && await Drafts.RecallAsync(entry.DraftKey(field)) is { } draft)
            {
                entry.Type(field, draft);
            }
        }

        recalled = !entry.IsUntouched;
        StateHasChanged();
    }

    private async Task KeepAsync(string field)
    {
        if (!entry.Typed.Contains(field))
        {
            await Drafts.ForgetAsync(entry.DraftKey(field));
        }
    }

    // Whoever presses twice means one line: the second press finds it written, or an empty sentence.
    private Task<bool> WriteAsync()
    {
        var pressedFor = entry.Id;
        return saves.DoAsync(async () =>
        {
            var sent = entry;
            if (sent.Id != pressedFor || (said is not null && sent.IsUntouched))
            {
                return false;
            }

            (problem, said) = (null, null);
            if (sent.Read() is not { } movement)
            {
                return false;
            }

            var save = await Service.WriteAsync(Press!.Record.Id, movement);
            sent.Refuse(save.Problems);
            if (save.Line is { } line)
            {
                await FetchAsync();
                entry = sent.After(View!);
                (said, recalled) = (LedgerWords.Written(line, Format), false);
                edits.Add(LedgerWords.Named(line, Format), () => saves.DoAsync(() => UndoAsync(line.Id)));
                // The next line stands on the same day while one stays here; whoever comes back begins today.
                foreach (var field in sent.Typed)
                {
                    await Drafts.ForgetAsync(entry.DraftKey(field));
                }
            }

            return true;
        });
    }

    private Task<bool> TakeBackAsync(LedgerRow row) => saves.DoAsync(async () =>
    {
        var again = Again(row);
        (said, problem) = (null, await UndoAsync(row.Line.Id));
        if (problem is null)
        {
            said = Say($"Taken back: {LedgerWords.Named(row.Line, Format)}.");
            edits.Add(Say($"taking back {LedgerWords.Named(row.Line, Format)}"), () => saves.DoAsync(() => WriteAgainAsync(again)));
        }

        StateHasChanged();
        return true;
    });

    private async Task<string?> UndoAsync(Guid line)
    {
        var save = await Service.TakeBackAsync(Press!.Record.Id, line);
        await FetchAsync();
        said = null;
        return save.Line is null ? Words.Standing(save.Problems) : null;
    }

    private async Task<string?> WriteAgainAsync(NewMovement movement)
    {
        var save = await Service.WriteAsync(Press!.Record.Id, movement);
        await FetchAsync();
        said = null;
        return save.Line is null ? Words.Standing(save.Problems) : null;
    }

    // What was taken back stays taken back: the same line is written anew. Of a count it is what was found.
    private NewMovement Again(LedgerRow row)
    {
        var (line, moved) = (row.Line, row.Line.Movement);
        var copies = moved.Kind == MovementKind.Counted ? View!.On(moved.Day).OnHand : Math.Abs(moved.Copies);
        return new NewMovement(
            Guid.CreateVersion7(), line.EditionId, moved.Day, moved.Kind, (int)Math.Min(copies, int.MaxValue), Math.Abs(moved.Amount), line.ChannelId, line.Note, line.Printing);
    }

    private async Task FetchAsync()
    {
        if (await Service.AgainAsync(Press!.Record.Id, View!, TallyId) is { } now)
        {
            View = now;
            entry = entry.On(now);
        }
    }
}
