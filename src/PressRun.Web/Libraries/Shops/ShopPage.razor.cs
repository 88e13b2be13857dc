using Microsoft.AspNetCore.Components;
using PressRun.Data;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Libraries.Shops;

public sealed partial class ShopPage
{
    // Sheets, printing, paper, whole books and finishing; discounts and delivery stand with the order.
    private const int PriceTables = 5;

    private ShopView? view;
    private bool loaded;
    private bool adding;
    private string? said;

    [Inject]
    private ShopService Service { get; set; } = default!;

    [Inject]
    private NavigationManager Navigation { get; set; } = default!;

    [CascadingParameter]
    private PressView? Press { get; set; }

    /// <summary>The shop in the address.</summary>
    [Parameter]
    public string Id { get; set; } = "";

    /// <summary>The list in the address.</summary>
    [SupplyParameterFromQuery(Name = "list")]
    private string? ListIdAsked { get; set; }

    private Guid? ListId => FromAddress.Id(ListIdAsked);

    private string Uses => view!.Uses.Count switch
    {
        0 => Say($"No run goes by this list yet."),
        1 => Say($"{view.Uses[0]} goes by this list; what it costs changes with it."),
        _ => Say($"{Press!.Format.Count(view.Uses.Count)} plans go by this list; what they cost changes with it. For new prices start a new list."),
    };

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (Press is not null && (view is null || view.Shop.Id != Id || (ListId is { } list && view.Editor?.Record.Id != list)))
        {
            await OpenAsync(ListId);
        }

        loaded = true;
    }

    private async Task OpenAsync(Guid? list)
    {
        (adding, said) = (false, null);
        view = await Service.OpenAsync(Press!, Id, list);
    }

    private async Task AddedAsync(Guid list)
    {
        await OpenAsync(list);
        Navigation.NavigateTo($"shops/{Id}?list={list}");
    }

    private async Task<string?> RenameAsync(string name)
    {
        var (shop, problem) = await Service.SaveAsync(Press!.Record.Id, view!.Shop with { Name = name });
        if (shop is not null)
        {
            view = view with { Shop = shop };
        }

        return problem;
    }

    private async Task ArchiveAsync()
    {
        var (shop, problem) = await Service.SaveAsync(Press!.Record.Id, view!.Shop with { Archived = !view.Shop.Archived });
        (view, said) = (shop is null ? view : view with { Shop = shop }, problem ?? (shop!.Archived ? Say($"The shop is archived: kept for the runs that went there, and offered no more.") : null));
    }

    private async Task TakeOutListAsync(Guid list)
    {
        if (await Service.DeleteListAsync(Press!.Record.Id, list) is { } stays)
        {
            said = stays;
            return;
        }

        await OpenAsync(null);
        Navigation.NavigateTo($"shops/{Id}");
    }

    private async Task TakeOutAsync()
    {
        if (await Service.DeleteAsync(Press!.Record.Id, Id) is DeleteResult.InUse use)
        {
            said = Say($"{view!.Shop.Name} stays, because plans go by its lists: {UseWords.Of(use.Where)}. Archived, it is kept for them and offered no more.");
            return;
        }

        Navigation.NavigateTo("shops");
    }
}
