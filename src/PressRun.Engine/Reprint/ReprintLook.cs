namespace PressRun.Engine.Reprint;

/// <summary>One of fifty equally likely futures.</summary>
/// <param name="Copies">Asked for in it.</param>
/// <param name="SoldOut">True where the last copy goes.</param>
/// <param name="Loss">True where money is lost.</param>
public readonly record struct Future(int Copies, bool SoldOut, bool Loss);

/// <summary>What may be left over at the end of the horizon.</summary>
/// <param name="Probability">Of no more than that.</param>
/// <param name="Copies">Left over.</param>
/// <param name="Cartons">Of the shop, filled by mass; null where it names none.</param>
/// <param name="TiedUp">What of the cash paid for this run lies in them, not rounded; copies that were on hand before come last and hold none.</param>
public readonly record struct Leftover(decimal Probability, long Copies, long? Cartons, decimal TiedUp);

/// <summary>All that is said of one quantity.</summary>
/// <param name="Point">The quantity, what it promises and costs.</param>
/// <param name="Odds">What may happen.</param>
/// <param name="Futures">Fifty equally likely ones, by the copies asked for.</param>
/// <param name="Leftovers">With a probability of 0.1, 0.5 and 0.9.</param>
/// <param name="OnHand">Copies that were there before.</param>
/// <param name="GivenAway">Free copies; none are given where none is printed.</param>
/// <param name="HoursUnpaid">True where the press's own hours are in the cost and not in what is paid out.</param>
public sealed record ReprintLook(
    ReprintPoint Point, ReprintOdds Odds, IReadOnlyList<Future> Futures, IReadOnlyList<Leftover> Leftovers, int OnHand, int GivenAway, bool HoursUnpaid)
{
    /// <summary>Of the fifty, those in which the last copy goes.</summary>
    public int SoldOut { get; } = Futures.Count(future => future.SoldOut);

    /// <summary>Of the fifty, those in which money is lost.</summary>
    public int Losses { get; } = Futures.Count(future => future.Loss);
}
