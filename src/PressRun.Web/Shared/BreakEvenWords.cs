using PressRun.Engine.Costing;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Shared;

/// <summary>By which copy a run is paid for, or what it is that leaves this open.</summary>
/// <param name="Copies">The copy, as a number; null where there is none.</param>
/// <param name="Short">For a table: the number, or why there is none.</param>
/// <param name="Sentence">As a sentence without the number where there is none; null where <paramref name="Copies"/> says it.</param>
/// <param name="MendAt">Page on which it is mended, relative to the app; null where nothing is missing.</param>
/// <param name="MendWords">What the link to it says.</param>
public sealed record BreakEvenWords(string? Copies, string Short, string? Sentence, string? MendAt, string? MendWords)
{
    /// <summary>The words of an estimate.</summary>
    /// <param name="estimate">The costing.</param>
    /// <param name="job">What it was made from.</param>
    /// <param name="editionAddress">Page of the printing, where its price stands.</param>
    /// <param name="format">How figures are written.</param>
    public static BreakEvenWords Of(Estimate estimate, Job job, string editionAddress, PressFormat format)
    {
        if (job.Channels.Count == 0)
        {
            return Missing(Say($"no way of selling yet"), Say($"Nothing says yet how it is sold, so nothing says when it is paid for."), "selling", Say($"Name the ways you sell"));
        }

        if (job.Channels.All(channel => channel.Price == 0m))
        {
            return Missing(Say($"no price yet"), Say($"It has no price yet, so nothing says when it is paid for."), editionAddress, Say($"Set a price"));
        }

        if (job.Channels.All(channel => channel.Mix == 0m))
        {
            return Missing(Say($"no shares yet"), Say($"No way of selling has a share of the copies yet, so nothing says when the run is paid for."), "selling", Say($"Set the shares"));
        }

        if (estimate.BreakEven.Copies is { } copies)
        {
            return new BreakEvenWords(format.Count(copies), format.Count(copies), null, null, null);
        }

        return estimate.BreakEven.NetPerCopy is { } net
            ? Missing(Say($"never at this price"), Say($"At this price a copy keeps {format.Money(net)}, so no number of copies pays for it."), editionAddress, Say($"Change the price"))
            : Missing(Say($"no post takes it"), Say($"No postage service takes what one of the ways of selling would send, so nothing says when the run is paid for."), "post", Say($"Look at the postage"));
    }

    private static BreakEvenWords Missing(string inShort, string sentence, string at, string words) => new(null, inShort, sentence, at, words);
}
