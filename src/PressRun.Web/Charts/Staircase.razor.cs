using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Components;
using PressRun.Engine.Ladder;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Charts;

/// <summary>A printing that was made, as a mark on the staircase.</summary>
/// <param name="Quantity">Copies printed.</param>
/// <param name="Cost">What they cost.</param>
/// <param name="Words">What the mark stands for.</param>
/// <param name="Paid">True where the cost is what was paid, and not what a plan came to.</param>
public sealed record PastRun(int Quantity, decimal Cost, string Words, bool Paid);

public sealed partial class Staircase
{
    private const int MostReadings = 600;
    private const double PastRadius = 6;

    // From the marker to where its label begins, and to where it ends at most.
    private const double LabelGap = 9;
    private const double LabelReach = 92;

    private readonly string id = "s" + Guid.NewGuid().ToString("N")[..8];
    private (StaircaseDrawing Drawing, StaircaseGround Ground, string Size)[] drawings = [];
    private (CostCurve? Curve, PressFormat? Format) drawn;

    /// <summary>Landed cost at every whole quantity of the range.</summary>
    [Parameter, EditorRequired]
    public CostCurve Curve { get; set; } = default!;

    /// <summary>Ranges where fewer copies cost more.</summary>
    [Parameter]
    public IReadOnlyList<DearBand> Bands { get; set; } = [];

    /// <summary>Where the cost falls or leaps.</summary>
    [Parameter]
    public IReadOnlyList<LadderJump> Jumps { get; set; } = [];

    /// <summary>True where more quantities would be drawn of a job that is worked out sooner.</summary>
    [Parameter]
    public bool IsNarrowed { get; set; }

    /// <summary>The quantity that is chosen.</summary>
    [Parameter, EditorRequired]
    public int Quantity { get; set; }

    /// <summary>How figures are written.</summary>
    [Parameter, EditorRequired]
    public PressFormat Format { get; set; } = default!;

    /// <summary>Printings that were made.</summary>
    [Parameter]
    public IReadOnlyList<PastRun> Past { get; set; } = [];

    private int Inside => Math.Clamp(Quantity, Curve.From, Curve.To);

    private decimal Cost => Curve.At(Inside);

    private decimal Unit => new Rung(Inside, Cost).UnitCost;

    private string Spoken => Say(
        Inside, $"{Format.Count(Inside)} copy costs {Format.Money(Cost)}, {Format.Money(Unit)} each", $"{Format.Count(Inside)} copies cost {Format.Money(Cost)}, {Format.Money(Unit)} each");

    private string Summary
    {
        get
        {
            var (least, most) = (Format.Money(Curve.At(Curve.From)), Format.Money(Curve.At(Curve.To)));
            return string.Join(
                ' ',
                [
                    Say($"From {least} for {Words.Copies(Curve.From, Format.Count)} to {most} for {Format.Count(Curve.To)}."),
                    $"{Spoken}.",
                    .. Bands.Select(band => Say($"{Words.CopiesCost(band.From, band.To, Format.Count)} no less than {Format.Count(band.Better)}.")),
                ]);
        }
    }

    private string Happens(StaircaseRow row) => string.Join(
        ' ',
        new[]
        {
            row.Chosen ? Say($"this run.") : null,
            row.Jump is { } jump ? Step(jump) : null,
            row.Better is { } better ? Say(better, $"{Format.Count(better)} costs no more", $"{Format.Count(better)} cost no more") : null,
        }.OfType<string>());

    // How high the step is: from where the cost would have gone on to where it goes on.
    private string Step(LadderJump jump) => jump.Change < 0m
        ? Say($"a step: {Format.Money(-jump.Change)} less.")
        : Say($"a step: {Format.Money(jump.Change)} more.");

    private StaircaseLoupe? Near(StaircaseDrawing drawing) => StaircaseLoupe.Of(Curve, Bands, Inside, drawing);

    /// <inheritdoc/>
    protected override (int From, int To) Range => (Curve.From, Curve.To);

