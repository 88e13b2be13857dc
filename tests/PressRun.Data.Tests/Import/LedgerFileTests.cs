using System.Globalization;
using PressRun.Data.Copies;
using PressRun.Data.Import;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;
using PressRun.Data.Tests.Fixtures;
using PressRun.Engine.Copies;

namespace PressRun.Data.Tests.Import;

public sealed class LedgerFileTests(PostgresFixture postgres)
{
    private const int ManyRows = 100_000;

    private static readonly CellManners English = new(CultureInfo.GetCultureInfo("en"), UnitSystem.Metric);
    private static readonly DateOnly First = new(2026, 2, 1);
    private static readonly Guid TitleId = Guid.NewGuid();
    private static readonly EditionName[] Names =
    [
        new(Guid.NewGuid(), TitleId, "Salt & Sums", "salt-and-sums", 1, new DateOnly(2025, 3, 1)),
        new(Guid.NewGuid(), TitleId, "Salt & Sums", "salt-and-sums", 2, new DateOnly(2026, 1, 1)),
        new(Guid.NewGuid(), Guid.NewGuid(), "Low Rope", "low-rope", 1, null),
    ];

    [Theory]
    [InlineData("Order date,Order no,Item,Qty,Total,Sold through\n2026-01-05,A-17,Salt & Sums,2,18.00,Own web shop\n")]
    [InlineData("Datum;Bestellnummer;Titel;Menge;Betrag;Kanal\n05.01.2026;A-17;salt-and-sums/2;2;18,00;post\n")]
    [InlineData("date,title,quantity,unit price,channel,reference\n2026-01-05,\"Salt & Sums, printing 2\",2,9,Own web shop,A-17\n")]
    public void Somebody_elses_list_of_sales_is_understood(string text)
    {
        var manners = text.StartsWith("Datum", StringComparison.Ordinal) ? English with { Culture = CultureInfo.GetCultureInfo("de") } : English;

        var line = Assert.Single(Read(text, Shape(), manners, out var problems));

        Assert.Empty(problems);
        Assert.Equal(
            new NewMovement(Guid.Empty, Names[1].Id, new DateOnly(2026, 1, 5), MovementKind.Sold, 2, 18m, "post", "A-17"), line);
    }

    [Fact]
    public void A_title_alone_means_the_printing_that_had_been_printed_by_then()
    {
        var lines = Read("date,title,copies,amount\n2025-12-31,Salt & Sums,1,9\n2026-01-01,Salt & Sums,1,9\n2020-01-01,Salt & Sums,1,9\n2026-01-02,Low Rope,1,9\n", Shape(), English, out _);

        Assert.Equal([Names[0].Id, Names[1].Id, Names[0].Id, Names[2].Id], lines.Select(line => line.EditionId));
    }

    [Theory]
    [InlineData("2026-01-05,Salt & Sums,2,,", "amount")]
    [InlineData("2031-01-05,Salt & Sums,2,18,", "day")]
    [InlineData("2026-01-05,Pepper,2,18,", "edition")]
    [InlineData("2026-01-05,Salt & Sums,2,18,given away", "amount")]
    [InlineData("2026-01-05,Salt & Sums,0,18,", "copies")]
    public void What_is_wrong_is_said_at_its_row_and_column(string row, string column)
    {
        var shape = Shape();

        Assert.Empty(Read($"date,title,copies,amount,what happened\n{row}\n", shape, English, out var problems));

        var problem = Assert.Single(problems);
        Assert.Equal((2, column), (problem.Row, shape.Columns[problem.Column].Key));
    }

    [Fact]
    public void A_sale_is_found_again_by_its_reference_or_by_all_else_and_each_line_only_once()
    {
        var sale = new NewMovement(Guid.Empty, Names[0].Id, First, MovementKind.Sold, 1, 9m, "post", "market");
        var order = sale with { Note = "A-17", Day = First.AddDays(3), Copies = 4 };
        var finder = new DuplicateFinder();
        finder.Add(sale);
        finder.Add(order);

        Assert.Equal(DuplicateReason.Reference, finder.Look(order with { Day = First.AddDays(9), Copies = 5 }));
        Assert.Equal(DuplicateReason.SameSale, finder.Look(sale with { Note = "" }));
        Assert.Null(finder.Look(sale));
        Assert.Null(finder.Look(sale with { Day = First.AddDays(1) }));
        Assert.Null(finder.Look(order with { EditionId = Names[1].Id }));
        Assert.Null(finder.Look(sale with { Note = "B-1", Day = First.AddDays(5) }));
        Assert.Equal(DuplicateReason.Reference, finder.Look(sale with { Note = "B-1", Day = First.AddDays(6) }));
    }

