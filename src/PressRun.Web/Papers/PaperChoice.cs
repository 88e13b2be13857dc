using System.Globalization;
using PressRun.Data.RunPlans;

namespace PressRun.Web.Papers;

/// <summary>What is compared: which papers on which parts, at which quantities, seen through which way of selling. It stands in the page's address.</summary>
/// <param name="Tried">Ids of the papers to try by the part's place; a part that is not named keeps its own.</param>
/// <param name="Quantities">At least one.</param>
/// <param name="ChannelId">The way of selling that posts, or a mailer and region that is only looked at; empty for none.</param>
public sealed record PaperChoice(IReadOnlyDictionary<int, IReadOnlyList<string>> Tried, IReadOnlyList<int> Quantities, string ChannelId)
{
    /// <summary>Most quantities at a time.</summary>
    public const int MostQuantities = 5;

    private const char BetweenParts = '~';
    private const char BetweenNames = '.';

    /// <summary>The papers as they stand in an address.</summary>
    public string TriedText => string.Join(
        BetweenParts, Tried.OrderBy(part => part.Key).Select(part => part.Key.ToString(CultureInfo.InvariantCulture) + BetweenNames + string.Join(BetweenNames, part.Value)));

    /// <summary>The quantities as they stand in an address.</summary>
    public string QuantitiesText => string.Join(BetweenNames, Quantities.Select(quantity => quantity.ToString(CultureInfo.InvariantCulture)));

    /// <summary>Reads an address for a plan; what it does not say, or says wrongly, is as for a first visit.</summary>
    /// <param name="view">The plan.</param>
    /// <param name="tried">See <see cref="TriedText"/>.</param>
    /// <param name="quantities">See <see cref="QuantitiesText"/>.</param>
    /// <param name="channel">Id of the way of selling, or of one that is only looked at.</param>
    public static PaperChoice Read(PapersView view, string? tried, string? quantities, string? channel)
    {
        var source = view.Source;
        var counts = (quantities ?? "").Split(BetweenNames)
            .Select(text => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) ? count : 0)
            .Where(count => count is > 0 and <= Engine.Costing.Job.MostCopies).Distinct().Take(MostQuantities).ToList();
        return new PaperChoice(
            tried is null ? First(view) : Parts(source, view.Offered, tried),
            counts.Count > 0 ? counts : [source.Plan.Quantity],
            channel is not null && (channel.Length == 0 || source.Channels.Concat(view.TriedWays).Any(way => way.Id == channel))
                ? channel
                : source.Channels.Concat(view.TriedWays).FirstOrDefault(way => way is { MailerId: not null, PostageRegion: not null })?.Id ?? "");
    }

    // A first visit tries every paper with a price on the part with the most pages: that is where paper weighs.
    private static Dictionary<int, IReadOnlyList<string>> First(PapersView view)
    {
        var parts = view.Source.Edition.Parts;
        var thickest = Enumerable.Range(0, parts.Count).MaxBy(place => parts[place].Part.Pages);
        return new() { [thickest] = view.ToTry(thickest) };
    }

    private static Dictionary<int, IReadOnlyList<string>> Parts(JobSource source, IReadOnlyList<string> offered, string tried)
    {
        var parts = new Dictionary<int, IReadOnlyList<string>>();
        foreach (var names in tried.Split(BetweenParts).Select(text => text.Split(BetweenNames)))
        {
            if (int.TryParse(names[0], NumberStyles.None, CultureInfo.InvariantCulture, out var place) && place < source.Edition.Parts.Count)
            {
                parts[place] = [.. names[1..].Where(offered.Contains).Distinct(StringComparer.Ordinal)];
            }
        }

        return parts;
    }
}
