using PressRun.Data.Running;
using PressRun.Data;
using PressRun.Data.Copies;
using PressRun.Data.Payouts;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Data.RunPlans;
using PressRun.Data.Selling;
using PressRun.Data.Titles;
using PressRun.Engine.Copies;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Quoting;
using PressRun.Engine.Selling;
using PressRun.Web.Shared;

namespace PressRun.Web.Payouts;

/// <summary>The payouts of a printing with what its page needs.</summary>
/// <param name="Title">The title.</param>
/// <param name="Edition">The printing.</param>
/// <param name="Lines">Its copies ledger.</param>
/// <param name="Costs">What each channel takes, by its id.</param>
/// <param name="PostUnknown">Names of channels that post and of which nobody knows what that takes.</param>
/// <param name="Payouts">Who is promised what, and what was paid.</param>
/// <param name="Agreed">The latest agreed quote that shares its bill; null where there is none.</param>
/// <param name="Today">Today where the server stands.</param>
public sealed record PayoutsView(
    TitleRecord Title,
    EditionRecord Edition,
    IReadOnlyList<ChannelMovement> Lines,
    IReadOnlyDictionary<string, ChannelCost> Costs,
    IReadOnlyList<string> PostUnknown,
    EditionPayouts Payouts,
    QuoteRecord? Agreed,
    DateOnly Today)
{
    /// <summary>What printing has cost and sales have brought until a day, all copies together: shares of a profit say nothing of what there is to pay them from.</summary>
    public CopiesPosition Till(DateOnly to) => CopiesAccount.At(Lines.Select(line => line.Movement), to);

    /// <summary>Who gets what for a time, or what stands in the way.</summary>
    public Outcome<PayoutStatement> Statement(DateOnly from, DateOnly to, Currency currency) => PayoutStatement.Of(
        Lines, Costs, Edition.Price, Payouts.Claims.Claims, [.. Payouts.Payments.Select(payment => payment.Paid)], from, to, currency);
}

/// <summary>Reads and writes who gets what of a printing for its page.</summary>
public sealed class PayoutsService(
    TitleStore titles, EditionStore editions, CopiesLedgerStore ledger, ChannelStore channels, PlanStore plans, QuoteStore quotes, PayoutStore payouts, TimeProvider time)
{
    /// <summary>All about the payouts of a printing by its address, or null.</summary>
    public async Task<PayoutsView?> LoadAsync(PressId press, string slug, int printing)
    {
        if (await titles.FindAsync(press, slug) is not { } title || await editions.FindAsync(press, slug, printing) is not { } edition)
        {
            return null;
        }

        var lines = (await ledger.OfEditionAsync(press, edition.Id)).Select(line => new ChannelMovement(line.Movement, line.ChannelId)).ToList();
        var (costs, unknown) = await CostsAsync(press, edition.Id, lines.Select(line => line.ChannelId).OfType<string>().ToHashSet());
        return new PayoutsView(
            title, edition, lines, costs, unknown, await payouts.LoadAsync(press, edition.Id), await AgreedAsync(press, edition.Id), time.Today());
    }

    /// <summary>The view with what was promised and paid as it is stored now.</summary>
    public async Task<PayoutsView> AgainAsync(PressId press, PayoutsView view) => view with { Payouts = await payouts.LoadAsync(press, view.Edition.Id) };

    /// <summary>Saves who is promised what.</summary>
    public Task<SaveResult<EditionClaims>> SaveAsync(PressId press, EditionClaims claims) => payouts.SaveAsync(press, claims);

    /// <summary>Writes down what was paid; a sentence where it is refused.</summary>
    public async Task<string?> PayAsync(PressId press, NewPayment payment, string by) => await payouts.PayAsync(press, payment, by) switch
    {
        SaveResult<PaymentRecord>.Saved => null,
        SaveResult<PaymentRecord>.Refused refused => Words.Standing(refused.Problems),
        _ => Say($"This printing has been taken out in between."),
    };

    private async Task<(IReadOnlyDictionary<string, ChannelCost> Costs, IReadOnlyList<string> Unknown)> CostsAsync(PressId press, Guid edition, HashSet<string> used)
    {
        var (mailers, postage) = await PostAsync(press, edition);
        var known = (await channels.ListAsync(press, archived: true)).Select(channel => channel.Item).Where(channel => used.Contains(channel.Id))
            .Select(channel => (Channel: channel, Cost: ChannelCost.Of(channel, mailers, postage))).ToList();
        return (
            known.ToDictionary(pair => pair.Channel.Id, pair => pair.Cost ?? ChannelCost.Of(pair.Channel, 0m)),
            [.. known.Where(pair => pair.Cost is null).Select(pair => pair.Channel.Name)]);
    }

    // What copies are posted in and by, as the plan that the printing goes by has it.
    private async Task<(IReadOnlyList<Engine.Postage.Mailer> Mailers, IReadOnlyList<Engine.Postage.PostageChoice> Postage)> PostAsync(PressId press, Guid edition)
    {
        var plan = (await plans.OfEditionAsync(press, edition)).FirstOrDefault(candidate => candidate.Chosen);
        return plan is not null && await plans.SourceAsync(press, plan.Id) is { } source
            && PreparedJob.Prepare(source.Build()) is { Succeeded: true, Value: var prepared } && prepared.Estimate(plan.Quantity) is { Succeeded: true, Value: var estimate }
            ? (prepared.Job.Mailers, estimate.Postage)
            : ([], []);
    }

    private async Task<QuoteRecord?> AgreedAsync(PressId press, Guid edition)
    {
        var agreed = (await quotes.ListAsync(press, edition)).FirstOrDefault(quote => quote.State == QuoteState.Agreed);
        return agreed is not null && await quotes.FindAsync(press, agreed.Number) is { Quote: { Facts.Bill.Count: > 0 } quote } ? quote : null;
    }
}
