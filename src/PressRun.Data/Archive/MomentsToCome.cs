using PressRun.Engine.Costing;

namespace PressRun.Data.Archive;

/// <summary>What is said to have happened to the quotes of an archive before it has: a link that ends in years would hold its quote open until then, and nobody could end it.</summary>
internal static class MomentsToCome
{
    private const string Rule = "Write a moment that has passed: nothing can have happened later.";

    // The clock of the server that wrote the archive may go before this one's.
    private static readonly TimeSpan Leeway = TimeSpan.FromHours(1);

    /// <summary>Every such moment by its place; none for an archive that can be.</summary>
    public static IReadOnlyList<Problem> In(PressArchive archive, DateTimeOffset now) =>
        [.. Of(archive).Where(happened => happened.At > now + Leeway).Select(happened => new Problem(happened.Path, Moments.Written(happened.At!.Value), Rule))];

    private static IEnumerable<(string Path, DateTimeOffset? At)> Of(PressArchive archive)
    {
        foreach (var (number, quote) in archive.Quotes.Index())
        {
            var at = $"$.quotes[{number}]";
            yield return ($"{at}.madeAt", quote.MadeAt);
            foreach (var (place, archived) in quote.Links.Index())
            {
                yield return ($"{at}.links[{place}].madeAt", archived.Link.MadeAt);
                yield return ($"{at}.links[{place}].endedAt", archived.Link.EndedAt);
                yield return ($"{at}.links[{place}].makerGoneAt", archived.Link.MakerGoneAt);
            }

            foreach (var (place, archived) in quote.Events.Index())
            {
                yield return ($"{at}.events[{place}].at", archived.Event.At);
            }
        }
    }
}
