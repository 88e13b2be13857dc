using CsCheck;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Ladder;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;
using PressRun.Engine.Sheets;
using Size = PressRun.Engine.Editions.Size;

namespace PressRun.Engine.Tests.JobFile;

/// <summary>Random jobs that a job file can hold; whether they can be costed does not matter here.</summary>
internal static class JobFileGen
{
    private static readonly Gen<string> Name = OneOf("", "Cream text", "Größe Ω 紙", "it's \"so\" \\ <b>", "é\u0301");

    private static readonly Gen<decimal> Money = Gen.OneOf(
        Gen.Int[0, 100_000].Select(cents => cents / 100m),
        Gen.Long[0, 1_000_000_000_000].Select(units => units / 100_000m),
        Gen.Const(0m),
        Gen.Const(0.1234567890123456789012345678m));

    private static readonly Gen<decimal> Rate = Gen.OneOf(Gen.Int[0, 999].Select(part => part / 1000m), Gen.Const(0.9999999999999999m));

    private static readonly Gen<Length> Side = Gen.OneOf(
        Gen.Int[1, 80].Select(eighths => Length.FromInches(1m + (eighths / 8m))),
        Gen.Int[1, 9000].Select(tenths => Length.FromMillimetres(1m + (tenths / 10m))),
        Gen.Int[1, 9].Select(thirds => Length.FromInches((thirds / 3m) + 1m)));

    private static readonly Gen<Length> Allowance = Gen.OneOf(Gen.Const(Length.Zero), Gen.Int[0, 32].Select(eighths => Length.FromInches(eighths / 8m)));

    private static readonly Gen<Mass> SomeMass = Gen.OneOf(
        Gen.Int[1, 5000].Select(tenths => Mass.FromGrams(tenths / 10m)),
        Gen.Int[1, 500].Select(tenths => Mass.FromOunces(tenths / 10m)),
        Gen.Int[1, 50].Select(pounds => Mass.FromPounds(pounds / 3m)));

    private static readonly Gen<DateOnly> Day = Gen.Int[0, 20_000].Select(days => new DateOnly(2000, 1, 1).AddDays(days));

    private static readonly Gen<PaperWeight> Weight = Gen.OneOf(
        Gen.Int[10, 4000].Select(tenths => PaperWeight.FromGrammage(tenths / 10m)),
        Gen.Select(Gen.Int[20, 1200], Gen.Enum<PaperCategory>(), (tenths, category) => PaperWeight.FromBasisWeight(tenths / 10m, category)));

    private static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(index => values[index]);

    private static Gen<T> Choice<T>()
        where T : struct, Enum => Gen.Enum<T>();

    private static Gen<T?> Maybe<T>(Gen<T> gen)
        where T : struct => Gen.OneOf(gen.Select(value => (T?)value), Gen.Const((T?)null));

    private static Gen<IReadOnlyList<T>> Up<T>(Gen<(int Rise, T Value)[]> steps, Func<int, T, T> place) => steps.Select(all =>
    {
        var at = 0;
        return (IReadOnlyList<T>)[.. all.Select((step, index) => place(index == 0 ? at = 1 : at += step.Rise, step.Value))];
    });

    private static readonly Gen<IReadOnlyList<PriceStep>> PriceSteps = Up(
        Gen.Select(Gen.Int[1, 500], Money.Select(each => new PriceStep(0, each))).Array[1, 4], (from, step) => step with { From = from });

    private static readonly Gen<IReadOnlyList<BookStep>> BookSteps = Up(
        Gen.Select(Gen.Int[1, 500], Gen.Select(Money, Money, (each, perPage) => new BookStep(0, each, perPage))).Array[1, 4],
        (from, step) => step with { From = from });

    private static readonly Gen<IReadOnlyList<MassStep>> MassSteps = Up(
        Gen.Select(Gen.Int[1, 5000], Money.Select(price => new MassStep(default, price))).Array[1, 4],
        (most, step) => step with { Most = Mass.FromOunces(most) });

    private static readonly Gen<IReadOnlyList<DiscountStep>> Discounts = Up(
        Gen.Select(Gen.Int[1, 500], Rate.Select(rate => new DiscountStep(0, rate))).Array[0, 3], (from, step) => step with { From = from });

    private static readonly Gen<Stock> SomeStock = Gen.Select(
        Name, Weight, Gen.OneOf(Gen.Int[50, 500].Select(um => (Length?)Length.FromMicrometres(um)), Gen.Const((Length?)null)), Maybe(Gen.Int[5, 30].Select(tenths => tenths / 10m)), Choice<Finish>())
        .Select(all => new Stock("", all.Item1, all.Item2, all.Item3, all.Item4, all.Item5));

