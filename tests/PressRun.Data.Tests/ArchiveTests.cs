using System.Text;
using System.Text.Json.Nodes;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Shops;
using PressRun.Data.Tests.Fixtures;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Engine.Paper;
using PressRun.Engine.Reprint;

namespace PressRun.Data.Tests;

public sealed class ArchiveTests(PostgresFixture postgres)
{
    [Fact]
    public async Task The_sample_press_is_imported_whole()
    {
        await using var stores = await Stores.NewAsync(postgres);

        var press = (await stores.Archives.ImportAsync(Repository.SamplePress)).Value;

        var shelf = await stores.Shelf.ShowAsync(press.Id, new ShelfFilter(Take: 200));
        Assert.True(shelf.Total >= 12, $"{shelf.Total} titles");
        Assert.True(shelf.Titles.Sum(title => title.Editions.Count) >= 30);
        Assert.True((await stores.Stocks.ListAsync(press.Id)).Count >= 14);
        Assert.True((await stores.Shops.ListAsync(press.Id)).Count >= 4);
        Assert.Contains(shelf.Titles.SelectMany(title => title.Editions), edition => edition.Plan is not null);
    }

    [Fact]
    public async Task Every_plan_of_the_sample_press_can_be_costed()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var press = (await stores.Archives.ImportAsync(Repository.SamplePress)).Value;

