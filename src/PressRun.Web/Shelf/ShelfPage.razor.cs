using Microsoft.AspNetCore.Components;
using PressRun.Data.Titles;
using PressRun.Web.Charts;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Shelf;

public sealed partial class ShelfPage : IDisposable
{
    private const int Step = 50;
    private const int MostTitles = 200;
    private const int MostPiles = 60;

    // Words are looked for when the typing pauses, so that a quick typist asks once.
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(120);

    private string search = "";
    private bool onlyAsking;
    private bool archived;
    private bool failed;
    private int taken = Step;
    private CancellationTokenSource? asking;

    [Inject]
    private ShelfService Service { get; set; } = default!;

    [Inject]
    private Handover Handover { get; set; } = default!;

    [Inject]
    private ILogger<ShelfPage> Log { get; set; } = default!;

    [Inject]
    private TimeProvider Time { get; set; } = default!;

    [CascadingParameter]
    private PressView? Press { get; set; }

    private ShelfView? View { get; set; }

    private PressFormat Format => Press!.Format;

    private bool IsPart => View!.Titles.Count < View.Total;

    private IReadOnlyList<TitleOnShelf> Rows => onlyAsking ? [.. View!.Titles.Where(title => title.Asks)] : View!.Titles;

    private IReadOnlyList<StandingPile> Standing =>
    [
        .. Rows.SelectMany(title => title.Editions.Select(edition => (title.Title, Edition: edition)))
            .Where(item => item.Edition.Shape is not null && (item.Edition.Edition.CopiesOnHand > 0 || item.Edition.Decision == DecisionKind.SoldOut))
            .Take(MostPiles)
            .Select(item => Pile(item.Title, item.Edition)),
    ];

    /// <inheritdoc/>
    public void Dispose() => asking?.Dispose();

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (Press is not null && View is null)
        {
            await ShowAsync();
        }
    }

    private async Task SearchAsync(string words)
    {
        search = words;
        taken = Step;
        var cancel = await NextAsync();
        try
        {
            await Task.Delay(Pause, Time, cancel);
            await ShowAsync(cancel);
        }
        catch (OperationCanceledException)
        {
            // More was typed; the later question is answered instead.
        }
    }

    private Task ShowArchivedAsync(bool show)
    {
        archived = show;
        return ShowAsync();
    }

    private Task MoreAsync()
    {
        taken = Math.Min(MostTitles, taken + Step);
        return ShowAsync();
    }

    private Task ShowAsync() => ShowAsync(CancellationToken.None);

    private async Task ShowAsync(CancellationToken cancel)
    {
        try
        {
            View = View is null && search.Length == 0
                ? await Handover.LoadAsync("shelf", () => ReadAsync(cancel))
                : await ReadAsync(cancel);
            failed = false;
        }
        catch (Exception exception) when (exception is not OperationCanceledException)
        {
            LogFailed(Log, exception);
            failed = true;
            View = null;
        }
    }

    private async Task<ShelfView?> ReadAsync(CancellationToken cancel) =>
        await Service.ShowAsync(Press!.Record.Id, new ShelfFilter(search, 0, taken, archived), cancel);

    private async Task<CancellationToken> NextAsync()
    {
        if (asking is not null)
        {
            await asking.CancelAsync();
            asking.Dispose();
        }

        asking = new CancellationTokenSource();
        return asking.Token;
    }

    private StandingPile Pile(TitleRecord title, EditionOnShelf edition)
    {
        var copies = edition.Edition.CopiesOnHand;
        var words = $"{title.Title}, {Words.Printing(edition.Edition.Printing)}: {Words.Many(Format.Count(copies), copies, "copy", "copies")} on hand";
        return new StandingPile(
            $"titles/{title.Slug}/{edition.Edition.Printing}", words, edition.Shape!.Height, edition.Shape.Thickness, copies, edition.Shape.CoverColour,
            ShelfDecision.Asks(edition.Decision), title.Title);
    }

    private string When(EditionRecord edition) => edition.PrintedOn is { } day ? day.ToString("MMM yyyy", Format.Culture) : "being planned";

    private static string Leads(EditionOnShelf edition, string address) => edition.Edition.CopiesPrinted is null ? address + "/run" : address;

    private string Asks(EditionOnShelf edition) => edition.Decision switch
    {
        DecisionKind.SoldOut => "Sold out: print again?",
        DecisionKind.RunningOut => $"{Words.Many(Format.Count(edition.Edition.CopiesOnHand), edition.Edition.CopiesOnHand, "copy", "copies")} left: print again?",
        DecisionKind.NotWorkedOut => "Needs a run plan",
        DecisionKind.NotPaidFor => $"{Format.Count(edition.Quantity ?? 0)} copies do not pay for it",
        _ => $"{Format.Count(edition.Quantity ?? 0)} copies planned",
    };

    [LoggerMessage(Level = LogLevel.Error, Message = "The shelf could not be read.")]
    private static partial void LogFailed(ILogger log, Exception exception);
}
