using PressRun.Data.Import.Tables;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;
using PressRun.JobFile;

namespace PressRun.Data.Import.Shapes;

/// <summary>Sheet sizes that a shop prints on, one a row.</summary>
public sealed class SheetShape : TableShape<Sheet>
{
    private const int NameOf = 0;
    private const int Width = 1;
    private const int Height = 2;
    private const int Margin = 3;
    private const int Gutter = 4;
    private const int Mixed = 5;
    private const int Grain = 6;

    /// <inheritdoc/>
    public override string Name => "sheets";

    /// <inheritdoc/>
    public override IReadOnlyList<Column> Columns { get; } =
    [
        new("sheet", "Sheet", Cells.Name) { Required = true, OfThing = true, Words = Cells.Words("sheet|sheet size|name|size|format|bogen") },
        new("width", "Width", new LengthCell(JobRules.Side)) { Required = true, Words = Cells.Words("width|breite|largeur|ancho") },
        new("height", "Height", new LengthCell(JobRules.Side)) { Required = true, Words = Cells.Words("height|length|hohe|hauteur|alto") },
        new("margin", "Margin", new LengthCell(JobRules.Allowance)) { Words = Cells.Words("margin|unprintable|rand|marge") },
        new("gutter", "Gutter", new LengthCell(JobRules.Allowance)) { Words = Cells.Words("gutter|gap|space") },
        new("mixedLayout", "Mixed", Cells.YesNo) { Words = Cells.Words("mixed layout|mixed|both ways") },
        new("grain", "Grain", new ChoiceCell<GrainRule>(("any", GrainRule.Any), ("along the spine", GrainRule.ParallelToSpine), ("parallelToSpine", GrainRule.ParallelToSpine)))
        {
            Words = Cells.Words("grain|grain direction|laufrichtung"),
        },
    ];

    /// <inheritdoc/>
    public override IEnumerable<object?[]> Rows(Sheet thing)
    {
        yield return
        [
            thing.Id, thing.Width, thing.Height, thing.Margin, thing.Gutter, thing.MixedLayout ? true : null,
            thing.Grain == GrainRule.Any ? null : thing.Grain,
        ];
    }

    /// <inheritdoc/>
    public override Sheet Thing(IReadOnlyList<object?[]> rows, Refuse refuse)
    {
        var row = rows[0];
        return new Sheet(
            row.Text(NameOf),
            row.Value<Length>(Width),
            row.Value<Length>(Height),
            row.Value<Length>(Margin),
            row.Value<Length>(Gutter),
            row.Value<bool>(Mixed),
            row.Value<GrainRule>(Grain));
    }

    /// <inheritdoc/>
    public override (string Key, int Column)? KeyOf(Sheet thing) => (thing.Id, NameOf);
}
