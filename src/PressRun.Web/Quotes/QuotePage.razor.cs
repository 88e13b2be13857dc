using System.Data.Common;
using Microsoft.AspNetCore.Components;
using PressRun.Data.Quotes;
using PressRun.Engine.Quoting;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Quotes;

public sealed partial class QuotePage : IDisposable
{
    private readonly OneAtATime work = new();
    private readonly CancellationTokenSource gone = new();
    private QuoteView? view;
    private QuoteView? before;
    private MadeLink? made;
    private int linksMade;
    private DateTimeOffset now;
    private bool loaded;
    private bool watched;
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
    private string? PaidBefore => before!.Bill.Sum(share => share.Paid) is var paid && paid != 0m ? before.Format.Money(paid) : null;

    private IReadOnlyList<string> Waiting =>
        [.. view!.Whole.Links.Where(link => link.IsOpen(now) && link is { Rights.Agree: true, Answer: QuoteAnswer.None }).Select(link => link.Name)];

    /// <inheritdoc/>
    public void Dispose()
    {
        gone.Cancel();
        gone.Dispose();
        work.Dispose();
    }

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (Press is null || view?.Quote.Number == Number)
        {
            return;
        }

        (view, before, made, problem, loaded) = (null, null, null, null, false);
        view = await Handover.LoadAsync($"quote/{Number}", () => Service.FindAsync(Press.Record.Id, Number));
        now = Time.GetUtcNow();
        loaded = true;
        if (view is null)
        {
            Navigation.NotFound();
            return;
        }

        before = view.Quote.Replaces is { } replaced ? await Service.FindAsync(Press.Record.Id, replaced) : null;
        EditionAddress = await Service.AddressAsync(Press.Record.Id, view);
    }

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        // A view that was not handed over comes after the first rendering.
        if (view is not null && !watched)
        {
            watched = true;
            await SeeAsync();
            if (await Drafts.RecallAsync(RemarkKey) is { } draft && remark.Length == 0)
            {
                remark = draft;
                StateHasChanged();
            }

            await WatchAsync(gone.Token);
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
        DoAsync(() => Service.PayAsync(Press!.Record.Id, view!, payment.Part, payment.Amount, payment.Day, Press.Name));

    // Whatever was done, the page then shows the quote as it stands.
    private Task<string?> DoAsync(Func<Task<string?>> act) => work.DoAsync(async () =>
    {
        var refused = await act();
        view = await Service.FindAsync(Press!.Record.Id, Number) ?? view;
        now = Time.GetUtcNow();
        await SeeAsync();
        StateHasChanged();
        return refused;
    });

    private async Task SeeAsync()
    {
        await Service.SeeAsync(Press!.Record.Id, view!);
        await News.TellAsync();
    }

    // What a reader does is shown while the page is open, but counts as new until the maker does something here or comes again: a page that
    // is open behind others is not looked at.
    private async Task WatchAsync(CancellationToken cancel)
    {
        using var beat = new PeriodicTimer(QuoteNews.Pause, Time);
        try
        {
            while (await beat.WaitForNextTickAsync(cancel))
            {
                await LookAgainAsync();
            }
        }
        catch (Exception left) when (cancel.IsCancellationRequested && (left is OperationCanceledException or ObjectDisposedException))
        {
            return;
        }
    }

    private async Task LookAgainAsync()
    {
        try
        {
            if (await work.DoAsync(CatchUpAsync))
            {
                StateHasChanged();
                await News.TellAsync();
            }
        }
        catch (Exception away) when (away is DbException || away.InnerException is DbException)
        {
            // A database that is away for a moment takes no page and no typed word; the next beat looks again.
        }
    }

    private async Task<bool> CatchUpAsync()
    {
        if (gone.IsCancellationRequested || view is not { } shown || await News.ChangesAsync(Press!.Record.Id, shown.Quote.Id) == shown.Whole.Changes)
        {
            return false;
        }

        view = await Service.FindAsync(Press!.Record.Id, Number) ?? view;
        now = Time.GetUtcNow();
        return true;
    }
}
