using PressRun.Engine.Bench;
using PressRun.Engine.Editions;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Costing;

/// <content>The full costing at one quantity.</content>
public sealed partial class PreparedJob
{
    // Room for the lines of most orders.
    private const int UsualLines = 16;

    /// <summary>The full costing at <paramref name="quantity"/> good copies.</summary>
    /// <param name="quantity">1 to 1,000,000.</param>
    /// <returns>The costing, or the problem where the shop cannot take that quantity.</returns>
    public Outcome<Estimate> Estimate(int quantity)
    {
        var taken = new SheetsTaken[lots.Length];
        var lines = new List<CostLine>(UsualLines);
        var sink = new KeptLines(lines);
        var figures = Work(quantity, taken, ref sink);
        if (figures.Problem is { } problem)
        {
            return Outcome<Estimate>.Refused(problem);
        }

        var forSale = quantity - job.FreeCopies;
        var ofChannels = new List<ChannelEstimate>(channels.Length);
        var postage = new List<PostageChoice>(channels.Length);
        foreach (var channel in channels)
        {
            ofChannels.Add(new ChannelEstimate(
                channel.Channel.Id, channel.NetPerCopy, channel.BreakEvenPrice(figures.Totals.LandedCost, forSale, job.Currency.MinorUnit)));
            if (channel.Postage is { } posted)
            {
                postage.Add(posted);
            }
        }

        var (breakEven, half) = (BreakEvenCopies(figures.Totals.LandedCost, forSale), SecondHalfAt(quantity));
        return Outcome<Estimate>.Of(new Estimate(
            quantity,
            figures.Started,
            PartsOf(taken, figures.Started),
            lines,
            figures.Totals,
            Copy,
            new FreightEstimate(figures.FreightMass, figures.Cartons, figures.HeaviestCarton),
            postage,
            ofChannels,
            breakEven,
            Warnings.For(this, forSale, figures, half, ofChannels, channels, breakEven))
        {
            SecondHalf = half,
        });
    }

    private SecondHalfEstimate? SecondHalfAt(int quantity)
    {
        if (job.SecondHalf is not { } half || OtherHalf is not { } block)
        {
            return null;
        }

        var (first, second) = Costing.SecondHalf.Copies(quantity);
        var copy = CopyOf(block);
        return new SecondHalfEstimate(half, first, second, copy, [.. Mailings(copy).Select(mailing => mailing.Postage).OfType<PostageChoice>()]);
    }

    /// <summary>The landed cost alone, without texts: the same as in the full costing, in microseconds.</summary>
    /// <param name="quantity">1 to 1,000,000.</param>
    /// <param name="landedCost">Rounded to the minor unit; 0 where there is a problem.</param>
    /// <returns>Null, or the problem where the shop cannot take that quantity.</returns>
    public Problem? LandedCost(int quantity, out decimal landedCost)
    {
        var figures = Figures(quantity);
        landedCost = figures.Totals.LandedCost;
        return figures.Problem;
    }

    /// <summary>Landed cost and cash out alone, without texts.</summary>
    /// <param name="quantity">1 to 1,000,000.</param>
    /// <param name="landedCost">0 where there is a problem.</param>
    /// <param name="cashOut">0 where there is a problem.</param>
    /// <returns>Null, or the problem where the shop cannot take that quantity.</returns>
    public Problem? Costs(int quantity, out decimal landedCost, out decimal cashOut) => Costs(quantity, out landedCost, out cashOut, null);

    /// <summary>The same for a quantity of a rising series.</summary>
    internal Problem? Costs(int quantity, out decimal landedCost, out decimal cashOut, RisingOvers? rising)
    {
        var figures = Figures(quantity, rising);
        (landedCost, cashOut) = (figures.Totals.LandedCost, figures.Totals.CashOut);
        return figures.Problem;
    }

    /// <summary>Begins a series of rising quantities, for which the copies to start are found sooner than for each by itself.</summary>
    internal RisingOvers RisingOvers() => copiesToStart.Rising();

