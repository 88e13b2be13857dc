using Microsoft.EntityFrameworkCore;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Quoting;

namespace PressRun.Data.Payouts;

/// <summary>Who is promised what of a printing's sales, and what was paid of it. Payments are only added: one below zero takes back.</summary>
public sealed class PayoutStore
{
    private const decimal MostMoney = 1_000_000_000m;
    private const string AmountRule = "Write the amount that was paid, with no finer coin than the currency has; below zero takes back.";

    private readonly PressDatabase database;

    internal PayoutStore(PressDatabase database) => this.database = database;

    /// <summary>All about the payouts of a printing; nothing promised and nothing paid where nothing was written down.</summary>
    public Task<EditionPayouts> LoadAsync(PressId press, Guid editionId, CancellationToken cancel = default) =>
        database.ReadMomentAsync(
            press,
            async db => new EditionPayouts(
                (await db.EditionClaims.AsNoTracking().SingleOrDefaultAsync(row => row.EditionId == editionId, cancel))?.ToRecord() ?? new EditionClaims(editionId, [], 0),
                (await db.EditionPayments.AsNoTracking().Where(row => row.EditionId == editionId).OrderBy(row => row.Day).ThenBy(row => row.WrittenAt).ThenBy(row => row.Id)
                    .ToListAsync(cancel)).ConvertAll(row => row.ToRecord())),
            cancel);

    /// <summary>Saves who is promised what.</summary>
    /// <returns>Saved, Gone where there is no such printing, Conflict where somebody else saved in between, or Refused.</returns>
    public Task<SaveResult<EditionClaims>> SaveAsync(PressId press, EditionClaims claims, CancellationToken cancel = default) =>
        database.WriteAsync<SaveResult<EditionClaims>>(
            press,
            async db =>
            {
                if (!await HoldAsync(db, claims.EditionId, cancel))
                {
                    return new SaveResult<EditionClaims>.Gone();
                }

                var row = await db.EditionClaims.SingleOrDefaultAsync(there => there.EditionId == claims.EditionId, cancel);
                if (row is not null && row.Version != claims.Version)
                {
                    return new SaveResult<EditionClaims>.Conflict(row.ToRecord());
                }

                if (Problems(claims.Claims) is { Count: > 0 } problems)
                {
                    return new SaveResult<EditionClaims>.Refused(problems);
                }

                row ??= db.EditionClaims.Add(new EditionClaimsRow { PressId = press, EditionId = claims.EditionId }).Entity;
                row.Claims = ClaimShape.Text([.. claims.Claims.Select(claim => claim with { Name = claim.Name.Trim() })]);
                await db.SaveChangesAsync(cancel);
                return new SaveResult<EditionClaims>.Saved(row.ToRecord());
            },
            cancel);

    /// <summary>Writes down what was paid. Sent again with its id it is answered and not written again.</summary>
    /// <returns>Saved, Gone where there is no such printing, or Refused.</returns>
    public Task<SaveResult<PaymentRecord>> PayAsync(PressId press, NewPayment payment, string by, CancellationToken cancel = default) =>
        database.WriteAsync<SaveResult<PaymentRecord>>(
            press,
            async db =>
            {
                if (!await HoldAsync(db, payment.EditionId, cancel))
                {
                    return new SaveResult<PaymentRecord>.Gone();
                }

                if (await db.EditionPayments.AsNoTracking().SingleOrDefaultAsync(row => row.Id == payment.Id, cancel) is { } before)
                {
                    return new SaveResult<PaymentRecord>.Saved(before.ToRecord());
                }

                var currency = Currency.Find(await db.Presses.Where(row => row.Id == press).Select(row => row.Currency).SingleAsync(cancel))!;
                if ((ProblemOf(payment.Paid) ?? ProblemToday(payment.Paid, currency, database.Today)) is { } problem)
                {
                    return new SaveResult<PaymentRecord>.Refused([problem]);
                }

                var added = db.EditionPayments.Add(new EditionPaymentRow
                {
                    PressId = press, Id = payment.Id, EditionId = payment.EditionId, Name = payment.Paid.Name.Trim(), Day = payment.Paid.Day,
                    Amount = payment.Paid.Amount, By = by, WrittenAt = database.Now,
                }).Entity;
                await db.SaveChangesAsync(cancel);
                return new SaveResult<PaymentRecord>.Saved(added.ToRecord());
            },
            cancel);

    /// <summary>What is wrong with what is promised; empty where nothing is.</summary>
    internal static List<Problem> Problems(IReadOnlyList<Claim> claims) =>
    [
        .. Claim.Check(claims), .. claims.Where(claim => !string.IsNullOrWhiteSpace(claim.Name))
            .Select(claim => QuoteRules.NameProblem(claim.Name)).OfType<string>().Distinct().Select(rule => new Problem("$.name", null, rule)),
    ];

    /// <summary>What is wrong with a payment whenever it was written down; null where nothing is.</summary>
    internal static Problem? ProblemOf(PaidOut paid)
    {
        if (QuoteRules.NameProblem(paid.Name) is { } name)
        {
            return new Problem("$.name", paid.Name, name);
        }

        return paid.Amount == 0m || Math.Abs(paid.Amount) > MostMoney ? new Problem("$.amount", null, AmountRule) : null;
    }

    // A press that takes another currency keeps its payments as they are.
    private static Problem? ProblemToday(PaidOut paid, Currency currency, DateOnly today)
    {
        if (currency.Round(paid.Amount) != paid.Amount)
        {
            return new Problem("$.amount", null, AmountRule);
        }

        // Somewhere it is tomorrow already.
        return paid.Day > today.AddDays(1) ? new Problem("$.day", null, "Write the day on which it was paid: today or earlier.") : null;
    }

    // Holds the printing, so that it is not taken out meanwhile, and so that two savers follow each other.
    private static async Task<bool> HoldAsync(PressRunDbContext db, Guid editionId, CancellationToken cancel)
    {
        await db.Database.ExecuteSqlAsync($"SELECT 1 FROM editions WHERE press_id = {db.Press.Value} AND id = {editionId} FOR NO KEY UPDATE", cancel);
        return await db.Editions.AnyAsync(row => row.Id == editionId, cancel);
    }
}
