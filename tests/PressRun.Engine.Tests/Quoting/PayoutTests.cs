using System.Numerics;
using CsCheck;
using PressRun.Engine.Copies;
using PressRun.Engine.Measures;
using PressRun.Engine.Quoting;
using PressRun.Engine.Selling;

namespace PressRun.Engine.Tests.Quoting;

public sealed class PayoutTests
{
    private static readonly Currency Dollars = Currency.Find("USD")!;
    private static readonly Currency Yen = Currency.Find("JPY")!;
    private static readonly DateOnly First = new(2026, 1, 1);

    private static Gen<Claim> AnyClaim =>
        from kind in Gen.Int[0, 3]
        from value in Gen.Int[0, 5000]
        select kind switch
        {
            0 => new Claim.PerCopy("", value / 1000m),
            1 => new Claim.OfReceipts("", value / 50_000m),
            2 => new Claim.OfPrice("", value / 50_000m),
            _ => (Claim)new Claim.OfProfit("", (value + 1) / 100m),
        };

    private static Gen<Claim[]> Claims =>
        from claims in AnyClaim.Array[0, 6]
        select claims.Select((claim, index) => claim with { Name = $"{index}" }).ToArray();

    private static Gen<ChannelMovement[]> Ledger =>
        (from day in Gen.Int[0, 360]
         from kind in Gen.Frequency((1, Gen.Const(MovementKind.Printed)), (6, Gen.Const(MovementKind.Sold)), (1, Gen.Const(MovementKind.Returned)), (1, Gen.Const(MovementKind.GivenAway)))
         from copies in Gen.Int[1, 40]
         from cents in Gen.Int[0, 40_000]
         from channel in Gen.Int[0, 2]
         select (day, kind, copies, cents, channel)).Array[0, 30].Select(lines => lines.Select((line, index) => new ChannelMovement(
            new CopyMovement(
                First.AddDays(line.day), index, line.kind,
                line.kind is MovementKind.Sold or MovementKind.GivenAway ? -line.copies : line.copies,
                line.kind switch { MovementKind.Returned => -line.cents / 100m, MovementKind.GivenAway => 0m, _ => line.cents / 100m }),
            line.channel == 0 ? null : $"{line.channel}")).ToArray());

    private static readonly Dictionary<string, ChannelCost> Costs = new() { ["1"] = new ChannelCost(0.0734m, 0.315m), ["2"] = new ChannelCost(0.2m, -0.0333m) };

    // S. L. Nelson, "How Author Royalties Are Calculated": 5 % of a price of 20 is 1 for each copy; a set amount of 1 for each copy is the same.
    [Fact]
    public void A_royalty_on_the_price_is_the_published_one_and_a_set_amount_is_the_same()
    {
        var sales = new EditionSales(300, 4000m, 0m, 0m);

        Assert.Equal([300m, 300m], Of(sales, 20m, new Claim.OfPrice("A", 0.05m), new Claim.PerCopy("B", 1m)).Amounts);
    }

    // Warren, Accounting, 27th edition, exercise 12-3 (b) and (c): 290,000 in the ratio 3 to 1, and 276,000 in the ratio 2 to 3.
    [Theory]
    [InlineData(290_000, 3, 1, 217_500, 72_500)]
    [InlineData(276_000, 2, 3, 110_400, 165_600)]
    public void Profit_is_shared_as_the_textbook_shares_it(int profit, int one, int other, int ofOne, int ofOther)
    {
        var payout = Of(new EditionSales(1, profit, 0m, 0m), 0m, new Claim.OfProfit("A", one), new Claim.OfProfit("B", other));

        Assert.Equal([ofOne, ofOther], payout.Amounts);
        Assert.Equal(0m, payout.Kept);
    }

    [Fact]
    public void Royalties_come_before_profit_and_what_nobody_is_promised_is_kept()
    {
        var sales = new EditionSales(100, 800m, 50m, 250m);
        var payout = Of(sales, 8m, new Claim.OfReceipts("A", 0.1m), new Claim.PerCopy("B", 0.5m));

        Assert.Equal([80m, 50m], payout.Amounts);
        Assert.Equal((130m, 370m, 370m), (payout.Royalties, payout.Profit, payout.Kept));
    }

    [Fact]
    public void Of_a_loss_nothing_is_shared_and_later_profit_makes_it_good_first()
    {
        Claim[] claims = [new Claim.OfProfit("A", 1m), new Claim.OfProfit("B", 1m)];
        var loss = Of(new EditionSales(10, 100m, 0m, 130m), 0m, claims);
        var later = Of(new EditionSales(30, 300m, 0m, 250m), 0m, claims);

        Assert.Equal([0m, 0m], loss.Amounts);
        Assert.Equal((-30m, -30m), (loss.Profit, loss.Kept));
        Assert.Equal([25m, 25m], Payout.Between(loss, later).Amounts);
        Assert.Equal((80m, 30m), (Payout.Between(loss, later).Profit, Payout.Between(loss, later).Kept));
    }

    [Fact]
    public void Copies_that_come_back_take_their_royalty_back()
    {
        ChannelMovement[] lines = [Line(0, MovementKind.Printed, 10, 20m), Line(1, MovementKind.Sold, -4, 40m), Line(9, MovementKind.Returned, 2, -20m)];
        Claim[] claims = [new Claim.PerCopy("A", 0.5m), new Claim.OfReceipts("B", 0.1m)];
        var before = Of(Sales(lines, 5), 10m, claims);

        Assert.Equal([2m, 4m], before.Amounts);
        Assert.Equal([-1m, -2m], Payout.Between(before, Of(Sales(lines, 9), 10m, claims)).Amounts);
    }

