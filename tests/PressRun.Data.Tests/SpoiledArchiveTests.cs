using System.Globalization;
using System.Net;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using PressRun.Data.Tests.Fixtures;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Tests;

/// <summary>Archives of presses that somebody has made up or spoiled.</summary>
public sealed partial class SpoiledArchiveTests(PostgresFixture postgres)
{
    private static readonly string[] OfQuotes = ["/quotes", "/quotes/1", "/quotes/2", "/quotes/1/quote.pdf", "/quotes/1/quote.csv", "/quotes/1/job.json", "/quotes/2/quote.pdf"];

    private static readonly string[] OfLibraries = ["/papers", "/shops", "/shops/millrace", "/post", "/selling", "/bench", "/papers/export.csv"];

    private static readonly string[] OfTitles =
    [
        "/shelf", "/fair", "/sales/export.csv",
        .. new[]
        {
            "", "/copies", "/papers", "/payouts", "/payouts.csv", "/post", "/reprint", "/run", "/run/bench", "/run/imposition", "/run/job", "/run/quote", "/tally", "/run/bench.pdf", "/run/imposition.pdf",
            "/run/imposition.svg", "/run/job.json",
        }.Select(page => $"/titles/tidepool-almanac/1{page}"),
    ];

    [Theory]
    [InlineData("madeAt")]
    [InlineData("links[0].madeAt")]
    [InlineData("links[0].endedAt")]
    [InlineData("links[0].makerGoneAt")]
    [InlineData("events[0].at")]
    public async Task Nothing_has_happened_to_a_quote_that_is_still_to_come(string where)
    {
        await using var stores = await Stores.NewAsync(postgres);
        var archive = await FullPress.ArchiveAsync(stores);
        var (path, place) = ($"$.quotes[0].{where}", archive["quotes"]![0]!);
        foreach (var (hours, refused) in new[] { (2, new[] { path }), (0, []) })
        {
            var (block, name) = where.Split('.') is [var list, var inside] ? (place[list[..^3]]![0]!, inside) : (place, where);
            block[name] = TimeProvider.System.GetUtcNow().AddHours(hours).ToString("yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'", CultureInfo.InvariantCulture);

            Assert.Equal(refused, (await stores.Archives.ImportAsync(FullPress.Bytes(archive))).Problems.Select(problem => problem.Path));
        }
    }

    [Fact]
    public async Task An_archive_with_one_value_spoiled_is_refused_or_all_its_pages_are_shown()
    {
        var connection = await postgres.NewDatabaseAsync();
        await using var stores = Stores.On(connection);
        var whole = await FullPress.ArchiveAsync(stores);
        // The second quote's documents are like the first one's.
        var spoiled = Spoiling.All(whole).Where(one => !one.What.StartsWith("quotes.1.job >", StringComparison.Ordinal) && !one.What.StartsWith("quotes.1.result >", StringComparison.Ordinal)).ToList();
        var taken = new List<(string What, Guid Press)>();
        var failures = new List<string>();
        var step = Math.Max(1, spoiled.Count / LongRuns.Count(usual: 60, atLength: spoiled.Count));
        foreach (var (what, spoil) in spoiled.Where((_, index) => index % step == 0))
        {
            var archive = whole.DeepClone();
            spoil(archive);
            try
            {
                var read = await stores.Archives.ImportAsync(FullPress.Bytes(archive));
                if (read.Succeeded)
                {
                    taken.Add((what, read.Value.Id.Value));
                }
                else if (read.Problems.Any(problem => problem.Rule.Length == 0))
                {
                    failures.Add($"{what}: refused without a sentence");
                }
            }
            catch (Exception exception)
            {
                failures.Add($"{what}: {exception.GetType().Name} {exception.Message.Split('\n')[0]}");
            }
        }

        await using var app = await AppProcess.StartAsync(("ConnectionStrings__PressRun", connection));
        foreach (var (what, press) in taken)
        {
            foreach (var page in PagesOf(what))
            {
                await LookAsync(app, press, page, what, failures);
            }
        }

        Assert.True(failures.Count == 0, $"{failures.Count} of {taken.Count} taken in of {spoiled.Count}:\n" + string.Join('\n', failures.Take(200)));
    }

