using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using PressRun.Data;
using PressRun.Data.Presses;
using PressRun.Data.Titles;
using PressRun.Web.Shelf;

namespace PressRun.Benchmarks.Shelf;

/// <summary>Times the shelf of a large press on a private PostgreSQL of its own, as a person types: one letter more each time.</summary>
internal static class ShelfSearch
{
    private const int Rounds = 3;

    /// <summary>Measures and prints.</summary>
    public static Task<int> RunAsync() => PrivatePress.MeasureAsync(async (services, press) =>
    {
        await using var db = services.GetRequiredService<IDbContextFactory<PressRunDbContext>>().CreateDbContext();
        await LargeShelf.FillAsync(db, press);
        await MeasureAsync(services, press.Id);
        await SayIndexesAsync(db);
    });

    private static async Task MeasureAsync(IServiceProvider services, PressId press)
    {
        var query = services.GetRequiredService<ShelfQuery>();
        var shelf = services.GetRequiredService<ShelfService>();
        string[] typed = [.. LargeShelf.First.SelectMany(word => Enumerable.Range(1, word.Length).Select(length => word[..length].ToLowerInvariant())), "herring al", "maker 17"];
        Console.WriteLine($"{LargeShelf.Titles} titles, {LargeShelf.Titles * LargeShelf.Printings} editions, {LargeShelf.Titles * LargeShelf.Printings * LargeShelf.Lines} lines in the ledgers at most, {typed.Length} searches, each {Rounds} times");
        await Timing.SayOnceAsync("the first search after the start, every planned printing worked out", () => shelf.ShowAsync(press, new ShelfFilter("herring")));
        await Timing.SayAsync("search, 50 titles with their printings read", typed, Rounds, words => query.ShowAsync(press, new ShelfFilter(words)));
        await Timing.SayAsync("search as the page shows it, worked out and judged", typed, Rounds, words => shelf.ShowAsync(press, new ShelfFilter(words)));
        var pages = Enumerable.Range(0, 20).Select(page => page * 50).ToArray();
        await Timing.SayAsync("the whole shelf, page by page", pages, Rounds, skip => shelf.ShowAsync(press, new ShelfFilter(Skip: skip)));
        await Timing.SayAsync("what is due to be ordered", [0], Rounds * 3, skip => shelf.ShowAsync(press, new ShelfFilter(Skip: skip, OnlyDue: true)));
        await Timing.SayAsync("what needs a decision, page by page", pages[..8], Rounds, skip => shelf.ShowAsync(press, new ShelfFilter(Skip: skip, OnlyAsking: true)));
    }

    // The server counts how often each index was used; a connection tells its counts when it is closed.
    private static async Task SayIndexesAsync(PressRunDbContext db)
    {
        NpgsqlConnection.ClearAllPools();
        await Task.Delay(TimeSpan.FromSeconds(2));
        foreach (var line in await db.Database.SqlQuery<string>(
            $"SELECT indexrelname || ': used ' || idx_scan || ' times' AS \"Value\" FROM pg_stat_user_indexes WHERE relname IN ('titles', 'editions', 'parts', 'run_plans') AND idx_scan > 0 ORDER BY idx_scan DESC").ToListAsync())
        {
            Console.WriteLine(line);
        }

        foreach (var line in await db.Database.SqlQuery<string>(
            $"SELECT relname || ': read whole ' || seq_scan || ' times' AS \"Value\" FROM pg_stat_user_tables WHERE relname IN ('titles', 'editions', 'parts', 'run_plans')").ToListAsync())
        {
            Console.WriteLine(line);
        }
    }
}
