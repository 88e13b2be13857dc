using Microsoft.AspNetCore.Components;
using PressRun.Engine.Comparing;
using PressRun.Engine.Costing;
using PressRun.Engine.Postage;
using PressRun.Web.Editions;
using PressRun.Web.Posting;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Papers;

public sealed partial class PapersPage
{
    private UsesOfPrinting uses = new();
    private bool loaded;
    private string? problem;
    private bool again;
    private int? shownAt;
    private (PapersView View, string Address, PapersAnswer Answer)? answered;

    [Inject]
    private PapersService Service { get; set; } = default!;

    [Inject]
    private PapersUsed Used { get; set; } = default!;

    /// <summary>The plan; the one the printing goes by where none is named.</summary>
    [SupplyParameterFromQuery(Name = "plan")]
    private string? PlanIdAsked { get; set; }

    private Guid? PlanId => FromAddress.Id(PlanIdAsked);

    [SupplyParameterFromQuery(Name = "tried")]
    private string? Tried { get; set; }

    [SupplyParameterFromQuery(Name = "copies")]
    private string? Copies { get; set; }

    [SupplyParameterFromQuery(Name = "by")]
    private string? By { get; set; }

    private PapersView? View { get; set; }

    private PaperChoice Choice { get; set; } = default!;

    private PapersAnswer? Answer => answered?.Answer;

    private int Quantity => shownAt is { } shown && Choice.Quantities.Contains(shown) ? shown : Choice.Quantities[0];

    private PaperReading? Reading => Answer!.Readings.GetValueOrDefault(Quantity);

    private bool Posts => View!.Source.Channels.Concat(View.TriedWays).Any(way => way.Id == Choice.ChannelId && way.MailerId is not null);

    private string QuantitiesText => string.Join(' ', Choice.Quantities.Select(quantity => quantity.ToString(Format.Culture)));

    private IReadOnlyList<(int, string)> QuantityChoices =>
        [.. Choice.Quantities.Select(quantity => (quantity, Words.Copies(quantity, Format.Count)))];

    private IReadOnlyList<(string, string)> Channels =>
    [
        .. View!.Source.Channels.Where(way => way.MailerId is not null)
            .Select(way => (way.Id, way.CopiesPerOrder == 1 ? way.Name : Say($"{way.Name}, {Words.Copies(way.CopiesPerOrder, Format.Count)} an order"))),
        .. View.TriedWays.Select(way => (way.Id, way.Name)),
        ("", Say($"nothing: the unit cost alone")),
    ];

    private IReadOnlyList<(int, IReadOnlyDictionary<string, decimal?>)> Others =>
    [
        .. Answer!.Readings.Where(reading => reading.Key != Quantity && reading.Value is not null)
            .Select(reading => (reading.Key, (IReadOnlyDictionary<string, decimal?>)reading.Value!.Rows.ToDictionary(PaperTable.Key, row => row.InHand))),
    ];

    // Of the parts compared the one with the most pages: that is where paper weighs.
    private int MainPart => (Choice.Tried.Count > 0 ? Choice.Tried.Keys : Enumerable.Range(0, View!.Source.Edition.Parts.Count)).MaxBy(place => View!.Source.Edition.Parts[place].Part.Pages);

    // Left out of what is tried although it is planned: the examples of a first book, or what was unticked.
    private bool LeftOut => Choice.Tried.Keys.Any(Choice.Without.Contains);

    private bool OnExamples => Choice.Tried.Keys.Any(View!.StandsOnExample);

    private string UseWords => Choice.Tried.Count > 1 ? Say($"Use these papers") : Say($"Use this paper");

    private string TooManyWords => Say(Choice.Quantities.Count,
        $"These are {Format.Count(Answer!.Combinations)} combinations at {Format.Count(Choice.Quantities.Count)} quantity, and {Format.Count(PapersAnswer.Most)} at most are compared at a time. Take out a part, some papers or a quantity.",
        $"These are {Format.Count(Answer!.Combinations)} combinations at {Format.Count(Choice.Quantities.Count)} quantities, and {Format.Count(PapersAnswer.Most)} at most are compared at a time. Take out a part, some papers or a quantity.");

