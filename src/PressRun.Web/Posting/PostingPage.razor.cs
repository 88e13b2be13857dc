using Microsoft.AspNetCore.Components;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;
using PressRun.Web.Editions;
using PressRun.Web.Papers;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Posting;

public sealed partial class PostingPage
{
    // A knife is set to the millimetre, or to a ruler's sixteenth of an inch.
    private const decimal Sixteenth = 1m / 16m;

    private bool loaded;
    private PostingAnswer? answer;
    private (PapersView View, string? Channel)? answeredFor;

    [Inject]
    private PapersService Service { get; set; } = default!;

    /// <summary>The plan; the one the printing goes by where none is named.</summary>
    [SupplyParameterFromQuery(Name = "plan")]
    private string? PlanIdAsked { get; set; }

    private Guid? PlanId => FromAddress.Id(PlanIdAsked);

    [SupplyParameterFromQuery(Name = "by")]
    private string? By { get; set; }

    private PapersView? View { get; set; }

    private JobSource Source => View!.Source;

    private IReadOnlyList<Channel> Ways => [.. Source.Channels.Where(way => way is { MailerId: not null, PostageRegion: not null }), .. View!.TriedWays];

    private Channel? Way => Ways.FirstOrDefault(way => way.Id == By) ?? (Ways.Count > 0 ? Ways[0] : null);

    private int LeavesOf => Enumerable.Range(0, Source.Edition.Parts.Count).MaxBy(place => Source.Edition.Parts[place].Part.Pages);

    private string? OpenRegion => Way?.PostageRegion ?? answer!.Table.FirstOrDefault(row => row.Lies)?.Region;

    // What the chosen way of selling posts, in its own mailer and in the cheapest, where that is another.
    private MailedCopies? Planned => Piece(row => row.Mailer.Id == Way!.MailerId);

    private MailedCopies? Better => Piece(row => row.Cheapest) is { } cheapest && cheapest != Planned && !(Planned?.Cost <= cheapest.Cost) ? cheapest : null;

    private IReadOnlyList<string> TooSmall => [.. answer!.Table.Where(row => !row.Lies).Select(row => row.Mailer.Name).Distinct()];

    // The papers by which the halves of the run differ; none where all copies are alike.
    private IReadOnlyList<string> Papers => Source.SecondHalf is { } half ? [View!.StockName(View.OwnStock(half.Part)), View.StockName(half.StockId)] : [];

    private string HalvedPart => Source.Edition.Parts[Source.SecondHalf!.Part].Part.Name;

    private IEnumerable<(PostingAnswer Answer, string? Paper)> Halves => answer!.OtherHalf is { } other ? [(answer, Papers[0]), (other, Papers[1])] : [(answer, null)];

    private IReadOnlyList<MailedCopies> OthersIn(string region) => [.. (answer!.OtherHalf?.Table ?? []).Where(row => row.Lies && row.Region == region)];

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (Press is null)
        {
            loaded = true;
            return;
        }

        if (View is null || View.Title.Slug != Slug || Source.Edition.Printing != Printing || (PlanId is { } plan && plan != Source.Plan.Id))
        {
            (View, loaded) = (null, false);
            View = await LoadAsync($"post/{Slug}/{Printing}/{PlanId}", () => Service.LoadAsync(Press.Record.Id, Slug, Printing, PlanId));
        }

        loaded = true;
        if (View is null)
        {
            Navigation.NotFound();
            return;
        }