    [Fact]
    public async Task What_could_not_have_been_typed_is_told_by_its_place_and_nothing_of_the_press_is_taken_in()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var whole = await FullPress.ArchiveAsync(stores);
        (string Place, string Value, string Path)[] forged =
        [
            ("press.name", "\"\\u202ePress\"", "$.press.name"),
            ("press.name", $"\"{new string('w', 121)}\"", "$.press.name"),
            ("stocks.text.name", "\"\\u200b\"", "$.stocks.text.name"),
            ("channels.0.name", "\"a\\u2066b\"", "$.channels[0].name"),
            ("shops.0.name", "\"\\u202e\"", "$.shops[0].name"),
            ("bench.steps.3.name", "\"collate\"", "$.bench.steps[3].name"),
            ("titles.0.title", $"\"{new string('w', 201)}\"", "$.titles[0].title"),
            ("titles.0.about", $"\"{new string('w', 1001)}\"", "$.titles[0].about"),
            ("titles.0.editions.0.printedOn", "\"9999-12-31\"", "$.titles[0].editions[0].printedOn"),
            ("titles.0.editions.0.plans.0.name", $"\"{new string('w', 201)}\"", "$.titles[0].editions[0].plans[0].name"),
            ("titles.0.editions.0.movements.1.day", "\"9999-12-31\"", "$.titles[0].editions[0].movements[1].day"),
            ("titles.0.editions.0.movements.3.amount", "\"5.00\"", "$.titles[0].editions[0].movements[3].amount"),
            ("titles.0.editions.0.movements.3.note", $"\"{new string('w', 501)}\"", "$.titles[0].editions[0].movements[3].note"),
            ("titles.0.editions.0.movements.3.takesBack", "3", "$.titles[0].editions[0].movements[3].takesBack"),
            ("titles.0.editions.0.movements.4.kind", "\"sold\"", "$.titles[0].editions[0].movements[6].settledBy"),
            ("titles.0.editions.0.fixes.0.text", "\"a\\u202eb\"", "$.titles[0].editions[0].fixes[0].text"),
            ("titles.0.editions.0.fixes.0.page", "10001", "$.titles[0].editions[0].fixes[0].page"),
            ("titles.0.editions.0.claims.0.name", "\"a\\u202eb\"", "$.titles[0].editions[0].claims.name"),
            ("titles.0.editions.0.payments.0.amount", "\"0\"", "$.titles[0].editions[0].payments[0].amount"),
            ("titles.0.editions.0.tallies.0.begunAt", "\"0001-01-01T00:00:00.000000Z\"", "$.titles[0].editions[0].tallies[0].begunAt"),
            ("titles.0.editions.0.tallies.0.wanted", "1000", "$.titles[0].editions[0].tallies[0].wanted"),
            ("titles.0.editions.0.tallies.0.entries.0.copies", "0", "$.titles[0].editions[0].tallies[0].entries[0]"),
            ("titles.0.editions.0.tallies.0.entries.0.takesBack", "0", "$.titles[0].editions[0].tallies[0].entries[0].takesBack"),
            ("titles.0.editions.0.tallies.0.writtenInto", "1", "$.titles[0].editions[0].tallies[0].writtenInto"),
            ("quotes.0.number", "2147483647", "$.quotes[0].number"),
            ("quotes.0.links.0.part", "99", "$.quotes[0].links[0].part"),
            ("quotes.0.links.0.tryTo", "2147483647", "$.quotes[0].links[0].rights.tryFrom"),
            ("quotes.0.links.0.answer", "\"turnedDown\"", "$.quotes[0].links[0].answer"),
            ("quotes.0.links.0.endsAt", "\"9999-12-31T23:59:59.000000Z\"", "$.quotes[0].links[0].endsAt"),
            ("quotes.0.landed", "\"0.01\"", "$.quotes[0].result"),
            ("quotes.0.result", "\"[]\"", "$.quotes[0].result"),
            ("quotes.0.result", $"\"{new string('[', 100_000)}\"", "$.quotes[0].result"),
            ("quotes.0.job", "\"garbage\"", "$.quotes[0].job"),
            ("quotes.0.facts > currency", "\"eur\"", "$.quotes[0].facts.currency"),
            ("quotes.0.facts > colour", "\"url(x)\"", "$.quotes[0].facts.colour"),
            ("quotes.0.facts > until", "\"0001-01-01\"", "$.quotes[0].facts.until"),
            ("quotes.0.facts > lists", "[]", "$.quotes[0].facts.lists"),
            ("quotes.0.events.1.words", $"\"{new string('w', 2001)}\"", "$.quotes[0].events[1]"),
            ("quotes.0.events.2.quantity", "null", "$.quotes[0].events[2]"),
            ("quotes.0.events.3.amount", "null", "$.quotes[0].events[3]"),
            ("quotes.0.events.7.part", "99", "$.quotes[0].events[7]"),
            ("quotes.0.events.7.part", "null", "$.quotes[0].events[7]"),
            ("quotes.0.events.8.quantity", "null", "$.quotes[0].events[8]"),
            ("quotes.1.replaces", "null", "$.quotes[0].events[8]"),
        ];

