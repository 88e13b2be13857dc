using System.Globalization;
using PressRun.Data.RunPlans;

namespace PressRun.Web.Papers;

/// <summary>What is compared: which papers on which parts, at which quantities, seen through which way of selling. It stands in the page's address.</summary>
/// <param name="Tried">Ids of the papers to try by the part's place; a part that is not named keeps its own.</param>
/// <param name="Quantities">At least one.</param>
/// <param name="ChannelId">The way of selling that posts, or a mailer and region that is only looked at; empty for none.</param>
public sealed record PaperChoice(IReadOnlyDictionary<int, IReadOnlyList<string>> Tried, IReadOnlyList<int> Quantities, string ChannelId)
{
    /// <summary>Parts by their place whose planned paper is left out of what is tried on them.</summary>
    public IReadOnlySet<int> Without { get; init; } = new HashSet<int>();

    /// <summary>Most quantities at a time.</summary>
    public const int MostQuantities = 5;

    private const char BetweenParts = '~';
    private const char BetweenNames = '.';
    private const char LeavesOut = '-';

    /// <summary>The papers as they stand in an address.</summary>
    public string TriedText => string.Join(
        BetweenParts, Tried.OrderBy(part => part.Key).Select(part => part.Key.ToString(CultureInfo.InvariantCulture) + (Without.Contains(part.Key) ? LeavesOut : "") + BetweenNames + string.Join(BetweenNames, part.Value)));

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
        var choice = new PaperChoice(
            new Dictionary<int, IReadOnlyList<string>>(),
            counts.Count > 0 ? counts : [source.Plan.Quantity],
            channel is not null && (channel.Length == 0 || source.Channels.Concat(view.TriedWays).Any(way => way.Id == channel))
                ? channel
                : source.Channels.Concat(view.TriedWays).FirstOrDefault(way => way is { MailerId: not null, PostageRegion: not null })?.Id ?? "");
        return tried is null ? choice.OfFirstVisit(view) : choice.Named(source, view.Offered, tried);
    }

    /// <summary>The papers tried on a part, the planned one among them unless it is left out.</summary>
    /// <param name="place">Place of the part, from 0.</param>
    /// <param name="planned">The planned one.</param>
    public IReadOnlyList<string> On(int place, string planned) => Tried.GetValueOrDefault(place) is not { Count: > 0 } tried ? [planned]
        : Without.Contains(place) ? tried
        : [.. tried.Append(planned).Distinct(StringComparer.Ordinal)];

    // A first visit tries the papers that suit the part with the most pages: that is where paper weighs. The cover joins where all can still be named in the picture, or where it has no paper
    // of one's own yet.
    private PaperChoice OfFirstVisit(PapersView view)
    {
        var parts = view.Source.Edition.Parts;
        var thickest = Enumerable.Range(0, parts.Count).MaxBy(place => parts[place].Part.Pages);
        var first = On(view, thickest);
        return view.Cover is { } cover && cover != thickest && first.On(view, cover) is var both && (view.StandsOnExample(cover) || both.Combinations(view) <= PaperChart.NamedAtMost) ? both : first;
    }

    private PaperChoice On(PapersView view, int place)
    {
        var tried = Tried.Append(new(place, view.ToTry(place))).ToDictionary();
        return this with { Tried = tried, Without = tried.Keys.Where(view.StandsOnExample).ToHashSet() };
    }

    private int Combinations(PapersView view) => Tried.Keys.Aggregate(1, (count, place) => count * On(place, view.OwnStock(place)).Count);

    private PaperChoice Named(JobSource source, IReadOnlyList<string> offered, string tried)
    {
        var parts = new Dictionary<int, IReadOnlyList<string>>();
        var without = new HashSet<int>();
        foreach (var names in tried.Split(BetweenParts).Select(text => text.Split(BetweenNames)))
        {
            if (int.TryParse(names[0].TrimEnd(LeavesOut), NumberStyles.None, CultureInfo.InvariantCulture, out var place) && place < source.Edition.Parts.Count)
            {
                parts[place] = [.. names[1..].Where(offered.Contains).Distinct(StringComparer.Ordinal)];
                if (names[0].EndsWith(LeavesOut))
                {
                    without.Add(place);
                }
            }
        }

        return this with { Tried = parts, Without = without };
    }
}
