using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.JSInterop;
using PressRun.Data.Access;
using PressRun.Data.Presses;
using PressRun.Data.Running;
using PressRun.Web.Layout;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.People;

/// <summary>Has an open page follow what becomes of its sign-in and its press.</summary>
public sealed partial class SessionWatch
{
    private static readonly TimeSpan Again = TimeSpan.FromSeconds(10);

    private readonly CancellationTokenSource gone = new();
    private IDisposable? watching;
    private bool failing;

    [Inject]
    private LiveSessions Live { get; set; } = default!;

    [Inject]
    private AuthenticationStateProvider States { get; set; } = default!;

    [Inject]
    private NavigationManager Navigation { get; set; } = default!;

    [Inject]
    private PressStore Presses { get; set; } = default!;

    [Inject]
    private IJSRuntime Js { get; set; } = default!;

    [Inject]
    private TimeProvider Time { get; set; } = default!;

    [Inject]
    private ILogger<SessionWatch> Log { get; set; } = default!;

    [CascadingParameter]
    private PressView? Press { get; set; }

    /// <inheritdoc/>
    protected override async Task OnInitializedAsync()
    {
        if (RendererInfo.IsInteractive && WhoClaims.Person((await States.GetAuthenticationStateAsync()).User) is { } person)
        {
            watching = Live.Watch(person, change => InvokeAsync(() => HearAsync(person, change)));
        }
    }

    private async Task HearAsync(Visitor.Person person, AccessChange change)
    {
        if (change == AccessChange.Ended)
        {
            Navigation.NavigateTo("sign-in?ended=true", forceLoad: true);
        }
        else if (!failing)
        {
            await LookUntilAnsweredAsync(person);
        }
    }

    // What cannot be asked now, as the database has no line free or does not answer in time, is asked again: stores refuse meanwhile what may not be done any more.
    private async Task LookUntilAnsweredAsync(Visitor.Person person)
    {
        var left = gone.Token;
        for (var isFirst = true; !left.IsCancellationRequested; isFirst = false)
        {
            try
            {
                await LookAsync(person);
                failing = false;
                return;
            }
            catch (Exception fault) when (fault is not (ObjectDisposedException or JSDisconnectedException))
            {
                if (isFirst && failing)
                {
                    // Of two news at once one is enough to ask again.
                    return;
                }

                // That the database is away is told once for all pages.
                if (isFirst && !DatabaseAway.IsWhy(fault))
                {
                    LogFault(Log, fault);
                }

                failing = true;
            }

            await Task.Delay(Again, Time, left).ConfigureAwait(ConfigureAwaitOptions.ContinueOnCapturedContext | ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    // Nothing where nothing changed in the press that is shown: what another press does with somebody, and a line to the database that was lost for a moment, take nobody's page from under their
    // hands. The same address may be a page of another press: where the shown one is gone, the start is shown, and where it is another one that the browser has chosen meanwhile, this one is chosen again.
    private async Task LookAsync(Visitor.Person person)
    {
        using var visiting = Visiting.As(person);
        if (Press is not { } shown)
        {
            if ((await Presses.ListAsync()).Count > 0)
            {
                Navigation.NavigateTo(Navigation.Uri, forceLoad: true);
            }
        }
        else if (await Presses.RoleAsync(shown.Record.Id) is not { } role)
        {
            Navigation.NavigateTo("start?gone=true", forceLoad: true);
        }
        else if (role != shown.Role)
        {
            await PressChoice.KeepAsync(Js, shown.Record.Id);
            Navigation.NavigateTo(Navigation.Uri, forceLoad: true);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        watching?.Dispose();
        gone.Cancel();
        gone.Dispose();
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "A page could not look whether its press is still there for somebody, and tries again until it can")]
    private static partial void LogFault(ILogger log, Exception fault);
}
