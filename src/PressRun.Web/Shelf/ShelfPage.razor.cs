using Microsoft.AspNetCore.Components;
using PressRun.Data.Titles;
using PressRun.Web.Charts;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Shelf;

public sealed partial class ShelfPage : IDisposable
{
    private const int Step = 50;
    private const string AskingOnly = "asking";
    private const string DueOnly = "due";
    private const string ArchivedOnly = "archived";
    private const int MostPiles = 60;

    // Words are looked for when the typing pauses, so that a quick typist asks once.
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(120);

    private readonly LastAsked asked = new();
    private string search = "";
    private bool failed;
    private string? shown;

    [Inject]
    private ShelfService Service { get; set; } = default!;

    [Inject]
    private ShelfOutlooks Outlooks { get; set; } = default!;

    [Inject]
    private Handover Handover { get; set; } = default!;

    [Inject]
    private ILogger<ShelfPage> Log { get; set; } = default!;

    [Inject]
    private TimeProvider Time { get; set; } = default!;

    [CascadingParameter]
    private PressView? Press { get; set; }

    /// <summary>In the address, so that what is shown can be linked to: <c>asking</c>, <c>due</c>, <c>archived</c>, or anything else for all.</summary>
    [SupplyParameterFromQuery(Name = "show")]
    public string? Show { get; set; }

    /// <summary>Says that the press was taken in from a file just now.</summary>
    [SupplyParameterFromQuery(Name = "taken-in")]
    private string? TakenInAsked { get; set; }

    private ShelfView? View { get; set; }

    private PressFormat Format => Press!.Format;

    private bool IsAsking => Show == AskingOnly;

    private bool IsDue => Show == DueOnly;

    private bool IsArchived => Show == ArchivedOnly;

    private bool IsPart => View!.Titles.Count < View.Total;

    private IReadOnlyList<StandingPile> Standing =>
    [
        .. View!.Titles.SelectMany(title => title.Editions.Select(edition => (title.Title, Edition: edition)))
            .Where(item => item.Edition.Shape is not null && (item.Edition.Edition.CopiesOnHand > 0 || item.Edition.Decision == DecisionKind.NoneLeft))
            .Take(MostPiles)
            .Select(item => Pile(item.Title, item.Edition)),
    ];

    /// <inheritdoc/>
    public void Dispose() => asked.Dispose();

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (Press is not null && (View is null || shown != Show))
        {
            shown = Show;
            await ShowAsync();
        }
    }

    private Task SearchAsync(string words)
    {
        search = words;
        return ShowAsync(Pause);
    }

    private async Task MoreAsync()
    {
        var more = await asked.AnswerAsync(cancel => ReadAsync(View!.Titles.Count, cancel));
        View = more! with { Titles = [.. View!.Titles.Concat(more.Titles).DistinctBy(title => title.Title.Id)] };
    }

    private Task ShowAsync() => ShowAsync(TimeSpan.Zero);

    private async Task ShowAsync(TimeSpan pause)
    {
        try
        {
            View = await asked.AnswerAsync(cancel => AnswerAsync(pause, cancel));
            failed = false;
        }
        catch (Exception exception) when (exception is not OperationCanceledException)
        {
            LogFailed(Log, exception);
            failed = true;
            View = null;
        }
    }

    private async Task<ShelfView?> AnswerAsync(TimeSpan pause, CancellationToken cancel)
    {
        await Task.Delay(pause, Time, cancel);
        return View is null && search.Length == 0
            ? await Handover.LoadAsync($"shelf/{Show}", () => ReadAsync(0, cancel))
            : await ReadAsync(0, cancel);
    }

    private async Task<ShelfView?> ReadAsync(int skip, CancellationToken cancel) =>
        await Service.ShowAsync(Press!.Record.Id, new ShelfFilter(search, skip, Step, IsArchived, IsAsking, IsDue), cancel);

    private StandingPile Pile(ShelfTitle title, EditionOnShelf edition)
    {
        var copies = edition.Edition.CopiesOnHand;
        var words = Say($"{Apart.Of(title.Title)}, {Words.Printing(edition.Edition.Printing)}: {Words.Copies(copies, Format.Count)} on hand");
        return new StandingPile(
            $"titles/{title.Slug}/{edition.Edition.Printing}", words, edition.Shape!.Height, edition.Shape.Thickness, (int)Math.Clamp(copies, 0, int.MaxValue), edition.Shape.CoverColour,
            ShelfDecision.Asks(edition.Decision), title.Title);
    }

    private string When(ShelfEdition edition) => edition.PrintedOn is { } day ? Format.ShortMonth(day) : Say($"being planned");

    // Who is asked whether to print again wants to know how many; who plans a first printing, what it costs.
    private static string Leads(EditionOnShelf edition, string address) => address
        + (edition.Decision is DecisionKind.Due or DecisionKind.NoneLeft or DecisionKind.RunningOut ? "/reprint" : "/run");

    // Of what is due, the number that is planned already; of what is not due yet, the day is worth a word where it is near.
    private string? OrderBy(TitleOnShelf title, EditionOnShelf edition) => edition.Decision == DecisionKind.Due
        ? edition is { Edition.CopiesPrinted: null, Quantity: { } planned } ? Say($"{Words.Copies(planned, Format.Count)} planned") : null
        : edition == title.Editions[0] && title.OrderBy is { } by && by <= Outlooks.Today.AddDays(ShelfOutlooks.LongestLead)
            ? Say($"order by {Format.ShortDay(by)}")
            : null;

    private string Asks(TitleOnShelf title, EditionOnShelf edition) => edition.Decision switch
    {
        DecisionKind.Due when title.OrderBy is { } by => by < Outlooks.Today ? Say($"Order now: due since {Format.ShortDay(by)}") : Say($"Order by {Format.ShortDay(by)}"),
        DecisionKind.Due => Say($"Sold out: order now"),
        DecisionKind.NoneLeft => Say($"None on hand: print again?"),
        DecisionKind.RunningOut => Say($"{Words.Copies(edition.Edition.CopiesOnHand, Format.Count)} left: print again?"),
        DecisionKind.NotWorkedOut => Say($"Needs a run plan"),
        DecisionKind.NotPaidFor => Say($"{Format.Count(edition.Quantity ?? 0)} copies do not pay for it"),
        _ => Say($"{Format.Count(edition.Quantity ?? 0)} copies planned"),
    };

    [LoggerMessage(Level = LogLevel.Error, Message = "The shelf could not be read.")]
    private static partial void LogFailed(ILogger log, Exception exception);
}
