using PressRun.Engine.Measures;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;

namespace PressRun.Engine.Costing;

/// <summary>What a costing draws attention to.</summary>
internal static class Warnings
{
    public static List<Warning> For(
        PreparedJob prepared, int forSale, in OrderFigures figures, SecondHalfEstimate? half, List<ChannelEstimate> estimates, PreparedChannel[] channels, BreakEven breakEven)
    {
        var job = prepared.Job;
        var warnings = new List<Warning>();
        var (foreEdge, creep) = (job.Edition.Trim.ForeEdge, Length.Max(prepared.Copy.Creep, half?.Copy.Creep ?? Length.Zero));
        if (creep.Settled() > foreEdge)
        {
            Add(WarningCode.CreepExceedsTrim, $"The innermost leaves stand out by {Text.Mm(creep)} and the fore-edge trim takes off {Text.Mm(foreEdge)}.");
        }

        var estimated = prepared.Block.Parts.Concat(prepared.OtherHalf?.Parts ?? []).Where(part => part.Stock.CaliperIsEstimated).Select(part => part.Stock.Name).Distinct().ToArray();
        if (estimated.Length > 0)
        {
            Add(WarningCode.CaliperEstimated, $"Estimated from the finish's usual bulk: the thickness of {string.Join(", ", estimated)}, and every figure built on it.", estimated);
        }

        if (figures.HeaviestCarton > FreightEstimate.LiftingLimit)
        {
            Add(
                WarningCode.HeavyCarton,
                $"A carton of {Text.Kg(figures.HeaviestCarton)} is heavier than {Text.Kg(FreightEstimate.LiftingLimit)}: lift it in two or with a trolley, and follow local guidance on lifting.");
        }

        Each(WarningCode.MailerTooSmall, channel => channel.Mailer is { } mailer && !mailer.Holds(job.Edition.Page), "The page does not lie in the mailer of");
        Each(WarningCode.NoPostage, channel => channel.CannotPost || HalfOf(channel) is { ServiceId: null }, "No postage service takes the piece of");
        if (job.Edition.Weighed?.Mass is null)
        {
            Each(
                WarningCode.NearPostageStep,
                channel => IsNear(channel.Postage) || IsNear(HalfOf(channel)),
                $"Paper varies, and the piece is within {Text.Of(100m * PostageChoice.PaperVaries)} % of its postage step's limit; weigh a copy. It concerns");
        }

        for (var index = 0; index < estimates.Count; index++)
        {
            if (estimates[index].BreakEvenPrice is null && !channels[index].CannotPost)
            {
                Add(WarningCode.NoBreakEvenPrice, $"No price pays for a copy through {channels[index].Channel.Name}.", channels[index].Channel.Name);
            }
        }

        if (breakEven is { Copies: { } copies, WithinRun: false })
        {
            Add(
                WarningCode.BreakEvenBeyondRun,
                $"The run is paid for by copy {copies}, more than the {Math.Max(0, forSale)} copies for sale.");
        }

        return warnings;

        PostageChoice? HalfOf(PreparedChannel channel) => half?.Postage.FirstOrDefault(choice => choice.ChannelId == channel.Channel.Id);

        static bool IsNear(PostageChoice? choice) => choice is { HeadroomMass: { } headroom } && headroom < PostageChoice.PaperVaries * choice.Mass;

        void Add(WarningCode code, string message, params string[] about) => warnings.Add(new Warning(code, message) { About = about });

        void Each(WarningCode code, Predicate<PreparedChannel> concerned, string sentence)
        {
            if (Array.Exists(channels, concerned))
            {
                var names = Array.ConvertAll(Array.FindAll(channels, concerned), channel => channel.Channel.Name);
                Add(code, $"{sentence} {string.Join(", ", names)}.", names);
            }
        }
    }
}