        if (answeredFor != (View, Way?.Id))
        {
            answeredFor = (View, Way?.Id);
            answer = PostingAnswer.Of(View, Way?.Id, Format.Units == UnitSystem.Imperial ? Length.FromInches(Sixteenth) : Length.FromMillimetres(1m));
        }
    }

    private MailedCopies? Piece(Func<MailedCopies, bool> which) =>
        answer!.Table.FirstOrDefault(row => row.Region == Way!.PostageRegion && row.Copies == Way.CopiesPerOrder && which(row));

    private RenderFragment Goes(Channel way, PostageChoice piece) => piece.ServiceId is { } service
        ? Put(way.CopiesPerOrder,
            $"{Piece(way)} weighs {Beside(piece)} and goes as <strong>{View!.ServiceName(service)}</strong> for <strong>{Format.Sum(piece.Price!.Value)}</strong>, with {Format.Spare(piece.HeadroomMass!.Value)} to spare.",
            $"{Piece(way)} weigh {Beside(piece)} and go as <strong>{View.ServiceName(service)}</strong> for <strong>{Format.Sum(piece.Price!.Value)}</strong>, with {Format.Spare(piece.HeadroomMass!.Value)} to spare.")
        : Put(way.CopiesPerOrder, $"{Piece(way)} is taken by no service.", $"{Piece(way)} are taken by no service.");

    // What is to spare is held against the mass: both with as many decimals.
    private Shown Beside(PostageChoice piece) => Format.MassBeside(piece.Mass, piece.HeadroomMass!.Value);

    // Of two halves the sentence begins with the paper.
    private string Piece(Channel way) => (way.CopiesPerOrder, Papers.Count) switch
    {
        (1, 0) => Say($"A copy packed in {MailerName(way.MailerId!)}"),
        (1, _) => Say($"a copy packed in {MailerName(way.MailerId!)}"),
        (var copies, _) => Say($"{Format.Count(copies)} copies packed in {MailerName(way.MailerId!)}"),
    };

    private RenderFragment OtherGoes(Channel way, PostageChoice piece) => piece.ServiceId is { } service
        ? Put(way.CopiesPerOrder,
            $"The other half, on {Papers[1]}, weighs {Format.Mass(piece.Mass)} and goes as {View!.ServiceName(service)} for {Format.Money(piece.Price!.Value)}.",
            $"The other half, on {Papers[1]}, weigh {Format.Mass(piece.Mass)} and go as {View.ServiceName(service)} for {Format.Money(piece.Price!.Value)}.")
        : Put(way.CopiesPerOrder,
            $"The other half, on {Papers[1]}, weighs {Format.Mass(piece.Mass)} and is taken by no service.",
            $"The other half, on {Papers[1]}, weigh {Format.Mass(piece.Mass)} and are taken by no service.");

    private RenderFragment Cheaper(MailedCopies better) => Planned?.Cost is { } planned
        ? Put($"Packed in <strong>{better.Mailer.Name}</strong>, mailer and postage come to <strong>{Format.Money(better.Cost!.Value)}</strong>, not {Format.Money(planned)}.")
        : Put($"Packed in <strong>{better.Mailer.Name}</strong>, mailer and postage come to <strong>{Format.Money(better.Cost!.Value)}</strong>.");

    private RenderFragment Changed(WayDown change)
    {
        var (what, mass, service, price) = (PostWords.Of(change, View!, Format), Format.Mass(change.Posted.Mass), View!.ServiceName(change.Posted.ServiceId!), Format.Money(change.Posted.Price!.Value));
        return change.Saves is { } saves
            ? Put($"<strong>{what}</strong>: it weighs {mass} and goes as {service} for {price}, {Format.Money(saves)} less.")
            : Put($"<strong>{what}</strong>: it weighs {mass} and goes as {service} for {price}.");
    }

    private string MailerName(string id) => Source.Mailers.First(mailer => mailer.Id == id).Name;

    private Task<string?> OpenPlanAsync(Guid plan)
    {
        Navigation.NavigateTo($"{EditionAddress}/post?plan={plan}");
        return Task.FromResult<string?>(null);
    }

    private Task<string?> SaveChannelAsync(string channel)
    {
        Navigation.NavigateTo($"{EditionAddress}/post?plan={Source.Plan.Id}&by={Uri.EscapeDataString(channel)}", replace: true);
        return Task.FromResult<string?>(null);
    }
}
