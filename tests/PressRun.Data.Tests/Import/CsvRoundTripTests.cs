using System.Globalization;
using CsCheck;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;
using PressRun.Engine.Sheets;

namespace PressRun.Data.Tests.Import;

/// <summary>What goes out comes back the same, in every locale and with either units.</summary>
public sealed class CsvRoundTripTests
{
    private static readonly Gen<CellManners> Manners =
        Gen.Select(Pick.From("en", "de", "fr", "de-CH", "pl"), Gen.Enum<UnitSystem>(), (culture, units) => new CellManners(CultureInfo.GetCultureInfo(culture), units));

    private static readonly Gen<string> Name = Gen.OneOf(
        Gen.String[Gen.Char["abcXYZ \u00E9\u00DF\u4E2D;,\"'=+-@\u2013."], 1, 12].Select(text => "n" + text.Trim()),
        Pick.From("=1+1", "+cap", "-5", "@home", "'=x", "a;b,c", "say \"hi\"", "1,5", "007"));

    private static readonly Gen<decimal> Amount = Gen.Select(Gen.Int[0, 10_000_000], Gen.Int[0, 6], (units, scale) => new decimal(units, 0, 0, false, (byte)scale));

    private static readonly Gen<decimal> Rate = Gen.Int[0, 9_999].Select(parts => parts / 10_000m);

    private static readonly Gen<Length> Side = Gen.OneOf(
        Gen.Int[100, 1_000_000].Select(hundredths => Length.FromMillimetres(hundredths / 100m)),
        Gen.Int[1, 300].Select(sixteenths => Length.FromInches(sixteenths / 16m)));

    private static readonly Gen<Length> Thickness = Gen.Int[1, 5000].Select(tenths => Length.FromMicrometres(tenths / 10m));

    private static readonly Gen<Mass> Masses = Gen.OneOf(
        Gen.Int[1, 300_000].Select(tenths => Mass.FromGrams(tenths / 10m)), Gen.Int[1, 900].Select(quarters => Mass.FromOunces(quarters / 4m)));

    private static readonly Gen<Stock> Stocks =
        from name in Name
        from weight in Gen.OneOf(
            Gen.Int[20, 500].Select(grams => PaperWeight.FromGrammage(grams)),
            Gen.Select(Gen.Int[10, 130], Gen.Enum<PaperCategory>(), (pounds, category) => PaperWeight.FromBasisWeight(pounds, category)))
        from caliper in Thickness.Nullable()
        from bulk in Gen.Int[1, 300].Select(parts => parts / 100m).Nullable()
        from finish in Gen.Enum<Finish>()
        select new Stock("", name, weight, caliper, bulk, finish);

    [Fact]
    public Task Papers_come_back_from_a_file_as_they_were() =>
        Distinct(Stocks, stock => stock.Name).Select(stocks => stocks.Select((stock, at) => new LibraryItem<Stock>(stock with { Id = $"p{at}" }, at % 3 == 0, 0)).ToArray())
            .SelectMany(items => Manners.Select(manners => (items, manners)))
            .SampleAsync(async pair => await SameAsync(new StockShape(), pair.items, pair.manners), iter: 200);

    [Fact]
    public Task Mailers_come_back_from_a_file_as_they_were() =>
        Distinct(
                from name in Name
                from length in Side
                from width in Side
                from thickness in Thickness
                from mass in Masses
                from price in Amount
                select new Mailer("", name, length, width, thickness, mass, price),
                mailer => mailer.Name)
            .Select(mailers => mailers.Select((mailer, at) => new LibraryItem<Mailer>(mailer with { Id = $"m{at}" }, false, 0)).ToArray())
            .SelectMany(items => Manners.Select(manners => (items, manners)))
            .SampleAsync(async pair => await SameAsync(new MailerShape(), pair.items, pair.manners), iter: 200);

    [Fact]
    public Task Postage_services_come_back_from_a_file_as_they_were() =>
        Distinct(
                from name in Name
                from region in Name
                from day in Gen.Int[0, 3000]
                from steps in Rising
                from longest in Side.Nullable()
                from thinnest in Thickness.Nullable()
                from prices in Amount.Array[10]
                select new PostageService(
                    "", name, region, new DateOnly(2020, 1, 1).AddDays(day), longest, null, null, null, null, thinnest,
                    [.. steps.Select((step, at) => new MassStep(Mass.FromGrams(step), prices[at]))]),
                service => service.Name)
            .Select(services => services.Select((service, at) => new LibraryItem<PostageService>(service with { Id = $"s{at}" }, false, 0)).ToArray())
            .SelectMany(items => Manners.Select(manners => (items, manners)))
            .SampleAsync(async pair => await SameAsync(new PostageShape(), pair.items, pair.manners), iter: 200);

    [Fact]
    public Task Ways_of_selling_come_back_from_a_file_as_they_were() =>
        Distinct(
                from name in Name
                from taxed in Gen.Bool
                from tax in Rate
                from discount in Rate
                from fee in Rate
                from each in Amount
                from copies in Gen.Int[1, 50]
                from mailer in Pick.From<string?>("box", "board", null)
                from region in Name.Null()
                from charged in Amount
                from mix in Amount.Where(mix => mix <= 1_000_000m)
                select new Channel("", name, 0m, taxed, tax, discount, fee, each, copies, mailer, region, charged, mix),
                channel => channel.Name)
            .Select(channels => channels.Select((channel, at) => new LibraryItem<Channel>(channel with { Id = $"c{at}" }, false, 0)).ToArray())
            .SelectMany(items => Manners.Select(manners => (items, manners)))
            .SampleAsync(async pair => await SameAsync(new ChannelShape([("box", "Carton"), ("board", "Board-backed, stiff")]), pair.items, pair.manners), iter: 200);

