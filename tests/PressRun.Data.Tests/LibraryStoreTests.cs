using PressRun.Data.Bench;
using PressRun.Data.Shops;
using PressRun.Data.Tests.Fixtures;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;
using PressRun.Engine.Sheets;

namespace PressRun.Data.Tests;

public sealed class LibraryStoreTests(PostgresFixture postgres)
{
    [Fact]
    public async Task Things_of_all_libraries_come_back_as_they_were_saved()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        Assert.Equal([SmallPress.Cover, SmallPress.Text], (await stores.Stocks.ListAsync(small.Id)).Select(stock => stock.Item));
        Assert.Equal(SmallPress.BoardMailer, Assert.Single(await stores.Mailers.ListAsync(small.Id)).Item);
        Assert.Equivalent(SmallPress.Letter, Assert.Single(await stores.Services.ListAsync(small.Id)).Item, strict: true);
        Assert.Equal(SmallPress.Post, Assert.Single(await stores.Channels.ListAsync(small.Id)).Item);
        Assert.Equivalent(SmallPress.Bench, (await stores.Bench.LoadAsync(small.Id))!.Item, strict: true);
        Assert.Equivalent(SmallPress.Prices, (await stores.PriceLists.LoadAsync(small.Id, small.List.Id))!.Prices, strict: true);
    }

    [Theory]
    [InlineData("120", null)]
    [InlineData("80", PaperCategory.Cover)]
    [InlineData("60.5", PaperCategory.Text)]
    [InlineData("24", PaperCategory.Bond)]
    public async Task A_paper_weight_is_kept_as_its_maker_states_it(string stated, PaperCategory? category)
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var number = decimal.Parse(stated, System.Globalization.CultureInfo.InvariantCulture);
        var weight = category is { } kind ? PaperWeight.FromBasisWeight(number, kind) : PaperWeight.FromGrammage(number);

        SmallPress.Saved(await stores.Stocks.SaveAsync(small.Id, new LibraryItem<Stock>(SmallPress.Text with { Id = "other", Weight = weight }, false, 0)));

        Assert.Equal(weight, (await stores.Stocks.ListAsync(small.Id)).Single(stock => stock.Item.Id == "other").Item.Weight);
    }

    [Fact]
    public async Task A_price_list_keeps_the_order_of_its_sheets_because_it_decides_between_equals()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var sheet = small.List.Prices.Sheets[0];
        Sheet[] sheets = [sheet with { Id = "zz-longer-name" }, sheet with { Id = "a" }, sheet];

        SmallPress.Saved(await stores.PriceLists.SaveAsync(small.Id, small.List with { Prices = small.List.Prices with { Sheets = sheets } }));

        Assert.Equal(sheets, (await stores.PriceLists.LoadAsync(small.Id, small.List.Id))!.Prices.Sheets);
    }

    [Fact]
    public async Task The_list_in_force_is_the_latest_that_has_begun()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var later = new DateOnly(2026, 9, 1);
        SmallPress.Saved(await stores.PriceLists.SaveAsync(
            small.Id, new PriceListRecord(Guid.Empty, small.List.ShopId, small.List.Prices with { ValidFrom = later }, 0)));

        async Task<DateOnly?> InForce(DateOnly on) => (await stores.PriceLists.InForceAsync(small.Id, small.List.ShopId, on))?.Prices.ValidFrom;

        Assert.Null(await InForce(SmallPress.ListDate.AddDays(-1)));
        Assert.Equal(SmallPress.ListDate, await InForce(SmallPress.ListDate));
        Assert.Equal(SmallPress.ListDate, await InForce(later.AddDays(-1)));
        Assert.Equal(later, await InForce(later));
    }

    [Fact]
    public async Task A_shop_has_one_list_a_day()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        var again = await stores.PriceLists.SaveAsync(small.Id, small.List with { Id = Guid.Empty, Version = 0 });

        Assert.Equal("$.validFrom", Assert.Single(Assert.IsType<SaveResult<PriceListRecord>.Refused>(again).Problems).Path);
    }

    [Fact]
    public async Task What_breaks_the_job_files_rules_is_told_by_path_and_not_stored()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var prices = small.List.Prices;

        var list = await stores.PriceLists.SaveAsync(small.Id, small.List with { Prices = prices with { Print = [prices.Print[0] with { SheetId = "none" }] } });
        var stock = await stores.Stocks.SaveAsync(small.Id, new LibraryItem<Stock>(SmallPress.Text with { Id = "thin", Weight = default }, false, 0));
        var channel = await stores.Channels.SaveAsync(small.Id, new LibraryItem<Channel>(SmallPress.Post with { Id = "x", MailerId = "tube" }, false, 0));
        var bench = await stores.Bench.LoadAsync(small.Id);
        var rates = await stores.Bench.SaveAsync(small.Id, bench! with { Item = bench.Item with { HourlyRate = -1m } });

        Assert.Equal("$.print[0].sheet", Assert.Single(Assert.IsType<SaveResult<PriceListRecord>.Refused>(list).Problems).Path);
        Assert.Equal("$.weight", Assert.Single(Assert.IsType<SaveResult<LibraryItem<Stock>>.Refused>(stock).Problems).Path);
        Assert.Equal("$.mailer", Assert.Single(Assert.IsType<SaveResult<LibraryItem<Channel>>.Refused>(channel).Problems).Path);
        Assert.Equal("$.hourlyRate", Assert.Single(Assert.IsType<SaveResult<LibraryItem<BenchRates>>.Refused>(rates).Problems).Path);
        Assert.Equal(2, (await stores.Stocks.ListAsync(small.Id)).Count);
    }

    [Fact]
    public async Task A_press_is_warned_as_usual_until_it_sets_limits_of_its_own_and_a_second_saver_sees_the_first()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var usual = await stores.BenchLimits.LoadAsync(small.Id);
        Assert.Equal(new LibraryItem<BenchLimits>(BenchLimits.Usual, false, 0), usual);

        var own = BenchLimits.Usual with { StapleLeg = Length.FromMillimetres(8m), ScoreOver = 200m };
        var saved = SmallPress.Saved(await stores.BenchLimits.SaveAsync(small.Id, usual with { Item = own }));
        Assert.Equal(own, saved.Item);
        Assert.Equal(saved, await stores.BenchLimits.LoadAsync(small.Id));
        Assert.Equal(saved, Assert.IsType<SaveResult<LibraryItem<BenchLimits>>.Conflict>(await stores.BenchLimits.SaveAsync(small.Id, usual with { Item = own })).Theirs);
        var refused = await stores.BenchLimits.SaveAsync(small.Id, saved with { Item = own with { ScoreOver = -1m } });
        Assert.Equal("$.scoreOver", Assert.Single(Assert.IsType<SaveResult<LibraryItem<BenchLimits>>.Refused>(refused).Problems).Path);

        var again = (await stores.Archives.ImportAsync((await stores.Archives.ExportAsync(small.Id))!)).Value;
        Assert.Equal(own, (await stores.BenchLimits.LoadAsync(again.Id)).Item);
    }

    [Fact]
    public async Task Deleting_what_is_in_use_is_refused_with_where_it_is_used()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        var text = Assert.IsType<DeleteResult.InUse>(await stores.Stocks.DeleteAsync(small.Id, await stores.Stocks.KeptAsync(small.Id, SmallPress.Text)));
        var mailer = Assert.IsType<DeleteResult.InUse>(await stores.Mailers.DeleteAsync(small.Id, await stores.Mailers.KeptAsync(small.Id, SmallPress.BoardMailer)));
        var list = Assert.IsType<DeleteResult.InUse>(await stores.PriceLists.DeleteAsync(small.Id, small.List.Id));
        var shop = Assert.IsType<DeleteResult.InUse>(await stores.Shops.DeleteAsync(small.Id, small.List.ShopId));

        Assert.Equal(
            [
                "Tidepool Almanac, printing 1: inside", "Tidepool Almanac, printing 1: plan Millrace, bind at home", "Millrace: prices from 2026-01-01",
            ],
            text.Where);
        Assert.Equal(["Own web shop"], mailer.Where);
        Assert.Equal(["Tidepool Almanac, printing 1: plan Millrace, bind at home"], list.Where);
        Assert.Equal(list.Where, shop.Where);
    }

    [Fact]
    public async Task What_is_not_in_use_is_deleted()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        Assert.IsType<DeleteResult.Deleted>(await stores.Editions.DeleteAsync(small.Id, small.Edition));
        Assert.IsType<DeleteResult.Deleted>(await stores.Channels.DeleteAsync(small.Id, await stores.Channels.KeptAsync(small.Id, SmallPress.Post)));

        Assert.IsType<DeleteResult.Deleted>(await stores.Mailers.DeleteAsync(small.Id, await stores.Mailers.KeptAsync(small.Id, SmallPress.BoardMailer)));
        Assert.IsType<DeleteResult.Deleted>(await stores.Services.DeleteAsync(small.Id, await stores.Services.KeptAsync(small.Id, SmallPress.Letter)));
        Assert.IsType<DeleteResult.Deleted>(await stores.Shops.DeleteAsync(small.Id, small.List.ShopId));
        Assert.IsType<DeleteResult.Deleted>(await stores.Stocks.DeleteAsync(small.Id, await stores.Stocks.KeptAsync(small.Id, SmallPress.Text)));
        Assert.IsType<DeleteResult.Gone>(await stores.Stocks.DeleteAsync(small.Id, await stores.Stocks.KeptAsync(small.Id, SmallPress.Text)));
    }

    [Fact]
    public async Task What_somebody_else_changed_stays_when_it_is_taken_out_of_an_older_page()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var mine = SmallPress.Saved(await stores.Stocks.SaveAsync(small.Id, new LibraryItem<Stock>(SmallPress.Text with { Id = "spare", Name = "Spare" }, false, 0)));
        var theirs = SmallPress.Saved(await stores.Stocks.SaveAsync(small.Id, mine with { Item = mine.Item with { Name = "Spare, gauged" } }));

        Assert.IsType<DeleteResult.Changed>(await stores.Stocks.DeleteAsync(small.Id, mine));
        Assert.Equal("Spare, gauged", (await stores.Stocks.KeptAsync(small.Id, mine.Item)).Item.Name);
        Assert.IsType<DeleteResult.Deleted>(await stores.Stocks.DeleteAsync(small.Id, theirs));
    }

    [Fact]
    public async Task An_archived_thing_is_offered_no_more_and_still_costs_old_plans()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var text = (await stores.Stocks.ListAsync(small.Id)).Single(stock => stock.Item.Id == SmallPress.Text.Id);

        SmallPress.Saved(await stores.Stocks.SaveAsync(small.Id, text with { Archived = true }));

        Assert.Equal([SmallPress.Cover], (await stores.Stocks.ListAsync(small.Id)).Select(stock => stock.Item));
        Assert.Equal(2, (await stores.Stocks.ListAsync(small.Id, archived: true)).Count);
        Assert.Contains(SmallPress.Text, (await stores.Plans.SourceAsync(small.Id, small.Plan.Id))!.Build().Stocks);
    }

    [Fact]
    public async Task The_second_of_two_saves_on_one_version_sees_what_the_first_one_stored()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var mailer = Assert.Single(await stores.Mailers.ListAsync(small.Id));
        var first = SmallPress.Saved(await stores.Mailers.SaveAsync(small.Id, mailer with { Item = mailer.Item with { Price = 0.40m } }));

        var second = await stores.Mailers.SaveAsync(small.Id, mailer with { Item = mailer.Item with { Price = 0.99m } });

        Assert.Equal(first, Assert.IsType<SaveResult<LibraryItem<Mailer>>.Conflict>(second).Theirs);
    }

    [Fact]
    public async Task An_id_is_taken_once()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        var again = await stores.Stocks.SaveAsync(small.Id, new LibraryItem<Stock>(SmallPress.Text with { Name = "Other" }, false, 0));

        Assert.Equal("$.id", Assert.Single(Assert.IsType<SaveResult<LibraryItem<Stock>>.Refused>(again).Problems).Path);
    }

    [Fact]
    public async Task A_service_has_several_dated_tables_of_one_id()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var next = SmallPress.Letter with { ValidFrom = new DateOnly(2027, 1, 1), Steps = [new MassStep(Mass.FromGrams(100m), 1.05m)] };

        SmallPress.Saved(await stores.Services.SaveAsync(small.Id, new LibraryItem<PostageService>(next, false, 0)));

        Assert.Equal(
            [SmallPress.Letter.ValidFrom, next.ValidFrom], (await stores.Services.ListAsync(small.Id)).Select(service => service.Item.ValidFrom));
    }
}