        var told = new List<string>();
        foreach (var (place, value, _) in forged)
        {
            var archive = whole.DeepClone();
            Spoiling.Put(archive, place, JsonNode.Parse(value));
            var read = await stores.Archives.ImportAsync(FullPress.Bytes(archive));
            told.Add($"{place} = {Excerpt.Of(value)}: {(read.Succeeded ? "taken in" : read.Problems[0].Path)}");
        }

        Assert.Equal(string.Join('\n', forged.Select(one => $"{one.Place} = {Excerpt.Of(one.Value)}: {one.Path}")), string.Join('\n', told));
        Assert.Single(await stores.Presses.ListAsync());
    }

    // UAX #9: an override turns what stands after it, so that a name reads as another.
    [Fact]
    public async Task No_text_of_an_archive_is_taken_in_that_reads_as_something_else_than_it_is()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var whole = JsonNode.Parse((await stores.Archives.ExportAsync(await FullPress.FilledAsync(stores)))!)!;
        // Of the long lists of a job and its costing one line of each kind is like the others. Remarks are free text, each in a paragraph of its own, which ends what turns; fingerprints are worked out anew.
        var texts = Spoiling.TextsOf(whole).Where(text => !FreeText().IsMatch(text.Place)).GroupBy(text => text.Place.Contains(" > ", StringComparison.Ordinal) ? Digits().Replace(text.Place, "*") : text.Place, StringComparer.Ordinal).Select(alike => alike.First()).ToList();
        Assert.InRange(texts.Count, 200, 2_000);
        var taken = new List<string>();
        foreach (var (place, text) in texts)
        {
            var archive = whole.DeepClone();
            Spoiling.Put(archive, place, JsonValue.Create(text + "\u202E1"));
            if ((await stores.Archives.ImportAsync(FullPress.Bytes(archive))).Succeeded)
            {
                taken.Add(place);
            }
        }

        Assert.True(taken.Count == 0, string.Join(Environment.NewLine, taken));
    }

    [Fact]
    public async Task Lines_that_come_to_more_copies_than_a_ledger_holds_are_refused_where_they_stand()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var archive = await FullPress.ArchiveAsync(stores);
        var edition = archive["titles"]![0]!["editions"]![1]!.AsObject();
        edition.Remove("copiesOnHand");
        edition["movements"] = new JsonArray([.. Enumerable.Range(0, 2_001).Select(_ => JsonNode.Parse("""{ "day": "2026-01-01", "kind": "returned", "change": 1000000 }"""))]);

        Assert.Equal("$.titles[0].editions[1].movements", Assert.Single((await stores.Archives.ImportAsync(FullPress.Bytes(archive))).Problems).Path);
    }

    private static IEnumerable<string> PagesOf(string what) => what.Split('.', ' ')[0] switch
    {
        "quotes" => OfQuotes,
        "titles" => OfTitles,
        "press" => OfQuotes.Concat(OfTitles),
        _ => OfLibraries.Concat(OfTitles),
    };

    private static async Task LookAsync(AppProcess app, Guid press, string page, string what, List<string> failures)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, page);
        request.Headers.Add("Cookie", $"press={press}");
        using var late = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        using var answer = await SendAsync();
        if (answer is null)
        {
            failures.Add($"{what}: {page} is not there after half a minute");
            return;
        }

        var text = await answer.Content.ReadAsStringAsync();
        if (answer.StatusCode >= HttpStatusCode.InternalServerError || text.Contains("could not be shown", StringComparison.Ordinal) || text.Contains("could not be read", StringComparison.Ordinal))
        {
            failures.Add(string.Create(CultureInfo.InvariantCulture, $"{what}: {page} {(int)answer.StatusCode}"));
        }

        async Task<HttpResponseMessage?> SendAsync()
        {
            try
            {
                return await app.Http.SendAsync(request, late.Token);
            }
            catch (OperationCanceledException)
            {
                return null;
            }
        }
    }

    [GeneratedRegex(@"^quotes\.\d+\.(?:events\.\d+\.(?:words|fingerprint)|fingerprint)$")]
    private static partial Regex FreeText();

    [GeneratedRegex(@"(?<=[.\s])\d+(?=[.\s]|$)")]
    private static partial Regex Digits();
}