    private static readonly Gen<IReadOnlyList<Stock>> Stocks =
        SomeStock.Array[1, 3].Select(all => (IReadOnlyList<Stock>)[.. all.Select((stock, index) => stock with { Id = StockId(index) })]);

    private static readonly Gen<IReadOnlyList<Sheet>> Sheets = Gen.Select(Side, Side, Allowance, Allowance, Gen.Bool, Choice<GrainRule>()).Array[1, 3]
        .Select(all => (IReadOnlyList<Sheet>)[.. all.Select((sheet, index) =>
            new Sheet(SheetId(index), sheet.Item1, sheet.Item2, sheet.Item3, sheet.Item4, sheet.Item5, sheet.Item6))]);

    private static Gen<Edition> Edition(int stocks, int sheets) => Gen.Select(
        Gen.Select(Name, Gen.Int[1, 9], Side, Side, Choice<Binding>(), Gen.Bool),
        Gen.Select(Allowance, Allowance, Allowance, Allowance, (head, foot, foreEdge, spine) => new Trim(head, foot, foreEdge, spine)),
        Gen.Select(Name, Gen.Int[1, 64], Gen.Int[0, stocks - 1], Choice<Ink>(), Choice<Ink>(), Maybe(Gen.Int[0, sheets - 1]))
            .Select(part => new Part(part.Item1, part.Item2, StockId(part.Item3), part.Item4, part.Item5, part.Item6 is { } sheet ? SheetId(sheet) : null)).Array[1, 4],
        Choice<FoldShape>(),
        Gen.Select(Maybe(SomeMass), Maybe(Allowance.Where(length => length > Length.Zero)), (mass, thickness) => mass is null && thickness is null ? null : new Weighed(mass, thickness)),
        Gen.Select(Name, Money, (name, amount) => new FixedCost(name, amount)).Array[0, 2],
        (what, trim, parts, fold, weighed, costs) => new Edition(
            what.Item1, what.Item2, new Size(what.Item3, what.Item4), what.Item5, what.Item6, trim, parts, fold, weighed, costs));

    private static Gen<Shop> Shop(int stocks, IReadOnlyList<Sheet> sheets) => Gen.Select(
        Gen.Select(Name, Day, PriceSteps.Array[0, 3], PriceSteps.Array[0, 3], Choice<StepRule>()),
        Gen.Select(Choice<Binding>(), Gen.Int[1, 40], Gen.Int[40, 900], Gen.Bool, BookSteps).Array[0, 2],
        Gen.Int[1, 100].Array[0, 3],
        Gen.Select(Money, Money, Money, (order, edition, part) => new SetUp(order, edition, part)),
        Gen.Select(Name, Choice<FinishingUnit>(), Money, Money, (name, per, each, minimum) => new Finishing(name, per, each, minimum)).Array[0, 2],
        Gen.Select(Choice<Collating>(), Choice<Layout>(), Rate, Maybe(Choice<Delivered>())),
        Gen.Select(Money, Discounts, Gen.Bool, Gen.Select(MassSteps, Maybe(Money), Maybe(Money)), Maybe(SomeMass), Rate, Gen.Bool),
        (what, books, quantities, setUp, finishing, ways, order) => new Shop(
            what.Item1,
            what.Item2,
            sheets,
            [.. what.Item3.Select((steps, index) => new PrintPrice((Ink)(1 + (index % 2)), SheetId(index / 2 % sheets.Count), steps, what.Item5)).DistinctBy(price => (price.Ink, price.SheetId))],
            [.. what.Item4.Select((steps, index) => new PaperPrice(StockId(index % stocks), SheetId(index / stocks % sheets.Count), steps, what.Item5)).DistinctBy(price => (price.StockId, price.SheetId))],
            [.. books.Select(book => new BookPrice(book.Item1, book.Item2, book.Item3, book.Item4 ? [StockId(0)] : null, book.Item5))],
            [.. quantities.Select((_, index) => quantities[..(index + 1)].Sum())],
            setUp,
            finishing,
            ways.Item1,
            ways.Item2,
            ways.Item3,
            ways.Item4,
            new OrderRules(
                order.Item1,
                order.Item2,
                order.Item3 ? new Delivery(order.Item4.Item1, order.Item4.Item2, order.Item4.Item3) : null,
                order.Item5 is { } capacity ? new Carton(capacity + Mass.FromGrams(1m), capacity) : null,
                order.Item6,
                order.Item7,
                6)));

