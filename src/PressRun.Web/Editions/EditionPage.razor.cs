using System.Globalization;
using Microsoft.AspNetCore.Components;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Web.Charts;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Editions;

public sealed partial class EditionPage
{
    private readonly Once copying = new();
    private readonly UndoStack edits = new();
    private readonly OneAtATime saves = new();
    private bool loaded;
    private string? problem;
    private EditionConsequences? settled;
    private EditionConsequences? before;
    private EditionConsequences? tried;
    private EditionRecord? triedEdition;
    private (int Printing, int From)? copied;
    private (EditionRecord Mine, EditionRecord Theirs)? conflict;

    [Inject]
    private EditionService Service { get; set; } = default!;

    [Inject]
    private FixService Fixes { get; set; } = default!;

    private EditionView? View { get; set; }

    private EditionRecord Edition => View!.Edition;

    // What the sentence is about: the edition as it is, or as it would be with what is being typed.
    private EditionRecord Sought => triedEdition ?? Edition;

    private EditionConsequences? Now => tried ?? settled;

    // While something is typed the figures before it are those that are saved.
    private EditionConsequences? Before => tried is null ? before : settled;

    private bool IsLatest => View!.Printings.All(other => other.Printing <= Printing);

    // Of a new run like the plan that this printing goes by.
    private int LeadDays => settled?.LeadDays ?? 0;

    private PageCount Pages => PageCount.Of(Sought.Binding, [.. Sought.Parts.Select(part => part.Part)]);

    private static (Binding, string)[] Bindings =>
    [
        (Binding.Saddle, Words.Of(Binding.Saddle)),
        (Binding.Side, Words.Of(Binding.Side)),
        (Binding.Perfect, Words.Of(Binding.Perfect)),
        (Binding.Loose, Say($"loose leaves, cards, prints")),
    ];

    private RenderFragment Made => Pages.OfCover > 0
        ? Put($"The <strong>{Words.Printing(Printing)}</strong> has <strong>{Words.Pages(Pages.All, Format.Count)}</strong>, {Format.Count(Pages.OfCover)} of them the cover, and {Words.Held(Sought.Binding)}.")
        : Put($"The <strong>{Words.Printing(Printing)}</strong> has <strong>{Words.Pages(Pages.All, Format.Count)}</strong> and {Words.Held(Sought.Binding)}.");

    private string RunAddress => $"{EditionAddress}/run";

    private string Colour => View!.Title.Colour.Length > 0 ? View.Title.Colour : BookShape.PlainCover;

    private EditionRecord? Previous => View!.Printings.LastOrDefault(other => other.Printing < Printing);

    private IReadOnlyList<NamedSize> Sizes =>
        [.. StandardSizes.Pages(Press!.Record.PaperRegion)];

    private string NamedSize => Sizes.FirstOrDefault(size => size.Size == Edition.Page)?.Name ?? "";

    private IReadOnlyList<(string, string)> SizeChoices => [("", Say($"its own size")), .. Sizes.Select(size => (size.Name, $"{size.Name}, {Format.Size(size.Size)}"))];

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        copying.Again();
        if (Press is not null && (View is null || View.Title.Slug != Slug || View.Edition.Printing != Printing))
        {
            // Nothing of the printing before is shown under this one's name while it is fetched, nor can it be changed.
            (View, loaded) = (null, false);
            View = await LoadAsync($"edition/{Slug}/{Printing}", () => Service.LoadAsync(Press.Record.Id, Slug, Printing));
            settled = View?.WorkOut(View.Edition);
            (before, tried, triedEdition, conflict, problem) = (null, null, null, null, null);
            edits.Clear();
            if (View is not null && copied is var (printing, from) && printing == Printing)
            {
                edits.Add(Say($"copying the {Words.Printing(from)} forward"), () => saves.DoAsync(() => OutAsync(from)));
            }

            copied = null;
        }

