using PressRun.Engine.Costing;
using PressRun.Web.Libraries.Shops;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Libraries.Files;

/// <summary>The price list that a file comes into, as it is open, and the way back from what was stored last.</summary>
/// <param name="shops">Where lists are kept.</param>
/// <param name="press">Whose they are.</param>
/// <param name="view">The shop with the list open.</param>
internal sealed class OpenList(ShopService shops, PressView press, ShopView view)
{
    private Func<Task<string?>>? back;

    /// <summary>The shop with the list open.</summary>
    public ShopView View { get; private set; } = view;

    /// <summary>The list.</summary>
    public Shop Prices => View.Editor!.Record.Prices;

    /// <summary>Opens the list anew. Answers null, or that it is gone.</summary>
    public Task<string?> ReopenAsync() => OpenAsync(View.Editor!.Record.Id);

    /// <summary>Stores a list in place of the one that is open, or beside it, and leaves it open. Answers null when it is stored, otherwise what stands in the way.</summary>
    /// <param name="list">The list with its first day.</param>
    /// <param name="asNew">True where it is stored beside the one that is open.</param>
    public async Task<string?> StoreAsync(Shop list, bool asNew)
    {
        var open = View.Editor!.Record;
        if (!asNew)
        {
            var replaced = await View.Editor.ReplaceAsync(list);
            back = replaced is null ? () => View.Editor!.ReplaceAsync(open.Prices) : back;
            return replaced;
        }

        var (added, refused) = await shops.AddListAsync(press.Record.Id, View.Shop.Id, list);
        if (added is not { } id || await OpenAsync(id) is not null)
        {
            return refused ?? Gone;
        }

        var version = View.Editor!.Record.Version;
        back = () => TakeOutAsync(id, version, open.Id);
        return null;
    }

    /// <summary>Takes back what was stored last. Answers null when that is done, otherwise what stands in the way.</summary>
    public async Task<string?> TakeBackAsync()
    {
        var problem = back is null ? null : await back();
        back = problem is null ? null : back;
        return problem;
    }

    private static string Gone => Say($"The list has been taken out in between.");

    private async Task<string?> TakeOutAsync(Guid list, uint version, Guid open)
    {
        if (await OpenAsync(list) is null && View.Editor!.Record.Version != version)
        {
            return Say($"Somebody else changed the new list in between. Take it out on the shop's page, if it is to go.");
        }

        return await shops.DeleteListAsync(press.Record.Id, list) ?? await OpenAsync(open);
    }

    // A shop opens with another of its lists where the one asked for is gone: nothing is brought into that.
    private async Task<string?> OpenAsync(Guid list)
    {
        if (await shops.OpenAsync(press, View.Shop.Id, list) is not { Editor: { } editor } opened || editor.Record.Id != list)
        {
            return Gone;
        }

        View = opened;
        return null;
    }
}