    /// <summary>Net of a copy by the channels' mix, not rounded; null where there is no mix or a channel cannot post.</summary>
    public decimal? NetByMix
    {
        get
        {
            var mix = channels.Sum(channel => channel.Channel.Mix);
            return mix <= 0m || channels.Any(channel => channel.CannotPost)
                ? null
                : channels.Sum(channel => channel.Channel.Mix * channel.NetPerCopy!.Value) / mix;
        }
    }

    /// <summary>Page order, creep, stapler stop and cuts of the edition.</summary>
    public Imposition Impose() => Imposer.Impose(Block, job.Bench.StapleFromSpine);

    /// <summary>What each channel that packs copies in a mailer posts of a copy: the channel, the mailer and, where it posts, the service taken.</summary>
    internal IEnumerable<(Channel Channel, Mailer Mailer, PostageChoice? Postage)> Mailings(CopyEstimate copy) => channels
        .Select(channel => copy == Copy ? channel : PreparedChannel.Of(channel.Channel, tables, copy))
        .Where(channel => channel.Mailer is not null)
        .Select(channel => (channel.Channel, channel.Mailer!, channel.Postage));

    private OrderFigures Figures(int quantity, RisingOvers? rising = null)
    {
        var sink = default(NoLines);
        return lots.Length <= MostOnStack ? OnStack(quantity, ref sink, rising) : Work(quantity, new SheetsTaken[lots.Length], ref sink, rising);
    }

    private OrderFigures OnStack(int quantity, ref NoLines sink, RisingOvers? rising)
    {
        Span<SheetsTaken> taken = stackalloc SheetsTaken[MostOnStack];
        return Work(quantity, taken, ref sink, rising);
    }

    private List<PartEstimate> PartsOf(SheetsTaken[] taken, long started)
    {
        var parts = new List<PartEstimate>(Block.Parts.Count);
        if (book is not null)
        {
            foreach (var pieces in Block.Parts)
            {
                parts.Add(new PartEstimate(pieces.Part.Name, pieces.Count, pieces.Piece, null, pieces.PaperMass, pieces.Stock.Caliper));
            }
        }

        for (var index = 0; index < lots.Length; index++)
        {
            var ((pieces, _, choices), (candidate, sheets, layout)) = (lots[index], taken[index]);
            var sheet = choices[candidate];
            var onSheets = new PartSheets(
                sheet.Sheet.Id, sheet.PiecesPerSheet, sheets, (decimal)sheets / started, layout, Impressions(pieces.Part, sheets));
            parts.Add(new PartEstimate(pieces.Part.Name, pieces.Count, pieces.Piece, onSheets, pieces.PaperMass, pieces.Stock.Caliper));
        }

        return parts;
    }

    private static List<(Ink Ink, long Count)> Impressions(Part part, long sheets)
    {
        var impressions = new List<(Ink, long)>(2);
        if (part.Outside == part.Inside)
        {
            Add(part.Outside, 2 * sheets);
        }
        else
        {
            Add(part.Outside, sheets);
            Add(part.Inside, sheets);
        }

        return impressions;

        void Add(Ink ink, long count)
        {
            if (ink != Ink.None)
            {
                impressions.Add((ink, count));
            }
        }
    }

    // The nearest whole number is taken where the quotient misses it only by the last digits of a repeating decimal.
    private BreakEven BreakEvenCopies(decimal landedCost, int forSale)
    {
        const decimal repeatingDecimals = 1e-18m;
        if (NetByMix is not { } net || net <= landedCost / long.MaxValue)
        {
            return new BreakEven(null, false, NetByMix);
        }

        var quotient = landedCost / net;
        var nearest = decimal.Round(quotient);
        var copies = (long)(Math.Abs(quotient - nearest) <= repeatingDecimals ? nearest : decimal.Ceiling(quotient));
        return new BreakEven(copies, copies <= forSale, net);
    }
}
