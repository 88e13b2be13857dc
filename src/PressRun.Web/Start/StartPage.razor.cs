using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using PressRun.Data.Presses;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Web.Editions;
using PressRun.Web.Layout;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Start;

public sealed partial class StartPage
{
    private const int InsideAt = 1;

    private static (Ink, string)[] Inks => [(Ink.Black, Words.Of(Ink.Black)), (Ink.Colour, Words.Of(Ink.Colour))];

    private NewPress press = default!;
    private FirstNumber number = default!;

    // What the answer is of: the number, or as it would be while one types.
    private FirstNumber shown = default!;
    private FirstAnswer answer = default!;

    // True while what is typed for the copies is no quantity: no sum belongs to it.
    private bool unread;
    private IReadOnlyList<PressRecord> presses = [];
    private string title = Say($"My first book");
    private string? problem;
    private string? sampleProblem;
    private bool working;
    private bool mayMake;

    [SupplyParameterFromQuery(Name = "gone")]
    private string? GoneAsked { get; set; }

    /// <summary>Says that a press was taken out just now.</summary>
    [SupplyParameterFromQuery(Name = "out")]
    private string? OutAsked { get; set; }

    [Inject]
    private StartService Service { get; set; } = default!;

    [Inject]
    private IJSRuntime Js { get; set; } = default!;

    private PressFormat Format { get; set; } = default!;

    private string Book => Say($"{Format.Count(shown.InsidePages)} pages of {Format.Size(shown.Page.Size)} in a cover, {Format.Count(shown.Pages.All)} with it, folded and stapled:");

    private IReadOnlyList<(string, string)> PageSizes => [.. StandardSizes.Pages(press.PaperRegion).Select(size => (size.Name, $"{size.Name}, {Format.Size(size.Size)}"))];

    private IReadOnlyList<(string, string)> SheetSizes => [.. StandardSizes.Sheets(press.PaperRegion).Select(size => (size.Name, $"{size.Name}, {Format.Size(size.Size)}"))];

    private static IReadOnlyList<(string, string)> Currencies { get; } =
        [.. Currency.All.OrderBy(currency => currency.Code, StringComparer.Ordinal).Select(currency => (currency.Code, $"{currency.Code}, {CurrencyNames.Of(currency.Code)}"))];

    /// <inheritdoc/>
    protected override async Task OnInitializedAsync()
    {
        press = StartService.Suited(CultureInfo.CurrentCulture);
        number = FirstNumber.For(press.PaperRegion);
        Refit();
        presses = await Service.PressesAsync();
        mayMake = await Service.MayMakeAsync();
    }

    // A field renders itself alone when it has saved; what it changes stands all over the page.
    private Task<string?> Take(FirstNumber next)
    {
        number = next;
        Show(number);
        StateHasChanged();
        return Task.FromResult<string?>(null);
    }

    private Task<string?> TakePress(NewPress next)
    {
        press = next;
        Refit();
        StateHasChanged();
        return Task.FromResult<string?>(null);
    }

    private void Refit()
    {
        Format = new PressFormat(Currency.Find(press.Currency)!, press.Units, CultureInfo.CurrentCulture);
        Show(number);
    }

    private void Show(FirstNumber of)
    {
        shown = of;
        answer = Service.WorkOut(of, Format.Currency);
    }

    // Sizes and weights of one region have no twin in the other: the figures start again there.
    private Task<string?> SaveRegionAsync(PaperRegion region)
    {
        var fresh = FirstNumber.For(region);
        number = fresh with
        {
            InsidePages = number.InsidePages,
            Quantity = number.Quantity,
            InsideInk = number.InsideInk,
            CoverInk = number.CoverInk,
            BlackSide = number.BlackSide,
            ColourSide = number.ColourSide,
            InsideSheet = number.InsideSheet,
            CoverSheet = number.CoverSheet,
        };
        return TakePress(press with { PaperRegion = region });
    }

    private Task<string?> SaveTitleAsync(string text)
    {
        if (text.Length == 0)
        {
            return Task.FromResult<string?>(Say($"A book needs a name; it can be changed later."));
        }

        title = text;
        StateHasChanged();
        return Task.FromResult<string?>(null);
    }