        Assert.NotEmpty(await CostsAsync(stores, press.Id));
    }

    [Fact]
    public async Task An_exported_press_imported_again_costs_the_same_and_is_exported_to_the_same_bytes()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var press = (await stores.Archives.ImportAsync(Repository.SamplePress)).Value;
        var exported = await stores.Archives.ExportAsync(press.Id);
        await using var elsewhere = await Stores.NewAsync(postgres);

        var again = (await elsewhere.Archives.ImportAsync(exported!)).Value;

        Assert.Equal(Encoding.UTF8.GetString(exported!), Encoding.UTF8.GetString((await elsewhere.Archives.ExportAsync(again.Id))!));
        Assert.Equal(await CostsAsync(stores, press.Id), await CostsAsync(elsewhere, again.Id));
    }

    [Fact]
    public async Task A_plan_of_two_halves_goes_out_and_comes_in_again()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var inside = small.Edition.Parts[1].Id;
        SmallPress.Saved(await stores.Plans.SaveAsync(small.Id, small.Plan with
        {
            Stocks = new Dictionary<Guid, string>(small.Plan.Stocks) { [inside] = SmallPress.Text.Id },
            SecondHalf = new PlanHalf(inside, SmallPress.Cover.Id),
        }));
        var exported = await stores.Archives.ExportAsync(small.Id);
        await using var elsewhere = await Stores.NewAsync(postgres);

        var again = (await elsewhere.Archives.ImportAsync(exported!)).Value;

        Assert.Contains("\"halves\"", Encoding.UTF8.GetString(exported!), StringComparison.Ordinal);
        Assert.Equal(Encoding.UTF8.GetString(exported!), Encoding.UTF8.GetString((await elsewhere.Archives.ExportAsync(again.Id))!));
        Assert.Equal(await CostsAsync(stores, small.Id), await CostsAsync(elsewhere, again.Id));
    }

    [Fact]
    public async Task A_shop_that_has_no_price_list_yet_goes_out_and_comes_in_again()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        SmallPress.Saved(await stores.Shops.SaveAsync(small.Id, new ShopRecord("", "Sluice", false, [], 0)));
        var exported = await stores.Archives.ExportAsync(small.Id);

        var again = (await stores.Archives.ImportAsync(exported!)).Value;

        Assert.Equal(["Millrace", "Sluice"], (await stores.Shops.ListAsync(again.Id)).Select(shop => shop.Name));
        Assert.Equal(Encoding.UTF8.GetString(exported!), Encoding.UTF8.GetString((await stores.Archives.ExportAsync(again.Id))!));
    }

    [Theory]
    [InlineData("Жуки и мосты", "жуки-и-мосты")]
    [InlineData("ספר הים", "ספר-הים")]
    [InlineData("海の本", "海の本")]
    [InlineData("Straße № 7", "straße-no-7")]
    [InlineData("हिन्दी", "ह-नद")]
    [InlineData("바다 책", "바다-책")]
    [InlineData("\U0001F980 & \U0001F41F", "untitled")]
    public async Task A_press_with_a_title_in_any_script_goes_out_and_comes_in_again(string words, string slug)
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var first = SmallPress.Saved(await stores.Titles.AddAsync(small.Id, new NewTitle(words, words, "#000000", words)));
        var second = SmallPress.Saved(await stores.Titles.AddAsync(small.Id, new NewTitle(words, words, "#000000", words)));
        var exported = await stores.Archives.ExportAsync(small.Id);

        var again = (await stores.Archives.ImportAsync(exported!)).Value;

        Assert.Equal([slug.Normalize(NormalizationForm.FormKD), first.Slug + "-2"], [first.Slug, second.Slug]);
        Assert.Equal(words, (await stores.Titles.FindAsync(again.Id, second.Slug))?.Title);
        Assert.Equal(Encoding.UTF8.GetString(exported!), Encoding.UTF8.GetString((await stores.Archives.ExportAsync(again.Id))!));
    }

    [Fact]
    public void Every_sign_that_a_title_may_hold_gives_a_name_for_addresses_that_an_archive_takes()
    {
        var refused = Enumerable.Range(0, char.MaxValue + 1).Where(sign => !char.IsSurrogate((char)sign))
            .Where(sign => !SearchText.IsSlug(SearchText.Slug($"a{(char)sign} {(char)sign}b")))
            .Select(sign => $"U+{sign:X4}");

        Assert.Empty(refused);
        Assert.True(SearchText.IsSlug(SearchText.FreeSlug(new string('ж', 200), [new string('ж', 80)])));
    }

    [Fact]
    public async Task What_is_archived_and_what_a_plan_keeps_survive_an_export()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var text = (await stores.Stocks.ListAsync(small.Id)).Single(stock => stock.Item.Id == "text");
        SmallPress.Saved(await stores.Stocks.SaveAsync(small.Id, text with { Archived = true }));
        var letter = Assert.Single(await stores.Services.ListAsync(small.Id));
        SmallPress.Saved(await stores.Services.SaveAsync(small.Id, letter with { Archived = true }));
        SmallPress.Saved(await stores.Presses.SaveAsync(small.Press with { ReclaimsTax = true }));
        var reprint = new PlanReprint(
            new ReprintRequest(7, new HistoryDemand([9, 14], 6.0875m, 1.5m, 0.5m, 0m, 3), null, 0.5m, 0m, 0.05m, 400m, 0, 200, 1),
            new Horizon(26, HorizonUnit.Weeks), new DateOnly(2026, 11, 25), new EventAhead(null, 1.5m, 3), new OpinionDemand(20m, 40m, 90m, 0));
        SmallPress.Saved(await stores.Plans.SaveAsync(small.Id, small.Plan with { Reprint = reprint }));
        var newer = small.List.Prices with { ValidFrom = new DateOnly(2026, 2, 1), SetUp = new SetUp(50m, 0m, 0m) };
        SmallPress.Saved(await stores.PriceLists.SaveAsync(small.Id, small.List with { Id = Guid.Empty, Version = 0, Prices = newer }));

        var copy = (await stores.Archives.ImportAsync((await stores.Archives.ExportAsync(small.Id))!)).Value;

        Assert.True(copy.ReclaimsTax);
        Assert.Equal(["cover-card"], (await stores.Stocks.ListAsync(copy.Id)).Select(stock => stock.Item.Id));
        Assert.Empty(await stores.Services.ListAsync(copy.Id));
        var edition = await stores.Editions.FindAsync(copy.Id, "tidepool-almanac", 1);
        var plan = Assert.Single(await stores.Plans.OfEditionAsync(copy.Id, edition!.Id));
        Assert.Equivalent(reprint, plan.Reprint, strict: true);
        Assert.Equal(5m, (await stores.Plans.SourceAsync(copy.Id, plan.Id))!.Build().Shop.SetUp.Order);
        Assert.Equal(await stores.Archives.ExportAsync(small.Id), await stores.Archives.ExportAsync(copy.Id));
    }

    [Fact]
    public async Task A_press_with_one_problem_is_not_imported_at_all()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var json = JsonNode.Parse(await stores.Archives.ExportAsync(small.Id))!;
        json["titles"]![0]!["editions"]![0]!["plans"]![0]!["stocks"]!["cover"] = "velvet";

        var result = await stores.Archives.ImportAsync(Encoding.UTF8.GetBytes(json.ToJsonString()));

        Assert.Equal("$.titles[0].editions[0].plans[0].stocks.cover", Assert.Single(result.Problems).Path);
        Assert.Single(await stores.Presses.ListAsync());
    }

    [Theory]
    [InlineData("$.schema", "schema", "\"pressrun/press/2\"")]
    [InlineData("$.press.currency", "press.currency", "\"EURO\"")]
    [InlineData("$.stocks.text.weight", "stocks.text.weight", "\"heavy\"")]
    [InlineData("$.shops[0].priceLists[0].print[0].sheet", "shops.0.priceLists.0.print.0.sheet", "\"none\"")]
    [InlineData("$.channels[0].mailer", "channels.0.mailer", "\"tube\"")]
    [InlineData("$.titles[0].id", "titles.0.id", "\"Tidepool Almanac\"")]
    [InlineData("$.titles[0].id", "titles.0.id", "\"жуки/мосты\"")]
    [InlineData("$.titles[0].id", "titles.0.id", "\"Жуки\"")]
    [InlineData("$.titles[0].id", "titles.0.id", "\"-жуки\"")]
    [InlineData("$.titles[0].colour", "titles.0.colour", "\"red\"")]
    [InlineData("$.titles[0].editions[0].parts[1].stock", "titles.0.editions.0.parts.1.stock", "\"velvet\"")]
    [InlineData("$.titles[0].editions[0].plans[0].shop", "titles.0.editions.0.plans.0.shop", "\"nobody\"")]
    [InlineData("$.titles[0].editions[0].plans[0].date", "titles.0.editions.0.plans.0.date", "\"2025-12-31\"")]
    [InlineData("$.titles[0].editions[0].plans[0].finishing[0]", "titles.0.editions.0.plans.0.finishing.0", "\"gilding\"")]
    [InlineData("$.titles[0].editions[0].plans[0].benchSteps[1]", "titles.0.editions.0.plans.0.benchSteps.1", "\"gilding\"")]
    [InlineData("$.titles[0].editions[0].plans[0].quantity", "titles.0.editions.0.plans.0.quantity", "0")]
    [InlineData("$.titles[0].editions[0].plans[0].halves.part", "titles.0.editions.0.plans.0.halves", "{ \"part\": \"spread\", \"second\": \"text\" }")]
    [InlineData("$.titles[0].editions[0].plans[0].halves.second", "titles.0.editions.0.plans.0.halves", "{ \"part\": \"inside\", \"second\": \"text\" }")]
    [InlineData("$.titles[0].editions[0].prise", "titles.0.editions.0.prise", "1")]
    [InlineData("$.archived.stocks[0]", "archived.stocks", "[\"velvet\"]")]
    public async Task A_problem_is_told_by_its_path(string path, string place, string value)
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var json = JsonNode.Parse(await stores.Archives.ExportAsync(small.Id))!;
        Put(json, place.Split('.'), JsonNode.Parse(value));

        var result = await stores.Archives.ImportAsync(Encoding.UTF8.GetBytes(json.ToJsonString()));

        Assert.Equal(path, Assert.Single(result.Problems).Path);
    }

    [Fact]
    public async Task A_quote_that_was_changed_after_it_was_frozen_is_refused_by_its_fingerprint()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        await SmallQuote.SharedAsync(stores, small);
        var text = Encoding.UTF8.GetString((await stores.Archives.ExportAsync(small.Id))!);

        var result = await stores.Archives.ImportAsync(Encoding.UTF8.GetBytes(text.Replace("Paper is from the old list.", "Paper is from the new list.", StringComparison.Ordinal)));

        Assert.Equal("$.quotes[0].fingerprint", Assert.Single(result.Problems).Path);
    }

    [Fact]
    public async Task A_link_opens_its_quote_after_a_restore_and_stays_with_the_first_press_where_one_is_taken_in_twice()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var (quote, link, _) = await SmallQuote.SharedAsync(stores, small);
        var archive = (await stores.Archives.ExportAsync(small.Id))!;
        await using var elsewhere = await Stores.NewAsync(postgres);

        var restored = (await elsewhere.Archives.ImportAsync(archive)).Value;
        var again = (await elsewhere.Archives.ImportAsync(archive)).Value;

        var look = (await SmallQuote.LookAsync(elsewhere, link.Secret))!;
        Assert.Equal((restored.Id, true), (look.Press, look.IsOpen));
        Assert.Equal(quote.Fingerprint, (await elsewhere.Quotes.FindAsync(again.Id, 1))!.Quote.Fingerprint);
        // It opens nothing in the second press; nobody there has said that its reader is not asked any more.
        var copied = Assert.Single((await elsewhere.Quotes.FindAsync(again.Id, 1))!.Links);
        Assert.Equal((false, null), (copied.IsOpen(TimeProvider.System.GetUtcNow()), copied.EndedAt));
    }

    [Fact]
    public async Task A_link_of_an_archive_that_anybody_takes_in_opens_nothing_and_waits_for_the_press_that_made_it()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var (_, link, _) = await SmallQuote.SharedAsync(stores, await SmallPress.CreateAsync(stores));
        var archive = (await stores.Archives.ExportAsync((await stores.Presses.ListAsync()).Single().Id))!;
        await using var elsewhere = await Stores.NewAsync(postgres);

        var taken = (await elsewhere.Archives.TakeInAsync(archive)).Value;
        Assert.Null(await SmallQuote.LookAsync(elsewhere, link.Secret));
        var copied = Assert.Single((await elsewhere.Quotes.FindAsync(taken.Id, 1))!.Links);
        Assert.Equal((false, null), (copied.IsOpen(TimeProvider.System.GetUtcNow()), copied.EndedAt));

        var restored = (await elsewhere.Archives.ImportAsync(archive)).Value;
        Assert.Equal((restored.Id, true), ((await SmallQuote.LookAsync(elsewhere, link.Secret))!.Press, (await SmallQuote.LookAsync(elsewhere, link.Secret))!.IsOpen));
    }

    [Fact]
    public async Task A_problem_in_a_folder_names_the_file()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var folder = Directory.CreateTempSubdirectory("pressrun-archive-").FullName;
        try
        {
            CopyFolder(Repository.SamplePress, folder);
            var file = Directory.GetFiles(Path.Combine(folder, "titles")).Order(StringComparer.Ordinal).ElementAt(2);
            var json = JsonNode.Parse(await File.ReadAllTextAsync(file))!;
            json["editions"]![0]!["freeCopies"] = -1;
            await File.WriteAllTextAsync(file, json.ToJsonString());
            var wrongValue = await stores.Archives.ImportAsync(folder);
            await File.WriteAllTextAsync(file, "{ \"id\": ");
            var notJson = await stores.Archives.ImportAsync(folder);

            Assert.Equal($"titles/{Path.GetFileName(file)} $.editions[0].freeCopies", Assert.Single(wrongValue.Problems).Path);
            Assert.Equal($"titles/{Path.GetFileName(file)} $", Assert.Single(notJson.Problems).Path);
            Assert.Empty(await stores.Presses.ListAsync());
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task The_sample_goes_into_an_empty_database_once_however_many_nodes_start()
    {
        await using var stores = await Stores.NewAsync(postgres);

        var seeded = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => stores.Archives.SeedAsync(Repository.SamplePress, CancellationToken.None)));
        var later = await stores.Archives.SeedAsync(Repository.SamplePress, CancellationToken.None);

        Assert.Single(seeded, result => result is { Succeeded: true });
        Assert.Null(later);
        Assert.Single(await stores.Presses.ListAsync());
    }

    [Fact]
    public async Task A_database_with_a_press_is_not_seeded()
    {
        await using var stores = await Stores.NewAsync(postgres);
        SmallPress.Saved(await stores.Presses.CreateAsync(new NewPress("Mine", "EUR", UnitSystem.Metric, PaperRegion.Iso)));

        Assert.Null(await stores.Archives.SeedAsync(Repository.SamplePress, CancellationToken.None));

        Assert.Equal("Mine", Assert.Single(await stores.Presses.ListAsync()).Name);
    }

    /// <summary>Landed cost of every plan, by title, printing and plan.</summary>
    private static async Task<SortedDictionary<string, decimal>> CostsAsync(Stores stores, PressId press)
    {
        await using var db = stores.Context(press);
        var sources = await stores.Plans.SourcesAsync(press, [.. db.RunPlans.Select(plan => plan.Id)]);
        var costs = new SortedDictionary<string, decimal>(StringComparer.Ordinal);
        foreach (var source in sources.Values)
        {
            var job = source.Build();
            var prepared = PreparedJob.Prepare(job);
            var name = $"{source.Edition.Title} {source.Edition.Printing}: {source.Plan.Name}";
            Assert.True(prepared.Succeeded, $"{name}: {string.Join("; ", prepared.Problems)}");
            var estimate = prepared.Value.Estimate(job.Quantity);
            Assert.True(estimate.Succeeded, $"{name}: {string.Join("; ", estimate.Problems)}");
            costs.Add(name, estimate.Value.Totals.LandedCost);
        }

        return costs;
    }

    private static void Put(JsonNode json, string[] place, JsonNode? value)
    {
        foreach (var step in place[..^1])
        {
            json = json is JsonArray ? json[int.Parse(step, System.Globalization.CultureInfo.InvariantCulture)]! : json[step]!;
        }

        if (json is JsonArray list)
        {
            list[int.Parse(place[^1], System.Globalization.CultureInfo.InvariantCulture)] = value;
        }
        else
        {
            json[place[^1]] = value;
        }
    }

    private static void CopyFolder(string from, string to)
    {
        foreach (var file in Directory.GetFiles(from, "*.json", SearchOption.AllDirectories))
        {
            var target = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }
    }
}
