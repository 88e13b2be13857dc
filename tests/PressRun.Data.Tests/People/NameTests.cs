using PressRun.Data.People;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Shops;
using PressRun.Data.Tests.Fixtures;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.JobFile;

namespace PressRun.Data.Tests.People;

/// <summary>What is typed as a name is one, wherever it is typed. Signs by the Unicode Standard: categories Cf, Zl and Zp, marks of direction of UAX #9.</summary>
public sealed class NameTests(PostgresFixture postgres)
{
    public static TheoryData<string> NoNames => ["\u200B\u2060", "\u3164", "Orla\u202Eevil", "\u2067Orla", "Orla\u2028Owner", "Orla\u2029Owner", "Orla\nOwner", "Or\u200Bla", "O\u00ADrla", "\uFEFFOrla", "Orla\U000E0041", "\u200EOrla", "Al\u034Fice", "Al\uFE0Fice", "Al\U000E0100ice", "Al\u180Bice", "Al\u17B4ice", "Alice\u3164", "Alice\u2800", "Alice 1\uFE0F", "Al\u2065ice", "Al\uFFF3ice", "Al\U000E0002ice", "Al\U000E0fffice", "Or\u0301\u0301\u0301\u0301\u0301\u0301\u0301\u0301\u0301la"];

    [Theory]
    [MemberData(nameof(NoNames))]
    public async Task Nobody_and_nothing_is_called_by_what_cannot_be_seen_or_reads_as_something_else(string name)
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var book = JobReader.Read(JobResources.SampleJob).Value;

        Assert.False(User.IsName(name));
        Assert.IsType<SaveResult<PressRecord>.Refused>(await stores.Presses.CreateAsync(new NewPress(name, "EUR", UnitSystem.Metric, Engine.Paper.PaperRegion.Iso)));
        Assert.IsType<SaveResult<TitleRecord>.Refused>(await stores.Titles.SaveAsync(small.Id, small.Title with { Title = name }));
        var taken = Assert.IsType<SaveResult<TakenIn>.Refused>(await stores.JobFiles.TakeInAsync(small.Id, book with { Edition = book.Edition with { Title = name } }, null));
        Assert.Contains(taken.Problems, problem => problem.Path == "$.edition.title");
    }

    [Fact]
    public async Task A_shop_and_papers_that_a_job_file_brings_along_are_called_by_what_reads_as_it_stands_too()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var book = JobReader.Read(JobResources.SampleJob).Value;
        var turned = book with
        {
            Shop = book.Shop with { Name = "Print\u202E", Finishing = [new Finishing("trim\u2066", FinishingUnit.Copy, 0.1m, 0m)] },
            Stocks = [book.Stocks[0] with { Name = "Felt\u2067" }, .. book.Stocks.Skip(1)],
            Edition = book.Edition with { Parts = [book.Edition.Parts[0] with { Name = "Cover\u2028" }, .. book.Edition.Parts.Skip(1)], FixedCosts = [new FixedCost("ma\u200Bps", 1m)] },
        };

        var refused = Assert.IsType<SaveResult<TakenIn>.Refused>(await stores.JobFiles.TakeInAsync(small.Id, turned, null));

        foreach (var path in new[] { "$.shop.name", "$.stocks[0].name", "$.edition.parts[0].name", "$.shop.finishing[0].name", "$.edition.fixedCosts[0].name" })
        {
            Assert.Contains(refused.Problems, problem => problem.Path == path);
        }
    }

    [Fact]
    public async Task What_a_press_names_in_its_lists_reads_as_it_stands_too()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var bench = (await stores.Bench.LoadAsync(small.Id))!;
        var list = (await stores.PriceLists.LoadAsync(small.Id, small.List.Id))!;

        var step = await stores.Bench.SaveAsync(small.Id, bench with { Item = bench.Item with { Steps = [bench.Item.Steps[0] with { Name = "fold\u202E" }] } });
        var thing = await stores.Bench.SaveAsync(small.Id, bench with { Item = bench.Item with { Consumables = [new Consumable("sta\u200Bples", 2m)] } });
        var offer = await stores.PriceLists.SaveAsync(small.Id, list with { Prices = list.Prices with { Finishing = [new Finishing("trim\u2066", FinishingUnit.Copy, 0.1m, 0m)] } });
        var cost = await stores.Editions.SaveAsync(small.Id, small.Edition with { FixedCosts = [new FixedCost("ma\u2028ps", 1m)] });

        Assert.Equal("$.steps[0].name", Assert.Single(Assert.IsType<SaveResult<LibraryItem<BenchRates>>.Refused>(step).Problems).Path);
        Assert.Equal("$.consumables[0].name", Assert.Single(Assert.IsType<SaveResult<LibraryItem<BenchRates>>.Refused>(thing).Problems).Path);
        Assert.Equal("$.finishing[0].name", Assert.Single(Assert.IsType<SaveResult<PriceListRecord>.Refused>(offer).Problems).Path);
        Assert.Equal("$.fixedCosts[0].name", Assert.Single(Assert.IsType<SaveResult<EditionRecord>.Refused>(cost).Problems).Path);
    }

    [Theory]
    [InlineData("Ángela \u200E(\u05E2\u05DC\u05DE\u05D4)")]
    [InlineData("\u0646\u0627\u0632\u200C\u0646\u06CC\u0646")]
    [InlineData("J\u00F8rn \U0001F4DA")]
    [InlineData("\u845B\U000E0100\u57CE")]
    [InlineData("Press 3\uFE0F\u20E3 \u2764\uFE0F")]
    [InlineData("\u2801\u2800\u2803")]
    [InlineData("Foil\u2122\uFE0F \u00A9\uFE0F 2026 \u00AE\uFE0F \u2139\uFE0F")]
    public void Whoever_is_called_so_in_some_script_is_called_so_here(string name)
    {
        Assert.True(User.IsName(name));
        Assert.False(User.IsName(name + "\uD800"));
        Assert.False(User.IsName(name + new string('a', User.LongestName)));
    }

    // RFC 5321, 4.1.2, and RFC 6531 for letters beyond ASCII.
    [Theory]
    [InlineData("ada@example.org", true)]
    [InlineData("a.b+c'd@sub.example.org", true)]
    [InlineData("\u00E1da@example.org", true)]
    [InlineData("ada", false)]
    [InlineData("ada@", false)]
    [InlineData("@example.org", false)]
    [InlineData("Ada <ada@example.org>", false)]
    [InlineData("ada@example.org, bo@example.org", false)]
    [InlineData("ada@example..org", false)]
    [InlineData("ada..b@example.org", false)]
    [InlineData("ada@-example.org\u202E", false)]
    [InlineData("a\u200Bda@example.org", false)]
    [InlineData("ada@exam ple.org", false)]
    [InlineData("\"a b\"@example.org", false)]
    [InlineData("ada(bo)@example.org", false)]
    [InlineData("ada@example.org\r\nBcc: bo@example.org", false)]
    public void An_address_is_one_that_a_mail_can_be_sent_to(string text, bool holds) => Assert.Equal(holds, MailAddresses.Is(text));
}