    private (int Part, string First, string Second) HalvesBegin
    {
        get
        {
            if (View!.Source.SecondHalf is { } half)
            {
                return (half.Part, View.OwnStock(half.Part), half.StockId);
            }

            var part = MainPart;
            var from = Reading?.Start.StockIds[part] ?? View!.OwnStock(part);
            var up = Reading?.StepsUp.FirstOrDefault(step => step.Part == part)?.To.StockIds[part];
            return (part, from, up ?? (Choice.Tried.TryGetValue(part, out var tried) ? tried.FirstOrDefault(id => id != from) : null) ?? from);
        }
    }

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (Press is null)
        {
            loaded = true;
            return;
        }

        if (View is null || again || View.Title.Slug != Slug || View.Source.Edition.Printing != Printing || (PlanId is { } plan && plan != View.Source.Plan.Id))
        {
            var kept = again;
            again = false;
            (View, loaded) = kept ? (View, true) : (null, false);
            View = await LoadAsync($"papers/{Slug}/{Printing}/{PlanId}", () => Service.LoadAsync(Press.Record.Id, Slug, Printing, PlanId));
            if (!kept)
            {
                (uses, problem, shownAt) = (View is null ? uses : Used.Of(View.Source.Edition.Id, View.GoneBy), null, null);
            }
        }

        loaded = true;
        if (View is null)
        {
            Navigation.NotFound();
            return;
        }