    [Fact]
    public async Task The_ledger_comes_back_from_its_own_file_as_it_was_with_words_that_look_like_formulas()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        foreach (var (kind, copies, amount, note) in new[]
        {
            (MovementKind.Printed, 50, 100m, ""), (MovementKind.Sold, 3, 27.5m, "=1+1"), (MovementKind.Returned, 1, 9m, "'-2"), (MovementKind.GivenAway, 2, 0m, "@home, \"gift\""), (MovementKind.Spoiled, 1, 0m, ""),
        })
        {
            SmallPress.Saved(await stores.Ledger.WriteAsync(small.Id, new NewMovement(
                Guid.CreateVersion7(), small.Edition.Id, First.AddDays(copies), kind, copies, amount, kind == MovementKind.Sold ? SmallPress.Post.Id : null, note)));
        }

        var undone = SmallPress.Saved(await stores.Ledger.WriteAsync(small.Id, new NewMovement(Guid.NewGuid(), small.Edition.Id, First, MovementKind.Sold, 9, 1m)));
        SmallPress.Saved(await stores.Ledger.TakeBackAsync(small.Id, undone.Id));
        var shape = LedgerShape.Of(await stores.Ledger.NamesAsync(small.Id), number => $"printing {number}", [(SmallPress.Post.Id, SmallPress.Post.Name)], First.AddYears(1));
        var standing = await stores.Ledger.StandingAsync(small.Id).Select(line => line with { Id = Guid.Empty }).ToListAsync();
        Assert.Equal(5, standing.Count);

        var text = await CsvText.OfAsync(shape.Columns, standing.Select(line => shape.Texts(line, English).Single()), English);
        var again = Read(text, shape, English, out var problems);

