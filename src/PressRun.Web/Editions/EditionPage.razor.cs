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
    private static readonly (Binding, string)[] Bindings =
    [
        (Binding.Saddle, "folded and stapled"),
        (Binding.Side, "stapled at the side"),
        (Binding.Perfect, "glued spine"),
        (Binding.Loose, "loose leaves, cards, prints"),
    ];

    private readonly UndoStack edits = new();
    private bool loaded;
    private string? problem;
    private EditionConsequences? settled;
    private EditionConsequences? before;
    private EditionConsequences? tried;
    private (EditionRecord Mine, EditionRecord Theirs)? conflict;

    [Inject]
    private EditionService Service { get; set; } = default!;

    [Inject]
    private NavigationManager Navigation { get; set; } = default!;

    [CascadingParameter]
    private PressView? Press { get; set; }

    /// <summary>The title in the address.</summary>
    [Parameter]
    public string Slug { get; set; } = "";

    /// <summary>The printing in the address.</summary>
    [Parameter]
    public int Printing { get; set; }

    private EditionView? View { get; set; }

    private EditionRecord Edition => View!.Edition;

    private EditionConsequences? Now => tried ?? settled;

    private PressFormat Format => Press!.Format;

    private int Pages => Edition.Parts.Sum(part => part.Part.Pages);

    private string RunAddress => $"titles/{Slug}/{Printing.ToString(CultureInfo.InvariantCulture)}/run";

    private string Colour => View!.Title.Colour.Length > 0 ? View.Title.Colour : BookShape.PlainCover;

    private EditionRecord? Previous => View!.Printings.LastOrDefault(other => other.Printing < Printing);

    private IReadOnlyList<NamedSize> Sizes =>
        [.. StandardSizes.Pages(Press!.Record.PaperRegion)];

    private string NamedSize => Sizes.FirstOrDefault(size => size.Size == Edition.Page)?.Name ?? "";

    private IReadOnlyList<(string, string)> SizeChoices => [("", "its own size"), .. Sizes.Select(size => (size.Name, $"{size.Name}, {Format.Size(size.Size)}"))];

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (Press is not null && (View is null || View.Title.Slug != Slug || View.Edition.Printing != Printing))
        {
            View = await Service.LoadAsync(Press.Record.Id, Slug, Printing);
            settled = View?.WorkOut(View.Edition);
            (before, tried, conflict, problem) = (null, null, null, null);
            edits.Clear();
        }

        loaded = true;
    }

    private string StockName(string id) => View!.Stocks.FirstOrDefault(stock => stock.Id == id)?.Name ?? id;

    private string ServiceName(string id) => View!.Source?.Postage.FirstOrDefault(service => service.Id == id)?.Name ?? id;

    // Shows what an edition would come to, and saves nothing.
    private void Try(EditionRecord? edition) => tried = edition is null ? null : View!.WorkOut(edition);

    private async Task<string?> ChangeAsync(EditionRecord edition, string what)
    {
        var was = Edition;
        if (await StoreAsync(edition) is { } refused)
        {
            return refused;
        }

        if (conflict is null)
        {
            edits.Add(what, () => StoreAsync(was with { Version = Edition.Version }));
        }

        return null;
    }

    private async Task<string?> StoreAsync(EditionRecord edition)
    {
        var save = await Service.SaveAsync(Press!.Record.Id, edition);
        tried = null;
        if (save.Theirs is { } theirs)
        {
            conflict = (edition, theirs);
        }
        else if (save.Now is { } now)
        {
            Settle(now);
        }

        StateHasChanged();
        return save.Problem;
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
        problem = await StoreAsync(mine with { Version = theirs.Version });
        edits.Clear();
    }

    private void TakeTheirs()
    {
        Settle(conflict!.Value.Theirs);
        conflict = null;
        edits.Clear();
    }

    private async Task<string?> SaveSideAsync(string text, string what, Func<Size, Length, Size> take) =>
        Typed.Length(text, Format.Units, Format.Culture) is { } length && length > Length.Zero
            ? await ChangeAsync(Edition with { Page = take(Edition.Page, length) }, $"page {what}")
            : EditionText.LengthRule(Format, mayBeZero: false);

    private void TypeSide(string text, Func<Size, Length, Size> take) =>
        Try(Typed.Length(text, Format.Units, Format.Culture) is { } length && length > Length.Zero ? Edition with { Page = take(Edition.Page, length) } : null);

    private async Task<string?> SaveNamedSizeAsync(string name) =>
        Sizes.FirstOrDefault(size => size.Name == name) is { } size
            ? await ChangeAsync(Edition with { Page = size.Size }, "page size")
            : "Write its width and height at the drawing.";

    private async Task<string?> SavePagesAsync(int place, string text)
    {
        if (Typed.Count(text, Format.Culture) is not { } pages || pages is < 1 or > Job.MostPages)
        {
            tried = null;
            return $"Write a whole number of pages from 1 to {Format.Count(Job.MostPages)}.";
        }

        var part = Edition.Parts[place].Part;
        if (!BindingRules.Allows(Edition.Binding, place, pages))
        {
            tried = null;
            return EditionText.PagesRule(Edition.Binding, place, pages, Format);
        }

        return await ChangePartAsync(place, part with { Pages = pages }, $"pages of {part.Name}, {Format.Count(part.Pages)} to {Format.Count(pages)}");
    }

    private void TypePages(int place, string text) =>
        Try(Typed.Count(text, Format.Culture) is { } pages && BindingRules.Allows(Edition.Binding, place, pages)
            ? WithPart(place, Edition.Parts[place].Part with { Pages = pages })
            : null);

    private async Task<string?> RenameAsync(int place, string name) => name.Length == 0
        ? "A part needs a name, such as cover, inside or centre."
        : await ChangePartAsync(place, Edition.Parts[place].Part with { Name = name }, $"name of {name}");

    private Task<string?> ChangePartAsync(int place, Part part, string what) => ChangeAsync(WithPart(place, part), what);

    private EditionRecord WithPart(int place, Part part) =>
        Edition with { Parts = [.. Edition.Parts.Select((other, index) => index == place ? other with { Part = part } : other)] };

    private async Task MoveOutAsync(int place)
    {
        var parts = Edition.Parts.ToList();
        (parts[place - 1], parts[place]) = (parts[place], parts[place - 1]);
        problem = await ChangeAsync(Edition with { Parts = parts }, $"place of {parts[place - 1].Part.Name}");
    }

    private async Task TakeOutAsync(int place) => problem = await ChangeAsync(
        Edition with { Parts = [.. Edition.Parts.Where((_, index) => index != place)] }, $"taking out {Edition.Parts[place].Part.Name}");

    private async Task AddPartAsync()
    {
        var like = Edition.Parts[^1].Part;
        var number = Enumerable.Range(Edition.Parts.Count + 1, 100).First(n => Edition.Parts.All(part => part.Part.Name != $"part {n}"));
        var part = like with { Name = $"part {number}", Pages = BindingRules.PagesPerPiece(Edition.Binding, Edition.Parts.Count), SheetId = null };
        problem = await ChangeAsync(Edition with { Parts = [.. Edition.Parts, new EditionPart(Guid.Empty, part)] }, $"adding {part.Name}");
    }

    private async Task CopyForwardAsync()
    {
        if (await Service.CopyForwardAsync(Press!.Record.Id, Edition.Id) is { } next)
        {
            Navigation.NavigateTo($"titles/{Slug}/{next.ToString(CultureInfo.InvariantCulture)}");
        }
        else
        {
            problem = "This printing has been taken out in between.";
        }
    }
}
