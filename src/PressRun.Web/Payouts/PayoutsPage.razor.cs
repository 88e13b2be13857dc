using System.Globalization;
using Microsoft.AspNetCore.Components;
using PressRun.Data;
using PressRun.Data.Payouts;
using PressRun.Engine.Quoting;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Payouts;

public sealed partial class PayoutsPage
{
    private readonly OneAtATime saves = new();
    private readonly UndoStack edits = new();
    private List<ClaimRow> rows = [];

    // What the lines were made from: they are kept over that, and over nothing that somebody else has kept since.
    private EditionClaims read = default!;
    private PayoutStatement? statement;
    private DateOnly from;
    private DateOnly to;
    private bool loaded;
    private bool recalling;
    private bool recalled;
    private string? said;
    private string? days;
    private string? problem;

    // What was to be kept while somebody else kept something else; null where nobody did.
    private IReadOnlyList<Claim>? mine;

    [Inject]
    private PayoutsService Service { get; set; } = default!;

    [Inject]
    private Drafts Drafts { get; set; } = default!;

    private PayoutsView? View { get; set; }

    private string DraftKey => $"payouts/{View!.Edition.Id}/claims";

    private string FileAddress => Press!.File(string.Create(CultureInfo.InvariantCulture, $"{EditionAddress}/payouts.csv?from={from:yyyy-MM-dd}&to={to:yyyy-MM-dd}"));

    private bool Changed => DraftRows.Write(rows.Select(row => row.Texts)) != DraftRows.Write(Kept().Select(row => row.Texts));

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (Press is not null && (View is null || View.Title.Slug != Slug || View.Edition.Printing != Printing))
        {
            (View, loaded, said, problem, mine, recalled) = (null, false, null, null, null, false);
            edits.Clear();
            View = await LoadAsync($"payouts/{Slug}/{Printing}", () => Service.LoadAsync(Press.Record.Id, Slug, Printing));
            if (View is not null)
            {
                (from, to, recalling) = (new DateOnly(View.Today.Year, 1, 1), View.Today, true);
                Show();
                Reckon();
            }
        }

        loaded = true;
        if (Press is not null && View is null)
        {
            Navigation.NotFound();
        }
    }

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (View is null || !recalling)
        {
            return;
        }

        recalling = false;
        if (await Drafts.RecallAsync(DraftKey) is { } draft && DraftRows.ReadOver(draft, ClaimRow.Fields) is { } typed)
        {
            rows = [.. typed.Rows.Select(ClaimRow.Of)];
            recalled = Changed;
            if (recalled)
            {
                // Typed over what was kept then: where somebody else has kept something since, keeping this asks first.
                read = read with { Version = typed.Over };
            }

            StateHasChanged();
        }
    }

    private List<ClaimRow> Kept() => [.. read.Claims.Select(claim => ClaimRow.Of(claim, Format))];

    private void Show()
    {
        read = View!.Payouts.Claims;
        rows = Kept();
    }

    private void Choose(DateOnly first, DateOnly last)
    {
        (from, to) = (first, last);
        Reckon();
        StateHasChanged();
    }

    private void Reckon()
    {
        var outcome = View!.Statement(from, to, Format.Currency);
        (statement, days) = outcome.Succeeded ? (outcome.Value, null) : (statement, SayWhole(outcome.Problems[0].Rule));
    }

    private Task TouchedAsync() => Drafts.KeepAsync(DraftKey, DraftRows.Write(rows.Select(row => row.Texts), read.Version));

    private async Task KeepAsync()
    {
        problem = null;
        var claims = rows.ConvertAll(row => row.Read(Format.Culture));
        if (claims.FindIndex(claim => claim is null) is >= 0 and var unread)
        {
            rows[unread].Refused = rows[unread].Value;
            var who = rows[unread].Name.Trim();
            problem = who.Length == 0 ? Say($"Write how much this one gets as a number.") : Say($"Write how much {Apart.Of(who)} gets as a number.");
            return;
        }

        problem = await saves.DoAsync(() => ChangeAsync(read, [.. claims.OfType<Claim>()], Say($"the change of who gets what")));
        if (problem is null)
        {
            said = Say($"Kept.");
        }
    }

    private async Task<string?> ChangeAsync(EditionClaims before, IReadOnlyList<Claim> claims, string what)
    {
        var answer = await SaveAsync(before with { Claims = claims });
        if (answer.Version is { } stored)
        {
            edits.Add(what, before.EditionId, before.Version, stored, over => Changed
                ? Task.FromResult(new SaveAnswer(Say($"Lines are typed here and not kept yet, which this would throw away. Keep them first, or take them out."), null))
                : saves.DoAsync(() => SaveAsync(before with { Version = over })));
        }

        return answer.Problem;
    }

    private async Task<SaveAnswer> SaveAsync(EditionClaims claims)
    {
        var result = await Service.SaveAsync(Press!.Record.Id, claims);
        switch (result)
        {
            case SaveResult<EditionClaims>.Saved saved:
                await AgainAsync();
                Show();
                (recalled, said) = (false, null);
                await Drafts.ForgetAsync(DraftKey);
                return new SaveAnswer(null, saved.Now.Version);
            case SaveResult<EditionClaims>.Refused refused:
                return new SaveAnswer(Words.Standing(refused.Problems), null);
            case SaveResult<EditionClaims>.Conflict:
                await AgainAsync();
                mine = claims.Claims;
                edits.Clear();
                return new SaveAnswer(Say($"Somebody else kept other lines in between."), null);
            default:
                return new SaveAnswer(Say($"This printing has been taken out in between."), null);
        }
    }

    private async Task KeepMineAsync()
    {
        var (claims, theirs) = (mine!, View!.Payouts.Claims);
        mine = null;
        problem = await saves.DoAsync(() => ChangeAsync(theirs, claims, Say($"letting yours stand")));
        if (problem is null)
        {
            said = Say($"Yours stand.");
        }
    }

    private async Task TakeTheirsAsync()
    {
        Show();
        (mine, problem, recalled, said) = (null, null, false, Say($"Theirs stand."));
        await Drafts.ForgetAsync(DraftKey);
    }

    private Task<string?> PayAsync(Payment payment) => saves.DoAsync(async () =>
    {
        var name = statement!.People[payment.Place].Name;
        var refused = await Service.PayAsync(
            Press!.Record.Id, new NewPayment(Guid.CreateVersion7(), View!.Edition.Id, new PaidOut(name, payment.Day, payment.Amount)), Press.Name);
        if (refused is null)
        {
            await AgainAsync();
            said = Say($"Written down: {Apart.Of(name)} was paid {Format.Money(payment.Amount)}.");
            StateHasChanged();
        }

        return refused;
    });

    private async Task AgainAsync()
    {
        View = await Service.AgainAsync(Press!.Record.Id, View!);
        if (!Changed)
        {
            Show();
        }

        Reckon();
    }
}