    private static readonly Gen<BenchRates> Bench = Gen.Select(
        Money,
        Gen.Bool,
        Gen.Select(Name, Rate, Rate, Rate, Rate, Gen.Int[1, 9], Rate)
            .Select(step => new BenchStep(step.Item1, step.Item2 * 100m, step.Item3, step.Item4, step.Item5, step.Item6, step.Item7)).Array[0, 3],
        Gen.Select(Name, Money, (name, perCopy) => new Consumable(name, perCopy)).Array[0, 2],
        SomeMass,
        Gen.Select(Choice<OversMode>(), Rate.Where(rate => rate > 0m), (mode, confidence) => new Overs(mode, confidence)),
        Allowance,
        (rate, paid, steps, consumables, fittings, overs, staple) => new BenchRates(rate, paid, steps, consumables, fittings, overs, staple));

    private static readonly Gen<IReadOnlyList<Mailer>> Mailers = Gen.Select(Name, Side, Side, Allowance, SomeMass, Money).Array[1, 2]
        .Select(all => (IReadOnlyList<Mailer>)[.. all.Select((mailer, index) =>
            new Mailer("mailer " + index, mailer.Item1, mailer.Item2, mailer.Item3, mailer.Item4, mailer.Item5, mailer.Item6))]);

    private static readonly Gen<IReadOnlyList<PostageService>> Postage = Gen.Select(
        Name, Maybe(Day), Maybe(Side), Maybe(Side), Maybe(Side), MassSteps).Array[0, 3]
        .Select(all => (IReadOnlyList<PostageService>)[.. all.Select((service, index) => new PostageService(
            "service " + index, service.Item1, "home", service.Item2 ?? DateOnly.MinValue, service.Item3, service.Item4, service.Item5, service.Item5, null, service.Item4, service.Item6))]);

    private static Gen<IReadOnlyList<Channel>> Channels(int mailers) => Gen.Select(
        Gen.Select(Name, Money, Gen.Bool, Rate, Rate),
        Gen.Select(Rate, Money, Gen.Int[1, 5], Maybe(Gen.Int[0, mailers - 1]), Gen.Bool, Money, Rate)).Array[0, 3]
        .Select(all => (IReadOnlyList<Channel>)[.. all.Select((channel, index) => new Channel(
            "channel " + index,
            channel.Item1.Item1,
            channel.Item1.Item2,
            channel.Item1.Item3,
            channel.Item1.Item4,
            channel.Item1.Item5,
            channel.Item2.Item1,
            channel.Item2.Item2,
            channel.Item2.Item3,
            channel.Item2.Item4 is { } mailer ? "mailer " + mailer : null,
            channel.Item2.Item5 ? "home" : null,
            channel.Item2.Item6,
            channel.Item2.Item7))]);

    /// <summary>A job with every kind of member, in any combination.</summary>
    public static Gen<Job> Job { get; } = Gen.Select(Stocks, Sheets, Mailers).SelectMany((stocks, sheets, mailers) => Gen.Select(
        Gen.Select(Day, OneOf("USD", "JPY", "KWD")),
        Edition(stocks.Count, sheets.Count),
        Shop(stocks.Count, sheets),
        Bench,
        Postage,
        Channels(mailers.Count),
        Gen.Select(Gen.Int[0, 20], Gen.Bool, Gen.Int[1, 5000], Maybe(Gen.Select(Gen.Int[1, 50], Gen.Int[50, 900], Gen.Int[1, 30], (from, to, step) => new LadderRange(from, to, step)))),
        (what, edition, shop, bench, postage, channels, how) => new Job(
            what.Item1,
            Currency.Find(what.Item2)!,
            edition,
            stocks,
            shop,
            bench,
            mailers,
            postage,
            channels,
            how.Item1,
            how.Item2,
            how.Item3,
            how.Item4)
        {
            SecondHalf = HalvesOf(edition, stocks, how.Item3),
        }));

    // Now and then the second half of the run has a part on another stock.
    private static SecondHalf? HalvesOf(Edition edition, IReadOnlyList<Stock> stocks, int by)
    {
        var part = by % edition.Parts.Count;
        var other = stocks.FirstOrDefault(stock => stock.Id != edition.Parts[part].StockId);
        return by % 3 == 0 && other is not null && edition.Parts.Count(same => same.Name == edition.Parts[part].Name) == 1 ? new SecondHalf(part, other.Id) : null;
    }

    private static string StockId(int index) => index == 0 ? "plain" : "it's stock " + index;

    private static string SheetId(int index) => "sheet-" + index;
}
