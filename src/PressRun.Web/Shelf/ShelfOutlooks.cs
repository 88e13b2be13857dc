using PressRun.Data.Copies;
using PressRun.Data.Presses;
using PressRun.Data.Running;
using PressRun.Data.RunPlans;
using PressRun.Web.Reprint;

namespace PressRun.Web.Shelf;

/// <summary>Keeps what the shelf says of how long copies last: reckoned anew where a ledger moved or another event is ahead, and for what is shown once a day.</summary>
public sealed class ShelfOutlooks(OutlookStore outlooks, TimeProvider time)
{
    /// <summary>Runs that take longer are reckoned as taking so many days: so far ahead is looked for what runs out.</summary>
    public const int LongestLead = 60;

    private const int AtOnce = 200;

    /// <summary>Today where the server stands.</summary>
    public DateOnly Today => time.Today();

    /// <summary>Reckons every title anew whose ledger has moved.</summary>
    public async Task RefreshAsync(PressId press, CancellationToken cancel)
    {
        while (await outlooks.MovedAsync(press, AtOnce, cancel) is { Count: > 0 } moved)
        {
            await ReckonAsync(press, moved, cancel);
        }
    }

    /// <summary>The outlooks of some titles as of today: those given, unless they were reckoned on an earlier day.</summary>
    /// <param name="press">Whose.</param>
    /// <param name="kept">By title, as they are kept.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public async Task<IReadOnlyDictionary<Guid, TitleOutlook>> AsOfTodayAsync(PressId press, IReadOnlyDictionary<Guid, TitleOutlook> kept, CancellationToken cancel)
    {
        var old = kept.Where(one => one.Value.AsOf < Today).Select(one => new MovedTitle(one.Key, one.Value.Moved)).ToList();
        if (old.Count == 0)
        {
            return kept;
        }

        await ReckonAsync(press, old, cancel);
        return await outlooks.OfTitlesAsync(press, [.. kept.Keys], cancel);
    }

    private async Task ReckonAsync(PressId press, IReadOnlyList<MovedTitle> moved, CancellationToken cancel)
    {
        var (today, titles) = (Today, moved.Select(title => title.TitleId).ToList());
        var lines = await outlooks.ByDayAsync(press, titles, today.AddMonths(-TitleLedger.MonthsBack), cancel);
        var events = await outlooks.EventsAsync(press, titles, cancel);
        await outlooks.KeepAsync(press, [.. moved.Select(title => (title, Of(TitleLedger.Of([.. lines[title.TitleId]], today), events.GetValueOrDefault(title.TitleId))))], cancel);
    }

    // A title that sells and of which none is on hand has run out already.
    private static TitleOutlook? Of(TitleLedger ledger, EventAhead? ahead) => ledger switch
    {
        { HasSales: true } when ledger.OutlookWith(ahead) is { } outlook => new TitleOutlook(ledger.Today, outlook.OnHand, outlook.Days10, outlook.Days50, outlook.Days90, 0),
        { HasSales: true, OnHand: 0 } => new TitleOutlook(ledger.Today, 0, 0d, 0d, 0d, 0),
        _ => null,
    };
}
