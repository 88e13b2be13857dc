using Microsoft.EntityFrameworkCore;
using Npgsql;
using PressRun.Data.Access;
using PressRun.Data.Drafts;
using PressRun.Data.People;
using PressRun.Data.Presses;
using PressRun.Data.Tests.Fixtures;

namespace PressRun.Data.Tests.People;

public sealed class AccountRemovalTests(PostgresFixture postgres)
{
    // What is only added to.
    private static readonly string[] Guarded = ["copy_movements", "quotes", "quote_events", "edition_payments", "tally_entries"];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Of_a_deleted_account_no_table_has_the_name_the_address_or_the_id_any_more()
    {
        var clock = new SetClock();
        await using var stores = await Stores.NewAsync(postgres, signIn: true, clock);
        var press = (await Household.PressAsync(stores)).Id;
        var (stays, goes) = (await Household.MemberAsync(stores, press, "Stays", PressRole.Owner), await Household.MemberAsync(stores, press, "Bobadil", PressRole.Owner));
        await Household.AsAsync(stays, () => stores.Invitations.InviteAsync(press, "Bobadil", PressRole.Reader));
        var used = await Household.AsAsync(stays, () => stores.Invitations.InviteAsync(press, "Bobadil", PressRole.Reader));
        await stores.Invitations.AcceptAsync(used, goes.UserId);
        var key = await Household.AsAsync(goes, () => stores.Keys.MakeAsync(press, "till", false));
        await Household.AsAsync(goes, () => stores.Drafts.KeepAsync(press, new DraftSubject(goes.UserId.ToString(), "edition", "1"), new Draft("price", "9.50", clock.GetUtcNow())));
        Assert.NotEmpty(await NamingAsync(stores, goes.UserId));

        Assert.Empty(await stores.Removals.DeleteAsync(goes.UserId, Cancel));

        await stores.Invitations.SweepAsync(Cancel);
        Assert.Empty(await NamingAsync(stores, goes.UserId));
        Assert.False(await stores.Sessions.LastsAsync(goes.UserId, goes.SessionId, Cancel));
        Assert.Null(await stores.Keys.FindAsync(key, Cancel));
        Assert.Equal(["Stays"], (await Household.AsAsync(stays, () => stores.People.ListAsync(press))).Select(member => member.Name));
    }

    [Fact]
    public async Task The_last_owner_of_a_press_is_told_which_and_keeps_the_account()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var (press, other) = ((await Household.PressAsync(stores)).Id, (await Household.PressAsync(stores)).Id);
        var owner = await Household.MemberAsync(stores, press, "Own", PressRole.Owner);
        await Household.JoinAsync(stores, other, owner, PressRole.Editor);
        var name = (await Household.AsAsync(owner, () => stores.Presses.LoadAsync(press)))!.Name;

        Assert.Equal([name], await stores.Removals.DeleteAsync(owner.UserId, Cancel));

