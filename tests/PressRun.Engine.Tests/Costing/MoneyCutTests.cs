using PressRun.Engine.Costing;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Tests.Costing;

public class MoneyCutTests
{
    private static readonly Currency Dollars = Currency.Find("USD")!;

    [Fact]
    public void Lines_of_one_kind_make_one_piece_in_the_order_of_kinds() =>
        Assert.Equal(
            [new(MoneyKind.Print, 105.45m), new(MoneyKind.SetUp, 9.50m), new(MoneyKind.Delivery, 14m), new MoneyPiece(MoneyKind.Labour, 44.42m)],
            Pieces(
                0m,
                (CostCode.Print, 89.91m), (CostCode.Print, 15.54m), (CostCode.SetUpOrder, 5m), (CostCode.SetUpPart, 4.50m), (CostCode.Delivery, 14m),
                (CostCode.BenchLabour, 44.42m)));

    [Fact]
    public void A_discount_comes_off_goods_in_proportion_and_off_nothing_else() =>
        Assert.Equal(
            [new(MoneyKind.Print, 285m), new(MoneyKind.Paper, 95m), new MoneyPiece(MoneyKind.Delivery, 14m)],
            Pieces(20m, (CostCode.Print, 300m), (CostCode.Paper, 100m), (CostCode.Discount, -20m), (CostCode.Delivery, 14m)));

    [Fact]
    public void A_discount_that_does_not_divide_still_leaves_pieces_that_add_up()
    {
        var pieces = Pieces(0.10m, (CostCode.Print, 1m), (CostCode.Paper, 1m), (CostCode.Finishing, 1m), (CostCode.Discount, -0.10m));
        Assert.Equal([0.96m, 0.97m, 0.97m], pieces.Select(piece => piece.Amount));
        Assert.Equal(2.90m, pieces.Sum(piece => piece.Amount));
    }

    [Fact]
    public void Reclaimed_tax_is_no_piece() =>
        Assert.Equal(
            [new MoneyPiece(MoneyKind.Print, 100m)],
            MoneyCut.Of(Estimate(0m, [(CostCode.Print, 100m), (CostCode.Tax, 6m)]), Dollars, reclaimTax: true).Pieces);

    [Fact]
    public void Sums_are_the_shop_the_materials_and_the_hours()
    {
        var cut = MoneyCut.Of(
            Estimate(
                20m,
                [
                    (CostCode.Book, 400m), (CostCode.Discount, -20m), (CostCode.Delivery, 14m), (CostCode.Tax, 23m),
                    (CostCode.BenchConsumable, 0.63m), (CostCode.Fixed, 18m), (CostCode.BenchLabour, 44.42m),
                ]),
            Dollars,
            reclaimTax: false);
        Assert.Equal((417m, 18.63m, 44.42m), (cut.Shop, cut.Materials, cut.Labour));
    }

    private static IReadOnlyList<MoneyPiece> Pieces(decimal discount, params (CostCode, decimal)[] lines) =>
        MoneyCut.Of(Estimate(discount, lines), Dollars, reclaimTax: false).Pieces;

    private static Estimate Estimate(decimal discount, (CostCode Code, decimal Amount)[] lines) => new(
        100, 100, [], [.. lines.Select(line => new CostLine(line.Code, "", 1m, line.Amount, line.Amount))],
        default(CostTotals) with { Discount = discount }, default, default, [], [], new BreakEven(null, false, null), []);
}
