using Microsoft.AspNetCore.Components;
using PressRun.Data.Quotes;
using PressRun.Engine.Quoting;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Quotes;

public sealed partial class QuotePage : IDisposable
{
    private readonly OneAtATime work = new();
    private readonly CancellationTokenSource left = new();
    private QuoteView? view;
    private QuoteView? before;
    private MadeLink? made;
    private int linksMade;
    private DateTimeOffset now;
    private bool loaded;
    private InSight? sight;
    private QuoteWatch? watch;
    private int? drafted;
    private string? problem;
    private string remark = "";

    /// <summary>The quote's number.</summary>
    [Parameter]
    public int Number { get; set; }

    [CascadingParameter]
    private PressView? Press { get; set; }

    [Inject]
    private QuoteService Service { get; set; } = default!;

    [Inject]
    private QuoteNews News { get; set; } = default!;

    [Inject]
    private Handover Handover { get; set; } = default!;

    [Inject]
    private Drafts Drafts { get; set; } = default!;

    [Inject]
    private NavigationManager Navigation { get; set; } = default!;

    [Inject]
    private TimeProvider Time { get; set; } = default!;

    private PressFormat Format => view!.Format;

    private QuoteFacts Facts => view!.Facts;

    private string? EditionAddress { get; set; }

    // What was paid of the quote before stays written there; whoever looks at this one is told.
    private string? PaidBefore => before!.Paid is var paid && paid != 0m ? before.Format.Money(paid) : null;

    // A link that is made where PressRun answers this machine alone opens nowhere else.
    private bool IsOnlyHere => new Uri(Navigation.BaseUri).IsLoopback;

    /// <inheritdoc/>
    public void Dispose()
    {
        watch?.Dispose();
        left.Cancel();
        left.Dispose();
    }

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (Press is null || view?.Quote.Number == Number)
        {
            return;
        }

        (view, before, made, problem, remark, loaded) = (null, null, null, null, "", false);

        // Whoever leaves does not keep others waiting for what is worked out.
        var leaving = left.Token;
        view = await Handover.LoadAsync($"quote/{Number}", () => Service.FindAsync(Press.Record.Id, Number, leaving));
        now = Time.GetUtcNow();
        loaded = true;
        if (view is null)
        {
            Navigation.NotFound();
            return;
        }

        before = view.Quote.Replaces is { } replaced ? await Service.FindAsync(Press.Record.Id, replaced, leaving) : null;
        EditionAddress = await Service.AddressAsync(Press.Record.Id, view);
    }

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        // A view that was not handed over comes after the first rendering.
        if (view is null || drafted == Number)
        {
            return;
        }

        drafted = Number;
        watch ??= News.Watch(Press!.Record.Id, InvokeAsync, LookAgainAsync);
        watch.Ask();
        if (await Drafts.RecallAsync(RemarkKey) is { } draft && remark.Length == 0)
        {
            remark = draft;
            StateHasChanged();
        }
    }

    private string RemarkKey => $"quote/{view!.Quote.Id}/remark";

    private string Address(string secret) => Navigation.ToAbsoluteUri($"q/{secret}").AbsoluteUri;

    private Task<string?> MakeAsync(NewLinkForm form) => DoAsync(async () =>
    {
        var done = await Service.LinkAsync(Press!.Record.Id, view!, form.Name.Trim(), form.Rights, form.Until, form.Part, Press.Name);
        if (done.Now is { } fresh)
        {
            (made, linksMade) = (fresh, linksMade + 1);
        }

        return done.Problem;
    });

    private async Task EndAsync(QuoteLink link)
    {
        if (made?.Link.Id == link.Id)
        {
            made = null;
        }

        problem = await DoAsync(() => Service.EndAsync(Press!.Record.Id, view!, link.Id, Press.Name));
    }

    private async Task RemarkAsync()
    {
        problem = await DoAsync(() => Service.RemarkAsync(Press!.Record.Id, view!, Press.Name, remark));
        if (problem is null)
        {
            remark = "";
            await Drafts.ForgetAsync(RemarkKey);
        }
    }

    private Task<string?> PayAsync(Payment payment) =>
        DoAsync(() => Service.PayAsync(Press!.Record.Id, view!, payment.Place, payment.Amount, payment.Day, Press.Name));

    // Whatever was done, the page then shows the quote as it stands.
    private Task<string?> DoAsync(Func<Task<string?>> act) => work.DoAsync(async () =>
    {
        var refused = await act();
        await RefreshAsync();
        await SeeAsync();
        StateHasChanged();
        return refused;
    });

    // What a page shows that somebody can see is read; who may not change anything reads for themselves and not for the press.
    private Task SeeAsync() =>
        view is { } shown && sight is { Now: true } && Press is { MayEdit: true } ? Service.SeeAsync(Press.Record.Id, shown) : Task.CompletedTask;

    private async Task LookAgainAsync()
    {
        await work.DoAsync(CatchUpAsync);
        StateHasChanged();
        await SeeAsync();
    }

    private async Task<bool> CatchUpAsync()
    {
        if (view is not { } shown || await News.ChangesAsync(Press!.Record.Id, shown.Quote.Id) == shown.Whole.Changes)
        {
            return false;
        }

        await RefreshAsync();
        return true;
    }

    private async Task RefreshAsync()
    {
        var shown = view!;
        var fresh = await Service.FindAsync(Press!.Record.Id, shown.Quote.Number);

        // The page may have gone on to another quote meanwhile.
        if (ReferenceEquals(shown, view) && fresh is not null)
        {
            (view, now) = (fresh, Time.GetUtcNow());
        }
    }
}
