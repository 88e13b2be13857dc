using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Postage;

/// <summary>A change to the book with which its piece of mail costs less postage, or can be posted at all.</summary>
/// <param name="Edition">The book with the change. What was weighed or gauged is changed by what the reckoned figure changes.</param>
/// <param name="Copy">A copy of it.</param>
/// <param name="Posted">How the piece is posted then.</param>
/// <param name="Saves">Postage saved of the piece; null where nothing took it before.</param>
/// <param name="InHand">A copy in the reader's hands then, not rounded: unit cost at the job's quantity, mailer and postage; null where such a book cannot be costed.</param>
public abstract record WayDown(Edition Edition, CopyEstimate Copy, PostageChoice Posted, decimal? Saves, decimal? InHand);

/// <summary>More is cut off an edge, and the page is smaller by as much.</summary>
/// <param name="Edge">Fore-edge or foot.</param>
/// <param name="By">How much more.</param>
/// <param name="Edition">See <see cref="WayDown"/>.</param>
/// <param name="Copy">See <see cref="WayDown"/>.</param>
/// <param name="Posted">See <see cref="WayDown"/>.</param>
/// <param name="Saves">See <see cref="WayDown"/>.</param>
/// <param name="InHand">See <see cref="WayDown"/>.</param>
public sealed record TrimmedMore(Edge Edge, Length By, Edition Edition, CopyEstimate Copy, PostageChoice Posted, decimal? Saves, decimal? InHand)
    : WayDown(Edition, Copy, Posted, Saves, InHand);

/// <summary>A part has fewer pages.</summary>
/// <param name="Part">Place of the part, from 0.</param>
/// <param name="By">How many fewer.</param>
/// <param name="Edition">See <see cref="WayDown"/>.</param>
/// <param name="Copy">See <see cref="WayDown"/>.</param>
/// <param name="Posted">See <see cref="WayDown"/>.</param>
/// <param name="Saves">See <see cref="WayDown"/>.</param>
/// <param name="InHand">See <see cref="WayDown"/>.</param>
public sealed record FewerPages(int Part, int By, Edition Edition, CopyEstimate Copy, PostageChoice Posted, decimal? Saves, decimal? InHand)
    : WayDown(Edition, Copy, Posted, Saves, InHand);

/// <summary>A part is on a lighter stock.</summary>
/// <param name="Part">Place of the part, from 0.</param>
/// <param name="StockId">The heaviest stock with which the piece costs less.</param>
/// <param name="Edition">See <see cref="WayDown"/>.</param>
/// <param name="Copy">See <see cref="WayDown"/>.</param>
/// <param name="Posted">See <see cref="WayDown"/>.</param>
/// <param name="Saves">See <see cref="WayDown"/>.</param>
/// <param name="InHand">See <see cref="WayDown"/>.</param>
public sealed record LighterPaper(int Part, string StockId, Edition Edition, CopyEstimate Copy, PostageChoice Posted, decimal? Saves, decimal? InHand)
    : WayDown(Edition, Copy, Posted, Saves, InHand);