    [Fact]
    public void Any_payout_adds_up_to_what_the_sales_left_to_the_coin()
    {
        Gen.Select(Ledger, Claims, Gen.Int[0, 3000], Gen.Bool).Sample((lines, claims, price, inYen) =>
        {
            var currency = inYen ? Yen : Dollars;
            var payout = Payout.Of(EditionSales.UpTo(lines, DateOnly.MaxValue, Costs, currency), price / 100m, claims, currency).Value;

            Assert.Equal(payout.Sales.Margin, payout.Amounts.Sum() + payout.Kept);
            Assert.Equal(payout.Profit, payout.Sales.Margin - payout.Royalties);
            Assert.All(payout.Amounts, amount => Assert.Equal(currency.Round(amount), amount));
            if (claims.Any(claim => claim is Claim.OfProfit) && payout.Profit > 0m)
            {
                Assert.Equal(0m, payout.Kept);
            }
        });
    }

    [Fact]
    public void A_time_cut_anywhere_comes_to_the_whole()
    {
        Gen.Select(Ledger, Claims, Gen.Int[0, 360].Array[1, 5]).Sample((lines, claims, cuts) =>
        {
            var all = Of(Sales(lines, 400), 9.99m, claims);
            var pieces = cuts.Order().Append(400).Select(day => Of(Sales(lines, day), 9.99m, claims)).ToList();
            var sums = pieces[0].Amounts.ToArray();
            foreach (var (before, after) in pieces.Zip(pieces.Skip(1)))
            {
                sums = [.. sums.Zip(Payout.Between(before, after).Amounts, (sum, amount) => sum + amount)];
            }

            Assert.Equal(all.Amounts, sums);
        });
    }

    /// <summary>A second way to the same amounts: line by line in whole thousandths of a coin, and coins dealt one after the other.</summary>
    [Fact]
    public void A_plain_count_of_coins_comes_to_the_same()
    {
        Gen.Select(Ledger, Claims, Gen.Int[0, 3000]).Sample((lines, claims, price) =>
        {
            var sales = EditionSales.UpTo(lines, DateOnly.MaxValue, Costs, Dollars);
            var (copies, cents) = (0L, 0m);
            foreach (var line in lines.Where(line => line.Movement.Kind is MovementKind.Sold or MovementKind.Returned))
            {
                copies -= line.Movement.Copies;
                cents += line.Movement.Amount * 100m;
            }

            Assert.Equal((copies, cents), (sales.Copies, sales.Receipts * 100m));
            var royalties = claims.Select(claim => Half(claim switch
            {
                Claim.PerCopy each => each.Amount * 100m * copies,
                Claim.OfReceipts part => part.Rate * cents,
                Claim.OfPrice part => part.Rate * price * copies,
                _ => 0m,
            })).ToList();
            var left = (long)(sales.Margin * 100m) - royalties.Sum();
            var dealt = Deal(left, [.. claims.Select(claim => claim is Claim.OfProfit share ? share.Weight : 0m)]);

            Assert.Equal(
                royalties.Zip(dealt, (royalty, share) => (royalty + share) / 100m),
                Payout.Of(sales, price / 100m, claims, Dollars).Value.Amounts);
        });
    }

    [Fact]
    public void What_cannot_be_promised_is_refused_where_it_stands()
    {
        var refused = Payout.Of(
            default, 0m,
            [new Claim.PerCopy("A", -1m), new Claim.OfReceipts("", 0.1m), new Claim.OfPrice("B", 1.01m), new Claim.OfProfit("C", 0m), new Claim.OfProfit("c ", 1m), new Claim.PerCopy("C", 1m)],
            Dollars);

        Assert.Equal(["$[0].value", "$[1].name", "$[2].value", "$[3].value", "$[4].name"], refused.Problems.Select(problem => problem.Path));
    }

    private static long Half(decimal coins) => (long)(Math.Sign(coins) * Math.Floor(Math.Abs(coins) + 0.5m));

    // Floors first, then a coin to the largest part left over, as often as there are coins.
    private static long[] Deal(long coins, decimal[] weights)
    {
        var whole = weights.Select(weight => new BigInteger(weight * 100m)).ToArray();
        var sum = whole.Aggregate(BigInteger.Zero, (total, weight) => total + weight);
        if (coins <= 0 || sum.IsZero)
        {
            return new long[weights.Length];
        }

        var shares = whole.Select(weight => (long)(coins * weight / sum)).ToArray();
        var rests = whole.Select(weight => coins * weight % sum).ToArray();
        for (var left = coins - shares.Sum(); left > 0; left--)
        {
            var next = Array.IndexOf(rests, rests.Max());
            shares[next]++;
            rests[next] = -1;
        }

        return shares;
    }

    private static Payout Of(EditionSales sales, decimal price, params Claim[] claims) => Payout.Of(sales, price, claims, Dollars).Value;

    private static EditionSales Sales(ChannelMovement[] lines, int day) => EditionSales.UpTo(lines, First.AddDays(day), Costs, Dollars);

    private static ChannelMovement Line(int day, MovementKind kind, int copies, decimal amount) => new(new CopyMovement(First.AddDays(day), day, kind, copies, amount), null);
}
