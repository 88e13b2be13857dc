using PressRun.Engine.Measures;

namespace PressRun.Engine.Costing;

/// <summary>What a piece of the landed cost is spent on.</summary>
public enum MoneyKind
{
    /// <summary>Whole books.</summary>
    Books,

    /// <summary>Printing.</summary>
    Print,

    /// <summary>Paper.</summary>
    Paper,

    /// <summary>Set-up of order, edition and parts.</summary>
    SetUp,

    /// <summary>Finishing operations of the shop.</summary>
    Finishing,

    /// <summary>Shortfall to the minimum order.</summary>
    TopUp,

    /// <summary>Delivery.</summary>
    Delivery,

    /// <summary>The shop's tax, where it is not reclaimed.</summary>
    Tax,

    /// <summary>What the bench uses up.</summary>
    Consumables,

    /// <summary>The edition's own costs.</summary>
    Fixed,

    /// <summary>The press's own hours.</summary>
    Labour,
}

/// <summary>A piece of the landed cost.</summary>
/// <param name="Kind">What it is spent on.</param>
/// <param name="Amount">In whole minor units of the currency.</param>
public readonly record struct MoneyPiece(MoneyKind Kind, decimal Amount);

/// <summary>The landed cost cut into what it is spent on.</summary>
/// <param name="Pieces">In the order of <see cref="MoneyKind"/>; none is zero.</param>
/// <param name="Shop">Sum of the pieces that the shop is paid, up to and with tax.</param>
/// <param name="Materials">Sum of what the bench uses up and the edition's own costs.</param>
/// <param name="Labour">The press's own hours.</param>
public sealed record MoneyCut(IReadOnlyList<MoneyPiece> Pieces, decimal Shop, decimal Materials, decimal Labour)
{
    /// <summary>
    /// Cuts the landed cost of an estimate into what it is spent on. A discount is taken off every kind of goods in proportion, in whole
    /// minor units by the largest remainder (ties to the first), so that the pieces add up to the landed cost exactly.
    /// </summary>
    /// <param name="estimate">The estimate.</param>
    /// <param name="currency">Its currency.</param>
    /// <param name="reclaimTax">True where the press gets the shop's tax back, so that it is no part of the landed cost.</param>
    public static MoneyCut Of(Estimate estimate, Currency currency, bool reclaimTax)
    {
        var kinds = Enum.GetValues<MoneyKind>();
        var amounts = new decimal[kinds.Length];
        foreach (var line in estimate.Lines)
        {
            if (KindOf(line.Code) is { } kind && !(reclaimTax && kind == MoneyKind.Tax))
            {
                amounts[(int)kind] += line.Amount;
            }
        }

        if (estimate.Totals.Discount != 0m)
        {
            var goods = amounts[..((int)MoneyKind.Finishing + 1)];
            var off = Shares.Of(estimate.Totals.Discount, goods, currency);
            for (var kind = 0; kind < goods.Length; kind++)
            {
                amounts[kind] -= off[kind];
            }
        }

        return new MoneyCut(
            [.. kinds.Where(kind => amounts[(int)kind] != 0m).Select(kind => new MoneyPiece(kind, amounts[(int)kind]))],
            amounts[..((int)MoneyKind.Tax + 1)].Sum(),
            amounts[(int)MoneyKind.Consumables] + amounts[(int)MoneyKind.Fixed],
            amounts[(int)MoneyKind.Labour]);
    }

    private static MoneyKind? KindOf(CostCode code) => code switch
    {
        CostCode.Book => MoneyKind.Books,
        CostCode.Print => MoneyKind.Print,
        CostCode.Paper => MoneyKind.Paper,
        CostCode.SetUpOrder or CostCode.SetUpEdition or CostCode.SetUpPart => MoneyKind.SetUp,
        CostCode.Finishing => MoneyKind.Finishing,
        CostCode.Minimum => MoneyKind.TopUp,
        CostCode.Delivery => MoneyKind.Delivery,
        CostCode.Tax => MoneyKind.Tax,
        CostCode.BenchConsumable => MoneyKind.Consumables,
        CostCode.Fixed => MoneyKind.Fixed,
        CostCode.BenchLabour => MoneyKind.Labour,
        _ => null,
    };
}
