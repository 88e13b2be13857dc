using Microsoft.EntityFrameworkCore;
using PressRun.Data.People;
using PressRun.Data.PrivatePostgres;
using PressRun.Data.Running;
using PressRun.Data.Tests.Fixtures;

namespace PressRun.Data.Tests;

/// <summary>A disk that is full. PostgreSQL says so by 53100 (Appendix A of its manual, "disk_full"); here a trigger says it in its place.</summary>
public sealed class RoomTests(PostgresFixture postgres)
{
    private const string Full =
        """
        CREATE FUNCTION no_room() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE EXCEPTION 'could not extend file: No space left on device' USING ERRCODE = '53100'; END $$;
        CREATE TRIGGER no_room BEFORE INSERT ON attempts FOR EACH STATEMENT EXECUTE FUNCTION no_room();
        """;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_database_without_room_is_known_until_it_has_some_again()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var limit = new AttemptLimit("test", 5, TimeSpan.FromMinutes(15));
        using var news = new ServerNews(stores.Database, TimeProvider.System);
        await news.StartAsync(Cancel);
        Assert.False(stores.Database.Reach.IsFull);
        await DoAsync(Full);

        var fault = await Assert.ThrowsAnyAsync<Exception>(() => stores.Attempts.TakeAsync(limit, "one", Cancel));

        Assert.True(DatabaseAway.IsFull(fault) && DatabaseAway.IsWhy(fault));
        Assert.True(stores.Database.Reach.IsFull);
        await DoAsync("DROP TRIGGER no_room ON attempts");
        await Eventually.HoldsAsync(() => Task.FromResult(!stores.Database.Reach.IsFull));
        Assert.True(await stores.Attempts.TakeAsync(limit, "one", Cancel));
        await stores.Attempts.SweepAsync(Cancel);
        await using var db = stores.Context(default);
        Assert.Equal(limit.Kind, (await db.Attempts.SingleAsync(Cancel)).Kind);
        await news.StopAsync(Cancel);

        async Task DoAsync(string statement)
        {
            await using var command = stores.Database.Source.CreateCommand(statement);
            await command.ExecuteNonQueryAsync(Cancel);
        }
    }

    [Theory]
    [InlineData("LOG:  starting|PANIC:  could not write to file: No space left on device|LOG:  server process was terminated", "PANIC:  could not write to file: No space left on device")]
    [InlineData("LOG:  starting|FATAL:  could not open file|LOG:  shutting down", "FATAL:  could not open file")]
    [InlineData("LOG:  starting|LOG:  shutting down", "LOG:  shutting down")]
    [InlineData("", "nothing")]
    public void The_last_words_of_a_server_are_those_that_it_ended_by(string lines, string words) =>
        Assert.Equal(words, PostgresProcess.LastWords(lines.Split('|', StringSplitOptions.RemoveEmptyEntries)));
}
