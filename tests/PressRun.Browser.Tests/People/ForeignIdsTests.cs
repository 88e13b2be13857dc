using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using PressRun.Browser.Tests.Pages;
using PressRun.Browser.Tests.Running;
using PressRun.Data;
using PressRun.Data.Access;
using PressRun.Data.Copies;
using PressRun.Data.Payouts;
using PressRun.Data.People;
using PressRun.Data.Quotes;
using PressRun.Data.Tallies;
using PressRun.Engine.Bench;
using PressRun.Engine.Quoting;

namespace PressRun.Browser.Tests.People;

/// <summary>Every kind of id that a press has, shown over HTTP by somebody of another press and by another press's key: nothing is told and no row changes.</summary>
public sealed class ForeignIdsTests
{
    private const string Mark = "Zeugma";

    [Fact]
    public async Task No_id_of_a_press_tells_or_changes_anything_for_another_press()
    {
        await using var app = new PeopleApp();
        await app.ReadyAsync();
        var theirs = await FurnishAsync(app);
        var email = await app.PersonAsync("Stranger", app.Other, PressRole.Owner);
        using var stranger = await HttpPerson.SignedInAsync(app.App.Address, email, theirs["press"]);
        using var insider = await HttpPerson.SignedInAsync(app.App.Address, PeopleApp.Owner, theirs["press"]);
        using var program = new HttpClient { BaseAddress = app.App.Address };
        program.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", await app.Stored.Services.GetRequiredService<ApiKeyStore>().MakeAsync(app.Other, "a till", mayWrite: true));

        var told = 0;
        foreach (var path in Readable(theirs))
        {
            told += (await ReadAsync(insider, path)).Contains(Mark, StringComparison.Ordinal) ? 1 : 0;
        }

        Assert.True(told >= 4, $"The same addresses tell somebody of the press about it: {told}.");
        var before = await RowsAsync(app.App, theirs["press"]);
        Assert.Contains("mails", before.Keys);
        foreach (var path in Readable(theirs))
        {
            Assert.DoesNotContain(Mark, await ReadAsync(stranger, path), StringComparison.Ordinal);
        }

        Assert.DoesNotContain(theirs["edition"], await program.GetStringAsync(new Uri("api/v1/printings", UriKind.Relative)), StringComparison.Ordinal);
        foreach (var (path, body) in Sent(theirs, app.Other.ToString()))
        {
            using var answer = await stranger.AskAsync("POST", path, new StringContent(body.ToJsonString(), Encoding.UTF8, "application/json"));
            var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            var refused = answer.StatusCode is HttpStatusCode.NotFound or HttpStatusCode.Forbidden || (answer.IsSuccessStatusCode && JsonNode.Parse(text)!["entries"]![0]!["problem"] is not null);
            Assert.True(refused, $"{path} {body.ToJsonString()} answers {(int)answer.StatusCode}: {text}");
        }

        foreach (var (path, fields) in Filled(theirs, app.Other.ToString()))
        {
            using var answer = await stranger.SendAsync("account", path, fields);
            Assert.True(answer.StatusCode is HttpStatusCode.Forbidden or HttpStatusCode.Redirect, $"{path} answers {(int)answer.StatusCode}");
        }

        using var written = await program.PutAsJsonAsync(
            new Uri($"api/v1/movements/{theirs["movement"]}", UriKind.Relative), new { printing = theirs["edition"], day = "2026-03-02", kind = "printed", copies = 1, amount = "1.00" }, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, written.StatusCode);
        Assert.Equal(before, await RowsAsync(app.App, theirs["press"]));
        using var still = await insider.AskAsync("GET", "account");
        Assert.Equal(HttpStatusCode.OK, still.StatusCode);
    }

