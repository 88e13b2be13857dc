using CsCheck;
using PressRun.Engine.Copies;

namespace PressRun.Engine.Tests.Copies;

public sealed class LedgerMonthTests
{
    private static readonly Gen<CopyMovement> Movement = Gen.Select(
        Gen.Int[0, 800], Gen.Enum<MovementKind>(), Gen.Int[-40, 40], Gen.Int[0, 500],
        (day, kind, copies, cents) => new CopyMovement(new DateOnly(2025, 1, 15).AddDays(day), day, kind, copies, cents / 100m));

    [Fact]
    public void A_month_says_what_was_printed_and_sold_in_it_and_what_is_left()
    {
        CopyMovement[] lines =
        [
            new(new(2026, 1, 31), 1, MovementKind.Printed, 100, 200m),
            new(new(2026, 3, 1), 2, MovementKind.Sold, -12, 96m),
            new(new(2026, 3, 31), 4, MovementKind.Returned, 2, -16m),
            new(new(2026, 3, 9), 3, MovementKind.GivenAway, -5, 0m),
        ];

        Assert.Equal(
            [new LedgerMonth(new(2026, 1, 1), 1, 100, 0, 100, 0m, 100), new LedgerMonth(new(2026, 3, 1), 3, 0, 10, -15, 80m, 85)],
            LedgerMonth.All(lines));
    }

    [Fact]
    public void Months_come_to_what_the_account_says() => Movement.List[1, 60].Sample(lines =>
    {
        var (months, position) = (LedgerMonth.All(lines), CopiesAccount.At(lines));
        Assert.Equal(position.OnHand, months[^1].OnHand);
        Assert.Equal(position.SoldForGood, months.Sum(month => month.Sold));
        Assert.Equal(position.Takings, months.Sum(month => month.Takings));
        Assert.Equal(lines.Count, months.Sum(month => month.Lines));
        Assert.All(months, month => Assert.Equal(CopiesAccount.At(lines, month.First.AddMonths(1).AddDays(-1)).OnHand, month.OnHand));
    });
}
