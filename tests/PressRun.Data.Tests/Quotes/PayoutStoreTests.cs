using Microsoft.EntityFrameworkCore;
using Npgsql;
using PressRun.Data.Payouts;
using PressRun.Data.Tests.Fixtures;
using PressRun.Engine.Quoting;

namespace PressRun.Data.Tests.Quotes;

public sealed class PayoutStoreTests(PostgresFixture postgres)
{
    private static readonly Claim[] Promised = [new Claim.PerCopy("Ada", 0.125m), new Claim.OfReceipts("Bo", 0.1m), new Claim.OfPrice("Cy", 0.055m), new Claim.OfProfit("Ada", 2m)];

    [Fact]
    public async Task What_is_promised_and_paid_is_kept_and_comes_back_from_an_archive()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var none = await stores.Payouts.LoadAsync(small.Id, small.Edition.Id);
        SmallPress.Saved(await stores.Payouts.SaveAsync(small.Id, none.Claims with { Claims = Promised }));
        foreach (var amount in new[] { 12.5m, -2.5m, 4m })
        {
            SmallPress.Saved(await stores.Payouts.PayAsync(small.Id, Payment(small, "Ada", amount), "Low Tide Press"));
        }

        var kept = await stores.Payouts.LoadAsync(small.Id, small.Edition.Id);

        Assert.Empty(none.Claims.Claims);
        Assert.Equal(Promised, kept.Claims.Claims);
        Assert.Equal([12.5m, -2.5m, 4m], kept.Payments.Select(payment => payment.Paid.Amount));
        var archive = (await stores.Archives.ExportAsync(small.Id))!;
        var taken = (await stores.Archives.ImportAsync(archive)).Value;
        Assert.Equal(archive, await stores.Archives.ExportAsync(taken.Id));
    }

    [Fact]
    public async Task Two_who_save_at_once_are_told_of_each_other()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var none = (await stores.Payouts.LoadAsync(small.Id, small.Edition.Id)).Claims;
        var first = SmallPress.Saved(await stores.Payouts.SaveAsync(small.Id, none with { Claims = [Promised[0]] }));

        var second = Assert.IsType<SaveResult<EditionClaims>.Conflict>(await stores.Payouts.SaveAsync(small.Id, none with { Claims = [Promised[1]] }));

        Assert.Equal(first.Claims, second.Theirs.Claims);
        SmallPress.Saved(await stores.Payouts.SaveAsync(small.Id, second.Theirs with { Claims = [Promised[1]] }));
    }

    [Fact]
    public async Task A_payment_sent_twice_is_written_once_and_stays_as_it_is()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var payment = Payment(small, "Ada", 5m);
        SmallPress.Saved(await stores.Payouts.PayAsync(small.Id, payment, "Me"));
        SmallPress.Saved(await stores.Payouts.PayAsync(small.Id, payment with { Paid = payment.Paid with { Amount = 7m } }, "Me"));

        Assert.Equal(5m, Assert.Single((await stores.Payouts.LoadAsync(small.Id, small.Edition.Id)).Payments).Paid.Amount);
        await using var db = stores.Context(small.Id);
        await Assert.ThrowsAsync<PostgresException>(() => db.Database.ExecuteSqlAsync($"UPDATE edition_payments SET amount = 1"));
        Assert.Contains("payments", Assert.Single(Assert.IsType<DeleteResult.InUse>(await stores.Editions.DeleteAsync(small.Id, small.Edition)).Where), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Ada", "0", 0, "amount")]
    [InlineData("Ada", "1.005", 0, "amount")]
    [InlineData("", "1", 0, "name")]
    [InlineData("A\0", "1", 0, "name")]
    [InlineData("Ada", "1", 2, "day")]
    public async Task What_is_no_payment_is_refused_with_what_would_be_right(string name, string amount, int days, string member)
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var payment = Payment(small, name, decimal.Parse(amount, System.Globalization.CultureInfo.InvariantCulture));
        var late = payment with { Paid = payment.Paid with { Day = payment.Paid.Day.AddDays(days) } };

        var refused = Assert.IsType<SaveResult<PaymentRecord>.Refused>(await stores.Payouts.PayAsync(small.Id, late, "Me"));

        Assert.Equal($"$.{member}", Assert.Single(refused.Problems).Path);
    }

    private static NewPayment Payment(SmallPress small, string name, decimal amount) =>
        new(Guid.CreateVersion7(), small.Edition.Id, new PaidOut(name, DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime), amount));
}
