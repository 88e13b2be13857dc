using PressRun.Engine.Measures;
using PressRun.Engine.Postage;

namespace PressRun.Engine.Costing;

/// <summary>Half of a run has a part on another stock; the other half, the first, has it on the edition's own. Both are one order.</summary>
/// <param name="Part">Place of the part, from 0.</param>
/// <param name="StockId">Stock of the second half.</param>
public sealed record SecondHalf(int Part, string StockId)
{
    /// <summary>Good copies of either half: of an odd number the first has one more.</summary>
    /// <param name="quantity">Good copies of the whole run.</param>
    public static (int First, int Second) Copies(int quantity) => (quantity - (quantity / 2), quantity / 2);
}

/// <summary>What the copies of the second half are, where they are not those of the first.</summary>
/// <param name="Half">The part, and its stock in this half.</param>
/// <param name="FirstCopies">Good copies of the first half.</param>
/// <param name="Copies">Good copies of this half.</param>
/// <param name="Copy">One of its copies.</param>
/// <param name="Postage">One for each channel that posts.</param>
public sealed record SecondHalfEstimate(SecondHalf Half, int FirstCopies, int Copies, CopyEstimate Copy, IReadOnlyList<PostageChoice> Postage);
