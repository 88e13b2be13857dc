using PressRun.Engine.Costing;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Postage;

/// <summary>Finds the cheapest service that takes a piece of mail.</summary>
public static class PostageTable
{
    /// <summary>The services in force on a date, in the order listed: of several tables of one id the latest that has begun.</summary>
    /// <param name="services">Tables of all regions and dates.</param>
    /// <param name="date">The day; a table holds on its first day too.</param>
    public static IReadOnlyList<PostageService> InForce(IReadOnlyList<PostageService> services, DateOnly date)
    {
        var begun = services.Where(service => service.ValidFrom <= date).ToList();
        var latest = begun.GroupBy(service => service.Id, StringComparer.Ordinal).ToDictionary(tables => tables.Key, tables => tables.Max(table => table.ValidFrom));
        return [.. begun.Where(service => service.ValidFrom == latest[service.Id])];
    }

    /// <summary>The services that were in force once and are no longer on a date, in the order listed: a later table of the same id has begun.</summary>
    /// <param name="services">Tables of all regions and dates.</param>
    /// <param name="date">The day; a table holds on its first day too.</param>
    public static IReadOnlyList<PostageService> Past(IReadOnlyList<PostageService> services, DateOnly date)
    {
        var inForce = InForce(services, date).ToHashSet(ReferenceEqualityComparer.Instance);
        return [.. services.Where(service => service.ValidFrom <= date && !inForce.Contains(service))];
    }

    /// <summary>The cheapest service of a region for copies in a mailer; of equals the first listed.</summary>
    /// <param name="services">The region's services in force, as <see cref="InForce"/> gives them.</param>
    /// <param name="channelId">The channel that posts, for the answer.</param>
    /// <param name="mailer">What the copies lie in; its size is the piece's.</param>
    /// <param name="copy">One copy.</param>
    /// <param name="copies">Copies in the piece, at least 1.</param>
    public static PostageChoice Choose(
        IReadOnlyList<PostageService> services, string channelId, Mailer mailer, CopyEstimate copy, int copies)
    {
        var mass = ((copies * copy.Mass) + mailer.Mass).Settled();
        var thickness = ((copies * copy.Thickness) + mailer.Thickness).Settled();
        var piece = new Piece(Longer(mailer.Length, mailer.Width), Shorter(mailer.Length, mailer.Width), thickness, mass);
        var refused = new List<RefusedService>();
        PostageService? cheapest = null;
        var step = default(MassStep);
        foreach (var service in services)
        {
            var before = refused.Count;
            AddBroken(service, piece, refused);
            if (refused.Count > before)
            {
                continue;
            }

            var reached = service.Steps.First(candidate => mass <= candidate.Most);
            if (cheapest is null || reached.Price < step.Price)
            {
                (cheapest, step) = (service, reached);
            }
        }

        return new PostageChoice(
            channelId,
            cheapest?.Id,
            mass,
            thickness,
            cheapest is null ? null : step.Price,
            cheapest is null ? null : step.Most - mass,
            cheapest?.MaxThickness is { } most ? most - thickness : null,
            refused);
    }

    // Sides are compared sorted, the longest with the longest limit.
    private static void AddBroken(PostageService service, Piece piece, List<RefusedService> refused)
    {
        var (maxLong, maxShort) = Sorted(service.MaxLength, service.MaxWidth);
        var (minLong, minShort) = Sorted(service.MinLength, service.MinWidth);
        AddSide(service.Id, PostageLimit.Length, piece.LongSide, minLong, maxLong, refused);
        AddSide(service.Id, PostageLimit.Width, piece.ShortSide, minShort, maxShort, refused);
        AddSide(service.Id, PostageLimit.Thickness, piece.Thickness, service.MinThickness, service.MaxThickness, refused);
        var heaviest = service.Steps.Count == 0 ? Mass.Zero : service.Steps[^1].Most;
        if (piece.Mass > heaviest || service.Steps.Count == 0)
        {
            refused.Add(new RefusedService(service.Id, PostageLimit.Mass, (piece.Mass - heaviest).Grams));
        }
    }

    private static void AddSide(string id, PostageLimit limit, Length side, Length? least, Length? most, List<RefusedService> refused)
    {
        if (side > most)
        {
            refused.Add(new RefusedService(id, limit, (side - most.Value).Millimetres));
        }

        if (side < least)
        {
            refused.Add(new RefusedService(id, limit, (least.Value - side).Millimetres) { TooLittle = true });
        }
    }

    // Where only one limit is named, it binds the side it is named for.
    private static (Length? Long, Length? Short) Sorted(Length? length, Length? width) =>
        length is { } a && width is { } b ? (Longer(a, b), Shorter(a, b)) : (length, width);

    private static Length Longer(Length a, Length b) => a > b ? a : b;

    private static Length Shorter(Length a, Length b) => a > b ? b : a;

    private readonly record struct Piece(Length LongSide, Length ShortSide, Length Thickness, Mass Mass);
}