        Assert.Equal("Own", (await Household.FindAsync(stores, owner)).Name);
        Assert.True(await stores.Sessions.LastsAsync(owner.UserId, owner.SessionId, Cancel));
    }

    [Fact]
    public async Task Whoever_runs_the_server_deletes_an_account_and_its_press_without_others_goes_to_whoever_set_it_up()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var (press, shared) = ((await Household.PressAsync(stores)).Id, (await Household.PressAsync(stores)).Id);
        var host = await Household.PersonAsync(stores, "HOST", isHost: true);
        var (alone, among) = (await Household.MemberAsync(stores, press, "ALONE", PressRole.Owner), await Household.MemberAsync(stores, shared, "AMONG", PressRole.Owner));
        await Household.MemberAsync(stores, shared, "ED", PressRole.Editor);

        Assert.Null(await stores.Removals.DeleteForHostAsync("NOBODY", Cancel));
        Assert.Single((await stores.Removals.DeleteForHostAsync("AMONG", Cancel))!);
        Assert.Empty((await stores.Removals.DeleteForHostAsync("ALONE", Cancel))!);

        Assert.Equal("AMONG", (await Household.FindAsync(stores, among)).Name);
        Assert.Equal(["HOST"], (await Household.AsAsync(host, () => stores.People.ListAsync(press))).Select(member => member.Name));
        Assert.Empty(await NamingAsync(stores, alone.UserId));
    }

    [Fact]
    public async Task Whoever_set_the_server_up_hands_that_on_to_whoever_has_owned_a_press_for_longest()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var press = (await Household.PressAsync(stores)).Id;
        var host = await Household.PersonAsync(stores, "Host", isHost: true);
        await Household.MemberAsync(stores, press, "Ed", PressRole.Editor);
        var owner = await Household.MemberAsync(stores, press, "Own", PressRole.Owner);

        Assert.Empty(await stores.Removals.DeleteAsync(host.UserId, Cancel));

        await using var db = stores.Context(default);
        Assert.Equal([owner.UserId], await db.Users.Where(user => user.IsHost).Select(user => user.Id).ToListAsync(Cancel));
    }

    [Fact]
    public async Task Two_last_owners_who_delete_their_accounts_at_once_leave_one()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var press = (await Household.PressAsync(stores)).Id;
        var (one, two) = (await Household.MemberAsync(stores, press, "One", PressRole.Owner), await Household.MemberAsync(stores, press, "Two", PressRole.Owner));

        var held = await Task.WhenAll(stores.Removals.DeleteAsync(one.UserId, Cancel), stores.Removals.DeleteAsync(two.UserId, Cancel));

        Assert.Single(held, names => names.Count == 0);
        await using var db = stores.Context(press);
        Assert.Single(db.Memberships);
    }

    [Theory]
    [InlineData("Cora")]
    [InlineData("Cora@example.org")]
    public async Task Whoever_is_taken_out_is_invited_by_that_name_no_more(string whom)
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var press = (await Household.PressAsync(stores)).Id;
        var (owner, goes) = (await Household.MemberAsync(stores, press, "Own", PressRole.Owner), await Household.MemberAsync(stores, press, "Cora", PressRole.Editor));
        await Household.AsAsync(owner, () => stores.Invitations.InviteAsync(press, whom, PressRole.Editor));
        await Household.AsAsync(owner, () => stores.Invitations.InviteAsync(press, "Somebody else", PressRole.Editor));

        await Household.AsAsync(owner, () => stores.People.RemoveAsync(press, goes.UserId));

        Assert.Equal(["Somebody else"], (await Household.AsAsync(owner, () => stores.Invitations.ListAsync(press))).Select(made => made.For));
    }

    [Fact]
    public async Task A_deleted_press_leaves_no_row_and_other_presses_as_they_were()
    {
        await using var stores = await Stores.NewAsync(postgres);
        Assert.NotNull(await stores.Archives.SeedAsync(Repository.SamplePress, Cancel));
        var sample = Assert.Single(await stores.Presses.ListAsync(Cancel));
        var small = await SmallPress.CreateAsync(stores);
        var kept = await RowsAsync(stores, small.Id);
        Assert.True((await RowsAsync(stores, sample.Id)).Count > 15, "The sample press has rows of most kinds.");
        Assert.Equal(sample.Id, Assert.Single(await stores.PressRemovals.FindAsync(sample.Name, Cancel)).Id);

        await stores.PressRemovals.DeleteAsync(sample.Id, Cancel);

        Assert.Empty(await RowsAsync(stores, sample.Id));
        Assert.Equal(kept, await RowsAsync(stores, small.Id));
        Assert.Empty(await stores.PressRemovals.FindAsync(sample.Id.ToString(), Cancel));
    }

    [Fact]
    public async Task A_press_that_is_deleted_waits_for_nobody_who_writes_in_another()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var (goes, other) = ((await FullPress.CreateAsync(stores)).Id, (await FullPress.CreateAsync(stores)).Id);
        await using var writing = stores.Context(other);
        await using var transaction = await writing.Database.BeginTransactionAsync(Cancel);
        await writing.Database.ExecuteSqlRawAsync(string.Concat(Guarded.Select(table => $"LOCK TABLE {table} IN ROW EXCLUSIVE MODE;")), Cancel);

        await stores.PressRemovals.DeleteAsync(goes, Cancel).WaitAsync(TimeSpan.FromSeconds(20), Cancel);

        Assert.Empty(await RowsAsync(stores, goes));
    }

    // Whatever else a transaction does that takes a press out: rows of others are held, and its own rows may go and not change.
    [Fact]
    public async Task Only_rows_of_the_press_that_is_taken_out_go_and_only_in_the_transaction_that_says_so()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var (goes, other) = ((await FullPress.CreateAsync(stores)).Id, (await FullPress.CreateAsync(stores)).Id);
        await using var connection = await stores.Database.Source.OpenConnectionAsync(Cancel);
        foreach (var table in Guarded)
        {
            await using (await connection.BeginTransactionAsync(Cancel))
            {
                await DoAsync($"SELECT set_config('pressrun.removing', '{goes}', true)");
                await DoAsync("SAVEPOINT before");
                await HeldAsync($"DELETE FROM {table} WHERE press_id = '{other}'");
                await HeldAsync($"DELETE FROM {table}");
                await HeldAsync($"UPDATE {table} SET press_id = press_id WHERE press_id = '{goes}'");
                await HeldAsync($"TRUNCATE {table} CASCADE");
            }

            // The setting has gone with it.
            await RefusedAsync($"DELETE FROM {table} WHERE press_id = '{goes}'");
        }

        await using (await connection.BeginTransactionAsync(Cancel))
        {
            await DoAsync($"SELECT set_config('pressrun.removing', '{goes}', true)");
            await DoAsync($"DELETE FROM tally_entries WHERE press_id = '{goes}'");
        }

        async Task HeldAsync(string sql)
        {
            await RefusedAsync(sql);
            await DoAsync("ROLLBACK TO SAVEPOINT before");
        }

        async Task RefusedAsync(string sql)
        {
            var refused = await Assert.ThrowsAsync<PostgresException>(() => DoAsync(sql));
            Assert.True(refused.SqlState == PostgresErrorCodes.RestrictViolation, $"{sql}: {refused.MessageText}");
        }

        async Task DoAsync(string sql)
        {
            await using var command = connection.CreateCommand();
            command.CommandText = sql;
            await command.ExecuteNonQueryAsync(Cancel);
        }
    }

    // Every row of every table as text, whatever tables there will be.
    private static async Task<List<string>> NamingAsync(Stores stores, Guid user)
    {
        await using var db = stores.Context(default);
        var name = await db.Users.Where(row => row.Id == user).Select(row => row.Name).SingleOrDefaultAsync(Cancel) ?? "Bobadil";
        return await FindAsync(stores, table => $"SELECT '{table}' FROM \"{table}\" AS r WHERE position('{user}' in r::text) > 0 OR position('{name}' in r::text) > 0");
    }

    private static async Task<List<string>> RowsAsync(Stores stores, PressId press) =>
        await FindAsync(stores, table => $"SELECT '{table} ' || count(*) FROM \"{table}\" AS r WHERE position('{press}' in r::text) > 0 HAVING count(*) > 0");

    private static async Task<List<string>> FindAsync(Stores stores, Func<string, string> query)
    {
        await using var tables = stores.Database.Source.CreateCommand("SELECT table_name FROM information_schema.tables WHERE table_schema = 'public' ORDER BY table_name");
        var (names, found) = (await ReadAsync(tables), new List<string>());
        foreach (var name in names)
        {
            await using var rows = stores.Database.Source.CreateCommand(query(name));
            found.AddRange(await ReadAsync(rows));
        }

        return found;
    }

    private static async Task<List<string>> ReadAsync(NpgsqlCommand command)
    {
        var read = new List<string>();
        await using var reader = await command.ExecuteReaderAsync(Cancel);
        while (await reader.ReadAsync(Cancel))
        {
            read.Add(reader.GetString(0));
        }

        return read;
    }
}
