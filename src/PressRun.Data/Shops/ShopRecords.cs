using PressRun.Engine.Costing;

namespace PressRun.Data.Shops;

/// <summary>A print shop.</summary>
/// <param name="Id">The word for it in files and addresses; empty for a new one, which gets it from its name.</param>
/// <param name="Name">What it calls itself.</param>
/// <param name="Archived">True where it is kept for old plans and offered no more.</param>
/// <param name="PriceLists">Its price lists, latest first.</param>
/// <param name="Version">Row version that a save must carry; 0 for a new one.</param>
public sealed record ShopRecord(string Id, string Name, bool Archived, IReadOnlyList<PriceListHead> PriceLists, uint Version);

/// <summary>A price list by its date.</summary>
/// <param name="Id">Its id.</param>
/// <param name="ValidFrom">First day of the list.</param>
public sealed record PriceListHead(Guid Id, DateOnly ValidFrom);

/// <summary>A shop's price list, whole.</summary>
/// <param name="Id">Its id; empty for a new one.</param>
/// <param name="ShopId">Its shop.</param>
/// <param name="Prices">Its prices with the date from which they hold; the name in it is the shop's.</param>
/// <param name="Version">Row version that a save must carry; 0 for a new one.</param>
public sealed record PriceListRecord(Guid Id, string ShopId, Shop Prices, uint Version);