    // One of everything that has an id, with a word in it that stands nowhere else.
    private static async Task<Dictionary<string, string>> FurnishAsync(PeopleApp app)
    {
        var (services, press) = (app.Stored.Services, app.Stored.Press.Id);
        var book = await app.Stored.BookAsync(EveryPage.Title, EveryPage.Printing);
        var plan = (await app.Stored.ChosenPlanAsync(book.Edition.Id)).Plan;
        var quotes = services.GetRequiredService<QuoteStore>();
        var quote = (await quotes.FindAsync(press, 1))!.Quote;
        var link = await app.Stored.ShareAsync(1, Mark);
        await quotes.RemarkAsync(press, quote.Id, Mark, $"A remark of {Mark}");
        var payouts = services.GetRequiredService<PayoutStore>();
        var claims = (await payouts.LoadAsync(press, book.Edition.Id)).Claims;
        Assert.IsType<SaveResult<EditionClaims>.Saved>(await payouts.SaveAsync(press, claims with { Claims = [new Claim.PerCopy(Mark, 1m)] }));
        await payouts.PayAsync(press, new NewPayment(Guid.CreateVersion7(), book.Edition.Id, new PaidOut(Mark, new DateOnly(2026, 3, 1), 1m)), Mark);
        var tally = Guid.CreateVersion7();
        var steps = new[] { new TallyStep(Mark, WorkKind.Staple, 0m, null) };
        Assert.IsType<SaveResult<TallyRecord>.Saved>(await services.GetRequiredService<TallyStore>().BeginAsync(press, new NewTally(tally, book.Edition.Id, Mark, 20, 20, steps)));
        var keys = services.GetRequiredService<ApiKeyStore>();
        await keys.MakeAsync(press, Mark, mayWrite: true);
        await services.GetRequiredService<InvitationStore>().InviteAsync(press, Mark, PressRole.Owner);
        var movement = (await services.GetRequiredService<CopiesLedgerStore>().OfEditionAsync(press, book.Edition.Id))[0];
        return new Dictionary<string, string>
        {
            ["press"] = press.ToString(), ["slug"] = book.Slug, ["printing"] = EveryPage.Printing.ToString(CultureInfo.InvariantCulture), ["edition"] = book.Edition.Id.ToString(),
            ["plan"] = plan.Id.ToString(), ["id"] = plan.ShopId, ["shop"] = plan.ShopId, ["list"] = plan.PriceListId.ToString(), ["number"] = "1", ["quote"] = quote.Id.ToString(), ["link"] = link,
            ["tally"] = tally.ToString(), ["movement"] = movement.Id.ToString(), ["user"] = app.Stored.UserId(PeopleApp.Owner).ToString(),
            ["key"] = (await keys.ListAsync(press))[0].Id.ToString(), ["invitation"] = (await services.GetRequiredService<InvitationStore>().ListAsync(press))[0].Id.ToString(),
        };
    }

    // A link's secret is meant for whoever holds it, so that its pages are not among these.
    private static IEnumerable<string> Readable(Dictionary<string, string> theirs) => EveryEndpoint.All()
        .Where(endpoint => endpoint.Methods.Contains("GET") && !endpoint.Route.Contains("_blazor", StringComparison.Ordinal) && !endpoint.Route.Contains("{secret}", StringComparison.OrdinalIgnoreCase))
        .Select(endpoint => $"{EveryEndpoint.Address(endpoint.Route, theirs)}?{string.Join('&', theirs.Where(id => id.Key != "link").Select(id => $"{id.Key}={Uri.EscapeDataString(id.Value)}"))}");

    private static IEnumerable<(string Path, JsonObject Body)> Sent(Dictionary<string, string> theirs, string mine)
    {
        var (sale, counted) = (
            new JsonObject { ["id"] = Guid.NewGuid(), ["edition"] = theirs["edition"], ["day"] = "2026-03-02", ["amount"] = "5.00" },
            new JsonObject { ["id"] = Guid.NewGuid(), ["step"] = 0, ["kind"] = "done", ["copies"] = 1, ["seconds"] = 0 });
        foreach (var press in new[] { theirs["press"], mine })
        {
            yield return ("fair/entries", new JsonObject { ["press"] = press, ["entries"] = new JsonArray(sale.DeepClone()) });
            yield return ("tally/entries", new JsonObject { ["press"] = press, ["tally"] = theirs["tally"], ["entries"] = new JsonArray(counted.DeepClone()) });
            yield return ("tally/begin", new JsonObject { ["press"] = press, ["id"] = Guid.NewGuid(), ["edition"] = theirs["edition"], ["plan"] = theirs["plan"], ["copies"] = "20", ["wanted"] = "20" });
        }
    }

    private static IEnumerable<(string Path, Dictionary<string, string> Fields)> Filled(Dictionary<string, string> theirs, string mine) =>
        from press in new[] { theirs["press"], mine }
        from path in new[] { "people/role", "people/remove", "people/withdraw", "people/revoke", "account/leave", "account/end" }
        where path != "account/leave" || press != mine
        select (path, new Dictionary<string, string>
        {
            ["press"] = press, ["user"] = theirs["user"], ["role"] = "Reader", ["invitation"] = theirs["invitation"], ["key"] = theirs["key"], ["session"] = theirs["user"],
        });

    private static async Task<string> ReadAsync(HttpPerson person, string path)
    {
        using var answer = await person.AskAsync("GET", path);
        return await answer.Content.ReadAsStringAsync();
    }

    // What every table holds of a press, as one sum for each.
    private static async Task<Dictionary<string, string>> RowsAsync(AppProcess app, string press)
    {
        await using var source = NpgsqlDataSource.Create(app.ConnectionString);
        var sums = new Dictionary<string, string>();
        foreach (var table in await ListAsync(source, "SELECT table_name FROM information_schema.columns WHERE table_schema = 'public' AND column_name = 'press_id' ORDER BY 1"))
        {
            sums[table] = (await ListAsync(source, $"SELECT count(*) || ' ' || coalesce(md5(string_agg(row::text, '|' ORDER BY row::text)), '') FROM \"{table}\" AS row WHERE press_id = '{press}'"))[0];
        }

        return sums;
    }

    private static async Task<List<string>> ListAsync(NpgsqlDataSource source, string sql)
    {
        await using var command = source.CreateCommand(sql);
        await using var reader = await command.ExecuteReaderAsync();
        var found = new List<string>();
        while (await reader.ReadAsync())
        {
            found.Add(reader.GetString(0));
        }

        return found;
    }
}
