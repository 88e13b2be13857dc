namespace PressRun.Web.Charts;

/// <summary>The figure of a chart's marker, on a tag over the axis of quantities. A figure of the axis gives way only where both would touch.</summary>
/// <param name="Text">The figure.</param>
/// <param name="Left">Left edge of the tag.</param>
public readonly record struct MarkerTag(string Text, double Left)
{
    // Of figures of 12 units on the axis and of 13 bold ones on the tag, and what stays free around and between them.
    private const double AxisLetter = 7;
    private const double TagLetter = 8;
    private const double Around = 6;
    private const double Between = 3;

    /// <summary>How wide it is.</summary>
    public double Width => WidthOf(Text);

    /// <summary>Its middle.</summary>
    public double Middle => Left + (Width / 2);

    /// <summary>The tag of a marker, wholly within the picture.</summary>
    /// <param name="text">The figure.</param>
    /// <param name="x">Where the marker stands.</param>
    /// <param name="width">Of the picture.</param>
    public static MarkerTag At(string text, double x, double width) => new(text, Math.Clamp(x - (WidthOf(text) / 2), 0, width - WidthOf(text)));

    /// <summary>True where it leaves no room for a figure of the axis.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="x">Its middle.</param>
    public bool Hides(string figure, double x) => Math.Abs(x - Middle) < (Width / 2) + Between + (AxisLetter / 2 * figure.Length);

    private static double WidthOf(string text) => (2 * Around) + (TagLetter * text.Length);
}