        Assert.Empty(problems);
        Assert.Equal(standing, again);
        Assert.Contains("'=1+1", text, StringComparison.Ordinal);
        Assert.Equal(text, await CsvText.OfAsync(shape.Columns, again.Select(line => shape.Texts(line, English).Single()), English));
    }

    [Fact]
    public async Task Sales_beyond_the_count_are_kept_and_ask_for_a_count_until_the_import_is_taken_back()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        SmallPress.Saved(await stores.Ledger.WriteAsync(small.Id, new NewMovement(Guid.NewGuid(), small.Edition.Id, First, MovementKind.Printed, 10, 20m)));
        var import = Guid.NewGuid();

        var written = await stores.Ledger.ImportAsync(small.Id, [small.Edition.Id], () => Sales(small, 4, 3), import);

        Assert.Equal((4, small.Edition.Id), (written!.Lines, Assert.Single(written.CountNeeded)));
        Assert.Equal(new CopiesOnHand(-2, true), await stores.Ledger.OnHandAsync(small.Id, small.Edition.Id));
        SmallPress.Saved(await stores.Ledger.TakeBackImportAsync(small.Id, import));
        Assert.Equal(new CopiesOnHand(10, false), await stores.Ledger.OnHandAsync(small.Id, small.Edition.Id));
    }

    [Fact]
    public async Task A_printings_invoice_is_kept_part_by_part_and_learned_from_as_long_as_the_line_stands()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var actual = new PrintingActual(50, 80m, 0m, 1m, 0m, 15m, [new("stitch", 30m, 52, 2)]) { Invoice = [new(InvoicePart.Printing, 60m), new(InvoicePart.Delivery, 12.5m)] };
        var line = SmallPress.Saved(await stores.Ledger.WriteAsync(
            small.Id, new NewMovement(Guid.NewGuid(), small.Edition.Id, First, MovementKind.Printed, 50, actual.LandedCost(2), Printing: actual)));

        var kept = Assert.Single(await stores.Ledger.PrintingsAsync(small.Id));
        Assert.Equal((small.Edition.Id, 80m), (kept.EditionId, kept.Printing.ShopPaid));
        Assert.Equal(actual.Invoice, kept.Printing.Invoice);
        Assert.Contains("\"invoice\"", System.Text.Encoding.UTF8.GetString((await stores.Archives.ExportAsync(small.Id))!), StringComparison.Ordinal);
        SmallPress.Saved(await stores.Ledger.TakeBackAsync(small.Id, line.Id));
        Assert.Empty(await stores.Ledger.PrintingsAsync(small.Id));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Of_two_who_looked_at_one_list_before_either_wrote_it_only_one_writes_it(bool atOnce)
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        SmallPress.Saved(await stores.Ledger.WriteAsync(small.Id, Sales(small, 1, 7).Single()));
        var seen = await stores.Ledger.PlacesAsync(small.Id);
        Assert.Equal(1, seen[small.Edition.Id]);

        List<NewMovement>[] lists = [[.. Sales(small, 1500, 2)], [.. Sales(small, 1500, 2)]];
        var first = WriteAsync(0);
        await (atOnce ? Task.CompletedTask : first);
        Task<LedgerImport?>[] both = [first, WriteAsync(1)];
        await ((Task)Task.WhenAll(both)).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing | ConfigureAwaitOptions.ContinueOnCapturedContext);

        var refused = Assert.IsType<WrittenMeanwhileException>(Assert.Single(both, writing => writing.IsFaulted).Exception!.InnerException);
        Assert.Equal(lists[Array.FindIndex(both, writing => writing.IsFaulted)].Select(line => line.Id).Order(), refused.Lines.Order());
        Assert.Equal(1500, (await Assert.Single(both, writing => writing.IsCompletedSuccessfully))!.Lines);
        Assert.Equal(-3007, (await stores.Ledger.OnHandAsync(small.Id, small.Edition.Id))!.Value.OnHand);

        Task<LedgerImport?> WriteAsync(int whose) => stores.Ledger.ImportAsync(small.Id, [small.Edition.Id], () => lists[whose], Guid.NewGuid(), seen: seen);
    }

    [Fact]
    public async Task What_was_seen_or_taken_back_or_is_another_sale_does_not_keep_a_list_from_coming_in()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var sale = Sales(small, 1, 2).Single();
        SmallPress.Saved(await stores.Ledger.WriteAsync(small.Id, sale));
        var seen = await stores.Ledger.PlacesAsync(small.Id);
        await WriteAsync(sale with { Id = Guid.NewGuid(), Copies = 3 });
        await WriteAsync(sale with { Id = Guid.NewGuid(), Day = sale.Day.AddDays(1), Note = "A-18" });
        SmallPress.Saved(await stores.Ledger.TakeBackAsync(small.Id, (await WriteAsync(sale with { Id = Guid.NewGuid(), Note = "A-17" })).Id));

        var import = Guid.NewGuid();
        NewMovement[] list = [sale with { Id = Guid.NewGuid(), Note = "A-17" }, sale with { Id = Guid.NewGuid(), Note = "A-17" }];
        Assert.Equal(2, (await ImportAsync(import, list))!.Lines);
        Assert.Equal(0, (await ImportAsync(import, list))!.Lines);

        var order = sale with { Id = Guid.NewGuid(), Day = sale.Day.AddDays(9), Copies = 5 };
        NewMovement[] orders = [order, order with { Id = Guid.NewGuid(), Note = "A-18" }];
        Assert.Equal([orders[1].Id], (await Assert.ThrowsAsync<WrittenMeanwhileException>(() => ImportAsync(Guid.NewGuid(), orders))).Lines);
        Assert.Equal(2, (await stores.Ledger.ImportAsync(
            small.Id, [small.Edition.Id], () => orders, Guid.NewGuid(), seen: await stores.Ledger.PlacesAsync(small.Id)))!.Lines);

        async Task<MovementRecord> WriteAsync(NewMovement line) => SmallPress.Saved(await stores.Ledger.WriteAsync(small.Id, line));
        Task<LedgerImport?> ImportAsync(Guid id, NewMovement[] lines) => stores.Ledger.ImportAsync(small.Id, [small.Edition.Id], () => lines, id, seen: seen);
    }

    [Fact]
    public async Task A_hundred_thousand_sales_come_in_without_being_held()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        const long mostMegabytes = 64;
        var before = GC.GetTotalMemory(forceFullCollection: true);

        // Tests beside this one may let go of more than it takes: then it grows by less than nothing. That it was looked at is counted instead.
        const int between = 25_000;
        var grown = new List<long>();
        var written = await stores.Ledger.ImportAsync(
            small.Id, [small.Edition.Id], () => Sales(small, ManyRows, 1), Guid.NewGuid(),
            new AtEach(done => grown.AddRange(done % between == 0 ? [GC.GetTotalMemory(forceFullCollection: true) - before] : [])),
            await stores.Ledger.PlacesAsync(small.Id));

        Assert.Equal(ManyRows, written!.Lines);
        Assert.Equal(-ManyRows, (await stores.Ledger.OnHandAsync(small.Id, small.Edition.Id))!.Value.OnHand);
        Assert.Equal(ManyRows / between, grown.Count);
        Assert.All(grown, bytes => Assert.True(bytes <= mostMegabytes * 1024 * 1024, $"{bytes} bytes more than before."));
    }

    private static IEnumerable<NewMovement> Sales(SmallPress small, int count, int copies) =>
        Enumerable.Range(0, count).Select(at => new NewMovement(Guid.CreateVersion7(), small.Edition.Id, First.AddDays(1 + (at % 100)), MovementKind.Sold, copies, 9m * copies, SmallPress.Post.Id));

    private static LedgerShape Shape() => LedgerShape.Of(Names, number => $"printing {number}", [("post", "Own web shop")], new DateOnly(2026, 12, 1));

    private static List<NewMovement> Read(string text, LedgerShape shape, CellManners manners, out List<CellProblem> problems)
    {
        using var file = new TempCsv(text);
        var source = CsvSource.Open(file.Path);
        var found = new List<CellProblem>();
        var lines = CsvReading.Things(source, MappingGuess.Of(source, shape.Columns, manners), shape, manners, found.Add).Select(read => read.Thing).ToList();
        problems = found;
        return lines;
    }

    private sealed class AtEach(Action<int> act) : IProgress<int>
    {
        public void Report(int value) => act(value);
    }
}
