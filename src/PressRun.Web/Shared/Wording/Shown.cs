namespace PressRun.Web.Shared.Wording;

/// <summary>A figure as it is written: number, common fraction and unit apart, because the unit is set smaller and the fraction as one sign.</summary>
/// <param name="Number">In the viewer's locale; may be empty where only a fraction is left.</param>
/// <param name="Fraction">Such as <c>1/2</c>; null where there is none.</param>
/// <param name="Unit">Such as <c>g</c>; null for counts and for amounts, whose currency stands once on the page.</param>
public readonly record struct Shown(string Number, string? Fraction, string? Unit)
{
    /// <summary>As plain text, for titles, descriptions and fields: <c>5½ in</c>, <c>5 3/16 in</c>.</summary>
    public override string ToString() => string.Join(' ', new[] { NumberText, Unit }.Where(part => !string.IsNullOrEmpty(part)));

    /// <summary>Number and fraction as plain text, without the unit: what a field shows.</summary>
    public string NumberText => Fraction switch
    {
        "1/4" => Number + "¼",
        "1/2" => Number + "½",
        "3/4" => Number + "¾",
        null => Number,
        _ => Number.Length == 0 ? Fraction : $"{Number} {Fraction}",
    };
}