    [Fact]
    public Task A_whole_price_list_comes_back_from_a_file_as_it_was() =>
        PriceLists.SelectMany(list => Manners.Select(manners => (list, manners))).SampleAsync(
            async pair =>
            {
                var file = new PriceListFile(Papers);
                using var csv = new TempCsv(await CsvText.OfAsync(file.Columns, file.Texts(pair.list, pair.manners), pair.manners));
                var source = CsvSource.Open(csv.Path);
                var mapping = MappingGuess.Of(source, file.Columns, pair.manners);
                var problems = new List<CellProblem>();

                var back = file.Read(
                    [.. CsvReading.Rows(source, mapping, file.Columns)], pair.list.Name, pair.list.ValidFrom, mapping.Manners(pair.manners), problems.Add);

                Assert.Empty(problems);
                Assert.Equivalent(pair.list, back, strict: true);
            },
            iter: 200);

    private static readonly Stock[] Papers =
    [
        new("silk", "=Silk; heavy", PaperWeight.FromGrammage(150m), null, null, Finish.Coated), new("kraft", "Kraft", PaperWeight.FromGrammage(120m), null, 1.4m, null),
    ];

    private static readonly Gen<int[]> Rising = Gen.Int[1, 400].Array[1, 6].Select(gaps => gaps.Select((_, at) => gaps.Take(at + 1).Sum()).ToArray());

    private static readonly Gen<PriceStep[]> Steps =
        Gen.Select(Rising, Amount.Array[8], (rising, prices) => rising.Select((from, at) => new PriceStep(at == 0 ? 1 : from + 1, prices[at])).ToArray());

    private static readonly Gen<Shop> PriceLists =
        from margin in Thickness
        from sheet in Side
        from colour in Steps
        from black in Steps
        from silk in Steps
        from rule in Gen.Enum<StepRule>()
        from amounts in Amount.Array[12]
        from rates in Rate.Array[4]
        from quantities in Rising
        from names in Name.Array[3]
        from delivers in Gen.Enum<Delivered>().Nullable()
        from collates in Gen.Enum<Collating>()
        from layout in Gen.Enum<Layout>()
        from masses in Rising
        from free in Amount.Nullable()
        from further in Amount.Nullable()
        from cartons in Gen.Bool
        select new Shop(
            "Tidewall",
            new DateOnly(2026, 4, 1),
            [new Sheet("SRA3", Length.FromMillimetres(320m), Length.FromMillimetres(450m), margin, Length.Zero, true, GrainRule.ParallelToSpine), new Sheet(names[0], sheet, sheet, Length.Zero, margin, false, GrainRule.Any)],
            [new PrintPrice(Ink.Colour, "SRA3", colour, rule), new PrintPrice(Ink.Black, names[0], black, StepRule.AllUnits)],
            [new PaperPrice("silk", "SRA3", silk, StepRule.Incremental), new PaperPrice("kraft", names[0], black, rule)],
            [new BookPrice(Binding.Saddle, 8, 64, ["silk", "kraft"], [new BookStep(1, amounts[0], amounts[1]), new BookStep(100, amounts[2], 0m)]), new BookPrice(Binding.Perfect, 1, Job.MostPages, null, [new BookStep(1, amounts[3], 0m)])],
            quantities,
            new SetUp(amounts[4], amounts[5], amounts[6]),
            [new Finishing(names[1], FinishingUnit.Cut, amounts[7], 0m), new Finishing(names[2] + "2", FinishingUnit.Edition, amounts[8], amounts[9])],
            collates,
            layout,
            rates[0],
            delivers,
            new OrderRules(
                amounts[10],
                [new DiscountStep(amounts[11], rates[1]), new DiscountStep(amounts[11] + 1m, rates[2])],
                new Delivery([.. masses.Select((mass, at) => new MassStep(Mass.FromGrams(mass), amounts[at]))], further, free),
                cartons ? new Carton(Mass.FromKilograms(12m), Mass.FromGrams(400m)) : null,
                rates[3],
                cartons,
                quantities[0]));

    private static Gen<T[]> Distinct<T>(Gen<T> things, Func<T, string> name) =>
        things.Array[1, 8].Select(all => all.DistinctBy(thing => string.Concat(name(thing).ToLowerInvariant().Where(char.IsLetterOrDigit))).ToArray());

    private static async Task SameAsync<T>(TableShape<LibraryItem<T>> shape, LibraryItem<T>[] items, CellManners manners)
        where T : class
    {
        using var file = new TempCsv(await CsvText.OfAsync(shape.Columns, items.SelectMany(item => shape.Texts(item, manners)), manners));
        var source = CsvSource.Open(file.Path);
        var problems = new List<CellProblem>();

        var back = CsvReading.Things(source, MappingGuess.Of(source, shape.Columns, manners), shape, manners, problems.Add).Select(read => read.Thing).ToArray();

        Assert.Empty(problems);
        Assert.Equivalent(items, back, strict: true);
    }
}
