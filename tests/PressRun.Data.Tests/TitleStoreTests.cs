using PressRun.Data.Presses;
using PressRun.Data.Tests.Fixtures;
using PressRun.Data.Titles;
using PressRun.Engine.Paper;

namespace PressRun.Data.Tests;

public sealed class TitleStoreTests(PostgresFixture postgres)
{
    // Whoever imports may send as many marks as a file holds.
    [Fact]
    public void Marks_without_end_are_dropped_before_they_are_put_in_order() =>
        Assert.Equal("cafe noir", SearchText.Fold("Cafe" + string.Concat(Enumerable.Repeat("\u0301\u0316", 200_000)) + " Noir"));

    [Fact]
    public async Task Titles_of_the_same_words_take_different_addresses_also_at_once()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        var added = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => stores.Titles.AddAsync(small.Id, new NewTitle("Soup & Salt", "", "#123456", ""))));

        Assert.Equal(8, added.Select(title => SmallPress.Saved(title).Slug).Distinct().Count());
        Assert.Contains(added, title => SmallPress.Saved(title).Slug == "soup-salt");
        Assert.Contains(added, title => SmallPress.Saved(title).Slug == "soup-salt-8");
    }

    [Fact]
    public async Task A_title_comes_with_its_first_edition_and_a_refused_edition_leaves_no_title()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var edition = SmallPress.NewEdition(Guid.Empty);
        var ofNoPaper = edition with { Parts = [.. edition.Parts.Select(part => part with { Part = part.Part with { StockId = "velvet" } })] };

        var refused = Assert.IsType<SaveResult<TitleRecord>.Refused>(
            await stores.Titles.AddWithEditionAsync(small.Id, new NewTitle("Soup & Salt", "", "#123456", ""), ofNoPaper));
        var left = await stores.Titles.FindAsync(small.Id, "soup-salt");
        var saved = SmallPress.Saved(await stores.Titles.AddWithEditionAsync(small.Id, new NewTitle("Soup & Salt", "", "#123456", ""), edition));

        Assert.Equal("$.parts[0].stock", refused.Problems[0].Path);
        Assert.Null(left);
        Assert.Equal("soup-salt", saved.Slug);
        Assert.Equal(2, (await stores.Editions.FindAsync(small.Id, "soup-salt", 1))?.Parts.Count);
    }

    [Fact]
    public async Task A_title_keeps_its_address_when_its_words_change()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        var saved = SmallPress.Saved(await stores.Titles.SaveAsync(small.Id, small.Title with { Title = "Tidal Almanac", Archived = true }));

        Assert.Equal("tidepool-almanac", saved.Slug);
        Assert.Equal(1, (await stores.Shelf.ShowAsync(small.Id, new ShelfFilter("tidal", Archived: true))).Total);
        Assert.Equal(0, (await stores.Shelf.ShowAsync(small.Id, new ShelfFilter("tidepool", Archived: true))).Total);
    }

    [Fact]
    public async Task What_a_title_breaks_is_told_by_path()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        var refused = Assert.IsType<SaveResult<TitleRecord>.Refused>(await stores.Titles.SaveAsync(small.Id, small.Title with { Title = " ", Colour = "red" }));

        Assert.Equal(["$.title", "$.colour"], refused.Problems.Select(problem => problem.Path));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    [InlineData(0xD800)]
    public async Task Words_that_no_page_can_show_are_refused_and_not_thrown(int character)
    {
        // By number: half a surrogate pair does not survive as a constant of an attribute.
        var words = "a" + (char)character;
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        var refused = Assert.IsType<SaveResult<TitleRecord>.Refused>(await stores.Titles.SaveAsync(small.Id, small.Title with { Title = words }));

        Assert.Equal("$.title", Assert.Single(refused.Problems).Path);
    }

    [Fact]
    public async Task A_title_has_at_most_two_hundred_characters()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        Assert.IsType<SaveResult<TitleRecord>.Refused>(await stores.Titles.AddAsync(small.Id, new NewTitle(new string('W', 201), "", "#123456", "")));
        Assert.IsType<SaveResult<TitleRecord>.Saved>(await stores.Titles.AddAsync(small.Id, new NewTitle(new string('W', 198) + "\U0001F4D6", "", "#123456", "")));
    }

    [Fact]
    public async Task The_second_of_two_saves_on_one_version_sees_the_first()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var first = SmallPress.Saved(await stores.Titles.SaveAsync(small.Id, small.Title with { By = "B. Maker" }));

        var second = await stores.Titles.SaveAsync(small.Id, small.Title with { By = "C. Maker" });

        Assert.Equal(first, Assert.IsType<SaveResult<TitleRecord>.Conflict>(second).Theirs);
    }

    [Fact]
    public async Task A_press_needs_a_name_and_a_currency_that_there_is()
    {
        await using var stores = await Stores.NewAsync(postgres);

        var refused = await stores.Presses.CreateAsync(new NewPress("", "EURO", UnitSystem.Metric, PaperRegion.Iso));

        Assert.Equal(
            ["$.name", "$.currency"], Assert.IsType<SaveResult<PressRecord>.Refused>(refused).Problems.Select(problem => problem.Path));
    }
}
