using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;
using PressRun.Data.PrivatePostgres;
using PressRun.Data.Running;
using PressRun.Data.Tests.Fixtures;
using PressRun.Data.Titles;

namespace PressRun.Data.Tests;

public sealed class KillTests
{
    [Fact]
    public async Task Every_acknowledged_save_survives_kills_of_the_server_and_nothing_is_half_saved()
    {
        using var folder = new ServerFolder();
        await using var server = await PrivateServer.StartAsync(
            new PressRunOptions { DataFolder = folder.Path }, [], TimeProvider.System, NullLogger.Instance, CancellationToken.None);
        await using var stores = Stores.On(server.ConnectionString);
        await Migrating.BringUpAsync(stores.Database, TimeProvider.System, NullLogger.Instance, CancellationToken.None);
        var small = await SmallPress.CreateAsync(stores);
        var kills = LongRuns.Count(usual: 4, atLength: 100);
        using var done = new CancellationTokenSource();
        var random = new Random(20261125);

        var saver = SaveAsync(stores, small, done.Token);
        for (var kill = 0; kill < kills; kill++)
        {
            await Task.Delay(random.Next(300, 1500));
            folder.KillServer();
        }

        // Recovery after the last kill takes what it takes on a busy machine; then a little more is saved.
        await LoadAsync(stores, small);
        await Task.Delay(1000);
        await done.CancelAsync();
        var (acknowledged, asked) = await saver;

        var stands = await LoadAsync(stores, small);
        Assert.InRange(stands.FreeCopies, acknowledged, asked);
        Assert.Equal(stands.FreeCopies + 1, stands.Parts[1].Part.Pages);
        Assert.Equal(stands.FreeCopies, stands.FixedCosts[0].Amount);
        Assert.True(acknowledged > kills, $"Only {acknowledged} saves went through.");
    }

    private static async Task<EditionRecord> LoadAsync(Stores stores, SmallPress small)
    {
        for (var attempt = 0; ; attempt++)
        {
            try
            {
                return (await stores.Editions.LoadAsync(small.Id, small.Edition.Id))!;
            }
            catch (Exception exception) when (attempt < 10 && (exception is NpgsqlException or InvalidOperationException))
            {
                await Task.Delay(1000);
            }
        }
    }

    // Saves copies on hand 1, 2, 3, ... with as many pages and the same cost; each number is asked for until it stands.
    private static async Task<(int Acknowledged, int Asked)> SaveAsync(Stores stores, SmallPress small, CancellationToken done)
    {
        var acknowledged = 0;
        var mine = small.Edition;
        while (!done.IsCancellationRequested)
        {
            var wanted = acknowledged + 1;
            try
            {
                var result = await stores.Editions.SaveAsync(small.Id, Numbered(mine, wanted), CancellationToken.None);
                (mine, acknowledged) = result switch
                {
                    SaveResult<EditionRecord>.Saved saved => (saved.Now, wanted),

                    // Nobody else saves: a conflict is one's own save whose answer was lost.
                    SaveResult<EditionRecord>.Conflict conflict => (conflict.Theirs, conflict.Theirs.FreeCopies),
                    _ => throw new InvalidOperationException("The edition is gone."),
                };
            }
            catch (Exception exception) when (exception is NpgsqlException or InvalidOperationException or Microsoft.EntityFrameworkCore.DbUpdateException)
            {
                await Task.Delay(50, CancellationToken.None);
            }
        }

        return (acknowledged, acknowledged + 1);
    }

    private static EditionRecord Numbered(EditionRecord edition, int number) => edition with
    {
        FreeCopies = number,
        Parts = [edition.Parts[0], edition.Parts[1] with { Part = edition.Parts[1].Part with { Pages = number + 1 } }],
        FixedCosts = [edition.FixedCosts[0] with { Amount = number }],
    };
}