        loaded = true;
        if (Press is not null && View is null)
        {
            Navigation.NotFound();
        }
    }

    private string OnHand(long copies, long printed) => Say(copies,
        $"{Format.Count(copies)} of {Format.Count(printed)} is on hand.",
        $"{Format.Count(copies)} of {Format.Count(printed)} are on hand.");

    private string StockName(string id) => View!.Stocks.FirstOrDefault(stock => stock.Id == id)?.Name is { } name ? Apart.Of(name) : id;

    private string ServiceName(string id) => View!.Source?.Postage.FirstOrDefault(service => service.Id == id)?.Name is { } name ? Apart.Of(name) : id;

    // Shows what an edition would come to, and saves nothing.
    private void Try(EditionRecord? edition) => (triedEdition, tried) = (edition, edition is null ? null : View!.WorkOut(edition));

    private Task<string?> ChangeAsync(Func<EditionRecord, EditionRecord> change, string what) => saves.DoAsync(async () =>
    {
        // While two versions wait for a choice, what is changed is one's own.
        if (conflict is { } waiting)
        {
            conflict = (change(waiting.Mine), waiting.Theirs);
            StateHasChanged();
            return null;
        }

        var was = Edition;
        var wanted = change(was);
        if (EditionDifference.None(was, wanted))
        {
            Try(null);
            StateHasChanged();
            return null;
        }

        var answer = await StoreAsync(wanted);
        if (answer.Version is { } stored)
        {
            edits.Add(what, was.Id, was.Version, stored, over => saves.DoAsync(() => StoreAsync(was with { Version = over })));
            StateHasChanged();
        }

        return answer.Problem;
    });

    // Where a copy was paid for, that is what it cost, and the plan's figure says that it is one.
    private RenderFragment Weighs(Estimate estimate)
    {
        var (planned, run) = (Format.Sum(Now!.UnitCost!.Value), Format.Count(Now.Quantity));
        var (mass, thick) = (OfHalves(copy => Format.Mass(copy.Mass)), OfHalves(copy => Format.Thickness(copy.Thickness)));
        return View!.PaidForEach is { } paid
            ? Put($"A copy weighs {mass} and is {thick} thick; those printed cost <strong>{Format.Sum(paid)}</strong> each, and {planned} was planned for a run of {run}.")
            : Put($"A copy weighs {mass}, is {thick} thick and costs <strong>{planned}</strong> in a run of {run}.");

        // Of a run on two papers a copy is one of two kinds.
        RenderFragment OfHalves(Func<CopyEstimate, Shown> of) => estimate.SecondHalf is { Copy: var other } && of(other) != of(estimate.Copy)
            ? Put($"{of(estimate.Copy)} or {of(other)}")
            : AFigure(of(estimate.Copy));
    }

    private async Task<SaveAnswer> StoreAsync(EditionRecord edition)
    {
        var save = await Service.SaveAsync(Press!.Record.Id, edition);
        Try(null);
        if (save.Theirs is { } theirs)
        {
            conflict = (edition, theirs);
            edits.Clear();
        }
        else if (save.Now is { } now)
        {
            Settle(now);
        }

        StateHasChanged();
        return new SaveAnswer(save.Problem, save.Now?.Version);
    }

    private void Settle(EditionRecord now)
    {
        View = View! with { Edition = now, Printings = [.. View.Printings.Select(other => other.Id == now.Id ? now : other)] };
        before = settled;
        settled = View.WorkOut(now);
    }

    private async Task KeepMineAsync()
    {
        var (mine, theirs) = conflict!.Value;
        conflict = null;
        problem = (await saves.DoAsync(() => StoreAsync(mine with { Version = theirs.Version }))).Problem;
    }

    private void TakeTheirs()
    {
        Settle(conflict!.Value.Theirs);
        conflict = null;
    }

    private async Task<string?> SaveSideAsync(string text, string what, Func<Size, Length, Size> take) =>
        Typed.Length(text, Format.Units, Format.Culture) is { } length && length > Length.Zero
            ? await ChangeAsync(edition => edition with { Page = take(edition.Page, length) }, what)
            : EditionText.LengthRule(Format, mayBeZero: false);

    private void TypeSide(string text, Func<Size, Length, Size> take) =>
        Try(Typed.Length(text, Format.Units, Format.Culture) is { } length && length > Length.Zero ? Edition with { Page = take(Edition.Page, length) } : null);

    private async Task<string?> SaveNamedSizeAsync(string name) =>
        Sizes.FirstOrDefault(size => size.Name == name) is { } size
            ? await ChangeAsync(edition => edition with { Page = size.Size }, Say($"page size"))
            : Say($"Write its width and height at the drawing.");

    private async Task<string?> SavePagesAsync(int place, string text)
    {
        if (Typed.Count(text, Format.Culture) is not { } pages || pages is < 1 or > Job.MostPages)
        {
            Try(null);
            return Say($"Write a whole number of pages from 1 to {Format.Count(Job.MostPages)}.");
        }

        var part = Edition.Parts[place].Part;
        if (!BindingRules.Allows(Edition.Binding, place, pages))
        {
            Try(null);
            return EditionText.PagesRule(Edition.Binding, place, pages, Format);
        }

        return await ChangePartAsync(place, now => now with { Pages = pages }, Say($"pages of {part.Name}, {Format.Count(part.Pages)} to {Format.Count(pages)}"));
    }

    private void TypePages((int Place, string Text) typed) =>
        Try(Typed.Count(typed.Text, Format.Culture) is { } pages && BindingRules.Allows(Edition.Binding, typed.Place, pages)
            ? WithPart(Edition, typed.Place, now => now with { Pages = pages })
            : null);

    private async Task<string?> RenameAsync(int place, string name) => name.Length == 0
        ? Say($"A part needs a name, such as cover, inside or centre.")
        : await ChangePartAsync(place, now => now with { Name = name }, Say($"name of {name}"));

    private Task<string?> ChangePartAsync(int place, Func<Part, Part> change, string what) =>
        ChangeAsync(edition => WithPart(edition, place, change), what);

    private static EditionRecord WithPart(EditionRecord edition, int place, Func<Part, Part> change) =>
        edition with { Parts = [.. edition.Parts.Select((other, index) => index == place ? other with { Part = change(other.Part) } : other)] };

    private async Task MoveOutAsync(int place) => problem = await ChangeAsync(
        edition => edition with { Parts = [.. edition.Parts.Take(place - 1), edition.Parts[place], edition.Parts[place - 1], .. edition.Parts.Skip(place + 1)] },
        Say($"place of {Edition.Parts[place].Part.Name}"));

    private async Task TakeOutAsync(int place) => problem = await ChangeAsync(
        edition => edition with { Parts = [.. edition.Parts.Where((_, index) => index != place)] }, Say($"taking out {Edition.Parts[place].Part.Name}"));

    private async Task AddPartAsync() => problem = await ChangeAsync(edition => edition with { Parts = [.. edition.Parts, Further(edition)] }, Say($"adding a part"));

    // Like the innermost part, with the fewest pages that the binding takes and a name that is free.
    private static EditionPart Further(EditionRecord edition)
    {
        var name = Enumerable.Range(edition.Parts.Count + 1, 100).Select(number => Say($"part {number}")).First(free => edition.Parts.All(part => part.Part.Name != free));
        return new EditionPart(
            Guid.Empty,
            edition.Parts[^1].Part with { Name = name, Pages = BindingRules.PagesPerPiece(edition.Binding, edition.Parts.Count), SheetId = null });
    }

    private Task CopyForwardAsync() => copying.DoAsync(async () =>
    {
        if (await Service.CopyForwardAsync(Press!.Record.Id, Edition.Id) is { } next)
        {
            copied = (next, Printing);
            Navigation.NavigateTo(Address(next));
            return true;
        }

        problem = Say($"This printing has been taken out in between.");
        return false;
    });

    // Takes this printing out and goes on at another one.
    private async Task<string?> OutAsync(int next)
    {
        var refused = await Service.TakeOutAsync(Press!.Record.Id, Edition);
        if (refused is null)
        {
            Navigation.NavigateTo(Address(next));
        }

        return refused;
    }

    private async Task FetchFixesAsync() => View = View! with { Fixes = await Fixes.OfTitleAsync(Press!.Record.Id, View.Title.Id) };

    private string Address(int printing) => $"titles/{Slug}/{printing.ToString(CultureInfo.InvariantCulture)}";
}
