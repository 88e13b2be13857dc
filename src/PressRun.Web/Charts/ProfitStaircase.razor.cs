using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Components;
using PressRun.Engine.Reprint;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Charts;

/// <summary>A quantity that is marked in words.</summary>
/// <param name="Quantity">Copies.</param>
/// <param name="Words">What it is, such as <c>best</c>.</param>
public readonly record struct MarkedQuantity(int Quantity, string Words);

public sealed partial class ProfitStaircase
{
    private const int MostReadings = 600;

    private (ProfitDrawing Drawing, string Size)[] drawings = [];
    private IReadOnlyList<ReprintPoint>? drawn;

    /// <summary>What each quantity promises, rising by one from printing none.</summary>
    [Parameter, EditorRequired]
    public IReadOnlyList<ReprintPoint> Points { get; set; } = [];

    /// <summary>Quantities marked in words.</summary>
    [Parameter]
    public IReadOnlyList<MarkedQuantity> Marks { get; set; } = [];

    /// <summary>The quantity that is chosen.</summary>
    [Parameter, EditorRequired]
    public int Quantity { get; set; }

    /// <summary>What else is to be said under it.</summary>
    [Parameter]
    public RenderFragment? Caption { get; set; }

    /// <summary>How figures are written.</summary>
    [Parameter, EditorRequired]
    public PressFormat Format { get; set; } = default!;

    /// <inheritdoc/>
    protected override (int From, int To) Range => (0, Points[^1].Quantity);

    private int Inside => Math.Clamp(Quantity, 0, Range.To);

    private string Number(int quantity) => quantity == 0 ? Say("number of copies", $"none") : Format.Count(quantity);

    private string Spoken(int quantity)
    {
        var (copies, profit) = (Format.Count(quantity), Points[quantity].ExpectedProfit);
        var money = Format.Money(Math.Abs(profit));
        return (quantity, profit) switch
        {
            (0, < 0m) => Say($"none lose {money}"),
            (0, _) => Say($"none keep {money}"),
            (_, < 0m) => Say(quantity, $"{copies} loses {money}", $"{copies} lose {money}"),
            _ => Say(quantity, $"{copies} keeps {money}", $"{copies} keep {money}"),
        };
    }

    private string Summary => string.Join(
        ' ', [Say($"Expected profit over the copies printed."), .. Marks.Select(mark => $"{mark.Words}: {Spoken(Math.Clamp(mark.Quantity, 0, Range.To))}.")]);

    private IEnumerable<int> TableRows => drawings[0].Drawing.QuantityMarks.Concat(Marks.Select(mark => mark.Quantity)).Append(Inside)
        .Where(quantity => quantity <= Range.To).Distinct().Order();

    /// <inheritdoc/>
    protected override void OnParametersSet()
    {
        if (ReferenceEquals(drawn, Points))
        {
            return;
        }

        drawn = Points;
        drawings = [(ProfitDrawing.Of(Points, StaircaseFrame.Wide), "wide"), (ProfitDrawing.Of(Points, StaircaseFrame.Narrow), "narrow")];
        ReadAnew();
    }

    // The script measures heights from the foot of the plot, which need not be 0 here.
    /// <inheritdoc/>
    protected override string Readings()
    {
        var stride = Math.Max(1, (Points.Count + MostReadings - 1) / MostReadings);
        var text = new StringBuilder();
        for (var quantity = 0; quantity < Points.Count; quantity += stride)
        {
            text.Append(CultureInfo.InvariantCulture, $"{quantity};{drawings[0].Drawing.AboveFoot(Points[quantity].ExpectedProfit)};{Spoken(quantity)}|");
        }

        return text.ToString();
    }

    private static string Plot(ProfitDrawing drawing)
    {
        var frame = drawing.Frame;
        return string.Join(' ', new[] { frame.Left, frame.Right, frame.Top, frame.Bottom, drawing.Most - drawing.Least, drawing.From, drawing.To }.Select(Svg.N));
    }

    private static string Anchor(ProfitDrawing drawing, int quantity) =>
        drawing.X(quantity) > drawing.Frame.Right - 70 ? "end" : drawing.X(quantity) < drawing.Frame.Left + 70 ? "start" : "middle";
}
