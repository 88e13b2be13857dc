using PressRun.Data.RunPlans;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;

namespace PressRun.Web.Posting;

/// <summary>Ways to the reader that are only looked at and stand in no library: one copy in a mailer to a region.</summary>
public static class WayTried
{
    private const char Between = '~';

    /// <summary>Every mailer that the page lies in, to every region of the services in force on the plan's day.</summary>
    /// <param name="source">The plan.</param>
    /// <param name="mailers">Mailers that the press offers.</param>
    public static IReadOnlyList<Channel> Of(JobSource source, IReadOnlyList<Mailer> mailers) =>
    [
        .. from region in Regions(source)
           from mailer in mailers.Where(mailer => Holds(source, mailer))
           select new Channel(
               mailer.Id + Between + region, Say($"{mailer.Name}, to {region}"), 0m, false, 0m, 0m, 0m, 0m, 1, mailer.Id, region, 0m, 0m),
    ];

    /// <summary>What is missing before anything can be posted, as a sentence; null where nothing is.</summary>
    /// <param name="source">The plan.</param>
    /// <param name="mailers">Mailers that the press offers.</param>
    public static string? Missing(JobSource source, IReadOnlyList<Mailer> mailers) => (mailers.Count, source.Postage.Count) switch
    {
        (0, 0) => Say($"There is no mailer and no carrier's price yet."),
        (0, _) => Say($"There is no mailer yet."),
        (_, 0) => Say($"There is no carrier's price yet."),
        _ when !mailers.Any(mailer => Holds(source, mailer)) => Say($"The page lies in none of your mailers."),
        _ when !Regions(source).Any() => Say($"Your carrier's prices begin after the day of this plan."),
        _ => null,
    };

    /// <summary>A way of selling that posts although <see cref="Missing"/> names something: its mailer is archived. Null where none does.</summary>
    /// <param name="source">The plan.</param>
    public static Channel? StillPosting(JobSource source) => source.Channels.FirstOrDefault(way =>
        source.Mailers.Any(mailer => mailer.Id == way.MailerId && Holds(source, mailer)) && Regions(source).Contains(way.PostageRegion, StringComparer.Ordinal));

    private static bool Holds(JobSource source, Mailer mailer) => mailer.Holds(source.Edition.ToEdition().Page);

    private static IEnumerable<string> Regions(JobSource source) =>
        PostageTable.InForce(source.Postage, source.Plan.Date).Select(service => service.Region).Distinct(StringComparer.Ordinal);
}