    private async Task<string?> SaveQuantityAsync(string text)
    {
        if (Quantity(text) is not { } quantity)
        {
            unread = true;
            StateHasChanged();
            return Say($"Write a whole number of copies from 1 to {Format.Count(Job.MostCopies)}.");
        }

        unread = false;
        return await Take(number with { Quantity = quantity });
    }

    private void TypeQuantity(string text)
    {
        var quantity = Quantity(text);
        unread = quantity is null;
        if (quantity is { } copies)
        {
            Show(number with { Quantity = copies });
        }
    }

    private int? Quantity(string text) => Typed.Count(text, Format.Culture) is { } quantity && quantity is >= 1 and <= Job.MostCopies ? (int)quantity : null;

    private async Task<string?> SavePagesAsync(string text)
    {
        if (Typed.Count(text, Format.Culture) is not { } pages || pages is < 1 or > Job.MostPages)
        {
            return Say($"Write a whole number of pages from 4 to {Format.Count(Job.MostPages)}.");
        }

        return BindingRules.Allows(Binding.Saddle, InsideAt, pages)
            ? await Take(number with { InsidePages = pages })
            : EditionText.PagesRule(Binding.Saddle, InsideAt, pages, Format);
    }

    private void TypePages(string text)
    {
        if (Typed.Count(text, Format.Culture) is { } pages && pages <= Job.MostPages && BindingRules.Allows(Binding.Saddle, InsideAt, pages))
        {
            Show(number with { InsidePages = pages });
        }
    }

    private async Task<string?> SaveAmountAsync(string text, Func<decimal, FirstNumber> take) =>
        Typed.Number(text, Format.Culture) is { } amount && amount is >= 0m and <= 1_000_000m ? await Take(take(amount)) : EditionText.AmountRule(Format);

    private void TypeAmount(string text, Func<decimal, FirstNumber> take)
    {
        if (Typed.Number(text, Format.Culture) is { } amount && amount is >= 0m and <= 1_000_000m)
        {
            Show(take(amount));
        }
    }

    private async Task<string?> SaveWeightAsync(string text, PaperWeight like, Func<PaperWeight, FirstNumber> take) =>
        Weight(text, like) is { } weight ? await Take(take(weight)) : Say($"Write a weight from 10 to 1,000 {WeightUnit(like)}.");

    private void TypeWeight(string text, PaperWeight like, Func<PaperWeight, FirstNumber> take)
    {
        if (Weight(text, like) is { } weight)
        {
            Show(take(weight));
        }
    }

    private PaperWeight? Weight(string text, PaperWeight like) => Typed.Number(text, Format.Culture) is { } stated && stated is >= 10m and <= 1000m
        ? like.Category is { } category ? PaperWeight.FromBasisWeight(stated, category) : PaperWeight.FromGrammage(stated)
        : null;

    private string Stated(PaperWeight weight) => Format.Number(weight.Stated, 1);

    private static string WeightUnit(PaperWeight weight) => weight.Category switch
    {
        PaperCategory.Text => Say($"lb text"),
        PaperCategory.Cover => Say($"lb cover"),
        _ => "g/m²",
    };

    private async Task SetUpAsync()
    {
        if (press.Name.Length == 0)
        {
            problem = Say($"The press needs a name: it stands on quotes and bench sheets.");
            return;
        }

        working = true;
        (var made, problem) = await Service.SetUpAsync(press, title, number);
        working = false;
        if (made is not null)
        {
            await OpenAsync(made);
        }
    }

    private async Task AddSampleAsync()
    {
        working = true;
        (var made, sampleProblem) = await Service.AddSampleAsync();
        working = false;
        if (made is not null)
        {
            await OpenAsync(made);
        }
    }

    // Of presses of one name each has the moment at which it came.
    private string Told(PressRecord press) => press.CreatedAt is { } made && presses.Count(other => other.Name == press.Name) > 1
        ? Say($"{CurrencyNames.Of(press.Currency)}, here since {Format.Moment(made)}")
        : CurrencyNames.Of(press.Currency);

    private Task OpenAsync(PressRecord chosen) => PressChoice.OpenAsync(Js, chosen.Id);
}