    /// <inheritdoc/>
    protected override void OnParametersSet()
    {
        if (ReferenceEquals(drawn.Curve, Curve) && ReferenceEquals(drawn.Format, Format))
        {
            return;
        }

        drawn = (Curve, Format);
        drawings = [Drawn(StaircaseFrame.Wide, "wide"), Drawn(StaircaseFrame.Narrow, "narrow")];
        ReadAnew();
    }

    private (StaircaseDrawing Drawing, StaircaseGround Ground, string Size) Drawn(StaircaseFrame frame, string size)
    {
        var drawing = StaircaseDrawing.Of(Curve, Bands, Jumps, frame);
        return (drawing, StaircaseGround.Of(drawing, $"{id}-{size}-hatch", Format), size);
    }

    // Sampled where the range is long.
    /// <inheritdoc/>
    protected override string Readings()
    {
        var stride = Math.Max(1, (Curve.Costs.Count + MostReadings - 1) / MostReadings);
        var text = new StringBuilder();
        for (var quantity = Curve.From; quantity <= Curve.To; quantity += stride)
        {
            var rung = new Rung(quantity, Curve.At(quantity));
            text.Append(CultureInfo.InvariantCulture, $"{quantity};{rung.LandedCost};{Reading(rung)}|");
        }

        return text.ToString();
    }

    private string Reading(Rung rung)
    {
        var (copies, cost, each) = (Format.Count(rung.Quantity), Format.Money(rung.LandedCost), Format.Money(rung.UnitCost));
        return Say(rung.Quantity, $"{copies} costs {cost}, {each} each", $"{copies} cost {cost}, {each} each");
    }

    private string Plot(StaircaseDrawing drawing)
    {
        var frame = drawing.Frame;
        return string.Join(' ', new[] { frame.Left, frame.Right, frame.Top, frame.Bottom, drawing.MostCost, Curve.From, Curve.To }.Select(Svg.N));
    }

    // What a copy costs stands beneath the marker, or above it, on the side where no mark of a past run lies.
    private (bool Left, double Foot) LabelOf(StaircaseDrawing drawing)
    {
        var (x, y, frame) = (drawing.X(Inside), drawing.Y(Cost), drawing.Frame);
        var (below, above) = (Math.Min(y + 24, frame.Bottom - 6), Math.Max(y - 14, frame.Top + 12));
        var (right, left) = (x <= frame.Right - 80, x > frame.Left + LabelReach);
        (bool Left, double Foot, bool Fits)[] places = [(false, below, right), (true, below, left), (true, above, left), (false, above, right)];
        return places.Where(place => place.Fits && !(place.Left
                ? PastBetween(drawing, x - LabelReach, x - LabelGap, place.Foot)
                : PastBetween(drawing, x + LabelGap, x + LabelReach, place.Foot)))
            .Select(place => (place.Left, place.Foot)).FirstOrDefault((!right, below));
    }

    // A small figure gives way to the chosen one's label, and to the mark of a printing that was made.
    private bool TooNear(StaircaseDrawing drawing, UnitCostMark mark)
    {
        var label = LabelOf(drawing);
        var (from, to) = label.Left ? (-LabelReach, 20d) : (-20d, LabelReach);
        var across = mark.X - drawing.X(Inside);
        return (across > from && across < to && Math.Abs(mark.TextY - label.Foot) < 18) || PastBetween(drawing, mark.X - 16, mark.X + 16, mark.TextY);
    }

    // True where the mark of a past run lies on a text of that width whose foot is there.
    private bool PastBetween(StaircaseDrawing drawing, double from, double to, double foot) => Past.Any(past =>
        past.Quantity >= Curve.From && past.Quantity <= Curve.To && drawing.X(past.Quantity) is var x && x > from - PastRadius && x < to + PastRadius
        && drawing.Y(past.Cost) is var y && y > foot - 13 - PastRadius && y < foot + 4 + PastRadius);
}
