using System.Text.Json.Serialization;

namespace PressRun.Web.Fair;

/// <summary>Copies sold at a table, one entry a copy, as a phone kept them while it had no connection.</summary>
/// <param name="Press">Of the press that the page was opened for; another may have been chosen in the same browser since.</param>
/// <param name="Now">When the message left, in milliseconds since 1970, by the phone's clock; null from a page that was kept before it said so.</param>
/// <param name="MinutesEast">How far the phone's time of day is ahead of universal time.</param>
/// <param name="Entries">At most <see cref="Kept.KeptPages.MostEntries"/>.</param>
public sealed record FairEntries(Guid Press, long? Now, int MinutesEast, IReadOnlyList<FairEntry> Entries)
{
    private static readonly TimeSpan FurthestEast = TimeSpan.FromHours(14);
    private static readonly TimeSpan SmallDifference = TimeSpan.FromHours(1);

    /// <summary>The day under which an entry is written: the phone's, but where its clock is off by an hour or more, the day by <paramref name="clock"/>
    /// so long ago as the phone knows; never a moment to come.</summary>
    /// <param name="entry">One of the entries.</param>
    /// <param name="clock">When the message came in, by the server's clock.</param>
    public DateOnly DayOf(FairEntry entry, DateTimeOffset clock)
    {
        if (Now is not { } left || (Math.Abs((double)left - clock.ToUnixTimeMilliseconds()) < SmallDifference.TotalMilliseconds && entry.At <= left))
        {
            return entry.Day;
        }

        var east = TimeSpan.FromMinutes(Math.Clamp(MinutesEast, -FurthestEast.TotalMinutes, FurthestEast.TotalMinutes));
        return DateOnly.FromDateTime((clock - Ago(entry.At, left) + east).UtcDateTime);
    }

    // A phone whose clock was put back since it sold has sold this moment, as far as anybody can tell.
    private static TimeSpan Ago(long at, long left) => TimeSpan.FromMilliseconds(Math.Clamp((double)left - at, 0, TimeSpan.FromDays(366).TotalMilliseconds));
}

/// <summary>A copy sold.</summary>
/// <param name="Id">Given by the phone, once: sent again the sale is not written again.</param>
/// <param name="Edition">The printing.</param>
/// <param name="At">When it was tapped, in milliseconds since 1970, by the phone's clock.</param>
/// <param name="Day">By the phone's clock.</param>
/// <param name="Channel">The way of selling; null where none was chosen.</param>
/// <param name="Fair">Which fair it was; may be empty.</param>
/// <param name="Amount">What came in.</param>
/// <param name="TakenBack">True where it was taken back on the phone, perhaps before it ever arrived.</param>
public sealed record FairEntry(Guid Id, Guid Edition, long At, DateOnly Day, string? Channel, string? Fair, [property: JsonNumberHandling(JsonNumberHandling.AllowReadingFromString)] decimal Amount, bool TakenBack);

/// <summary>What became of the entries, in their order, and how many copies the ledger holds now of the printings that they name.</summary>
/// <param name="Entries">An answer to each.</param>
/// <param name="OnHand">Of each printing that is there.</param>
/// <param name="At">When this was read, in milliseconds since 1970, by the server's clock.</param>
public sealed record FairAnswer(IReadOnlyList<FairOutcome> Entries, IReadOnlyList<FairOnHand> OnHand, long At);

/// <summary>What became of an entry.</summary>
/// <param name="Id">The entry.</param>
/// <param name="Problem">Why the ledger does not take it, as a sentence; null where it stands in the ledger.</param>
public sealed record FairOutcome(Guid Id, string? Problem);

/// <summary>Copies on hand of a printing.</summary>
/// <param name="Edition">The printing.</param>
/// <param name="Copies">Below 0 where more went than were known of.</param>
public sealed record FairOnHand(Guid Edition, long Copies);