        Choice = PaperChoice.Read(View, Tried, Copies, By);
        var address = $"{Choice.TriedText}|{Choice.QuantitiesText}|{Choice.ChannelId}";
        if (answered is not { } known || known.View != View || known.Address != address)
        {
            answered = (View, address, PapersAnswer.Of(View.Through(Choice.ChannelId), Choice));
        }
    }

    private string RunOf(Guid plan) => $"{EditionAddress}/run?plan={plan}";

    // A part that has the same paper in every combination tells none from another.
    private IReadOnlyCollection<int> Told => Choice.Tried.Keys.Where(place => Choice.On(place, View!.OwnStock(place)).Count > 1).ToList() is { Count: > 0 } parts ? parts : [.. Choice.Tried.Keys];

    private string Name(PaperRow row) => PaperNames.Of(View!, Told, row);

    private string ShortName(PaperRow row) => PaperNames.Short(View!, Told, row);

    private RenderFragment HalvesPlanned(SecondHalf half) => Put(
        $"This plan has the <bdi>{View!.Source.Edition.Parts[half.Part].Part.Name}</bdi> of half the run on {View.StockName(View.OwnStock(half.Part))} and of the other half on {View.StockName(half.StockId)}. Above and in the table whole runs are compared, “as planned” being the first half's papers; the halves stand below.");

    private RenderFragment LightestOver(PaperReading reading, PaperRow over) => (reading.Now, over.Postage?.Price) switch
    {
        (null, { } price) => Put($"<strong>{Name(over)}</strong> is the lightest that is posted dearer, for {Format.Money(price)}."),
        (null, null) => Put($"<strong>{Name(over)}</strong> is the lightest that is posted dearer: no service takes it."),
        (_, { } price) => Put($"<strong>{Name(over)}</strong> is the lightest that is posted dearer than now, for {Format.Money(price)}."),
        _ => Put($"<strong>{Name(over)}</strong> is the lightest that is posted dearer than now: no service takes it."),
    };

    private string Because(IReadOnlyList<RefusedService> refused) =>
        Say($"For {View!.ServiceName(refused[0].ServiceId)} it is {string.Join(", ", refused.Select(limit => PostWords.Of(limit, Format)))}.");

    private string NextHeavier(StepUp up, decimal more)
    {
        var (part, paper) = (View!.Source.Edition.Parts[up.Part].Part.Name, View.StockName(up.To.StockIds[up.Part]));
        return more < 0m
            ? Say($"The next heavier paper of the {part}, {paper}, saves {Format.Money(-more)} a copy.")
            : Say($"The next heavier paper of the {part}, {paper}, costs {Format.Money(more)} more a copy.");
    }

    private string Cannot(RefusedPapers refused)
    {
        var (papers, rule) = (string.Join(", ", refused.Example.Distinct().Select(View!.StockName)), SayWhole(refused.Rule));
        return Say(refused.Count,
            $"{Format.Count(refused.Count)} combination, such as {papers}: {rule}",
            $"{Format.Count(refused.Count)} combinations, such as {papers}: {rule}");
    }

    private IReadOnlyList<PaperColumn> Columns(PaperReading reading) => PaperColumn.Of(
        Format, Posts, View!.Source.Edition.Binding, MainPart, reading.Rows.Any(row => row.Freight.Cartons > 0));

    private void Go(PaperChoice choice) => Go(View!.Source.Plan.Id, choice);

    private void Go(Guid plan, PaperChoice choice) => Navigation.NavigateTo(
        $"{EditionAddress}/papers?plan={plan}&tried={Uri.EscapeDataString(choice.TriedText)}&copies={choice.QuantitiesText}&by={Uri.EscapeDataString(choice.ChannelId)}",
        replace: true);

    private Task<string?> OpenPlanAsync(Guid plan)
    {
        Navigation.NavigateTo($"{EditionAddress}/papers?plan={plan}");
        return Task.FromResult<string?>(null);
    }

    private Task<string?> SaveChannelAsync(string channel)
    {
        Go(Choice with { ChannelId = channel });
        return Task.FromResult<string?>(null);
    }

    private Task<string?> ShowAtAsync(int quantity)
    {
        shownAt = quantity;
        StateHasChanged();
        return Task.FromResult<string?>(null);
    }

    private Task<string?> SaveQuantitiesAsync(string typed)
    {
        var texts = typed.Split((char[])[' ', '\u00a0', ';', '/', ','], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var counts = texts.Select(text => Typed.Count(text, Format.Culture)).Distinct().ToList();
        if (counts.Count is 0 or > PaperChoice.MostQuantities || counts.Any(count => count is null or < 1 or > Job.MostCopies))
        {
            return Task.FromResult<string?>(
                Say($"Write whole numbers of copies from 1 to {Format.Count(Job.MostCopies)} with spaces between them, at most {PaperChoice.MostQuantities}, such as 100 150 200."));
        }

        Go(Choice with { Quantities = [.. counts.OfType<int>()] });
        return Task.FromResult<string?>(null);
    }

    private Task UseAsync(PaperRow row) => UsedAsync(() => Service.UseAsync(Press!.Record.Id, View!.Source, row.StockIds, Quantity, Say($"on {ShortName(row)}")));

    private Task UseHalvesAsync((int Part, string First, string Second) halves) => UsedAsync(() => Service.UseHalvesAsync(
        Press!.Record.Id, View!.Source, halves.Part, halves.First, halves.Second, Quantity, Say($"half on {View.StockName(halves.First)}, half on {View.StockName(halves.Second)}")));

    private async Task UsedAsync(Func<Task<(UsedPapers? Used, string? Problem)>> use)
    {
        var press = Press!.Record.Id;
        (var used, problem) = await use();
        if (used is not { } now)
        {
            return;
        }

        uses.Add(now, Say($"going by {now.Plan.Name}"), () => Service.TakeBackAsync(press, now));
        Show(now.Plan.Id);
    }

    private void TakenBack()
    {
        if (uses.TakenBack is { } was)
        {
            Show(was.From);
        }
    }

    // The same papers side by side, seen from another plan: what was done stays on the page and can be taken back.
    private void Show(Guid plan)
    {
        again = true;
        Go(plan, Choice with { Tried = Choice.Tried.ToDictionary(part => part.Key, part => Choice.On(part.Key, View!.OwnStock(part.Key))) });
    }
}
