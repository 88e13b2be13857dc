using PressRun.Data.Copies;
using PressRun.Data.RunPlans;
using PressRun.Data.Tests.Fixtures;
using PressRun.Data.Titles;
using PressRun.Engine.Copies;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;

namespace PressRun.Data.Tests;

public sealed class EditionStoreTests(PostgresFixture postgres)
{
    [Fact]
    public async Task An_edition_comes_back_as_it_was_saved()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        var loaded = await stores.Editions.LoadAsync(small.Id, small.Edition.Id);

        Assert.Equivalent(small.Edition, loaded, strict: true);
        var wanted = SmallPress.NewEdition(small.Title.Id);
        Assert.Equivalent(wanted.FixedCosts, loaded!.FixedCosts, strict: true);
        Assert.Equal(wanted.Parts.Select(part => part.Part), loaded.Parts.Select(part => part.Part));
        Assert.Equal((wanted.Page, wanted.Trim, wanted.Weighed, wanted.Price), (loaded.Page, loaded.Trim, loaded.Weighed, loaded.Price));
        Assert.Equal("Tidepool Almanac", loaded.Title);
    }

    [Fact]
    public async Task An_edition_is_found_by_its_address()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        Assert.Equal(small.Edition.Id, (await stores.Editions.FindAsync(small.Id, "tidepool-almanac", 1))!.Id);
        Assert.Null(await stores.Editions.FindAsync(small.Id, "tidepool-almanac", 2));
    }

    [Fact]
    public async Task The_latest_is_the_last_printing_of_the_title_that_was_added_last()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var later = SmallPress.Saved(await stores.Titles.AddWithEditionAsync(small.Id, new("Later", "", "#8a3b2e", ""), SmallPress.NewEdition(Guid.Empty) with { Printing = 1 }));
        SmallPress.Saved(await stores.Editions.CopyForwardAsync(small.Id, small.Edition.Id));

        Assert.Equal((later.Id, 1), ((await stores.Editions.LatestAsync(small.Id))!.TitleId, (await stores.Editions.LatestAsync(small.Id))!.Printing));
        SmallPress.Saved(await stores.Editions.CopyForwardAsync(small.Id, (await stores.Editions.LatestAsync(small.Id))!.Id));
        Assert.Equal((later.Id, 2), ((await stores.Editions.LatestAsync(small.Id))!.TitleId, (await stores.Editions.LatestAsync(small.Id))!.Printing));
    }

    [Fact]
    public async Task A_change_to_a_part_alone_moves_the_version_of_the_edition()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        var saved = SmallPress.Saved(await stores.Editions.SaveAsync(small.Id, WithPages(small.Edition, 32)));

        Assert.NotEqual(small.Edition.Version, saved.Version);
        Assert.Equal(32, saved.Parts[1].Part.Pages);
    }

    [Fact]
    public async Task A_save_on_a_version_that_has_moved_on_stores_nothing_and_shows_theirs()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var theirs = SmallPress.Saved(await stores.Editions.SaveAsync(small.Id, WithPages(small.Edition, 32)));

        var result = await stores.Editions.SaveAsync(small.Id, small.Edition with { Price = 12m });

        Assert.Equivalent(theirs, Assert.IsType<SaveResult<EditionRecord>.Conflict>(result).Theirs, strict: true);
        Assert.Equivalent(theirs, await stores.Editions.LoadAsync(small.Id, small.Edition.Id), strict: true);
    }

    [Fact]
    public async Task Saving_an_earlier_record_on_the_present_version_undoes_what_came_after()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var changed = SmallPress.Saved(await stores.Editions.SaveAsync(
            small.Id, small.Edition with { Price = 12m, Parts = [small.Edition.Parts[0]], FixedCosts = [] }));

        var undone = SmallPress.Saved(await stores.Editions.SaveAsync(small.Id, small.Edition with { Version = changed.Version }));

        Assert.Equal(small.Edition.Price, undone.Price);
        Assert.Equal(small.Edition.Parts.Select(part => part.Part), undone.Parts.Select(part => part.Part));
        Assert.Equal(small.Edition.FixedCosts, undone.FixedCosts);
    }

    [Fact]
    public async Task A_part_that_is_renamed_and_moved_keeps_the_other_paper_that_a_plan_gave_it()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var cover = small.Edition.Parts[0];
        var moved = small.Edition with { Parts = [small.Edition.Parts[1], cover with { Part = cover.Part with { Name = "jacket" } }] };

        SmallPress.Saved(await stores.Editions.SaveAsync(small.Id, moved));

        Assert.Equal(SmallPress.Text.Id, (await stores.Plans.LoadAsync(small.Id, small.Plan.Id))!.Stocks[cover.Id]);
    }

    [Fact]
    public async Task What_an_edition_breaks_is_told_by_path_and_nothing_is_stored()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var cover = small.Edition.Parts[0];
        var broken = small.Edition with
        {
            Price = -1m,
            Parts = [cover, cover with { Id = Guid.Empty, Part = cover.Part with { Pages = 0, StockId = "velvet" } }],
        };

        var refused = Assert.IsType<SaveResult<EditionRecord>.Refused>(await stores.Editions.SaveAsync(small.Id, broken));

        Assert.Equal(
            ["$.price", "$.parts[1].pages", "$.parts[1].stock", "$.parts[1].name"], refused.Problems.Select(problem => problem.Path));
        Assert.Equal(small.Edition.Version, (await stores.Editions.LoadAsync(small.Id, small.Edition.Id))!.Version);
    }

    [Fact]
    public async Task A_title_has_each_printing_once()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        var again = await stores.Editions.AddAsync(small.Id, SmallPress.NewEdition(small.Title.Id));

        Assert.Equal("$.printing", Assert.Single(Assert.IsType<SaveResult<EditionRecord>.Refused>(again).Problems).Path);
    }

    [Fact]
    public async Task The_next_printing_is_the_same_book_with_its_chosen_plan_and_nothing_printed_yet()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        SmallPress.Saved(await stores.Ledger.WriteAsync(
            small.Id, new NewMovement(Guid.NewGuid(), small.Edition.Id, new DateOnly(2026, 3, 9), MovementKind.Printed, 150)));

        var next = SmallPress.Saved(await stores.Editions.CopyForwardAsync(small.Id, small.Edition.Id));

        Assert.Equal((2, null, null, 0L), (next.Printing, next.PrintedOn, next.CopiesPrinted, next.CopiesOnHand));
        Assert.Equal(small.Edition.Parts.Select(part => part.Part), next.Parts.Select(part => part.Part));
        Assert.Null(next.Weighed);
        var plan = Assert.Single(await stores.Plans.OfEditionAsync(small.Id, next.Id));
        Assert.True(plan.Chosen);
        Assert.Equal(SmallPress.Text.Id, plan.Stocks[next.Parts[0].Id]);
        Assert.Equal(small.List.Id, plan.PriceListId);
    }

    [Fact]
    public async Task Printings_copied_forward_at_once_take_different_numbers()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        var copies = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => stores.Editions.CopyForwardAsync(small.Id, small.Edition.Id)));

        Assert.Equal(Enumerable.Range(2, 8), copies.Select(copy => SmallPress.Saved(copy).Printing).Order());
    }

    [Fact]
    public async Task A_deleted_edition_takes_its_parts_and_plans_along()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        Assert.IsType<DeleteResult.Deleted>(await stores.Editions.DeleteAsync(small.Id, small.Edition));

        Assert.Null(await stores.Plans.LoadAsync(small.Id, small.Plan.Id));
        await using var db = stores.Context(small.Id);
        Assert.Empty(db.Parts);
        Assert.Empty(db.Set<FixedCostRow>());
        Assert.Empty(db.PlanStocks);
    }

    [Theory]
    [InlineData("1.0001")]
    [InlineData("139.7")]
    [InlineData("3.1750")]
    [InlineData("999.000000000000001")]
    public async Task Lengths_and_masses_come_back_to_the_last_digit(string figure)
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var number = decimal.Parse(figure, System.Globalization.CultureInfo.InvariantCulture);
        var exact = small.Edition with
        {
            Page = new Size(Length.FromMillimetres(number), Length.FromMillimetres(number)),
            Weighed = new Weighed(Mass.FromGrams(number), Length.FromMillimetres(number)),
            Price = number,
        };

        SmallPress.Saved(await stores.Editions.SaveAsync(small.Id, exact));
        var loaded = await stores.Editions.LoadAsync(small.Id, small.Edition.Id);

        Assert.Equal((exact.Page, exact.Weighed, exact.Price), (loaded!.Page, loaded.Weighed, loaded.Price));
    }

    private static EditionRecord WithPages(EditionRecord edition, int pages) => edition with
    {
        Parts = [edition.Parts[0], edition.Parts[1] with { Part = edition.Parts[1].Part with { Pages = pages } }],
    };
}
