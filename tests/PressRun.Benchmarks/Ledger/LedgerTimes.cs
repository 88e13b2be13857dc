using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Data;
using PressRun.Data.Copies;
using PressRun.Data.Presses;
using PressRun.Data.Titles;
using PressRun.Engine.Copies;

namespace PressRun.Benchmarks.Ledger;

/// <summary>Times the ledger of an edition with 100,000 movements on a private PostgreSQL of its own.</summary>
internal static class LedgerTimes
{
    private const int Lines = 100_000;
    private const int Rounds = 200;

    /// <summary>Measures and prints.</summary>
    public static Task<int> RunAsync() => PrivatePress.MeasureAsync(MeasureAsync);

    private static async Task MeasureAsync(IServiceProvider services, PressRecord press)
    {
        var ledger = services.GetRequiredService<CopiesLedgerStore>();
        var title = (await services.GetRequiredService<ShelfQuery>().ShowAsync(press.Id, new ShelfFilter("gulls"))).Titles.Single();
        var edition = title.Editions[^1].Id;
        await FillAsync(services, press.Id, edition);
        var none = Enumerable.Repeat(0, Rounds).ToArray();
        await Timing.SayAsync("balance", none, 1, _ => ledger.OnHandAsync(press.Id, edition));
        await Timing.SayAsync("a sale written", none, 1, _ => ledger.WriteAsync(
            press.Id, new NewMovement(Guid.NewGuid(), edition, new DateOnly(2026, 11, 20), MovementKind.Sold, 1, 5m)));
        await Timing.SayAsync("all lines read for the page", none[..5], 1, _ => ledger.OfEditionAsync(press.Id, edition));
        var outlooks = services.GetRequiredService<OutlookStore>();
        await Timing.SayAsync(
            "two years by the day, for the outlook", none[..20], 1, _ => outlooks.ByDayAsync(press.Id, [title.Id], new DateOnly(2024, 11, 28)));
    }

    private static async Task FillAsync(IServiceProvider services, PressId press, Guid edition)
    {
        await using var db = services.GetRequiredService<IDbContextFactory<PressRunDbContext>>().CreateDbContext();
        db.Database.SetCommandTimeout(TimeSpan.FromMinutes(5));
        await db.Database.ExecuteSqlAsync(
            $"""
            INSERT INTO copy_movements (press_id, id, edition_id, sequence, day, kind, copies, amount, note, written_at)
            SELECT {press.Value}, md5('line ' || line)::uuid, {edition}, 1000 + line, DATE '2024-01-01' + line / 100, CASE WHEN line % 1000 = 0 THEN 'Printed' ELSE 'Sold' END,
                   CASE WHEN line % 1000 = 0 THEN 1000 ELSE -1 END, 5, '', now() FROM generate_series(1, {Lines}) AS line
            """);
        await db.Database.ExecuteSqlAsync(
            $"""
            UPDATE edition_copies SET lines = 1000 + {Lines}, count_needed = false,
                on_hand = (SELECT sum(copies) FROM copy_movements WHERE press_id = {press.Value} AND edition_id = {edition})
            WHERE press_id = {press.Value} AND edition_id = {edition}
            """);
        await db.Database.ExecuteSqlAsync($"ANALYZE copy_movements");
    }
}
