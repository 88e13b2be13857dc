using System.Diagnostics;
using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Npgsql;
using PressRun.Data;
using PressRun.Data.Presses;
using PressRun.Data.Running;
using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Web.Shelf;

namespace PressRun.Benchmarks.Shelf;

/// <summary>Times the shelf of a large press on a private PostgreSQL of its own, as a person types: one letter more each time.</summary>
internal static class ShelfSearch
{
    private const int Rounds = 3;

    /// <summary>Measures and prints.</summary>
    public static async Task<int> RunAsync()
    {
        var folder = Path.Combine(Path.GetTempPath(), "pressrun-shelf-" + Guid.NewGuid().ToString("N")[..8]);
        var builder = Host.CreateEmptyApplicationBuilder(null);
        builder.Configuration.AddInMemoryCollection([new("PressRun:DataFolder", folder), new("PressRun:Sample", "true")]);
        builder.Services.AddPressRunData(builder.Configuration);
        builder.Services.AddSingleton<ShelfCosts>();
        builder.Services.AddSingleton<ShelfService>();
        using var host = builder.Build();
        await host.StartAsync();
        try
        {
            var press = (await host.Services.GetRequiredService<PressStore>().ListAsync()).Single();
            await using var db = host.Services.GetRequiredService<IDbContextFactory<PressRunDbContext>>().CreateDbContext();
            await LargeShelf.FillAsync(db, press);
            await MeasureAsync(host.Services, press.Id);
            await SayIndexesAsync(db);
        }
        finally
        {
            await host.StopAsync();
            Directory.Delete(folder, recursive: true);
        }

        return 0;
    }

    private static async Task MeasureAsync(IServiceProvider services, PressId press)
    {
        var query = services.GetRequiredService<ShelfQuery>();
        var shelf = services.GetRequiredService<ShelfService>();
        string[] typed = [.. LargeShelf.First.SelectMany(word => Enumerable.Range(1, word.Length).Select(length => word[..length].ToLowerInvariant())), "herring al", "maker 17"];
        Console.WriteLine($"{LargeShelf.Titles} titles, {LargeShelf.Titles * LargeShelf.Printings} editions, {typed.Length} searches, each {Rounds} times");
        await TimeAsync("search, 50 titles with their editions and plans read", typed, words => query.ShowAsync(press, new ShelfFilter(words)));
        await TimeAsync("search as the page shows it, worked out and judged", typed, words => shelf.ShowAsync(press, new ShelfFilter(words)));
        var pages = Enumerable.Range(0, 20).Select(page => page * 50).ToArray();
        await TimeAsync("the whole shelf, page by page", pages, skip => shelf.ShowAsync(press, new ShelfFilter(Skip: skip)));
        await TimeAsync("what needs a decision, page by page", pages[..8], skip => shelf.ShowAsync(press, new ShelfFilter(Skip: skip, OnlyAsking: true)));
    }

    private static async Task TimeAsync<T>(string what, IReadOnlyList<T> asked, Func<T, Task> ask)
    {
        await ask(asked[0]);
        var times = new List<double>();
        for (var round = 0; round < Rounds; round++)
        {
            foreach (var one in asked)
            {
                var began = Stopwatch.GetTimestamp();
                await ask(one);
                times.Add(Stopwatch.GetElapsedTime(began).TotalMilliseconds);
            }
        }

        times.Sort();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{what}: median {times[times.Count / 2]:0.0} ms, p95 {times[times.Count * 95 / 100]:0.0} ms, slowest {times[^1]:0.0} ms"));
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
